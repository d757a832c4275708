import type { ReactNode } from 'react';
import { type CoverDesign, coverSection, type Drawing, seamHoles, type Vec2 } from '../../../../core/index.ts';
import { SectionPicture } from '../../../sheet/SectionPicture.tsx';
import { AssembledPicture } from './AssembledPicture.tsx';
import { numberedHoles, type SeamRun } from './numberedHoles.ts';

interface SeamPictureProps {
  readonly design: CoverDesign;
  readonly drawing: Drawing;
}

/**
 * Room beside the seam in its section: toward the spine, the edge and the pages as multiples of the seam margin; and what the
 * picture leaves free above its frame anyway, mm.
 */
const AROUND = { spine: 3.5, edge: 1.5, pages: 1.5, above: 6 } as const;

/** The seam from the inside, its holes numbered in the way it is worked, and its section at the fore-edge. */
export function SeamPicture({ design, drawing }: SeamPictureProps) {
  const runs = numberedHoles(seamHoles(design));
  const { height } = drawing.pieces[0]!;
  const margin = design.job.seam.edgeMargin_mm;
  const section = coverSection(design, 'thick', 0);
  const [seam] = section.seams;
  const total = runs.reduce((sum, { holes }) => sum + holes.length, 0);
  return (
    <>
      <AssembledPicture
        design={design}
        drawing={drawing}
        label={`Seam from the inside: ${total} holes, numbered in the way it is worked`}
        over={(text) =>
          runs.map((run) => (
            <Run key={run.holes[0]!.at.join(' ')} run={run} height={height} margin={margin} text={text} />
          ))
        }
      />
      {seam !== undefined && (
        <div className="section-drawing seam-section">
          <SectionPicture
            section={section}
            label="Section of the seam at the front fore-edge"
            frame={around(seam, margin)}
          />
        </div>
      )}
    </>
  );
}

/** Corners of the part of the section that shows the layers at the seam. */
function around([[x, y], [u, v]]: readonly [Vec2, Vec2], margin: number): Vec2[] {
  return [
    [Math.min(x, u) - AROUND.spine * margin, Math.min(y, v) - AROUND.pages * margin],
    [Math.max(x, u) + AROUND.edge * margin, Math.max(y, v) - AROUND.above],
  ];
}

interface RunProps {
  readonly run: SeamRun;
  readonly height: number;
  /** From the seam to the cut edge, mm. */
  readonly margin: number;
  readonly text: number;
}

/** One run of the seam: every hole a dot, its numbers outside the cover, the way it goes along its sides. */
function Run({ run: { holes, arrows }, height, margin, text }: RunProps): ReactNode {
  const dots = holes.map(({ at: [x, y] }) => `M${x} ${height - y}h0`).join('');
  const every = [10, 20, 50, 100].find((step) => step * (holes.length > 1 ? pitchOf(holes) : 1) > 2.2 * text) ?? 100;
  return (
    <g className="seam-run">
      <path className="seam-dots" d={dots} />
      {holes
        .filter(({ number, isCorner }) => number === 1 || isCorner || number % every === 0)
        .filter((hole, _, shown) => hole.isCorner || hole.number === 1 || isClear(hole, shown, 1.8 * text))
        .map(({ number, at: [x, y], out, isCorner }) => (
          <g key={number} transform={`translate(${x} ${height - y})`}>
            <circle r={0.35 * text} data-corner={isCorner} />
            <text x={(margin + 1.1 * text) * out[0]} y={-(margin + 0.75 * text) * out[1] + 0.35 * text}>
              {number}
            </text>
          </g>
        ))}
      {arrows.map(({ at: [x, y], heading }) => (
        <path
          key={heading}
          className="way"
          transform={`translate(${x} ${height - y}) rotate(${(-heading * 180) / Math.PI}) scale(${text})`}
          d="M-1.6 0H1M0.2 -0.6L1 0L0.2 0.6"
        />
      ))}
    </g>
  );
}

type Numbered = SeamRun['holes'][number];

const apart = (a: Numbered, b: Numbered): number => Math.hypot(a.at[0] - b.at[0], a.at[1] - b.at[1]);

const pitchOf = (holes: readonly Numbered[]): number => apart(holes[0]!, holes[1]!);

/** Whether a number stands clear of the first one and of those at corners, which are always shown. */
const isClear = (hole: Numbered, shown: readonly Numbered[], room: number): boolean =>
  shown.every((other) => other === hole || !(other.isCorner || other.number === 1) || apart(hole, other) > room);
