import { useDeferredValue, useMemo } from 'react';
import { versionMark } from '../../output/versionMark.ts';
import { useBench } from '../state/BenchContext.tsx';

/** The mark of the open job's version, as sheets and files carry it. */
export function JobVersion() {
  const job = useDeferredValue(useBench(({ history }) => history.good.job));
  const mark = useMemo(() => versionMark(job), [job]);
  return (
    <p className="help">
      Version <strong>{mark}</strong> of this job. Every sheet saved from it carries this mark.
    </p>
  );
}
