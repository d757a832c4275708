/** A length in millimetres. The brand exists only for the compiler: at run time it is a plain number. */
export type Mm = number & { readonly __unit: 'mm' };

/** Marks a plain number as millimetres. Use it only where a number enters core: a parsed field, a schema, a test. */
export const mm = (value: number): Mm => value as Mm;

/** Millimetres in one inch, exact since 1959 (international yard and pound agreement). */
export const MM_PER_INCH = 25.4;

/** Square millimetres in a square decimetre. */
export const MM2_PER_DM2 = 10_000;

/** Thickness of one ounce of leather weight, mm: 1/64 in (ASTM D1814, 1.2, which adds the conversion as 0.396 mm). */
export const MM_PER_OUNCE = MM_PER_INCH / 64;
