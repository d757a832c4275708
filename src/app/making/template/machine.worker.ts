import { loadFace } from '../../../artwork/faces/loadFace.ts';
import type { Drawing } from '../../../core/index.ts';
import { type MachinePlan, machinePlan } from '../../../output/machine/machinePlan.ts';
import type { MachineProfile } from '../../../output/machine/machineProfile.ts';
import { serveQuestions } from '../../worker/serveQuestions.ts';

export interface MachineQuestion {
  readonly drawing: Drawing;
  readonly profile: MachineProfile;
  readonly mirrored: boolean;
  readonly kerf_mm: number;
}

serveQuestions<MachineQuestion, MachinePlan>(async ({ drawing, profile, ...options }) =>
  machinePlan(drawing, profile, {
    ...options,
    face: profile.words === 'strokes' ? await loadFace('singleLine') : null,
  }),
);
