import * as z from 'zod/mini';
import { type CoverDesign, coverSupplies, quote } from '../../core/index.ts';

const weightSchema = z.strictObject({
  min_mm: z.number().check(z.minimum(0.2), z.maximum(8)),
  max_mm: z.number().check(z.minimum(0.2), z.maximum(8)),
});

const priceSchema = z.strictObject({
  total: z.number(),
  currency: z.string().check(z.maxLength(8)),
  decimals: z.int().check(z.minimum(0), z.maximum(3)),
  /** What it leaves out. */
  unpriced: z.array(z.string().check(z.maxLength(80))).check(z.maxLength(40)),
});

/** What a maker adds to a job in showing it to a customer. A link to the customer's page carries it. */
export const offerSchema = z.strictObject({
  /** Day of the offer, `2026-11-27`; null for none. */
  date: z._default(z.nullable(z.string().check(z.regex(/^\d{4}-\d{2}-\d{2}$/))), null),
  /** Weights shown beside that of the job; null for an ounce lighter and an ounce heavier. */
  lighter: z._default(z.nullable(weightSchema), null),
  heavier: z._default(z.nullable(weightSchema), null),
  /**
   * Prices as they were computed from the maker's rates, which stay with the maker: null for none shown. Left out, they are computed
   * from the rates of the job.
   */
  prices: z.optional(
    z.nullable(
      z.strictObject({
        lighter: z.nullable(priceSchema),
        chosen: z.nullable(priceSchema),
        heavier: z.nullable(priceSchema),
      }),
    ),
  ),
});

export type Offer = z.output<typeof offerSchema>;
export type OfferedWeight = z.output<typeof weightSchema>;
export type OfferedPrice = z.output<typeof priceSchema>;

/** An offer of nothing but the job. */
export const PLAIN_OFFER: Offer = { date: null, lighter: null, heavier: null };

/** Price of a design by the rates of its job; null where the job prices nothing. */
export function offeredPrice(design: CoverDesign): OfferedPrice | null {
  const { lines, total, currency, decimals, unpriced } = quote(design, coverSupplies(design));
  if (lines.every(({ amount }) => amount === null)) return null;
  return { total, currency, decimals, unpriced: [...new Set(unpriced)] };
}
