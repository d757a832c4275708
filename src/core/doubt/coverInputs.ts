import { isRiseEstimated, riseOf } from '../book/rise.ts';
import type { DoubtPath } from '../job/doubtSchema.ts';
import type { Job } from '../job/jobSchema.ts';
import { changeOf, changeOnHide } from '../leather/changeOf.ts';
import { handOf } from '../leather/handOf.ts';
import { mm } from '../units/mm.ts';
import { DOUBTS, type Doubt, doubtOf, readingShare } from './doubtOf.ts';
import type { Uncertain } from './uncertain.ts';

/** A book and its leathers as they may truly be, and how far the pieces differ from what was meant. */
export interface Truth {
  book: Job['book'];
  leather: Job['leather'];
  /** Change of size of a piece, as a share. */
  widthChange: number;
  heightChange: number;
  /** What cutting and punching add to the room between the seams, mm. */
  width: number;
  height: number;
}

/** One uncertain input of a cover. */
export interface CoverInput extends Uncertain, Pick<Doubt, 'from' | 'with'> {
  /** Path in the job, or `scale of TOOL` for the error that all lengths by one tool share. */
  readonly path: DoubtPath | `scale of ${string}`;
  /** Makes the input this value. */
  readonly put: (truth: Truth, value: number) => void;
}

type BookLength = 'width_mm' | 'height_mm' | 'boardThickness_mm' | 'cornerRadius_mm' | 'jointDip_mm';

/** Thinnest board and leather, and the sharpest fold, that a draw may come to: the lowest that a job may have. */
const LEAST = { board: 0.1, leather: 0.2, bendRatio: 0.02, skived: 0.2, dimension: 1 } as const;

/**
 * The inputs of a cover that may be in doubt, each with its default or the job's own doubt. Measures that are the same one
 * (a parallel book's two thicknesses, a pocket of the outside's leather) are one input.
 *
 * Friction is none of them: it decides where spare wrap lies, which is reported as the range from none of it at the fore-edge to
 * all (`spareWrap`, `spareAsItLies`), and no length that is propagated here depends on it.
 */
export function coverInputs(job: Job): readonly CoverInput[] {
  const inputs = [...bookInputs(job), ...leatherInputs(job), ...makingInputs(job)];
  return [...inputs, ...scales(job, inputs)];
}

function bookInputs(job: Job): CoverInput[] {
  const { book } = job;
  const length = (key: BookLength): CoverInput =>
    input(job, `book.${key}`, book[key], (truth, value) => {
      truth.book = { ...truth.book, [key]: mm(Math.max(key === 'boardThickness_mm' ? LEAST.board : 0, value)) };
    });
  const isWedge = book.foreEdgeThickness_mm !== book.thickness_mm;
  const { openFlatWidth_mm: openFlat } = book.measured;
  return [
    length('width_mm'),
    length('height_mm'),
    input(job, 'book.thickness_mm', book.thickness_mm, (truth, value) => {
      const over = mm(Math.max(LEAST.dimension, value));
      truth.book = {
        ...truth.book,
        thickness_mm: over,
        foreEdgeThickness_mm: isWedge ? truth.book.foreEdgeThickness_mm : over,
      };
    }),
    ...(isWedge
      ? [
          input(job, 'book.foreEdgeThickness_mm', book.foreEdgeThickness_mm, (truth, value) => {
            truth.book = { ...truth.book, foreEdgeThickness_mm: mm(Math.max(LEAST.dimension, value)) };
          }),
        ]
      : []),
    length('boardThickness_mm'),
    ...(book.spine.shape === 'rounded'
      ? [
          // An estimated rise follows the thickness, and is off by its own doubt beside.
          isRiseEstimated(book)
            ? input(job, 'book.spine.rise_mm', 0, (truth, value) => {
                truth.book = withRise(truth.book, riseOf({ ...truth.book, spine: book.spine }) + value);
              })
            : input(job, 'book.spine.rise_mm', riseOf(book), (truth, value) => {
                truth.book = withRise(truth.book, value);
              }),
        ]
      : []),
    ...(book.cornerRadius_mm > 0 ? [length('cornerRadius_mm')] : []),
    openFlat === null
      ? length('jointDip_mm')
      : input(job, 'book.measured.openFlatWidth_mm', openFlat, (truth, value) => {
          truth.book = { ...truth.book, measured: { ...truth.book.measured, openFlatWidth_mm: mm(value) } };
        }),
    input(job, 'book.pageGive', book.pageGive, (truth, value) => {
      truth.book = { ...truth.book, pageGive: Math.max(0, Math.min(0.9, value)) };
    }),
  ];
}

const withRise = (book: Job['book'], rise: number): Job['book'] => ({
  ...book,
  spine: { ...book.spine, rise_mm: mm(Math.max(0, rise)) },
});

type Piece = Job['leather']['outside'];

function leatherInputs(job: Job): CoverInput[] {
  const { outside, pocket, lining } = job.leather;
  const isTurned = job.pockets.construction === 'turned';
  const isOneLeather = isTurned || (pocket.min_mm === outside.min_mm && pocket.max_mm === outside.max_mm);
  const isOneFold = isTurned || (isOneLeather && pocket.bendRatio === outside.bendRatio);
  const change = (truth: Truth, names: readonly ('outside' | 'pocket')[], by: Partial<Piece>): void => {
    const changed = Object.fromEntries(names.map((name) => [name, { ...truth.leather[name], ...by }]));
    truth.leather = { ...truth.leather, ...changed };
  };
  const changeLining = (truth: Truth, by: Partial<Piece>): void => {
    if (truth.leather.lining !== null) truth.leather = { ...truth.leather, lining: { ...truth.leather.lining, ...by } };
  };
  const middle = ({ min_mm: min, max_mm: max }: Piece): number => (min + max) / 2;
  const thick = (value: number): Partial<Piece> => {
    const thickness = mm(Math.max(LEAST.leather, value));
    return { min_mm: thickness, max_mm: thickness };
  };
  const ratio = (value: number): Partial<Piece> => ({ bendRatio: Math.max(LEAST.bendRatio, value) });
  const skived = (value: number): Partial<Piece> => ({ foldThickness_mm: mm(Math.max(LEAST.skived, value)) });
  const both = ['outside', 'pocket'] as const;
  return [
    input(job, 'leather.outside', middle(outside), (truth, value) =>
      change(truth, isOneLeather ? both : ['outside'], thick(value)),
    ),
    ...(outside.foldThickness_mm === null
      ? []
      : [
          input(job, 'leather.outside.foldThickness_mm', outside.foldThickness_mm, (truth, value) =>
            change(truth, ['outside'], skived(value)),
          ),
        ]),
    input(job, 'leather.outside.neutral', outside.neutral, (truth, value) =>
      change(truth, isTurned ? both : ['outside'], { neutral: value }),
    ),
    input(job, 'leather.outside.bendRatio', outside.bendRatio, (truth, value) =>
      change(truth, isOneFold ? both : ['outside'], ratio(value)),
    ),
    ...(isOneLeather
      ? []
      : [input(job, 'leather.pocket', middle(pocket), (truth, value) => change(truth, ['pocket'], thick(value)))]),
    ...(isOneFold
      ? []
      : [
          input(job, 'leather.pocket.bendRatio', pocket.bendRatio, (truth, value) =>
            change(truth, ['pocket'], ratio(value)),
          ),
        ]),
    ...(lining === null
      ? []
      : [
          input(job, 'leather.lining', middle(lining), (truth, value) => changeLining(truth, thick(value))),
          ...(lining.foldThickness_mm === null
            ? []
            : [
                input(job, 'leather.lining.foldThickness_mm', lining.foldThickness_mm, (truth, value) =>
                  changeLining(truth, skived(value)),
                ),
              ]),
        ]),
  ];
}

/** Two edges of a dimension are punched independently: together they are off by sqrt 2 of one. */
const EDGE_PAIR = Math.SQRT2;

function makingInputs(job: Job): CoverInput[] {
  const { along, across } = changeOnHide(job);
  const isUpright = job.making.backbone === 'upright';
  const margin = doubtOf(job, 'seam.edgeMargin_mm');
  const isTurned = job.pockets.construction === 'turned';
  const cut = (dimension: 'width' | 'height'): CoverInput[] => [
    input(job, dimension === 'width' ? 'pattern.outsideWidth_mm' : 'pattern.outsideHeight_mm', 0, (truth, value) => {
      truth[dimension] += value;
    }),
    // A turned end has no margin at the fore-edge.
    ...(dimension === 'width' && isTurned
      ? []
      : [
          {
            ...margin,
            path: 'seam.edgeMargin_mm',
            value: 0,
            put: unlessStill(0, (truth, value) => {
              truth[dimension] -= EDGE_PAIR * value;
            }),
          } as const,
        ]),
  ];
  return [
    input(job, 'making.changeAlong', along, (truth, value) => {
      truth[isUpright ? 'heightChange' : 'widthChange'] = value;
    }),
    input(job, 'making.changeAcross', across, (truth, value) => {
      truth[isUpright ? 'widthChange' : 'heightChange'] = value;
    }),
    ...cut('width'),
    ...cut('height'),
  ];
}

function input(job: Job, path: DoubtPath, value: number, put: CoverInput['put']): CoverInput {
  return { path, value, put: unlessStill(value, put), ...doubtOf(job, path) };
}

/** Leaves the truth untouched, object for object, where the input has the value that the job gives it. */
const unlessStill =
  (still: number, put: CoverInput['put']): CoverInput['put'] =>
  (truth, value) => {
    if (value !== still) put(truth, value);
  };

/** Lengths of the book that one ruler or calliper may have measured. */
const SCALED = /^book\.(width|height|thickness|foreEdgeThickness|boardThickness)_mm$|^book\.measured\./;

/** The error that the scale of each tool puts on all lengths measured with it; also of one that only goes round the book. */
function scales(job: Job, inputs: readonly CoverInput[]): CoverInput[] {
  const u = DOUBTS.scale * Math.min(1, readingShare(job));
  const around = (['closedWrap_mm', 'rolledHalf_mm'] as const).map((key) => doubtOf(job, `book.measured.${key}`));
  const tools = new Set([...inputs.filter(({ path }) => SCALED.test(path)), ...around].map((each) => each.with));
  return [...tools].filter(Boolean).map((tool) => {
    const measured = inputs.filter((each) => each.with === tool && SCALED.test(each.path));
    return {
      path: `scale of ${tool}`,
      value: 0,
      u,
      distribution: 'normal',
      from: 'assumed',
      with: tool,
      put: unlessStill(0, (truth, value) => {
        for (const { path } of measured) truth.book = scaledAt(truth.book, path, 1 + value);
      }),
    };
  });
}

function scaledAt(book: Job['book'], path: CoverInput['path'], factor: number): Job['book'] {
  const key = path.slice('book.'.length);
  if (key === 'measured.openFlatWidth_mm') {
    const { openFlatWidth_mm: open } = book.measured;
    return { ...book, measured: { ...book.measured, openFlatWidth_mm: open === null ? null : mm(open * factor) } };
  }
  const scaled = { ...book, [key]: mm((book[key as keyof Job['book']] as number) * factor) };
  // The two thicknesses of a parallel book are one measure.
  return key === 'thickness_mm' && book.foreEdgeThickness_mm === book.thickness_mm
    ? { ...scaled, foreEdgeThickness_mm: scaled.thickness_mm }
    : scaled;
}

/** The truth for given values of the inputs, its book kept one that can be. */
export function truthAt(job: Job, inputs: readonly CoverInput[], values: ArrayLike<number>): Truth {
  const truth = asMeant(job);
  inputs.forEach(({ put }, i) => {
    put(truth, values[i]!);
  });
  return ofPossibleBook(truth, job);
}

/** The truth with one input at another value, and the others at theirs. */
export function truthMoved(job: Job, { put }: CoverInput, value: number): Truth {
  const truth = asMeant(job);
  put(truth, value);
  return ofPossibleBook(truth, job);
}

/** The truth with every input at its value: book and leathers are the job's own objects. */
export function asMeant(job: Job): Truth {
  const { width: widthChange, height: heightChange } = changeOf(job);
  return { book: job.book, leather: job.leather, widthChange, heightChange, ...handOf(job) };
}

function ofPossibleBook(truth: Truth, { book }: Job): Truth {
  if (truth.book !== book) truth.book = possible(truth.book);
  return truth;
}

/** A book whose rise, edges and boards go into its thickness. */
function possible(book: Job['book']): Job['book'] {
  const half = book.thickness_mm / 2;
  const { rise_mm: rise } = book.spine;
  return {
    ...book,
    spine: { ...book.spine, rise_mm: rise === null ? null : mm(Math.min(rise, half)) },
    cornerRadius_mm: mm(Math.min(book.cornerRadius_mm, half)),
    boardThickness_mm: mm(
      Math.min(book.boardThickness_mm, 0.49 * Math.min(book.thickness_mm, book.foreEdgeThickness_mm)),
    ),
  };
}
