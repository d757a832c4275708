import { type CoverDesign, coverDesign } from '../../../src/core/fold/coverDesign.ts';
import { EXAMPLE_JOBS } from '../../../src/core/job/examples.ts';
import { soundJob } from '../../jobArbitrary.ts';

const [tide, choir, shore] = EXAMPLE_JOBS.map(({ document }) => document as Record<string, object>) as [
  Record<string, object>,
  Record<string, object>,
  Record<string, object>,
];
const lining = { min_mm: 0.8, max_mm: 1 };
const TURNED = { construction: 'turned', depth_mm: 60 };

/** Twelve covers with every construction, kind of book, seam, lining, mouth and corner. */
const DOCUMENTS = {
  'thin hardback, laced': tide,
  'thick rounded hardback, lined, stitched': choir,
  paperback: shore,
  limp: { ...shore, book: { ...shore.book, kind: 'limp', boardThickness_mm: 1 } },
  'turned ends': { ...tide, pockets: TURNED },
  'turned ends, lined': { ...tide, pockets: TURNED, leather: { ...tide.leather, lining } },
  'lined in full, stitched': {
    ...tide,
    seam: { method: 'stitching' },
    leather: { ...tide.leather, lining },
    construction: { lining: 'full' },
  },
  'scooped mouth': { ...tide, construction: { mouth: 'curved' } },
  'rounded corners': {
    ...choir,
    construction: { corners: 'rounded' },
    seam: { ...choir.seam, cornerRadius_mm: 12 },
  },
  'clipped corners': { ...tide, construction: { corners: 'clipped' }, seam: { ...tide.seam, cornerRadius_mm: 10 } },
  'boards at the spine, thicker fore-edge': {
    ...tide,
    seating: 'spine',
    book: { ...tide.book, foreEdgeThickness_mm: 34 },
  },
  'boards at the front, rounded edges': { ...choir, seating: 'front', book: { ...choir.book, cornerRadius_mm: 4 } },
} as const;

export const FILM_DESIGNS: readonly (readonly [name: string, design: CoverDesign])[] = Object.entries(DOCUMENTS).map(
  ([name, document]) => [name, coverDesign(soundJob(document))],
);
