/** Gathers items into lists of `size`, the last one shorter. */
export async function* batches<T>(items: AsyncIterable<T, unknown, undefined>, size: number): AsyncGenerator<T[]> {
  let batch: T[] = [];
  for await (const item of items) {
    batch.push(item);
    if (batch.length < size) continue;
    yield batch;
    batch = [];
  }
  if (batch.length > 0) yield batch;
}

/**
 * Works on up to `ahead` items at once and gives the results in the order of the items, however the work finishes. No
 * more than `ahead` items and results are held, so a slow reader of the results slows the taking of items.
 */
export async function* inOrder<T, R>(
  items: AsyncIterable<T, unknown, undefined>,
  work: (item: T) => Promise<R>,
  ahead: number,
): AsyncGenerator<R> {
  const underway: Promise<R>[] = [];
  for await (const item of items) {
    const result = work(item);
    // Its failure is thrown where the result is awaited, in its turn; until then it is not unhandled.
    result.catch(() => {});
    underway.push(result);
    if (underway.length >= ahead) yield await underway.shift()!;
  }
  while (underway.length > 0) yield await underway.shift()!;
}
