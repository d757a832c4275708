/**
 * Which computation a result comes from, in words that screen, papers and files share: the quick model (the closed form, which
 * alone decides the verdict) or the springy model (the elastic strip, solved). A result of the springy model is
 * `being worked out` until its answer is there, and `not known` where it was asked and gave none.
 */
export const RESULT_ORIGINS = ['being worked out', 'not known', 'springy model', 'quick model'] as const;

export type ResultOrigin = (typeof RESULT_ORIGINS)[number];

/** What several results together can say beyond the quick model: the least sure of them, in the order of the list. */
export const originOf = (results: readonly { readonly origin: ResultOrigin }[]): ResultOrigin =>
  RESULT_ORIGINS.find((origin) => results.some((result) => result.origin === origin)) ?? 'quick model';
