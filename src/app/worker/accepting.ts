import * as z from 'zod/mini';

/**
 * Takes an answer for one of its kind where it has that shape, and nothing in it is NaN.
 * @param shape of what the page relies on first; parts it does not name are free
 */
export const accepting =
  <A>(shape: z.ZodMiniType) =>
  (answer: unknown): answer is A =>
    z.safeParse(shape, answer).success && isSound(answer);

/** Whether no number in a value is NaN, however deep. */
function isSound(value: unknown): boolean {
  if (typeof value === 'number') return !Number.isNaN(value);
  if (typeof value !== 'object' || value === null) return true;
  if (value instanceof Float32Array || value instanceof Float64Array) return !value.some(Number.isNaN);
  // Whole numbers are never NaN.
  if (ArrayBuffer.isView(value)) return true;
  return Array.isArray(value) ? value.every(isSound) : Object.values(value).every(isSound);
}

/** Bytes of any number. */
export const bytesShape = z.custom<Uint8Array>((value) => value instanceof Uint8Array);
