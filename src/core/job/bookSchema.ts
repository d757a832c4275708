import * as z from 'zod/mini';
import { titled } from '../words/titled.ts';
import { lengthField, numberField } from './field.ts';
import { addRuleIssue } from './rule.ts';

/** What a book of each kind is when the job does not say otherwise. Common practice, no source. */
export const KIND_DEFAULTS = {
  hardback: { boardThickness_mm: 2.5, square_mm: 3, jointDip_mm: 1, foldBack_deg: 90 },
  paperback: { boardThickness_mm: 0.4, square_mm: 0, jointDip_mm: 0, foldBack_deg: 150 },
  limp: { boardThickness_mm: 1, square_mm: 0, jointDip_mm: 0, foldBack_deg: 175 },
} as const;

const spineSchema = z.prefault(
  z.strictObject({
    shape: z._default(z.enum(['flat', 'rounded']), 'flat').check(z.meta({ title: 'Spine' })),
    rise_mm: z._default(z.nullable(lengthField(titled('rise'), 0, 150)), null),
  }),
  {},
);

const measuredSchema = z.prefault(
  z.strictObject({
    closedWrap_mm: z._default(z.nullable(lengthField('Paper strip round the book', 20, 3000)), null),
    rolledHalf_mm: z._default(z.nullable(lengthField('Half round, on card', 10, 1500)), null),
    openFlatWidth_mm: z._default(z.nullable(lengthField('Open flat', 20, 3000)), null),
    error_mm: z.prefault(lengthField('Measuring error', 0, 5), 0.5),
  }),
  {},
);

/** A rounded spine that rises by nothing was not measured: null, to be estimated (`riseOf`). */
const typedRise = <Rise extends number>({ shape, rise_mm }: { shape: string; rise_mm: Rise | null }): Rise | null =>
  shape === 'rounded' && rise_mm === 0 ? null : rise_mm;

/** The closed book on the bench. Fields that depend on the kind of book are filled from `KIND_DEFAULTS`. */
export const bookSchema = z
  .pipe(
    z.strictObject({
      kind: z._default(z.enum(['hardback', 'paperback', 'limp']), 'hardback').check(z.meta({ title: 'Binding' })),
      width_mm: lengthField('Width', 30, 1000),
      height_mm: lengthField('Height', 30, 1500),
      thickness_mm: lengthField('Thickness', 1, 300),
      foreEdgeThickness_mm: z.optional(lengthField('Thickness at fore-edge', 1, 300)),
      boardThickness_mm: z.optional(lengthField('Board', 0.1, 12)),
      square_mm: z.optional(lengthField(titled('square'), 0, 25)),
      spine: spineSchema,
      cornerRadius_mm: z.prefault(lengthField('Edge radius at spine', 0, 60), 0),
      jointDip_mm: z.optional(lengthField(titled('extra length at the joints'), 0, 20)),
      foldBack_deg: z.optional(numberField('Boards bend back', 'deg', 0, 180)),
      pageGive: z._default(numberField(titled('squash of the pages'), '%', 0, 0.9), 0.25),
      measured: measuredSchema,
    }),
    z.transform((book) => {
      const usual = KIND_DEFAULTS[book.kind];
      return {
        ...book,
        spine: { ...book.spine, rise_mm: typedRise(book.spine) },
        foreEdgeThickness_mm: book.foreEdgeThickness_mm ?? book.thickness_mm,
        boardThickness_mm: book.boardThickness_mm ?? (usual.boardThickness_mm as typeof book.width_mm),
        square_mm: book.square_mm ?? (usual.square_mm as typeof book.width_mm),
        jointDip_mm: book.jointDip_mm ?? (usual.jointDip_mm as typeof book.width_mm),
        foldBack_deg: book.foldBack_deg ?? usual.foldBack_deg,
      };
    }),
  )
  .check(
    z.superRefine((book, context) => {
      const { rise_mm: rise, shape } = book.spine;
      const half = book.thickness_mm / 2;
      if (shape === 'flat' && rise !== null && rise > 0)
        addRuleIssue(
          context,
          ['spine', 'rise_mm'],
          rise,
          '0 for a flat spine',
          'choose a rounded spine, or set the rise to 0',
        );
      if (rise !== null && rise > half)
        addRuleIssue(
          context,
          ['spine', 'rise_mm'],
          rise,
          `at most half the thickness, ${half} mm`,
          'measure the rise from the line between the two boards to the top of the spine',
        );
      const boards = 2 * book.boardThickness_mm;
      const whole = Math.min(book.thickness_mm, book.foreEdgeThickness_mm);
      if (boards >= whole)
        addRuleIssue(
          context,
          ['boardThickness_mm'],
          book.boardThickness_mm,
          `less than half the thickness, ${whole / 2} mm`,
          'thickness is taken over both boards: check both measures',
          `two boards of ${book.boardThickness_mm} mm are ${boards === whole ? 'as thick as' : 'thicker than'} the whole book (${whole} mm). Thickness is taken over both boards: check both.`,
        );
      if (book.cornerRadius_mm > half)
        addRuleIssue(
          context,
          ['cornerRadius_mm'],
          book.cornerRadius_mm,
          `at most half the thickness, ${half} mm`,
          'give the rounding of one edge, not of the whole spine',
        );
      const wedge = Math.abs(book.foreEdgeThickness_mm - book.thickness_mm);
      if (wedge > book.width_mm)
        addRuleIssue(
          context,
          ['foreEdgeThickness_mm'],
          book.foreEdgeThickness_mm,
          `within ${book.width_mm} mm, the width, of the thickness at the spine`,
          'measure over both boards with the book closed',
        );
      if (book.square_mm > Math.min(book.width_mm, book.height_mm) / 4)
        addRuleIssue(
          context,
          ['square_mm'],
          book.square_mm,
          `at most a quarter of the smaller side, ${Math.min(book.width_mm, book.height_mm) / 4} mm`,
          'the square is how far a board stands out beyond the pages',
        );
    }),
  );
