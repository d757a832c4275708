import { type MachineProfile, parseMachine } from '../../../src/output/machine/machineProfile.ts';

/** A laser of the invented workshop. */
export const machineDocument = {
  format: 'coverwright-machine',
  version: 1,
  name: 'Bench laser',
  bed: { width_mm: 1300, height_mm: 900 },
  margin_mm: 6,
  gap_mm: 4,
  kerfs: [{ leather: 'shoulder', thickness_mm: 2, kerf_mm: 0.25 }],
  passes: [
    { name: 'Words', layers: ['TEXT'], colour: '#00c000', power: 'low', speed: 'fast' },
    { name: 'Lines', layers: ['MARK', 'FOLD', 'SEAM', 'TOOLING'], colour: '#0000c0', layer: 'LINES' },
    { name: 'Holes', layers: ['HOLE', 'SLIT'], layer: 'INSIDE', pen: 5 },
    { name: 'Edge', layers: ['CUT'] },
  ],
  words: 'strokes',
} as const;

export function soundMachine(change: object): MachineProfile {
  const parsed = parseMachine({ ...machineDocument, ...change });
  if (!parsed.ok) throw new Error(parsed.issues.map(({ path, message }) => `${path}: ${message}`).join('\n'));
  return parsed.profile;
}
