import type { EdgeSection, Vec2 } from '../../core/index.ts';
import type { LoupeView } from './loupeView.ts';
import './sectionGlass.css';

interface SectionGlassProps {
  readonly section: EdgeSection;
  readonly view: LoupeView;
  /** px across the glass. */
  readonly size: number;
  /** The gap or overrun in words; null where there is none to read. */
  readonly said: string | null;
}

/** px from the leather up to the dimension line, and from there to its words. */
const DIMENSION = { above: 12, words: 8, arrow: 4, tail: 9 } as const;
/** How far the seam line is drawn beyond the leather, px. */
const SEAM_BEYOND = 7;

const path = (points: readonly Vec2[]): string => `M${points.map(([x, y]) => `${x} ${y}`).join('L')}`;

/** A section in the glass, to scale: layers, board, stop, seam, and the gap hatched and dimensioned. */
export function SectionGlass({ section, view, size, said }: SectionGlassProps) {
  const { board, outside, lining, pocket, seat, gap, seam } = section;
  const outline = (points: readonly Vec2[]): string => `${path(points.map(view.place))}Z`;
  const thickness = -Math.min(...board.map(([, v]) => v));
  const [edge, top] = view.place([0, Math.max(...outside.map(([, v]) => v))]);
  const [, outer] = view.place([0, 0]);
  const [stop, inner] = view.place([gap ?? 0, -thickness]);
  return (
    <svg width={size} height={size} aria-hidden="true" className="section-layers section-glass">
      <path className="board" d={outline(board)} />
      {lining !== null && <path className="lining" d={outline(lining)} />}
      {pocket !== null && <path className="pocket" d={outline(pocket)} />}
      <path className="outside" d={outline(outside)} />
      {seat !== null && <path className="seat-zone" d={outline(seat)} />}
      {seam !== null && <Seam seam={seam} view={view} />}
      {gap !== null && said !== null && (
        <g data-overrun={gap < 0 || undefined}>
          <path className="stop" d={`M${stop} ${outer}V${inner}`} />
          {gap < 0 && <path className="board-edge" d={`M${edge} ${outer}V${inner}`} />}
          <GapZone from={edge} to={stop} top={outer} height={inner - outer} />
          <GapDimension from={edge} to={stop} leather={top} said={said} size={size} />
        </g>
      )}
    </svg>
  );
}

/** The hole through all layers, and the line of the seam through its middle. */
function Seam({
  seam: { at, hole, faces },
  view,
}: {
  readonly seam: NonNullable<EdgeSection['seam']>;
  readonly view: LoupeView;
}) {
  const [left, high] = view.place([at - hole / 2, faces[1]]);
  const [right, low] = view.place([at + hole / 2, faces[0]]);
  return (
    <>
      {hole > 0 && <rect className="hole" x={left} y={high} width={right - left} height={low - high} />}
      <path className="seam-line" d={`M${(left + right) / 2} ${high - SEAM_BEYOND}V${low + SEAM_BEYOND}`} />
    </>
  );
}

interface GapZoneProps {
  /** px: the board's edge and its stop, the board's outer face and its thickness. */
  readonly from: number;
  readonly to: number;
  readonly top: number;
  readonly height: number;
}

/** The hatched zone, with a line within either end: a zone lower than its hatch is wide still shows where it ends. */
function GapZone({ from, to, top, height }: GapZoneProps) {
  const width = Math.abs(to - from);
  const left = Math.min(from, to);
  const line = Math.min(1, width / 2);
  return (
    <>
      <rect className="gap-zone" x={left} y={top} width={width} height={height} />
      <rect className="gap-end" x={left} y={top} width={line} height={height} />
      <rect className="gap-end" x={left + width - line} y={top} width={line} height={height} />
    </>
  );
}

interface GapDimensionProps {
  /** px: the board's edge and its stop, and the upper side of the leather. */
  readonly from: number;
  readonly to: number;
  readonly leather: number;
  readonly said: string;
  readonly size: number;
}

/** A dimension over the leather, its arrows outside where it is narrow. */
function GapDimension({ from, to, leather, said, size }: GapDimensionProps) {
  const { above, words, arrow, tail } = DIMENSION;
  const [left, right] = [Math.min(from, to), Math.max(from, to)];
  const y = leather - above;
  const isNarrow = right - left < 4 * arrow;
  const head = (x: number, way: 1 | -1): string =>
    `M${x + way * arrow} ${y - arrow / 1.5}L${x} ${y}L${x + way * arrow} ${y + arrow / 1.5}`;
  const line = isNarrow ? `M${left - tail} ${y}H${left}M${right} ${y}H${right + tail}` : `M${left} ${y}H${right}`;
  const [atLeft, atRight] = isNarrow ? ([-1, 1] as const) : ([1, -1] as const);
  return (
    <g className="gap-dimension">
      <path
        d={
          [left, right].map((x) => `M${x} ${leather - 2}V${y - 3}`).join('') +
          line +
          head(left, atLeft) +
          head(right, atRight)
        }
      />
      <text x={size / 2} y={y - words}>
        {said}
      </text>
    </g>
  );
}
