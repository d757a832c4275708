import type { CoverDesign } from '../fold/coverDesign.ts';
import type { HalfSection } from '../fold/section/halfSection.ts';
import type { RangePoint } from '../leather/leatherModel.ts';
import { boardEnds, headLength } from './boardEdges.ts';
import type { CoverGrid } from './coverGrid.ts';
import type { EndField } from './endField.ts';

import type { PatternBox, SeeThrough } from './meshData.ts';
import type { Standing } from './standing.ts';

/** How far the leather is seen through beyond the board's edge, over the board, mm. Free choice. */
const OVER_BOARD = 4;
/** How much farther under that a lining is left out, so that it does not show at the border, in thicknesses of the outside. Free choice. */
const UNDER = 2;
/** How much of the edge margin is seen through, so that the seam line shows, mm. Free choice. */
const PAST_SEAM = 0.4;

type Frame = SeeThrough['frames'][number];

/** The faces that hide the edges of the boards: from outside the book outside and lining, from inside it the pockets. */
export function seeThrough(
  design: CoverDesign,
  point: RangePoint,
  standing: Standing,
  grid: CoverGrid,
  fields: { readonly front: EndField; readonly back: EndField },
): SeeThrough[] {
  const { front, back } = standing;
  const { leathers } = design.needs[point];
  const margin = design.job.seam.edgeMargin_mm - PAST_SEAM;
  const { tail, head } = boardEnds(design, point);
  const v = {
    outer: [margin, design.pieces.outside.height - margin],
    inner: [tail + OVER_BOARD, head - OVER_BOARD],
  } as const;
  const frame = (half: HalfSection, place: (d: number) => number, under = 0): Frame => ({
    outer: {
      s: between(place(half.toSeam + PAST_SEAM), place(half.toTip - headLength(design, point, half) - under)),
      v: v.outer,
    },
    inner: {
      s: between(place(half.toTip - OVER_BOARD - under), place(0)),
      v: [v.inner[0] + under, v.inner[1] - under],
    },
  });
  const faces: SeeThrough[] = [
    {
      part: 'outside',
      face: 'grain',
      frames: [frame(front, (d) => front.length - d), frame(back, (d) => front.length + d)],
    },
  ];
  if (grid.lined) {
    const spine = grid.columns.findIndex(({ d }) => d === 0);
    const [onFront, onBack] = [grid.columns.slice(0, spine + 1).reverse(), grid.columns.slice(spine)].map(liningPlace);
    const middle = grid.columns[grid.lined[0]]!.liningD;
    const under = UNDER * leathers.outside.thickness;
    faces.push({
      part: 'lining',
      face: 'flesh',
      frames: [frame(front, (d) => middle - onFront!(d), under), frame(back, (d) => middle + onBack!(d), under)],
    });
  }
  for (const [part, half, field] of [
    ['frontPocket', front, fields.front],
    ['backPocket', back, fields.back],
  ] as const)
    if (field.foreEdge) faces.push({ part, face: 'grain', frames: [pocketFrame(design, point, half, field)] });
  return faces;
}

const between = (a: number, b: number): PatternBox['s'] => (a < b ? [a, b] : [b, a]);

/** Length of the lining from the middle of the spine, at a neutral length of the outside along one half. */
function liningPlace(columns: CoverGrid['columns']): (d: number) => number {
  return (at) => {
    const next = Math.max(
      1,
      columns.findIndex(({ d }) => d >= at),
    );
    const [a, b] = [columns[next - 1]!, columns[next]!];
    return a.liningD + ((b.liningD - a.liningD) * (at - a.d)) / (b.d - a.d);
  };
}

/** On a pocket the board's edge lies beyond the S that the pocket makes up to the board. */
function pocketFrame(
  { job, pieces, needs }: CoverDesign,
  point: RangePoint,
  half: HalfSection,
  { foreEdge, pocketSeat }: EndField,
): Frame {
  const margin = job.seam.edgeMargin_mm;
  const { board, height } = needs[point].book;
  const { width } = pieces.pocket;
  const { tail, tailSeam, head, headSeam } = pocketSeat(pieces.pocketDepth / 2, board);
  const tip = foreEdge ? foreEdge.length - foreEdge.run + half.toSeam - half.toTip : 0;
  return {
    outer: {
      s: [margin - PAST_SEAM, width],
      v: [margin - PAST_SEAM, pieces.outside.height - margin + PAST_SEAM],
    },
    inner: {
      s: [margin + tip + OVER_BOARD, 2 * width],
      v: [
        margin + tail.length - tail.run - height / 2 - tailSeam + OVER_BOARD,
        pieces.outside.height - margin - (head.length - head.run - height / 2 + headSeam) - OVER_BOARD,
      ],
    },
  };
}
