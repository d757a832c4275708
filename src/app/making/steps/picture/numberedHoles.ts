import type { seamHoles, Vec2 } from '../../../../core/index.ts';

type Seam = ReturnType<typeof seamHoles>;

/** A seam sewn or laced in one go. */
export interface SeamRun {
  /** In the order in which they are worked, numbered from 1. */
  readonly holes: readonly {
    readonly number: number;
    readonly at: Vec2;
    readonly isCorner: boolean;
    /** Direction from the cover's middle across its edge there: a unit vector, at a corner between its two sides. */
    readonly out: Vec2;
  }[];
  /** Way of the seam in the middle of each side, set inward of it. */
  readonly arrows: readonly { readonly at: Vec2; readonly heading: number }[];
}

/** How far inward of the seam the arrows stand, mm. */
const INWARD = 9;

/**
 * Holes in the frame of the outside from its inside, x from the front cut edge and y from the tail, numbered from the start of
 * the seam: one run round a closed seam, else one a row.
 */
export function numberedHoles({ isClosed, rows, starts }: Seam): SeamRun[] {
  const runs = isClosed ? [rows] : rows.map((row) => [row]);
  return runs.map((sides, i): SeamRun => {
    const holes = sides.flatMap((side) => side.holes);
    const first = Math.max(0, holes.indexOf(starts[i]!));
    return {
      holes: [...holes.slice(first), ...holes.slice(0, first)].map(({ at, heading, isCorner }, k) => ({
        number: k + 1,
        at,
        isCorner,
        // The seam runs counterclockwise, so the outside is at its right.
        out: [Math.sin(heading), -Math.cos(heading)],
      })),
      arrows: sides.map((side) => {
        const { at, heading } = side.holes[Math.floor(side.holes.length / 2)]!;
        return { at: [at[0] - INWARD * Math.sin(heading), at[1] + INWARD * Math.cos(heading)], heading };
      }),
    };
  });
}
