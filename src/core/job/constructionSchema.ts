import { z } from 'zod';
import { lengthField, numberField } from './field.ts';
import { addRuleIssue } from './rule.ts';

const strapSchema = z.strictObject({
  width_mm: lengthField('Strap width', 8, 80, 'Cut width of the closure strap. Assumption.').prefault(25),
  anchor_mm: lengthField(
    'Strap anchor',
    10,
    120,
    'How far the strap lies on the back cover, from the cut edge inward, where it is sewn down. Assumption.',
  ).prefault(30),
  reach_mm: lengthField(
    'Strap reach',
    10,
    300,
    'From the cut edge of the front cover to the fastening. Assumption.',
  ).prefault(35),
  end_mm: lengthField('Strap end', 5, 60, 'Strap beyond the fastening. Assumption.').prefault(15),
});

const penLoopSchema = z.strictObject({
  pen_mm: lengthField('Pen', 4, 30, 'Thickness of the pen.').prefault(10),
  ease_mm: lengthField('Pen ease', 0, 5, 'Room round the pen, on its diameter. Assumption.').prefault(1),
  width_mm: lengthField('Loop width', 10, 150, 'Length of the loop along the pen. Assumption.').prefault(35),
});

const ribbonSchema = z.strictObject({
  count: z
    .int()
    .min(1)
    .max(4)
    .default(1)
    .meta({ title: 'Ribbons', description: 'How many.', unit: '', min: 1, max: 4 }),
  fixed_mm: lengthField('Ribbon fixed', 0, 100, 'Length fastened under the lining at the head. Assumption.').prefault(
    25,
  ),
  tail_mm: lengthField('Ribbon tail', 0, 200, 'Length that hangs out beyond the corner of the page.').prefault(40),
});

/**
 * How the pieces are made, beyond their size. Every field may be missing; the defaults leave a plain cover: square
 * corners (rounded where `seam.cornerRadius_mm` says so), straight pocket mouths, no strap, loop or ribbon.
 */
export const constructionSchema = z
  .strictObject({
    corners: z.enum(['square', 'rounded', 'clipped']).nullable().default(null).meta({
      title: 'Corners',
      description:
        'Of the outside, its full lining and the pockets; their size is seam.cornerRadius_mm. Default: rounded where that is over 0.',
    }),
    mouth: z.enum(['straight', 'curved']).default('straight').meta({ title: 'Pocket mouth' }),
    mouthCurve: numberField(
      'Mouth curve',
      '',
      0.02,
      0.5,
      'How deep a curved mouth is scooped in its middle, as a share of the pocket depth; never over a quarter of the height.',
    ).default(0.15),
    lining: z
      .enum(['centre', 'full'])
      .default('centre')
      .meta({ title: 'Lining', description: 'What the lining covers, where leather.lining gives one.' }),
    hole_mm: lengthField('Stitch hole', 0.4, 3, 'Diameter of a stitching hole as drawn and cut.').prefault(1),
    slitWidth_mm: lengthField('Slit', 1, 12, 'Length of a lacing slit: the width of the lace. Assumption.').prefault(
      2.4,
    ),
    slitAngle_deg: numberField(
      'Slit angle',
      'deg',
      0,
      90,
      'Of a lacing slit to the seam line. Default by style: 45 for whip, 0 for the others.',
    )
      .nullable()
      .default(null),
    strap: strapSchema.nullable().default(null),
    penLoop: penLoopSchema.nullable().default(null),
    ribbon: ribbonSchema.nullable().default(null),
  })
  .prefault({});

type Construction = z.output<typeof constructionSchema>;

/** Rules between the construction and the rest of the job. */
export function checkConstruction(
  job: {
    readonly construction: Construction;
    readonly seam: { readonly cornerRadius_mm: number; readonly edgeMargin_mm: number };
    readonly pockets: { readonly construction: 'separate' | 'turned' };
    readonly leather: { readonly lining: unknown };
    readonly book: { readonly height_mm: number };
  },
  context: z.RefinementCtx,
): void {
  const { construction, seam, pockets, leather, book } = job;
  const report = (path: readonly string[], got: unknown, allowed: string, remedy: string): void =>
    addRuleIssue(context, ['construction', ...path], got, allowed, remedy);
  if ((construction.corners ?? 'square') !== 'square' && seam.cornerRadius_mm === 0)
    report(
      ['corners'],
      construction.corners,
      'square while seam.cornerRadius_mm is 0',
      'give the size of the corner in seam.cornerRadius_mm',
    );
  if (construction.lining === 'full' && leather.lining === null)
    report(
      ['lining'],
      'full',
      'centre while leather.lining is null',
      'give the leather of the lining in leather.lining',
    );
  const { strap, penLoop } = construction;
  if (strap !== null && strap.width_mm <= 2 * seam.edgeMargin_mm)
    report(
      ['strap', 'width_mm'],
      strap.width_mm,
      `more than two edge margins, ${2 * seam.edgeMargin_mm}`,
      'make the strap wider, or the edge margin smaller',
    );
  if (strap !== null && strap.width_mm > book.height_mm)
    report(['strap', 'width_mm'], strap.width_mm, `at most the book's height, ${book.height_mm}`, 'make it narrower');
  if (penLoop !== null && pockets.construction === 'turned')
    report(
      ['penLoop'],
      penLoop,
      'null with turned ends',
      'the loop is caught in the fore-edge seam, which turned ends do not have: choose separate pockets',
    );
  if (penLoop !== null && penLoop.width_mm > book.height_mm)
    report(
      ['penLoop', 'width_mm'],
      penLoop.width_mm,
      `at most the book's height, ${book.height_mm}`,
      'make it narrower',
    );
}
