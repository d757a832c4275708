/** A smooth step: 0 before `from`, 1 after `to`, level at both. */
export function ramp(at: number, from: number, to: number): number {
  const x = Math.max(0, Math.min(1, (at - from) / (to - from)));
  return x * x * (3 - 2 * x);
}
