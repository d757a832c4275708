import { useEffect } from 'react';
import { useBench, useBenchStore } from '../state/BenchContext.tsx';
import { useWorkerQueue } from '../worker/useWorkerQueue.ts';
import type { Answers, Questions } from './exploreMessage.ts';
import { isAnswerTo, startExploring } from './startExploring.ts';

/** Makes trials of the open job in a worker and puts them into the store, or why there are none. Shows nothing. */
export default function TrialsKeeper() {
  const store = useBenchStore();
  const document = useBench(({ history }) => history.good.document);
  const queue = useWorkerQueue<Questions['trials'], Answers['trials']>(startExploring, isAnswerTo('trials'));
  useEffect(() => {
    queue.ask({ kind: 'trials', document }).then(
      (found) => store.setState({ trials: { of: document, found }, trialsFailure: null }),
      ({ message }: Error) => store.setState({ trialsFailure: message }),
    );
  }, [queue, store, document]);
  return null;
}
