import { useEffect, useMemo, useState } from 'react';
import * as z from 'zod/mini';
import { type FoldedCover, foldedCover, RESULT_ORIGINS } from '../../core/index.ts';
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
    origin: z.enum(RESULT_ORIGINS),
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

/** A cover to show, and why it lies otherwise than asked, in words for the maker. */
interface ShownCover {
  readonly cover: FoldedCover;
  readonly lack: string | null;
}

interface Settled {
  readonly of: CoverSceneProps['design'] | null;
  readonly cover: FoldedCover | null;
  readonly why: string | null;
}

const NOTHING: Settled = { of: null, cover: null, why: null };

/**
 * The cover folded in a pose. A settled cover is folded in a worker, which solves its strip. Until it comes, the last
 * settled cover is shown, at first the taut one; if the worker fails, the taut one stays. Both are said.
 */
export function useFoldedCover({ design, pose, point, shape = 'taut' }: CoverSceneProps): ShownCover {
  const queue = useWorkerQueue<SettleQuestion, FoldedCover>(startWorker, isFoldedCover, { tellsStale: true });
  const [settled, setSettled] = useState(NOTHING);
  useEffect(() => {
    if (shape === 'settled')
      queue.ask({ job: design.job, point, pose }).then(
        (cover) => setSettled({ of: design, cover, why: null }),
        ({ message }: Error) => setSettled({ of: design, cover: null, why: message }),
      );
    else {
      queue.close();
      setSettled(NOTHING);
    }
  }, [queue, design, point, pose, shape]);
  const shown = shape === 'settled' ? settled.cover : null;
  const cover = useMemo(() => shown ?? foldedCover(design, pose, point), [shown, design, pose, point]);
  return { cover, lack: shape === 'settled' ? lackOf(settled, design, cover) : null };
}

/** A turn of the same cover follows at once; its state before the last change does not speak for it. */
function lackOf({ of, why }: Settled, design: CoverSceneProps['design'], { origin }: FoldedCover): string | null {
  const asked = 'How the leather will lie';
  if (why !== null) return `${asked} is not known: ${why}. It is shown pulled tight.`;
  if (of !== design) return `${asked} is being worked out.`;
  return origin === 'not known'
    ? `${asked} is not known: the springy model found no answer. It is shown pulled tight.`
    : null;
}
