import { CheckRow } from '../panel/CheckRow.tsx';
import { useBench } from '../state/BenchContext.tsx';

/** Beside the measures: whether the ways of measuring agree, once more than one was used. */
export function CrossCheck() {
  const check = useBench(({ report }) => report.checks.find(({ id }) => id === 'measures'));
  if (check === undefined || check.bound === null) return null;
  return (
    <ul aria-label="Cross-check of the measures">
      <CheckRow check={check} />
    </ul>
  );
}
