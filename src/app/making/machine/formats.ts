import type { MachineFormat } from '../../../output/machine/machineFile.ts';

/** Files for a machine, as they are saved. */
export const FORMATS: readonly { readonly format: MachineFormat; readonly title: string; readonly type: string }[] = [
  { format: 'svg', title: 'SVG', type: 'image/svg+xml' },
  { format: 'dxf', title: 'DXF', type: 'image/vnd.dxf' },
  { format: 'hpgl', title: 'HPGL', type: 'application/vnd.hp-hpgl' },
];
