import { describe, expect, test } from 'vitest';
import { holeCount, seamHoles } from '../../../src/core/pattern/seamHoles.ts';
import { coverOf } from './coverOf.ts';

const stitched = { method: 'stitching', style: 'saddle', edgeMargin_mm: 4, pitch_mm: 4 };

describe('the seam of separate pockets', () => {
  test('goes through outside and pocket up to the mouth, and through the outside alone between the mouths', () => {
    const design = coverOf({ seam: stitched });
    const seam = seamHoles(design);
    const mouth = design.pieces.pocket.width;
    const { width } = design.pieces.outside;
    for (const { at, layers } of seam.rows.flatMap(({ holes }) => holes)) {
      const expected =
        at[0] < mouth ? ['outside', 'frontPocket'] : at[0] > width - mouth ? ['outside', 'backPocket'] : ['outside'];
      expect(layers).toEqual(expected);
    }
    expect(seam.steps.map(({ x }) => x)).toEqual([mouth, width - mouth]);
  });

  test('goes all round: as many holes as intervals', () => {
    const seam = seamHoles(coverOf({ seam: stitched }));
    expect(holeCount(seam)).toBe(seam.rows.reduce((sum, { intervals }) => sum + intervals, 0));
    expect(seam.rows.map(({ side }) => side)).toEqual(['tail', 'backForeEdge', 'head', 'frontForeEdge']);
  });

  test('starts in the third hole inside the back pocket at the tail and finishes in the one before', () => {
    const { starts, finishes, rows, steps } = seamHoles(coverOf({ seam: stitched }));
    const tail = rows[0]!.holes.filter(({ at }) => at[0] > steps[1]!.x);
    expect(starts).toEqual([tail[2]]);
    expect(finishes).toEqual([tail[1]]);
  });

  test('rounds a corner on the margin: radius 14 less 4 gives a seam radius of 10, its middle hole on the diagonal', () => {
    const { rows } = seamHoles(coverOf({ seam: { ...stitched, cornerRadius_mm: 14 } }));
    const [x, y] = rows[0]!.holes[0]!.at;
    expect(x).toBeCloseTo(14 - 10 * Math.SQRT1_2, 9);
    expect(y).toBeCloseTo(x, 9);
  });

  test('meets in a point inside a corner rounded by less than the margin', () => {
    const { rows } = seamHoles(coverOf({ seam: { ...stitched, cornerRadius_mm: 3 } }));
    expect(rows[0]!.holes[0]!.at).toEqual([4, 4]);
  });

  test('cuts a clipped corner a margin inside the cut', () => {
    const design = coverOf({ seam: { ...stitched, cornerRadius_mm: 12 }, construction: { corners: 'clipped' } });
    const [x, y] = seamHoles(design).rows[0]!.holes[0]!.at;
    // The cut runs along x + y = 12; the hole in the middle of the corner stands 4 mm from it.
    expect((x + y - 12) / Math.SQRT2).toBeCloseTo(4, 9);
    expect(x).toBeCloseTo(y, 9);
  });
});

describe('the seam of turned ends', () => {
  const design = coverOf({ seam: stitched, pockets: { construction: 'turned' } });
  const seam = seamHoles(design);

  test('is a row at head and one at tail, with a hole at both ends', () => {
    expect(seam.rows.map(({ side, intervals, holes }) => [side, holes.length - intervals])).toEqual([
      ['tail', 1],
      ['head', 1],
    ]);
  });

  test('starts a margin from the middle of the fold', () => {
    const fold = design.pieces.pocketDepth + design.needs.thick.foreEdge.turn / 2;
    expect(seam.rows[0]!.holes[0]!.at[0] - fold).toBeCloseTo(4, 9);
  });

  test('without room for a row is refused in words', () => {
    const wide = coverOf({
      seam: stitched,
      pockets: { construction: 'turned', depth_mm: 95 },
      pattern: { outsideWidth_mm: 200 },
    });
    const none = seamHoles(wide);
    expect(none.rows).toEqual([]);
    expect(none.notes.join()).toMatch(/No seam: .*Make the ends shorter/);
  });
});

describe('what is said', () => {
  test('where the pockets meet', () => {
    const design = coverOf({ seam: stitched, pockets: { depth_mm: 300 } });
    expect(seamHoles(design).notes.join()).toMatch(/pockets meet or overlap/);
  });

  test('where slits run into each other', () => {
    expect(seamHoles(coverOf({ construction: { slitWidth_mm: 5 } })).notes.join()).toMatch(/run into each other/);
  });

  test('where a side is too short for the pitch', () => {
    const design = coverOf({ book: { width_mm: 30, height_mm: 34 }, seam: { ...stitched, pitch_mm: 25 } });
    const { notes, rows } = seamHoles(design);
    expect(rows.some(({ off }) => Math.abs(off) > 0.05)).toBe(true);
    expect(notes.join()).toMatch(/too short for a pitch of 25 mm; it takes \d of \d+\.\d\d mm/);
  });

  test('where turned ends leave no corner to round', () => {
    const turned = { construction: 'turned' };
    expect(seamHoles(coverOf({ seam: { ...stitched, cornerRadius_mm: 8 }, pockets: turned })).notes.join()).toMatch(
      /stay square/,
    );
    expect(seamHoles(coverOf({ seam: stitched, pockets: turned })).notes).toEqual([]);
  });

  test('where a corner finds no room', () => {
    const design = coverOf({ seam: { ...stitched, cornerRadius_mm: 60 }, pockets: { depth_mm: 45 } });
    expect(seamHoles(design).notes.join()).toMatch(/no room for 60 mm/);
  });
});
