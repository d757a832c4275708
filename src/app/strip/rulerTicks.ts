import { MM_PER_INCH } from '../../core/index.ts';

export interface Tick {
  /** mm from the start. */
  readonly at: number;
  /** Numbered ticks are long; the others have no text. */
  readonly text: string | null;
}

/** Ticks of a ruler: every 10 mm, numbered each 50; or every quarter inch, numbered each inch. */
export function rulerTicks(length: number, unit: 'mm' | 'in'): readonly Tick[] {
  const [step, numbered] = unit === 'mm' ? [10, 5] : [MM_PER_INCH / 4, 4];
  return Array.from({ length: Math.floor(length / step + 1e-9) + 1 }, (_, i) => ({
    at: i * step,
    text: i % numbered === 0 ? String(unit === 'mm' ? i * step : i / numbered) : null,
  }));
}
