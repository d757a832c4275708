/** The element at an index, counted from the end when negative; a test that reads past an end fails there. */
export function nth<T>(list: ArrayLike<T>, index: number): NonNullable<T> {
  const element = list[index < 0 ? list.length + index : index];
  if (element === undefined || element === null)
    throw new RangeError(`No element ${index} in a list of ${list.length}`);
  return element;
}
