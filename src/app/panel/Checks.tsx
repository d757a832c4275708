import { type Check, isWanting, severity } from '../../core/index.ts';
import type { Spot } from '../scene/spot.ts';
import { useBench } from '../state/BenchContext.tsx';
import { CheckRow } from './CheckRow.tsx';
import { shownChecks } from './shownChecks.ts';

interface ChecksProps {
  /** Lights the place in the picture that a check speaks of; null puts it out. */
  readonly light: (spot: Spot | null) => void;
}

/** The checks that ask for something, worst first; the others folded into one line. */
export function Checks({ light }: ChecksProps) {
  const { report, status, settled } = useBench(({ report, elastic: { status }, settled }) => ({
    report,
    status,
    settled,
  }));
  const checks = [...shownChecks(report, settled)].sort((a, b) => severity(b.verdict) - severity(a.verdict));
  const matters = ({ verdict, origin }: Check): boolean => isWanting(verdict) && origin !== 'being worked out';
  const quiet = checks.filter((check) => !matters(check));
  const rows = (list: readonly Check[]) => (
    <ul>
      {list.map((check, i) => (
        <CheckRow
          key={check.id}
          check={check}
          light={light}
          isMendedAbove={list.slice(0, i).some(({ remedy }) => remedy === check.remedy)}
        />
      ))}
    </ul>
  );
  return (
    <section aria-label="Checks of the fit" data-strip={status}>
      {rows(checks.filter(matters))}
      <details className="card" id="card-checks">
        <summary>
          <h2>Checks</h2>
          <span className="card-act">show</span>
          <span className="card-said">{quietWords(quiet)}</span>
        </summary>
        {rows(quiet)}
      </details>
    </section>
  );
}

/** States in which a row has no answer, though the maker could give it one. */
const OPEN_STATES = ['not tested', 'not checked', 'not known'];

/** How many are good, and which could be answered. */
function quietWords(checks: readonly Check[]): string {
  const good = checks.filter(({ verdict, origin }) => verdict === 'fits' && origin !== 'being worked out').length;
  const open = checks.filter(({ state }) => OPEN_STATES.includes(state)).map(({ title }) => title.toLowerCase());
  const counted = `${good} ${good === 1 ? 'check is' : 'checks are'} good`;
  return open.length === 0 ? `${counted}.` : `${counted}. Not known: ${open.join(', ')}.`;
}
