import { describe, expect, it } from 'vitest';
import { markedPage, type SeenMark, type Standpoint, type View } from '../../src/core/index.ts';
import { photographTroubles, viewTroubles } from '../../src/sight/photographQuality.ts';

const SIZE = { width: 4000, height: 3000 };
const seen = (scale: number, count: number): SeenMark[] =>
  markedPage('A4', 0)
    .marks.slice(0, count)
    .map(({ id, corners }) => ({
      page: 'A4 1',
      mark: String(id),
      corners,
      seen: corners.map(([x, y]) => [2000 + scale * x, 1500 - scale * y] as const),
      u: 0.1,
    }));
const codes = (scale: number, count: number, blur: number) =>
  photographTroubles(SIZE, { marks: seen(scale, count), blur }).map(({ code }) => code);

const from = (turn: Standpoint['turn']): View => ({
  lens: { focal: 3000, centre: [2000, 1500], k1: 0, k2: 0 },
  pose: { turn, shift: [0, 0, 700] },
});
const tilted = (degrees: number, about: 0 | 1): View =>
  from([0, 1, 2].map((k) => (k === about ? (degrees * Math.PI) / 180 : 0)) as unknown as Standpoint['turn']);

describe('the quality of photographs', () => {
  it('tells each trouble and none where there is none', () => {
    expect(codes(8, 24, 3)).toEqual([]);
    expect(codes(8, 0, 0)).toEqual(['noMarks']);
    expect(codes(8, 5, 3)).toEqual(['fewMarks']);
    // 18 mm at 2 pixels a millimetre are under an eightieth of 4000.
    expect(codes(2, 24, 3)).toEqual(['smallMarks']);
    expect(codes(8, 24, 9)).toEqual(['blurred']);
  });

  it('tells views that are too flat, and views that are all alike', () => {
    const views = [tilted(0, 0), tilted(54, 0), tilted(56, 1), null];
    const { each, all } = viewTroubles(views);
    expect(each.map((troubles) => troubles.map(({ code }) => code))).toEqual([[], [], ['flat'], []]);
    expect(all).toEqual([]);
    expect(viewTroubles([tilted(20, 0), tilted(31, 0)]).all).toHaveLength(1);
    expect(viewTroubles([tilted(20, 0), tilted(33, 0)]).all).toHaveLength(0);
    // A turn about the way it looks shows nothing new.
    expect(viewTroubles([from([0, 0, 0]), from([0, 0, 2])]).all).toHaveLength(1);
    expect(viewTroubles([null]).all).toHaveLength(0);
  });
});
