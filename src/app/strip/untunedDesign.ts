import {
  type CoverDesign,
  coverDesign,
  type JobDocument,
  type JobPath,
  type Patch,
  parseJob,
  patched,
  valueAt,
} from '../../core/index.ts';
import { useBench } from '../state/BenchContext.tsx';

/** Fields that tuning changes; without them their defaults apply and the tool decides the sizes. */
const TUNED = [
  'ease',
  'seam.edgeMargin_mm',
  'pockets.depth_mm',
  'pattern.outsideWidth_mm',
  'pattern.outsideHeight_mm',
] as const satisfies readonly JobPath[];

/** Patches that remove all tuning from a document; empty without any. */
export const untuning = (document: JobDocument): readonly Patch[] =>
  TUNED.filter((path) => valueAt(document, path) != null).map((path) => ({ path, value: undefined }));

/** The cover as it would be cut for the same book and leather with nothing tuned, or null where that is how it is cut. */
export function untunedDesign(document: JobDocument, design: CoverDesign): CoverDesign | null {
  const patches = untuning(document);
  if (patches.length === 0) return null;
  const parsed = parseJob(patched(document, patches));
  if (!parsed.ok) return null;
  const untuned = coverDesign(parsed.job);
  return sizesOf(untuned) === sizesOf(design) ? null : untuned;
}

/** Worked out once for both strips. */
let last: { readonly design: CoverDesign; readonly untuned: CoverDesign | null } | null = null;

/** The cover with nothing tuned, drawn behind the open one; null while they are the same. */
export const useUntuned = (): CoverDesign | null =>
  useBench(({ history, design }) => {
    if (last?.design !== design) last = { design, untuned: untunedDesign(history.good.document, design) };
    return last.untuned;
  });

const sizesOf = ({ pieces, job }: CoverDesign): string =>
  JSON.stringify([pieces.outside, pieces.pocketDepth, job.seam.edgeMargin_mm]);
