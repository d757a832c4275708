import { useEffect, useMemo, useState } from 'react';
import { type FoldedCover, foldedCover } from '../../core/index.ts';
import { useWorkerQueue } from '../worker/useWorkerQueue.ts';
import type { CoverSceneProps } from './sceneProps.ts';
import type { SettleQuestion } from './settle.worker.ts';

const startWorker = () => new Worker(new URL('./settle.worker.ts', import.meta.url), { type: 'module' });

/**
 * The cover folded in a pose. A settled cover is folded in a worker, which solves its strip. Until it comes, the last
 * settled cover is shown, at first the taut one; if the worker fails, the taut one stays.
 */
export function useFoldedCover({ design, pose, point, shape = 'taut' }: CoverSceneProps): FoldedCover {
  const queue = useWorkerQueue<SettleQuestion, FoldedCover>(startWorker, { tellsStale: true });
  const [settled, setSettled] = useState<FoldedCover | null>(null);
  const { job } = design;
  useEffect(() => {
    if (shape === 'settled') queue.ask({ job, point, pose }).then(setSettled, () => setSettled(null));
    else {
      queue.close();
      setSettled(null);
    }
  }, [queue, job, point, pose, shape]);
  const shown = shape === 'settled' ? settled : null;
  return useMemo(() => shown ?? foldedCover(design, pose, point), [shown, design, pose, point]);
}
