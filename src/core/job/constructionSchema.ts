import * as z from 'zod/mini';
import { lengthField, numberField } from './field.ts';
import { addRuleIssue } from './rule.ts';

/** How a closure is fastened, in the words of the trade. */
export const FASTENINGS = ['stud', 'snap', 'buckle', 'magnet'] as const;

const strapSchema = z.strictObject({
  shape: z._default(z.enum(['strap', 'flap']), 'strap').check(z.meta({ title: 'Shape' })),
  fastening: z._default(z.enum(FASTENINGS), 'stud').check(z.meta({ title: 'Fastening' })),
  width_mm: z.prefault(lengthField('Strap width', 8, 1500), 25),
  anchor_mm: z.prefault(lengthField('Strap anchor', 10, 120), 30),
  reach_mm: z.prefault(lengthField('Strap reach', 10, 300), 35),
  end_mm: z.prefault(lengthField('Strap end', 5, 60), 15),
});

const penLoopSchema = z.strictObject({
  pen_mm: z.prefault(lengthField('Pen', 4, 30), 10),
  ease_mm: z.prefault(lengthField('Pen ease', 0, 5), 1),
  width_mm: z.prefault(lengthField('Loop width', 10, 150), 35),
});

const ribbonSchema = z.strictObject({
  count: z
    ._default(z.int().check(z.minimum(1), z.maximum(4)), 1)
    .check(z.meta({ title: 'Ribbons', unit: '', min: 1, max: 4 })),
  fixed_mm: z.prefault(lengthField('Ribbon fixed', 0, 100), 25),
  tail_mm: z.prefault(lengthField('Ribbon tail', 0, 200), 40),
});

/**
 * How the pieces are made, beyond their size. Every field may be missing; the defaults leave a plain cover: square
 * corners (rounded where `seam.cornerRadius_mm` says so), straight pocket mouths, no strap, loop or ribbon.
 */
export const constructionSchema = z.prefault(
  z.strictObject({
    corners: z._default(z.nullable(z.enum(['square', 'rounded', 'clipped'])), null).check(
      z.meta({
        title: 'Corners',
      }),
    ),
    mouth: z._default(z.enum(['straight', 'curved']), 'straight').check(z.meta({ title: 'Pocket mouth' })),
    mouthCurve: z._default(numberField('Mouth curve', '%', 0.02, 0.5), 0.15),
    lining: z._default(z.enum(['centre', 'full']), 'centre').check(z.meta({ title: 'Lining' })),
    hole_mm: z.prefault(lengthField('Stitch hole', 0.4, 3), 1),
    slitWidth_mm: z.prefault(lengthField('Slit', 1, 12), 2.4),
    slitAngle_deg: z._default(z.nullable(numberField('Slit angle', 'deg', 0, 90)), null),
    strap: z._default(z.nullable(strapSchema), null),
    penLoop: z._default(z.nullable(penLoopSchema), null),
    ribbon: z._default(z.nullable(ribbonSchema), null),
  }),
  {},
);

/** What is wider is a flap, mm. Assumption. */
const WIDEST_STRAP = 80;

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
  context: z.core.$RefinementCtx,
): void {
  const { construction, seam, pockets, leather, book } = job;
  const report = (path: readonly string[], got: unknown, allowed: string, remedy: string): void =>
    addRuleIssue(context, ['construction', ...path], got, allowed, remedy);
  if ((construction.corners ?? 'square') !== 'square' && seam.cornerRadius_mm === 0)
    report(
      ['corners'],
      construction.corners,
      'square while the corner radius (seam.cornerRadius_mm) is 0',
      'give the corner radius (seam.cornerRadius_mm) a size',
    );
  if (construction.lining === 'full' && leather.lining === null)
    report(
      ['lining'],
      'full',
      'centre while there is no lining (leather.lining)',
      'choose the leather of the lining (leather.lining)',
    );
  const { strap, penLoop } = construction;
  if (strap !== null && strap.width_mm <= 2 * seam.edgeMargin_mm)
    report(
      ['strap', 'width_mm'],
      strap.width_mm,
      `more than two edge margins, ${2 * seam.edgeMargin_mm} mm`,
      'make the strap wider, or the edge margin smaller',
    );
  if (strap !== null && strap.shape === 'strap' && strap.width_mm > WIDEST_STRAP)
    report(
      ['strap', 'width_mm'],
      strap.width_mm,
      `at most ${WIDEST_STRAP} mm`,
      'make it narrower, or a flap (construction.strap.shape)',
    );
  if (strap !== null && strap.shape === 'flap' && strap.fastening === 'buckle')
    report(
      ['strap', 'fastening'],
      strap.fastening,
      'stud, snap or magnet for a flap',
      'choose another fastening, or a strap (construction.strap.shape)',
    );
  if (strap !== null && strap.width_mm > book.height_mm)
    report(
      ['strap', 'width_mm'],
      strap.width_mm,
      `at most the book's height, ${book.height_mm} mm`,
      'make it narrower',
    );
  if (penLoop !== null && pockets.construction === 'turned')
    report(
      ['penLoop'],
      penLoop,
      'none (null) with turned ends',
      'the loop is caught in the fore-edge seam, which turned ends do not have: choose separate pockets',
    );
  if (penLoop !== null && penLoop.width_mm > book.height_mm)
    report(
      ['penLoop', 'width_mm'],
      penLoop.width_mm,
      `at most the book's height, ${book.height_mm} mm`,
      'make it narrower',
    );
  if (strap !== null && penLoop !== null) {
    // Closed, the strap takes the middle of the fore-edge: the loop stands between it and the corner at the head.
    const corner = construction.corners === 'square' ? 0 : seam.cornerRadius_mm;
    const room = Math.max(0, (book.height_mm - strap.width_mm) / 2 - corner);
    if (penLoop.width_mm > room)
      report(
        ['penLoop', 'width_mm'],
        penLoop.width_mm,
        `at most ${Math.floor(room)} mm, what the closure leaves of the fore-edge up to the corner`,
        `make loop or ${strap.shape} narrower (construction.strap.width_mm), or leave one out`,
      );
  }
}
