import { describe, expect, test } from 'vitest';
import type { CoverDesign } from '../../../src/core/fold/coverDesign.ts';
import { rectangle } from '../../../src/core/math/contour.ts';
import { holeCount, seamHoles } from '../../../src/core/pattern/seamHoles.ts';
import { defined } from '../../defined.ts';
import { nth } from '../../nth.ts';
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

  test('is closed, runs a margin inside the cut edge, and turns by a quarter from side to side', () => {
    const design = coverOf({ seam: stitched });
    const { isClosed, lines, rows, notes } = seamHoles(design);
    const { width, height } = design.pieces.outside;
    expect([isClosed, notes]).toEqual([true, []]);
    expect(lines).toEqual([rectangle([4, 4], [width - 4, height - 4])]);
    rows.forEach(({ holes }, i) => {
      const [corner, ...along] = holes;
      // A corner hole stands midway between its two sides; an awl is held across that.
      expect([corner!.isCorner, corner!.heading]).toEqual([true, (i * Math.PI) / 2 - Math.PI / 4]);
      for (const { heading, isCorner } of along) {
        expect(isCorner).toBe(false);
        expect(Math.cos(heading - (i * Math.PI) / 2)).toBeCloseTo(1, 9);
      }
    });
  });

  test('goes through a full lining everywhere, and through a centre lining between its ends', () => {
    const leather = { lining: { min_mm: 0.7, max_mm: 0.7 } };
    const layersOf = (design: CoverDesign) => seamHoles(design).rows.flatMap(({ holes }) => holes);
    // At a pitch of 24 mm a layer that ended at the cut edge would be too near for the holes a margin inside it.
    const full = coverOf({ seam: { ...stitched, pitch_mm: 24 }, leather, construction: { lining: 'full' } });
    for (const { layers } of layersOf(full)) expect(layers).toContain('lining');
    const centre = coverOf({ seam: stitched, leather });
    const [middle, half] = [centre.pieces.outside.width / 2, defined(centre.pieces.lining).width / 2];
    for (const { at, layers } of layersOf(centre))
      expect(layers.includes('lining')).toBe(Math.abs(at[0] - middle) < half);
    expect(
      seamHoles(centre)
        .steps.filter(({ layer }) => layer === 'lining')
        .map(({ x }) => x),
    ).toEqual([middle - half, middle + half]);
  });

  test('starts in the third hole inside the back pocket at the tail and finishes in the one before', () => {
    const { starts, finishes, rows, steps } = seamHoles(coverOf({ seam: stitched }));
    const tail = nth(rows, 0).holes.filter(({ at }) => at[0] > nth(steps, 1).x);
    expect(starts).toEqual([tail[2]]);
    expect(finishes).toEqual([tail[1]]);
  });

  test('starts at the fore-edge of a back pocket too narrow for a hole at the tail', () => {
    const { starts, rows } = seamHoles(coverOf({ seam: { ...stitched, pitch_mm: 25 }, pockets: { depth_mm: 20 } }));
    expect(nth(rows, 0).holes.some(({ layers }) => layers.includes('backPocket'))).toBe(false);
    expect(starts).toEqual([nth(rows, 1).holes[2]]);
  });

  test('rounds a corner on the margin: radius 14 less 4 gives a seam radius of 10, its middle hole on the diagonal', () => {
    const { rows } = seamHoles(coverOf({ seam: { ...stitched, cornerRadius_mm: 14 } }));
    const [x, y] = nth(nth(rows, 0).holes, 0).at;
    expect(x).toBeCloseTo(14 - 10 * Math.SQRT1_2, 9);
    const { width, height } = coverOf({ seam: { ...stitched, cornerRadius_mm: 14 } }).pieces.outside;
    const lengths = [width, height, width, height].map((side) => expect.closeTo(side - 28 + 5 * Math.PI, 9));
    expect(rows.map(({ length }) => length)).toEqual(lengths);
    expect(y).toBeCloseTo(x, 9);
  });

  test('meets in a point inside a corner rounded by less than the margin', () => {
    const { rows } = seamHoles(coverOf({ seam: { ...stitched, cornerRadius_mm: 3 } }));
    expect(nth(nth(rows, 0).holes, 0).at).toEqual([4, 4]);
  });

  test('cuts a clipped corner a margin inside the cut', () => {
    const design = coverOf({ seam: { ...stitched, cornerRadius_mm: 12 }, construction: { corners: 'clipped' } });
    const [x, y] = nth(nth(seamHoles(design).rows, 0).holes, 0).at;
    // The cut runs along x + y = 12; the hole in the middle of the corner stands 4 mm from it.
    expect((x + y - 12) / Math.SQRT2).toBeCloseTo(4, 9);
    expect(x).toBeCloseTo(y, 9);
  });
});

describe('the seam of turned ends', () => {
  const turned = () => coverOf({ seam: stitched, pockets: { construction: 'turned' } });

  test('is a row at head and one at tail, open, with a hole at both ends, each from its start to its finish', () => {
    const design = turned();
    const { isClosed, lines, rows, starts, finishes } = seamHoles(design);
    const { width, height } = design.pieces.outside;
    // The first hole stands a margin from the middle of the fold, or half the turn where that is more.
    const { turn } = design.needs.thick.foreEdge;
    const first = design.pieces.pocketDepth + turn / 2 + Math.max(4, turn / 2);
    expect(isClosed).toBe(false);
    expect(lines).toEqual([
      [{ kind: 'line', from: [first, 4], to: [width - first, 4] }],
      [{ kind: 'line', from: [width - first, height - 4], to: [first, height - 4] }],
    ]);
    expect(rows.map(({ side, intervals, holes }) => [side, holes.length - intervals])).toEqual([
      ['tail', 1],
      ['head', 1],
    ]);
    for (const [i, { holes }] of rows.entries()) {
      const at = [nth(holes, 0), nth(holes, -1)].map((hole) => hole.at);
      const ends = [first, width - first].map((x) => [expect.closeTo(x, 9), i === 0 ? 4 : height - 4]);
      expect(at).toEqual(i === 0 ? ends : ends.reverse());
      expect([starts[i], finishes[i]]).toEqual([holes[0], holes.at(-1)]);
      for (const { heading, isCorner } of holes) expect([heading, isCorner]).toEqual([i === 0 ? 0 : Math.PI, false]);
    }
  });

  test('starts half the turn from the middle of a thick fold', () => {
    const design = coverOf({ seam: { ...stitched, edgeMargin_mm: 1 }, pockets: { construction: 'turned' } });
    const { turn } = design.needs.thick.foreEdge;
    expect(turn).toBeGreaterThan(2);
    expect(nth(nth(seamHoles(design).rows, 0).holes, 0).at[0]).toBeCloseTo(design.pieces.pocketDepth + turn, 9);
  });

  test('goes through outside and turned end up to the mouth, which lies as far beyond the fold as the cut edge before it', () => {
    const design = turned();
    const mouth = 2 * (design.pieces.pocketDepth + design.needs.thick.foreEdge.turn / 2);
    const { rows, steps } = seamHoles(design);
    expect(steps.map(({ layer, x }) => [layer, x])).toEqual([
      ['frontTurnedEnd', mouth],
      ['backTurnedEnd', design.pieces.outside.width - mouth],
    ]);
    for (const { at, layers } of rows.flatMap(({ holes }) => holes)) {
      const isBack = at[0] > design.pieces.outside.width - mouth;
      const expected = at[0] < mouth ? ['frontTurnedEnd'] : isBack ? ['backTurnedEnd'] : [];
      expect(layers).toEqual(['outside', ...expected]);
    }
  });

  test('without room for a row is refused in words', () => {
    const wide = coverOf({
      seam: stitched,
      pockets: { construction: 'turned', depth_mm: 95 },
      pattern: { outsideWidth_mm: 200 },
    });
    const none = seamHoles(wide);
    const nothing = { isClosed: false, lines: [], rows: [], starts: [], finishes: [], steps: [] };
    expect(none).toEqual({ ...nothing, notes: [expect.stringMatching(/room for 0\.0 mm. Make the ends shorter/)] });
  });
});

describe('what is said', () => {
  test('where the pockets meet', () => {
    const design = coverOf({ seam: stitched, pockets: { depth_mm: 300 } });
    expect(seamHoles(design).notes.join()).toMatch(/pockets meet or overlap/);
  });

  test('where slits run into each other: half a mm is left between them, measured along the seam', () => {
    const said = (construction: object, seam: object = {}) => seamHoles(coverOf({ construction, seam })).notes.join();
    expect(said({ slitWidth_mm: 5 })).toMatch(/run into each other/);
    expect(said({ slitWidth_mm: 4 })).toBe('');
    // At 45 degrees a slit of 5 mm takes 3.54 mm of the seam.
    expect(said({ slitWidth_mm: 5, slitAngle_deg: 45 })).toBe('');
    expect(said({ slitWidth_mm: 5 }, { style: 'whip' })).toBe('');
    expect(said({ slitWidth_mm: 5 }, stitched)).toBe('');
  });

  test('where a hole comes too near a mouth whose depth the maker gives: it is left out of that layer', () => {
    let trimmed = 0;
    for (let depth_mm = 40; depth_mm < 64; depth_mm += 0.5) {
      const design = coverOf({ seam: { ...stitched, pitch_mm: 24 }, pockets: { depth_mm } });
      const { rows, notes } = seamHoles(design);
      const mouth = design.pieces.pocket.width;
      const inner = nth(rows, 0).holes.filter(({ at }) => at[0] < mouth);
      const last = nth(inner, -1);
      const isNear = mouth - last.at[0] < 0.3 * nth(rows, 0).pitch - 1e-9;
      expect(last.layers.includes('frontPocket')).toBe(!isNear);
      expect(notes).toEqual(
        isNear ? [expect.stringMatching(/front pocket/), expect.stringMatching(/back pocket/)] : [],
      );
      if (isNear) trimmed++;
    }
    expect(trimmed).toBeGreaterThan(0);
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
    const square = { seam: { ...stitched, cornerRadius_mm: 8 }, pockets: turned, construction: { corners: 'square' } };
    expect(seamHoles(coverOf(square)).notes).toEqual([]);
  });

  test('where a corner finds no room', () => {
    const design = coverOf({ seam: { ...stitched, cornerRadius_mm: 60 }, pockets: { depth_mm: 45 } });
    expect(seamHoles(design).notes.join()).toMatch(/no room for 60 mm/);
  });
});
