/**
 * The grey that parts dark from light best: the one that makes the variance between the two largest (Otsu 1979, IEEE Trans. SMC
 * 9(1), 62). Values below it are dark.
 * @returns 1 to 255; 128 where all values are the same
 */
export function otsuThreshold(values: Uint8Array): number {
  const times = new Float64Array(256);
  for (const value of values) times[value]!++;
  const total = values.length;
  const sum = times.reduce((part, number, value) => part + number * value, 0);
  let [dark, darkSum, best, from, to] = [0, 0, 0, 128, 128];
  for (let value = 0; value < 255; value++) {
    dark += times[value]!;
    darkSum += times[value]! * value;
    if (dark === 0 || dark === total) continue;
    const between = (dark * (total - dark) * (darkSum / dark - (sum - darkSum) / (total - dark)) ** 2) / total ** 2;
    if (between > best * (1 + 1e-12)) [best, from, to] = [between, value + 1, value + 1];
    else if (between >= best * (1 - 1e-12)) to = value + 1;
  }
  // In an empty stretch of greys every threshold parts alike: its middle is farthest from both.
  return Math.round((from + to) / 2);
}
