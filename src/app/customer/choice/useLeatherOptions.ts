import { useEffect, useMemo, useState } from 'react';
import {
  coverDesign,
  designReport,
  type ElasticOverRange,
  type Job,
  type JobDocument,
  jobInLeather,
  parseJob,
  type Shop,
  type TakenLeather,
  withStrip,
} from '../../../core/index.ts';
import type { LeatherOption } from '../../../output/leatherChoice/leatherChoice.ts';
import { isElasticOverRange } from '../../state/solveElastic.ts';
import { useWorkerQueue } from '../../worker/useWorkerQueue.ts';

const startSolving = () => new Worker(new URL('../../state/elastic.worker.ts', import.meta.url), { type: 'module' });

/** The open job in each of some leathers: at once without the springy model, and with it as soon as its worker has answered. */
export function useLeatherOptions(
  { document, job }: { readonly document: JobDocument; readonly job: Job },
  leathers: readonly TakenLeather[],
  shop: Shop,
): readonly LeatherOption[] {
  const quick = useMemo(
    () =>
      leathers.flatMap((taken): LeatherOption[] => {
        const parsed = parseJob(jobInLeather(document, job, taken, shop));
        if (!parsed.ok) return [];
        const design = coverDesign(parsed.job);
        const report = { ...designReport(design), origin: 'being worked out' as const };
        return [{ id: taken.id, name: taken.leather.name, design, report }];
      }),
    [document, job, leathers, shop],
  );
  const [solved, setSolved] = useState<ReadonlyMap<LeatherOption, ElasticOverRange | null>>(new Map());
  const queue = useWorkerQueue<Job, ElasticOverRange>(startSolving, isElasticOverRange);
  useEffect(() => {
    let isWanted = true;
    const keep = (option: LeatherOption, elastic: ElasticOverRange | null): void => {
      if (isWanted) setSolved((before) => new Map([...before, [option, elastic]]));
    };
    for (const option of quick)
      queue.ask(option.design.job, option.id).then(
        (elastic) => keep(option, elastic),
        () => keep(option, null),
      );
    return () => {
      isWanted = false;
      setSolved(new Map());
    };
  }, [queue, quick]);
  return useMemo(
    () =>
      quick.map((option) => {
        const elastic = solved.get(option);
        if (elastic === undefined) return option;
        const { design, report } = option;
        return {
          ...option,
          report: elastic === null ? { ...report, origin: 'not known' as const } : withStrip(report, design, elastic),
        };
      }),
    [quick, solved],
  );
}
