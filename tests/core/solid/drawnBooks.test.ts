import { expect, test } from 'vitest';
import type { FilmId } from '../../../src/core/film/filmStep.ts';
import { filmSteps } from '../../../src/core/film/filmSteps.ts';
import { type CoverDesign, coverDesign } from '../../../src/core/fold/coverDesign.ts';
import { foldedCover } from '../../../src/core/solid/foldedCover.ts';
import type { Pose } from '../../../src/core/solid/pose.ts';
import { validateClearance } from '../../../src/core/solid/validateClearance.ts';
import { defined } from '../../defined.ts';
import { soundJob } from '../../jobArbitrary.ts';

/** How deep one part may reach into another, mm. */
const DEPTH = 0.05;

const leather = (thickness: number, neutral = 0.5, bendRatio = 0.2) => ({
  min_mm: thickness,
  max_mm: thickness,
  neutral,
  bendRatio,
});

const book = (kind: string, [width, height, thickness, board]: readonly number[], rise = 0, edge = 0) => ({
  kind,
  width_mm: width,
  height_mm: height,
  thickness_mm: thickness,
  boardThickness_mm: board,
  spine: rise > 0 ? { shape: 'rounded', rise_mm: rise } : { shape: 'flat' },
  cornerRadius_mm: edge,
});

const job = (
  parts: { readonly book: object; readonly leather: object } & Readonly<Record<string, unknown>>,
): object => ({
  format: 'coverwright-job',
  version: 3,
  ease: { foreEdge_mm: 1, head_mm: 1, tail_mm: 1 },
  ...parts,
});

const TURNED = { construction: 'turned' };

const ONTO_THE_EDGE = job({
  book: book('limp', [71.35, 122.9, 94.43, 2.44], 0, 28.33),
  leather: { outside: leather(1.74, 0.41), lining: leather(2.18, 0.8, 0.05) },
  seating: 'spine',
  construction: { lining: 'full' },
});

const WIDE_AND_LOW = job({
  book: book('limp', [360.5, 104.4, 8, 0.313], 0.19),
  leather: { outside: leather(0.745, 0.68, 0.63), lining: leather(0.714, 0.79, 0.06) },
  seam: { edgeMargin_mm: 3.117, pitch_mm: 3.077 },
  pockets: TURNED,
  seating: 'spine',
  construction: { lining: 'full', strap: { width_mm: 30 } },
});

/** Books that random draws found, at the places where one part once reached into another. */
const DRAWN: readonly (readonly [name: string, document: object, at: readonly [FilmId, number] | number])[] = [
  [
    'a first board that slides into a turned end beside the other one',
    job({
      book: book('paperback', [70, 252.7, 9.1, 1.64], 1.12),
      leather: { outside: leather(0.6, 0.8, 0.39), lining: leather(0.88, 0.49, 0.05) },
      pockets: TURNED,
      seating: 'front',
    }),
    ['firstBoard', 0.55],
  ],
  [
    'a round back that comes down beside a turned end',
    job({
      book: book('limp', [70, 116.9, 30.6, 6.1], 8.9),
      leather: { outside: leather(3, 0.42, 0.51), lining: leather(1.7, 0.41, 0.16) },
      pockets: TURNED,
    }),
    ['firstBoard', 0.3],
  ],
  [
    'a second board bent back before its turned end',
    job({
      book: book('hardback', [207.5, 158.8, 18.1, 0.82]),
      leather: { outside: leather(0.6, 0.45, 0.05), lining: leather(0.6, 0.49, 0.13) },
      pockets: TURNED,
      seating: 'front',
    }),
    ['secondBoard', 0.6],
  ],
  [
    'a second board bent back before its pocket',
    job({
      book: book('paperback', [178.5, 191.65, 9.76, 0.81], 0.66, 2.93),
      leather: { outside: leather(0.76, 0.77, 1), pocket: leather(0.6, 0.4, 0.05), lining: leather(0.6, 0.44, 0.97) },
      seating: 'back',
      construction: { lining: 'full' },
    }),
    ['secondBoard', 0.6],
  ],
  [
    'a cover that hangs straight down from its first board over a round back',
    job({
      book: book('limp', [314.6, 90, 21.9, 0.84], 9.3),
      leather: { outside: leather(2, 0.5), pocket: leather(1.1), lining: leather(3.5) },
    }),
    ['secondBoard', 0.04],
  ],
  [
    'a cover that could as well go round a back about as long as what hangs down',
    job({
      book: book('limp', [70, 123.5, 8, 0.275], 3.53),
      leather: { outside: leather(1.15), pocket: leather(0.88), lining: leather(3.06) },
      seating: 'back',
      construction: { lining: 'full' },
    }),
    ['secondBoard', 0.04],
  ],
  [
    'a second board that is laid over and meets its pocket on the way',
    job({
      book: book('hardback', [286.5, 170.3, 12.6, 0.38], 5.65),
      leather: { outside: leather(0.6), lining: leather(1.16) },
    }),
    ['secondBoard', 0.18],
  ],
  [
    'a first board thicker than its pocket is far from it',
    job({
      book: book('limp', [87.5, 500, 81.9, 11]),
      leather: { outside: leather(0.6), pocket: leather(0.6), lining: null },
      seating: 'spine',
    }),
    ['firstBoard', 0.38],
  ],
  [
    'a thick lining that ends beside the bulge of a turned end',
    job({
      book: book('paperback', [70, 100.2, 120, 11], 2.4),
      leather: { outside: leather(3.4, 0.7, 1), pocket: leather(3.5, 0.66, 0.46), lining: leather(3.5, 0.4, 1) },
      seam: { method: 'stitching', cornerRadius_mm: 9.91, pitch_mm: 3.14, edgeMargin_mm: 2 },
      pockets: TURNED,
      seating: 'front',
      construction: { corners: 'square', mouth: 'curved', lining: 'full' },
    }),
    2.9,
  ],
  [
    'a deep board past the end of a thick lining',
    job({
      book: book('paperback', [227.1, 163.6, 117.1, 11], 5.5),
      leather: { outside: leather(0.8, 0.43, 0.09), pocket: leather(0.8), lining: leather(2.5, 0.8, 0.12) },
      construction: { lining: 'centre' },
    }),
    0,
  ],
  [
    'a block nearly as deep as wide, almost flat',
    job({
      book: book('limp', [87.5, 500, 81.9, 11]),
      leather: { outside: leather(1), pocket: leather(1), lining: null },
    }),
    2.9,
  ],
  [
    'a block beside rounded edges under boards that close toward the fore-edge, flat',
    job({
      book: { ...book('paperback', [348.1, 97.6, 76.3, 3], 0, 22.9), foreEdgeThickness_mm: 64.9 },
      leather: { outside: leather(1), lining: null },
      pockets: TURNED,
    }),
    Math.PI,
  ],
  [
    'a block of the thinnest boards, closed',
    job({
      book: { ...book('paperback', [94.016, 97.2, 8, 0.16], 0.16), foreEdgeThickness_mm: 9.71 },
      leather: { outside: leather(3.5), lining: null },
    }),
    0,
  ],
  [
    'a block behind rounded edges under boards that part toward the fore-edge, closed',
    job({
      book: { ...book('limp', [118.4, 90, 98.8, 3.36], 2.95, 29.6), foreEdgeThickness_mm: 128.4 },
      leather: { outside: leather(1), lining: leather(1) },
      pockets: TURNED,
    }),
    0,
  ],
  [
    'a scooped mouth that crosses the S of its pocket beside the seam',
    job({
      book: book('paperback', [357.117, 90, 79.95, 2.083]),
      leather: { outside: leather(1, 0.6, 0.19), lining: null },
      seating: 'front',
      seam: { edgeMargin_mm: 9 },
      construction: { mouth: 'curved' },
    }),
    ['secondBoard', 0.456],
  ],
  [
    'a scooped mouth that crosses the S of its pocket away from the seam',
    job({
      book: book('paperback', [400, 314.147, 8, 0.566]),
      leather: { outside: leather(1.37, 0.4, 0.32), pocket: leather(3.5, 0.4, 0.08), lining: leather(1.85, 0.4, 0.15) },
      seating: 'front',
      seam: { edgeMargin_mm: 7.34 },
      construction: { lining: 'centre', mouth: 'curved' },
    }),
    ['secondBoard', 0.428],
  ],
  [
    'a thick lining that ends in the corner of a turned end',
    job({
      book: book('hardback', [119.5, 244.7, 79.8, 11], 3.3),
      leather: { outside: leather(0.97, 0.8, 1), lining: leather(1.06, 0.41, 0.05) },
      seam: { edgeMargin_mm: 2 },
      pockets: TURNED,
      seating: 'back',
      construction: { lining: 'full' },
    }),
    0,
  ],
  [
    'head and tail bands between thick boards that close toward the fore-edge, closed',
    job({
      book: { ...book('hardback', [70, 147.7, 95.8, 9.81], 2.54), foreEdgeThickness_mm: 81.4 },
      leather: { outside: leather(1.66), lining: leather(3.5) },
    }),
    0,
  ],
  [
    'a strap that is sewn on over the step to a thick lining, under a turned end that is not folded yet',
    job({
      book: book('hardback', [221.93, 217, 14.31, 1.77], 0.36),
      leather: { outside: leather(0.6), lining: leather(2.72) },
      pockets: TURNED,
      construction: { lining: 'full', strap: { fastening: 'magnet', width_mm: 30 } },
    }),
    ['assemble', 0.2],
  ],
  [
    'a scooped mouth of a turned end beside the fall of the seam to the back',
    job({
      book: book('paperback', [88.4, 259.4, 120, 3.58], 3.64, 36),
      leather: { outside: leather(2.72, 0.74, 0.29), lining: leather(0.69, 0.4, 0.32) },
      seam: { edgeMargin_mm: 5.07 },
      pockets: TURNED,
      construction: { lining: 'full', mouth: 'curved' },
    }),
    0,
  ],
  ['a pocket that must reach onto the rounded edge of its board, closed', ONTO_THE_EDGE, 0],
  ['a pocket that must reach onto the rounded edge of its board, a little open', ONTO_THE_EDGE, 0.1],
  [
    'a pocket over the end of a thick lining, its board on the way',
    job({
      book: book('paperback', [70, 98.8, 33.3, 4.63], 14.98),
      leather: {
        outside: leather(3.34, 0.45, 0.93),
        pocket: leather(0.6, 0.43, 0.14),
        lining: leather(3.5, 0.48, 0.56),
      },
      seam: { edgeMargin_mm: 7.87 },
      seating: 'back',
      construction: { lining: 'centre' },
    }),
    ['secondBoard', 0.6],
  ],
  [
    'boards that close toward the fore-edge, so thick that they come before the spine piece',
    job({
      book: { ...book('hardback', [70, 115, 120, 11]), foreEdgeThickness_mm: 102 },
      leather: { outside: leather(0.6), lining: leather(1.23) },
      pockets: TURNED,
    }),
    0,
  ],
  [
    'a turned end that reaches onto the rounded edge of its board',
    job({
      book: book('limp', [70, 125, 120, 11], 3.3, 36),
      leather: { outside: leather(0.6), lining: leather(0.6) },
      pockets: TURNED,
      seating: 'back',
      construction: { lining: 'full' },
    }),
    0,
  ],
  [
    'boards that close toward the fore-edge beside a rounded edge',
    job({
      book: { ...book('paperback', [70, 199.4, 120, 5.18], 6.05, 36), foreEdgeThickness_mm: 102 },
      leather: { outside: leather(0.72), lining: null },
      pockets: TURNED,
    }),
    0,
  ],
  [
    'a pen loop under a lining that curves to the head',
    job({
      book: book('hardback', [187.1, 101.3, 57.67, 11]),
      leather: { outside: leather(0.61, 0.4), pocket: leather(3.5), lining: leather(1.29, 0.74, 0.05) },
      seam: { method: 'lacing', style: 'whip', pitch_mm: 8, edgeMargin_mm: 6.425 },
      construction: { mouth: 'curved', lining: 'full', strap: { width_mm: 30 }, penLoop: {} },
    }),
    ['firstBoard', 1],
  ],
  ['a strap over a second board that lies far in on its turned end', WIDE_AND_LOW, ['secondBoard', 0.3]],
  [
    'leather from the mouth of the first board that is just long enough to reach the second',
    WIDE_AND_LOW,
    ['secondBoard', 0.35],
  ],
  [
    'a pocket that comes down to its mouth beside leather that bends before it, thick',
    job({
      book: book('limp', [239.921, 500, 60.807, 10.393], 1.216),
      leather: {
        outside: leather(3.5, 0.786, 0.081),
        pocket: leather(2.238, 0.409, 0.577),
        lining: leather(1.808, 0.672, 0.192),
      },
      seam: { edgeMargin_mm: 2, pitch_mm: 5.006, cornerRadius_mm: 0.5 },
      seating: 'centred',
      construction: { corners: 'square', mouth: 'curved', lining: 'centre' },
    }),
    ['secondBoard', 0.5],
  ],
  [
    'a pocket that comes down to its mouth beside leather that bends before it, thin',
    job({
      book: book('limp', [93.64, 132.2, 110.8, 9.3], 49.8),
      leather: { outside: leather(0.6, 0.8, 0.05), lining: leather(1, 0.5, 0.09) },
      seam: { edgeMargin_mm: 2, pitch_mm: 5.899, cornerRadius_mm: 40 },
      seating: 'back',
      construction: { mouth: 'curved', corners: 'clipped', lining: 'centre' },
    }),
    ['secondBoard', 0.64],
  ],
  [
    'a lining that ends on the rounded edge of the spine',
    job({
      book: book('paperback', [70, 90, 120, 11], 2.48, 36),
      leather: { outside: leather(1.45, 0.4, 0.1), lining: leather(3.06, 0.4, 0.06) },
      seam: { method: 'lacing', edgeMargin_mm: 5.99 },
      pockets: TURNED,
      seating: 'front',
      construction: { mouth: 'curved' },
    }),
    0,
  ],
  [
    'a strap that comes down from the lace of the edge to a stud near by',
    job({
      book: book('paperback', [70, 315.8, 18.78, 0.376], 1.46),
      leather: { outside: leather(1.38, 0.4, 1), pocket: leather(1.53, 0.6, 0.07), lining: leather(0.6, 0.47, 0.08) },
      seam: { method: 'lacing', pitch_mm: 8, edgeMargin_mm: 3.3 },
      seating: 'back',
      construction: { mouth: 'curved', lining: 'centre', strap: { width_mm: 30 } },
    }),
    0,
  ],
];

const poseOf = (design: CoverDesign, at: (typeof DRAWN)[number][2]): Pose => {
  if (typeof at === 'number') return { kind: 'opening', angle: at };
  const { from, to } = defined(filmSteps(design, 'nominal').find(({ id }) => id === at[0]));
  return { kind: 'sequence', at: from + (to - from) * at[1] };
};

test.each(DRAWN)('%s reaches into nothing', (_, document, at) => {
  const design = coverDesign(soundJob(document));
  expect(validateClearance(foldedCover(design, poseOf(design, at)).parts, DEPTH)).toEqual([]);
});
