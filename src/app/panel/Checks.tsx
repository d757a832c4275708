import { severity } from '../../core/index.ts';
import { useBench } from '../state/BenchContext.tsx';
import { CheckRow } from './CheckRow.tsx';
import { shownChecks } from './shownChecks.ts';

/** Every check, worst first. */
export function Checks() {
  const { report, status, settled } = useBench(({ report, elastic: { status }, settled }) => ({
    report,
    status,
    settled,
  }));
  const checks = [...shownChecks(report, status, settled)].sort((a, b) => severity(b.verdict) - severity(a.verdict));
  return (
    <section className="checks" aria-label="Checks of the fit">
      <ul>
        {checks.map((check) => (
          <CheckRow key={check.id} check={check} />
        ))}
      </ul>
    </section>
  );
}
