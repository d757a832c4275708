import { type Patch, type Report, severity } from '../../core/index.ts';

/** The one thing to do next: a change that mends the worst check, or else the measurement that would save the most. */
export type OneThing =
  | { readonly kind: 'change'; readonly words: string; readonly patches: readonly Patch[] }
  | { readonly kind: 'measure'; readonly words: string; readonly path: string };

/** What to do next about a cover; null where nothing is known that would help. */
export function oneThing({ checks, doubt }: Pick<Report, 'checks' | 'doubt'>): OneThing | null {
  const mended = checks
    .filter(({ verdict, change }) => severity(verdict) > severity('fits') && change.length > 0)
    .reduce<Report['checks'][number] | null>(
      (worst, check) => (worst === null || severity(check.verdict) > severity(worst.verdict) ? check : worst),
      null,
    );
  if (mended !== null) return { kind: 'change', words: mended.remedy, patches: mended.change };
  const [next] = doubt.measureNext;
  return next === undefined ? null : { kind: 'measure', words: next.words, path: next.path };
}
