/** The value itself; a test that expects one fails where there is none. */
export function defined<T>(value: T): NonNullable<T> {
  if (value === undefined || value === null) throw new TypeError(`Expected a value, got ${value}`);
  return value;
}
