import type { CoverDesign } from '../fold/coverDesign.ts';
import { type DescribedNote, fieldNote } from '../job/fieldNote.ts';
import { type JobDocument, type Patch, valueAt } from '../job/jobDocument.ts';
import type { JobPath } from '../job/jobPath.ts';
import type { Job } from '../job/jobSchema.ts';
import { cutStep, INCH_STEPS } from '../job/workSchema.ts';
import { changeOnHide } from '../leather/changeOf.ts';
import { MM_PER_INCH, MM_PER_OUNCE } from '../units/mm.ts';
import { JOB_FIGURES } from './jobFigures.ts';

/** One number of a job that can be varied. Values are in the unit of `note`. */
export interface ExploreField {
  /** Dotted path in the job; the path of a leather, as `leather.outside`, stands for its whole weight range. */
  readonly id: JobPath;
  readonly note: DescribedNote;
  /** The job's own value, else the default, else what the tool decides. */
  readonly present: number;
  /** Step in which a maker sets it, over 0. */
  readonly step: number;
  /** Range to either side of the present value that is shown first. */
  readonly span: number;
  readonly changes: (value: number) => readonly Patch[];
}

const LEATHERS = ['outside', 'pocket', 'lining'] as const;

/** A weight range as one number: the thin end, `width` below, stays in its own range too. */
const weightNote = (width: number): DescribedNote => ({
  ...THICK_END,
  title: 'Weight',
  description: 'The whole weight range, named by its thick end; the thin end keeps its distance.',
  min: THIN_END.min + width,
});

const THIN_END = fieldNote('leather.outside.min_mm');
const THICK_END = fieldNote('leather.outside.max_mm');

/**
 * The numbers of a job that can be explored: each in the schema that bears on the closed form and has a value here, and
 * for each leather its weight range as one.
 * @param document the job as written; a pocket leather or lining that it does not give has no fields
 * @param design the design of the document
 */
export function exploreFields(document: JobDocument, design: CoverDesign): ExploreField[] {
  const given = LEATHERS.filter((piece) => (valueAt(document, `leather.${piece}`) ?? null) !== null);
  const isGiven = (path: JobPath): boolean =>
    !path.startsWith('leather.') || given.some((piece) => path.startsWith(`leather.${piece}.`));
  const figures = JOB_FIGURES.filter(({ path }) => isGiven(path)).flatMap(({ path, note }): ExploreField[] => {
    const present = presentAt(design, path);
    if (present === null) return [];
    const changes = (value: number): Patch[] => [{ path, value }];
    return [
      { id: path, note, present, step: stepOf(path, note, design.job), span: spanOf(path, note, present), changes },
    ];
  });
  const weights = given.map((piece): ExploreField => {
    const { min_mm: min, max_mm: max } = design.job.leather[piece]!;
    const path = `leather.${piece}` as const;
    const note = weightNote(max - min);
    return {
      id: path,
      note,
      present: max,
      step: stepOf(path, note, design.job),
      span: spanOf(path, note, max),
      changes: (value) => [
        // At the thinnest, floating-point noise must not make it thinner than any leather.
        { path: `${path}.min_mm`, value: Math.max(THIN_END.min, value - (max - min)) },
        { path: `${path}.max_mm`, value },
      ],
    };
  });
  return [...weights, ...figures];
}

/** The value in force; null where the job has none, as for a measure that was not taken, or takes another field's instead. */
function presentAt({ job, pieces }: CoverDesign, path: JobPath): number | null {
  if (path === 'pockets.share' && job.pockets.depth_mm !== null) return null;
  const value = valueAt(job, path);
  if (typeof value === 'number') return value;
  if (path === 'pattern.outsideWidth_mm') return pieces.outside.width;
  if (path === 'pattern.outsideHeight_mm') return pieces.outside.height;
  if (path === 'pockets.depth_mm') return pieces.pocketDepth;
  const edge = /^ease\.(foreEdge|head|tail)_mm$/.exec(path)?.[1];
  if (edge !== undefined) return pieces.ease[`${edge as 'foreEdge' | 'head' | 'tail'}_mm`];
  if (path === 'making.changeAlong') return changeOnHide(job).along;
  if (path === 'making.changeAcross') return changeOnHide(job).across;
  const skived = LEATHERS.find((piece) => path === `leather.${piece}.foldThickness_mm`);
  return skived === undefined ? null : (job.leather[skived]?.max_mm ?? null);
}

const isThickness = (path: JobPath): boolean =>
  /^leather\.\w+(\.(min|max|foldThickness)_mm)?$/.test(path) || path === 'book.boardThickness_mm';

/** Half a millimetre or 1/32 in on a ruler, the cut step of an inch job for what is cut, a tenth or a quarter ounce for leather, a tenth or 1/64 in of error. */
function stepOf(path: JobPath, { unit }: DescribedNote, job: Job): number {
  const { units } = job.work;
  if (unit === 'mm') {
    if (isThickness(path)) return units === 'mm' ? 0.1 : MM_PER_OUNCE / 4;
    if (path === 'book.measured.error_mm') return units === 'mm' ? 0.1 : MM_PER_INCH / 64;
    if (units === 'mm') return 0.5;
    return /^(pattern|pockets)\./.test(path) ? cutStep(job) : INCH_STEPS[1];
  }
  return unit === 'deg' ? 1 : 0.01;
}

/** A few millimetres for allowances, a tenth of a whole size, an eighth of the allowed range for the rest. */
function spanOf(path: JobPath, { min, max, unit }: DescribedNote, present: number): number {
  if (isThickness(path)) return 1.2;
  if (/^(ease|seam)\.|error_mm$|jointDip_mm$|rounding_mm$|rise_mm$/.test(path)) return 5;
  if (path.startsWith('pattern.')) return 8;
  if (unit === 'mm') return Math.max(5, present / 10);
  return (max - min) / 8;
}
