import type { JobDocument, Patch } from '../job/jobDocument.ts';
import { TOLERANCE } from '../math/tolerance.ts';
import { isWanting, severity } from '../report/check.ts';
import { type BriefReport, briefReport } from '../report/designReport.ts';
import type { CheckId } from '../report/reportSchema.ts';
import type { ExploreField } from './exploreField.ts';
import { type Trial as TrialWith, tryChanges } from './trial.ts';

type Trial = TrialWith<BriefReport>;

/** What is to fit: every check, or the one named. */
export type FitTarget = 'all' | CheckId;

/** What one field alone can do for the target. */
export type MustChange =
  | { readonly status: 'fits' }
  | {
      readonly status: 'change';
      readonly from: number;
      /** Nearest value found at which the target fits. */
      readonly exact: number;
      /** The same, moved on to a step that can be made. */
      readonly to: number;
      readonly changes: readonly Patch[];
      /** Titles of other checks that come out worse than before. */
      readonly worsens: readonly string[];
    }
  | {
      readonly status: 'none';
      /** Whether the field moved anything by which the target fails. */
      readonly bears: boolean;
      /** The value that came nearest, and the titles of the checks that do not fit there. */
      readonly best: number;
      readonly unfit: readonly string[];
    };

/** Steps from the present value that are tried one by one; further out each distance is `GROWTH` times the last. */
const NEAR_STEPS = 20;
const GROWTH = 1.2;

/** Halvings of the bracket round the nearest value that fits: a millionth of one step. */
const HALVINGS = 20;

/**
 * Smallest change of one field that makes the target fit, tight not counting as fit.
 *
 * Fit need not be monotone in a field, so values that can be made are tried outward on both sides, each of the nearest 20
 * and then at distances growing by 20 %; the first that fits is narrowed down by bisection. A stretch of fitting values
 * shorter than such a distance may be missed. Neither the value given nor any tried one nearer than it was taken on trust:
 * each is a whole report.
 * @param document the job as written
 * @param target every check, or the id of one
 * @returns the change, moved away from the present value to the next step that fits; or that none is needed; or that no
 *   value in the field's range does it, with the nearest miss
 */
export function whatMustChange(document: JobDocument, field: ExploreField, target: FitTarget): MustChange {
  const before = tryChanges(document, [], briefReport);
  if (before.ok && unfitOf(before, target).length === 0) return { status: 'fits' };
  const search = new Search(document, field, target);
  const found = [search.outward(1), search.outward(-1)]
    .filter((change) => change !== null)
    .sort((a, b) => Math.abs(a.to - field.present) - Math.abs(b.to - field.present))[0];
  if (found === undefined) return { status: 'none', ...search.nearestMiss(before) };
  const changes = field.changes(found.to);
  const worsens = worsened(before, tryChanges(document, changes, briefReport));
  return { status: 'change', from: field.present, ...found, changes, worsens };
}

/** The checks of the target that do not fit; a job that does not parse fits nothing. */
function unfitOf(trial: Trial, target: FitTarget): readonly string[] {
  if (!trial.ok) return trial.issues.map(({ path }) => path);
  return judged(trial.report, target)
    .filter(({ verdict }) => (target === 'all' ? isWanting(verdict) : verdict !== 'fits'))
    .map(({ title }) => title);
}

const judged = ({ checks }: BriefReport, target: FitTarget): BriefReport['checks'] =>
  target === 'all' ? checks : checks.filter(({ id }) => id === target);

function worsened(before: Trial, after: Trial): readonly string[] {
  if (!before.ok || !after.ok) return [];
  return after.report.checks
    .filter(({ id, verdict }) => {
      const was = before.report.checks.find((check) => check.id === id);
      return was !== undefined && isWanting(verdict) && severity(verdict) > severity(was.verdict);
    })
    .map(({ title }) => title);
}

interface Found {
  readonly exact: number;
  readonly to: number;
}

/** The trials of one field, with the nearest miss among them. */
class Search {
  private readonly misses: { readonly at: number; readonly trial: Trial & { ok: true } }[] = [];
  private readonly document: JobDocument;
  private readonly field: ExploreField;
  private readonly target: FitTarget;

  constructor(document: JobDocument, field: ExploreField, target: FitTarget) {
    this.document = document;
    this.field = field;
    this.target = target;
  }

  /** The nearest fitting value above (1) or below (-1) the present one; null where none was found. */
  outward(side: 1 | -1): Found | null {
    const { present, note, step } = this.field;
    const first =
      side === 1 ? Math.floor(present / step + TOLERANCE.ratio) + 1 : Math.ceil(present / step - TOLERANCE.ratio) - 1;
    const made = (count: number): number => tidy((first + side * count) * step);
    let missed = present;
    for (let count = 0; ; count = count < NEAR_STEPS ? count + 1 : Math.ceil(count * GROWTH)) {
      const at = made(count);
      if (at < note.min - TOLERANCE.length || at > note.max + TOLERANCE.length) return null;
      if (this.fits(at)) return this.nearest(missed, at, made);
      missed = at;
    }
  }

  /** The nearest value that fits, and the nearest that does and can be made; `hit` is one of those. */
  private nearest(missed: number, hit: number, made: (count: number) => number): Found {
    const { present, step } = this.field;
    const distance = (at: number): number => Math.abs(at - present);
    let exact = this.bisected(missed, hit);
    // Where half the change does as well, a window was passed over on the way out.
    for (
      let half = (present + exact) / 2;
      distance(half) > TOLERANCE.ratio * step && this.fits(half);
      half = (present + exact) / 2
    )
      exact = this.bisected(present, half);
    for (let count = 0; distance(made(count)) < distance(hit) - TOLERANCE.length; count++) {
      const to = made(count);
      if (distance(to) >= distance(exact) - TOLERANCE.length && this.fits(to)) return { exact, to };
    }
    return { exact, to: hit };
  }

  private bisected(missed: number, hit: number): number {
    let [low, high] = [missed, hit];
    for (let i = 0; i < HALVINGS; i++) {
      const middle = (low + high) / 2;
      if (this.fits(middle)) high = middle;
      else low = middle;
    }
    return high;
  }

  private fits(at: number): boolean {
    const trial = tryChanges(this.document, this.field.changes(at), briefReport);
    const isFit = trial.ok && unfitOf(trial, this.target).length === 0;
    if (trial.ok && !isFit) this.misses.push({ at, trial });
    return isFit;
  }

  nearestMiss(before: Trial): { bears: boolean; best: number; unfit: readonly string[] } {
    const wanting = unfitOf(before, this.target);
    const print = (trial: Trial): string =>
      trial.ok
        ? JSON.stringify(
            judged(trial.report, this.target)
              .filter(({ title }) => wanting.includes(title))
              .map(({ id, value, limit, verdict }) => [id, value, limit, verdict]),
          )
        : '';
    const from = this.field.present;
    const unfit = (trial: Trial): readonly string[] => unfitOf(trial, this.target);
    const best = this.misses.reduce<{ at: number; trial: Trial }>(
      (least, miss) => (unfit(miss.trial).length < unfit(least.trial).length ? miss : least),
      { at: from, trial: before },
    );
    return {
      bears: this.misses.some(({ trial }) => print(trial) !== print(before)),
      best: best.at,
      unfit: unfit(best.trial),
    };
  }
}

/** Frees a multiple of a step from floating-point noise, so that the job reads 1.3 and not 1.3000000000000003. */
const tidy = (value: number): number => Number(value.toPrecision(12));
