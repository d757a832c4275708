import { useBench } from '../state/BenchContext.tsx';
import { trialsOf } from '../state/bench.ts';
import { VerdictMark } from './VerdictMark.tsx';

/** The whole fit in one sentence, read out whenever it changes. */
export function Verdict() {
  const { verdict, state, headline, leastSure, differs } = useBench((bench) => {
    const { verdict, state, headline, doubt } = bench.report;
    return { verdict, state, headline, leastSure: doubt.leastSure, differs: trialsOf(bench)?.differs ?? '' };
  });
  return (
    <section className="verdict" aria-labelledby="fit">
      <h2 id="fit">The fit</h2>
      <p className="headline" aria-live="polite" data-verdict={verdict}>
        <VerdictMark verdict={verdict} />
        <span>
          <b>{state}</b> {headline}
        </span>
      </p>
      {leastSure !== '' && (
        <p className="help least-sure">
          Least sure: {leastSure}. Chances hold if the doubts assumed are right. {differs}
        </p>
      )}
    </section>
  );
}
