import type { Drawing } from '../../core/index.ts';
import { hpgl } from './hpgl.ts';
import { machineDxf2000, machineDxfR12 } from './machineDxf.ts';
import { type MachineOptions, type MachinePlan, machinePlan, type PlannedBed } from './machinePlan.ts';
import type { MachineProfile } from './machineProfile.ts';
import { machineSvg } from './machineSvg.ts';

/** Formats that a machine takes. */
export type MachineFormat = 'svg' | 'dxf' | 'hpgl';

/** One bed of a plan as text in the asked format; equal for equal plans. */
export function bedFile(
  plan: MachinePlan,
  bed: PlannedBed,
  format: MachineFormat,
  edition: MachineProfile['dxf'],
): string {
  switch (format) {
    case 'svg':
      return machineSvg(plan, bed);
    case 'dxf':
      return edition === 'R12' ? machineDxfR12(plan, bed) : machineDxf2000(plan, bed);
    case 'hpgl':
      return hpgl(bed);
  }
}

/** Every bed of a pattern in one format for a machine; throws as `machinePlan`. */
export function machineFile(
  drawing: Drawing,
  profile: MachineProfile,
  format: MachineFormat,
  options: MachineOptions = {},
): string[] {
  const plan = machinePlan(drawing, profile, options);
  return plan.beds.map((bed) => bedFile(plan, bed, format, profile.dxf));
}
