import type { EvenPitch } from './evenPitch.ts';

/** Strides that are alike, one after another. */
interface StrideGroup {
  readonly count: number;
  /** mm */
  readonly pitch: number;
}

/** The strides between two holes of a side, those together that are alike. */
export function strideGroups(
  { pitch, uneven }: Pick<EvenPitch, 'pitch' | 'uneven'>,
  from: number,
  to: number,
): StrideGroup[] {
  const within = (k: number): number => Math.min(to, Math.max(from, k));
  const [start, end] = uneven === undefined ? [to, to] : [within(uneven.first), within(uneven.first + uneven.count)];
  return [
    { count: start - from, pitch },
    { count: end - start, pitch: uneven?.pitch ?? pitch },
    { count: to - end, pitch },
  ].filter(({ count }) => count > 0);
}
