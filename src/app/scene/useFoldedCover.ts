import { useEffect, useMemo, useState } from 'react';
import * as z from 'zod/mini';
import { type FoldedCover, foldedCover } from '../../core/index.ts';
import { accepting } from '../worker/accepting.ts';
import { useWorkerQueue } from '../worker/useWorkerQueue.ts';
import type { CoverSceneProps } from './sceneProps.ts';
import type { SettleQuestion } from './settle.worker.ts';

const startWorker = () => new Worker(new URL('./settle.worker.ts', import.meta.url), { type: 'module' });

const floats = z.custom<Float32Array>((value) => value instanceof Float32Array);
const meshShape = z.looseObject({
  part: z.string(),
  positions: floats,
  normals: floats,
  uvs: floats,
  indices: z.custom<Uint32Array>((value) => value instanceof Uint32Array),
  faces: z.array(z.looseObject({ face: z.string(), start: z.number(), count: z.number() })),
});
const list = z.array(z.looseObject({}));

/** What the worker of the settled cover may answer. */
export const isFoldedCover = accepting<FoldedCover>(
  z.looseObject({
    parts: z.array(meshShape),
    seam: list,
    strapSeam: list,
    marks: z.array(z.looseObject({ edge: z.string(), value: z.number() })),
    seeThrough: list,
    benchTurn: z.number(),
    opening: z.number(),
    film: z.looseObject({ movements: z.looseObject({}), jam: z.nullable(z.looseObject({})) }),
  }),
);

/**
 * The cover folded in a pose. A settled cover is folded in a worker, which solves its strip. Until it comes, the last
 * settled cover is shown, at first the taut one; if the worker fails, the taut one stays.
 */
export function useFoldedCover({ design, pose, point, shape = 'taut' }: CoverSceneProps): FoldedCover {
  const queue = useWorkerQueue<SettleQuestion, FoldedCover>(startWorker, isFoldedCover, { tellsStale: true });
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
