import type { TestFigure } from './testFigure.ts';
import type { CreaseReading } from './testSchema.ts';

/** Minutes after letting go at which the legs are read, and at which the crease is foretold. */
const MINUTES = { fiveMinutes: 5, day: 24 * 60, week: 7 * 24 * 60 } as const;

/** How well a crease stays, as a share: 1 for one that stays folded, 0 for one that springs flat; null where not read. */
export interface CreaseFigures {
  readonly fiveMinutes: TestFigure | null;
  readonly day: TestFigure | null;
  /** What set is lost each time that the time since letting go grows tenfold; null unless both angles were read. */
  readonly lostPerDecade: TestFigure | null;
  /** Foretold for a week after letting go; null unless both angles were read. */
  readonly week: TestFigure | null;
}

/**
 * Set of a pressed crease from the angle a between its legs: the turn that stays over the turn that was pressed,
 * set = 1 - a / 180, with u = (error / 2) / 180.
 *
 * Set falls with the logarithm of the time since letting go, set(t) = set(day) - lost log10(t / day), as folds of paper and plastic film
 * do (K. Farain 2020, Phys. Rev. Applied 13, 014031); that leather does so is an assumption. So a week keeps
 * set(day) (1 + k) - set(5 min) k, with k = log10(week / day) / log10(day / 5 min) = 0.344.
 */
export function creaseTest({
  fiveMinutes_deg,
  day_deg,
  error_deg,
}: Pick<CreaseReading, 'fiveMinutes_deg' | 'day_deg' | 'error_deg'>): CreaseFigures {
  const u = error_deg / 2 / 180;
  const setOf = (angle: number | null): TestFigure | null => (angle === null ? null : { value: 1 - angle / 180, u });
  const [fiveMinutes, day] = [setOf(fiveMinutes_deg), setOf(day_deg)];
  if (fiveMinutes === null || day === null) return { fiveMinutes, day, lostPerDecade: null, week: null };
  const decades = Math.log10(MINUTES.day / MINUTES.fiveMinutes);
  const k = Math.log10(MINUTES.week / MINUTES.day) / decades;
  const lost = fiveMinutes.value - day.value;
  return {
    fiveMinutes,
    day,
    lostPerDecade: { value: lost / decades, u: (Math.SQRT2 * u) / decades },
    week: { value: day.value - k * lost, u: Math.hypot(1 + k, k) * u },
  };
}
