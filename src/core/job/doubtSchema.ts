import * as z from 'zod/mini';
import { cholesky } from '../math/cholesky.ts';
import { type FieldNote, plainField } from './field.ts';
import { addRuleIssue } from './rule.ts';

/** Where a value comes from. A figure typed counts as measured. */
export const ORIGINS = ['measured', 'typed', 'usual', 'assumed', 'photograph'] as const;

export type Origin = (typeof ORIGINS)[number];

const doubt = (title: string, unit: FieldNote['unit'], most: number) =>
  z.optional(
    z.strictObject({
      u: z.optional(
        plainField({
          title: `Doubt of ${title}`,
          unit,
          min: 0,
          max: most,
        }),
      ),
      distribution: z.optional(z.enum(['normal', 'even'])).check(z.meta({ title: 'Spread' })),
      from: z.optional(z.enum(ORIGINS)).check(z.meta({ title: 'Comes from' })),
      with: z.optional(z.string().check(z.maxLength(60))).check(z.meta({ title: 'Measured with' })),
    }),
  );

const length = (title: string, most = 20) => doubt(title, 'mm', most);

/**
 * Doubts of the inputs of the model, by the path of the input; what is absent takes its default (`doubtOf`). The path of a
 * leather stands for its thickness. Each bound is far beyond any honest doubt.
 */
export const doubtsSchema = z.prefault(
  z.strictObject({
    'book.width_mm': length('the width'),
    'book.height_mm': length('the height'),
    'book.thickness_mm': length('the thickness'),
    'book.foreEdgeThickness_mm': length('the thickness at the fore-edge'),
    'book.boardThickness_mm': length('the board', 3),
    'book.spine.rise_mm': length('the rise'),
    'book.cornerRadius_mm': length('the edge radius'),
    'book.jointDip_mm': length('the extra length at the joints', 10),
    'book.pageGive': doubt('the squash of the pages', '%', 0.45),
    'book.measured.closedWrap_mm': length('the paper strip'),
    'book.measured.rolledHalf_mm': length('the half round'),
    'book.measured.openFlatWidth_mm': length('the open flat width'),
    'leather.outside': length('the outside leather', 2),
    'leather.outside.foldThickness_mm': length('the skived outside', 2),
    'leather.outside.neutral': doubt('the K factor', '', 0.2),
    'leather.outside.bendRatio': doubt('the bend ratio', '', 1),
    'leather.pocket': length('the pocket leather', 2),
    'leather.pocket.bendRatio': doubt('the bend ratio of the pocket', '', 1),
    'leather.lining': length('the lining', 2),
    'leather.lining.foldThickness_mm': length('the skived lining', 2),
    'making.changeAlong': doubt('the change of size along', '%', 0.05),
    'making.changeAcross': doubt('the change of size across', '%', 0.05),
    'seam.edgeMargin_mm': length('the edge margin', 5),
    'pattern.outsideWidth_mm': length('the width as cut', 5),
    'pattern.outsideHeight_mm': length('the height as cut', 5),
  }),
  {},
);

type Doubts = z.output<typeof doubtsSchema>;

/** Path of an input that may be in doubt. */
export type DoubtPath = keyof Doubts;

const PATHS = Object.keys(doubtsSchema._zod.def.innerType.shape) as [DoubtPath, ...DoubtPath[]];

/** Every input that may be in doubt, in the order of the schema. */
export const DOUBT_PATHS: readonly DoubtPath[] = PATHS;

/** Correlations of the errors of two inputs, beyond those of a shared tool or leather. */
export const correlationsSchema = z
  ._default(
    z
      .array(z.strictObject({ a: z.enum(PATHS), b: z.enum(PATHS), r: z.number().check(z.minimum(-1), z.maximum(1)) }))
      .check(z.maxLength(100)),
    [],
  )
  .check(z.meta({ title: 'Correlations' }))
  .check(
    z.superRefine((list, context) => {
      const seen = new Set<string>();
      for (const [i, { a, b }] of list.entries()) {
        const pair = [a, b].sort().join(' ');
        if (a === b || seen.has(pair))
          addRuleIssue(
            context,
            [i],
            `${a} and ${b}`,
            'two different inputs, each pair once',
            a === b ? 'an input is always one with itself: take the entry out' : 'take one of the two entries out',
          );
        seen.add(pair);
      }
      if (context.issues.length > 0 || list.length === 0) return;
      const names = [...new Set(list.flatMap(({ a, b }) => [a, b]))];
      const matrix = names.map((_, i) => names.map((_, j): number => (i === j ? 1 : 0)));
      for (const { a, b, r } of list) {
        matrix[names.indexOf(a)]![names.indexOf(b)] = r;
        matrix[names.indexOf(b)]![names.indexOf(a)] = r;
      }
      if (cholesky(matrix) === null)
        addRuleIssue(
          context,
          [],
          list,
          'correlations that can hold together (a positive semidefinite matrix)',
          'two inputs that both follow a third closely also follow each other: make the correlations smaller',
        );
    }),
  );
