import { useEffect, useState } from 'react';
import * as z from 'zod/mini';
import type { MachinePlan } from '../../../output/machine/machinePlan.ts';
import { accepting } from '../../worker/accepting.ts';
import { useWorkerQueue } from '../../worker/useWorkerQueue.ts';
import type { MachineQuestion } from './machine.worker.ts';

export interface PlanState {
  readonly status: 'planning' | 'planned' | 'failed';
  /** Why it failed, in words for the maker. */
  readonly why?: string;
  readonly plan: MachinePlan | null;
}

const startWorker = () => new Worker(new URL('./machine.worker.ts', import.meta.url), { type: 'module' });

const list = z.array(z.looseObject({}));
const words = z.array(z.string());
const isMachinePlan = accepting<MachinePlan>(
  z.looseObject({
    title: z.string(),
    bed: z.looseObject({ width: z.number(), height: z.number() }),
    beds: z.array(z.looseObject({ number: z.number(), passes: list, pieces: words })),
    leftOut: list,
    lacking: words,
    notes: words,
  }),
);

/**
 * Plans a machine's work in a worker; a newer question ends the older.
 * @param question null for none
 */
export function useMachinePlan(question: MachineQuestion | null): PlanState {
  const [state, setState] = useState<PlanState>({ status: 'planning', plan: null });
  const queue = useWorkerQueue<MachineQuestion, MachinePlan>(startWorker, isMachinePlan);
  const asked = JSON.stringify(question);
  useEffect(() => {
    setState({ status: 'planning', plan: null });
    const content = JSON.parse(asked) as MachineQuestion | null;
    if (content === null) return;
    queue.ask(content).then(
      (plan) => setState({ status: 'planned', plan }),
      ({ message }: Error) => setState({ status: 'failed', plan: null, why: message }),
    );
    return () => queue.close();
  }, [queue, asked]);
  return state;
}
