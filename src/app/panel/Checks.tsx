import { useBench } from '../state/BenchContext.tsx';
import { CheckRow } from './CheckRow.tsx';

const SEVERITY = { fails: 0, tight: 1, fits: 2 };

/** Every check, worst first. */
export function Checks() {
  const { report } = useBench();
  const checks = [...report.checks].sort((a, b) => SEVERITY[a.verdict] - SEVERITY[b.verdict]);
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
