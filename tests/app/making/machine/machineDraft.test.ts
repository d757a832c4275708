import { describe, expect, test } from 'vitest';
import { machineDraft, machineDraftSchema, readMachine } from '../../../../src/app/making/machine/machineDraft.ts';
import { soundMachine } from '../../../output/machine/machines.ts';

const profile = soundMachine({ crosses: true, dxf: 'R12', curves: { as: 'points', tolerance_mm: 0.02 } });

describe('a machine as it is typed', () => {
  test('reads back as the machine it was opened from', () => {
    expect(readMachine(machineDraft(profile, '1'))).toEqual({ profile, issues: new Map() });
  });

  test('starts without bed, kerf and passes, and says what is missing', () => {
    const { profile, issues } = readMachine(machineDraftSchema.parse({ id: '1', name: 'New' }));
    expect(profile).toBeNull();
    expect([...issues.keys()]).toEqual(['bed.width_mm', 'bed.height_mm']);
  });

  test('takes lengths as makers type them', () => {
    const draft = { ...machineDraft(profile, '1'), width: '24 in', height: '40 cm' };
    expect(readMachine(draft).profile?.bed).toEqual({ width_mm: 609.6, height_mm: 400 });
  });

  test.each([
    ['width', 'wide', 'bed.width_mm', /“wide” is not a length/],
    ['height', '6', 'bed.height_mm', /Got 6; allowed: 20 or more\. Check the measure/],
    ['name', ' ', 'name', /Type a name/],
  ] as const)('says what is wrong with %s of “%s” at its field', (field, text, path, message) => {
    const { profile: made, issues } = readMachine({ ...machineDraft(profile, '1'), [field]: text });
    expect(made).toBeNull();
    expect(issues.get(path)).toMatch(message);
  });

  test('says at a pass what is wrong with it', () => {
    const draft = machineDraft(profile, '1');
    const passes = draft.passes.map((pass, i) => (i === 3 ? { ...pass, layers: [], pen: '1.5', colour: 'red' } : pass));
    const { issues } = readMachine({ ...draft, passes });
    expect(issues.get('passes.3.pen')).toMatch(/“1\.5” is not a whole number/);
    expect(issues.get('passes.3.colour')).toMatch(/such as #00ff00/);
    expect(issues.has('passes.3.layers')).toBe(true);
  });
});
