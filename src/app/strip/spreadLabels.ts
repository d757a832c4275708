/**
 * Places labels along a line, each as near to its wanted centre as the others allow, without overlap and in order.
 *
 * Crowded labels are pooled side by side about the mean of their wanted centres (pool adjacent violators).
 * @param wishes wanted centres, ascending
 * @param sizes room each label takes along the line
 * @param room length of the line; labels stay in 0 to room where they fit at all
 * @returns centres
 */
export function spreadLabels(wishes: readonly number[], sizes: readonly number[], room: number): number[] {
  // Measured from where each label starts if all are packed from 0, crowded labels are those out of order.
  let packed = 0;
  const offsets = sizes.map((size) => {
    const offset = packed + size / 2;
    packed += size;
    return offset;
  });
  const pools: { sum: number; count: number }[] = [];
  for (const [i, wish] of wishes.entries()) {
    let pool = { sum: wish - offsets[i]!, count: 1 };
    for (let last = pools.at(-1); last && last.sum / last.count > pool.sum / pool.count; last = pools.at(-1)) {
      pools.pop();
      pool = { sum: last.sum + pool.sum, count: last.count + pool.count };
    }
    pools.push(pool);
  }
  const starts = pools.flatMap(({ sum, count }) => Array.from({ length: count }, () => sum / count));
  const spare = Math.max(0, room - packed);
  return starts.map((start, i) => Math.max(0, Math.min(spare, start)) + offsets[i]!);
}
