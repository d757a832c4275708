import { useState } from 'react';
import * as z from 'zod/mini';
import { keptChoice } from '../../state/keptChoice.ts';
import { type MachineDraft, machineDraftSchema } from './machineDraft.ts';

const keptSchema = z.object({ machines: z._default(z.array(machineDraftSchema), []) });

const kept = keptChoice('coverwright.machines.v1', keptSchema);

/** The maker's machines: kept in the browser, because they belong to the workshop and not to a job. */
export function useMachines() {
  const [{ machines, isKept }, set] = useState(() => ({ ...kept.read(), isKept: true }));
  const put = (next: readonly MachineDraft[]): void =>
    set({ machines: [...next], isKept: kept.keep({ machines: [...next] }) });
  return { machines, isKept, put };
}

/** An id that no machine has yet. */
export const newId = (machines: readonly MachineDraft[]): string =>
  String(1 + Math.max(0, ...machines.map(({ id }) => Number(id) || 0)));
