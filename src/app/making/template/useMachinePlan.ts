import { useEffect, useState } from 'react';
import type { MachinePlan } from '../../../output/machine/machinePlan.ts';
import { useWorkerQueue } from '../../worker/useWorkerQueue.ts';
import type { MachineQuestion } from './machine.worker.ts';

export interface PlanState {
  readonly status: 'planning' | 'planned' | 'failed';
  /** Why it failed, in words for the maker. */
  readonly why?: string;
  readonly plan: MachinePlan | null;
}

const startWorker = () => new Worker(new URL('./machine.worker.ts', import.meta.url), { type: 'module' });

/**
 * Plans a machine's work in a worker; a newer question ends the older.
 * @param question null for none
 */
export function useMachinePlan(question: MachineQuestion | null): PlanState {
  const [state, setState] = useState<PlanState>({ status: 'planning', plan: null });
  const queue = useWorkerQueue<MachineQuestion, MachinePlan>(startWorker);
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
