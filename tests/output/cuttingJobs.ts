import choirBook from '../../public/jobs/choir-book.json' with { type: 'json' };
import shoreGuide from '../../public/jobs/shore-guide.json' with { type: 'json' };
import tideLedger from '../../public/jobs/tide-ledger.json' with { type: 'json' };
import { coverDesign } from '../../src/core/fold/coverDesign.ts';
import type { Drawing } from '../../src/core/pattern/drawing.ts';
import { patternDrawing } from '../../src/core/pattern/patternDrawing.ts';
import type { LengthUnit } from '../../src/core/units/parseLength.ts';
import { soundJob } from '../jobArbitrary.ts';

const stitching = { method: 'stitching', style: 'saddle', edgeMargin_mm: 4, pitch_mm: 4 };
const lining = { min_mm: 0.7, max_mm: 0.8 };
const book = (width_mm: number, height_mm: number, thickness_mm: number, rest: object = {}) => ({
  kind: 'hardback',
  width_mm,
  height_mm,
  thickness_mm,
  boardThickness_mm: Math.min(2, thickness_mm / 5),
  ...rest,
});
const leather = { outside: { min_mm: 1.2, max_mm: 1.4 } };
const job = (name: string, rest: object) => ({ format: 'coverwright-job', version: 1, name, leather, ...rest });

/** Every way of making the pieces, from the smallest book to the largest: [name, document, unit of the words]. */
const DOCUMENTS: readonly (readonly [name: string, document: object, units: LengthUnit])[] = [
  ['tide ledger, laced', tideLedger, 'mm'],
  ['choir book, rounded back, inches', choirBook, 'in'],
  ['shore guide', shoreGuide, 'mm'],
  [
    'stitched, rounded corners, scooped mouths, full lining, strap with a buckle, loop',
    {
      ...tideLedger,
      leather: { ...tideLedger.leather, lining },
      seam: { ...stitching, cornerRadius_mm: 12 },
      construction: { mouth: 'curved', lining: 'full', strap: { fastening: 'buckle' }, penLoop: {} },
    },
    'mm',
  ],
  [
    'clipped corners, whip lacing, centre lining',
    {
      ...tideLedger,
      leather: { ...tideLedger.leather, lining },
      seam: { method: 'lacing', style: 'whip', cornerRadius_mm: 10 },
      construction: { corners: 'clipped', slitWidth_mm: 3 },
    },
    'in',
  ],
  [
    'turned ends, scooped, skived folds',
    {
      ...tideLedger,
      leather: { outside: { min_mm: 1.6, max_mm: 2, foldThickness_mm: 1 } },
      pockets: { construction: 'turned' },
      construction: { mouth: 'curved', mouthCurve: 0.5 },
    },
    'mm',
  ],
  [
    'pieces of 45 by 65 mm',
    job('Waistcoat', { book: book(62, 50, 9), seam: { ...stitching, edgeMargin_mm: 3 } }),
    'mm',
  ],
  [
    'pieces of 45 by 65 mm, laced, strap and loop, inches',
    job('Waistcoat, laced', {
      book: book(62, 50, 9),
      seam: { method: 'lacing' },
      construction: { strap: { width_mm: 14 }, penLoop: { width_mm: 18 } },
    }),
    'in',
  ],
  ['the smallest book', job('Charm', { book: book(30, 30, 4), seam: { ...stitching, edgeMargin_mm: 3 } }), 'mm'],
  ['a narrow tall book', job('Reed', { book: book(45, 300, 12), construction: { strap: { width_mm: 25 } } }), 'mm'],
  ['a long flat book', job('Plank', { book: book(400, 60, 20), seam: { ...stitching, cornerRadius_mm: 20 } }), 'in'],
  [
    'a large folio with deep scoops',
    job('Folio', {
      book: book(420, 560, 70, { spine: { shape: 'rounded', rise_mm: 12 } }),
      seam: { method: 'lacing', cornerRadius_mm: 40 },
      construction: { mouth: 'curved', mouthCurve: 0.4 },
    }),
    'mm',
  ],
];

export interface CuttingJob {
  readonly name: string;
  readonly drawing: Drawing;
}

const drawn = ([name, document, units]: (typeof DOCUMENTS)[number]): CuttingJob => ({
  name,
  drawing: patternDrawing(coverDesign(soundJob({ ...document, work: { units } }))),
});

/** Twelve drawings; every job that a cutting file is checked for. */
export const cuttingJobs = (): CuttingJob[] => DOCUMENTS.map(drawn);

/** Some of the same with an iron, whole strides and uneven ones. */
export function ironJobs(): CuttingJob[] {
  const byIron = (index: number, iron: object, seam: object, pattern: object = {}): CuttingJob => {
    const [name, document, units] = DOCUMENTS[index]!;
    return drawn([`${name}, by iron`, { ...document, seam: { ...seam, iron }, pattern }, units]);
  };
  const three = { kind: 'pricking iron', pitch_mm: 3, teeth: [10, 2], tooth_mm: 2, angle_deg: 45 };
  const chisel = { kind: 'lacing chisel', pitch_mm: 5.08, teeth: [4, 1], tooth_mm: 2.4 };
  return [
    byIron(0, chisel, { method: 'lacing' }),
    byIron(1, { ...three, pitch_mm: 3.175 }, stitching, { outsideWidth_mm: 391 }),
    byIron(3, three, { ...stitching, cornerRadius_mm: 12 }),
    byIron(5, three, stitching),
    byIron(8, three, { ...stitching, edgeMargin_mm: 3 }),
  ];
}
