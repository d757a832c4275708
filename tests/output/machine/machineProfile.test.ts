import { describe, expect, test } from 'vitest';
import { kerfFor } from '../../../src/output/machine/kerfFor.ts';
import { machineText, parseMachine, parseMachineText, passMarks } from '../../../src/output/machine/machineProfile.ts';
import { nth } from '../../nth.ts';
import { machineDocument, soundMachine } from './machines.ts';

const issuesOf = (change: object): string[] => {
  const parsed = parseMachine({ ...machineDocument, ...change });
  return parsed.ok ? [] : parsed.issues.map(({ path, message }) => `${path}: ${message}`);
};
const pass = (name: string, layers: string[], rest: object = {}) => ({ name, layers, ...rest });

describe('a machine profile', () => {
  test('is saved and opened again as the same machine', () => {
    const profile = soundMachine({});
    expect(parseMachineText(machineText(profile))).toEqual({ ok: true, profile });
  });

  test('has no passes, kerf or colours of its own: the least document is a name and a bed', () => {
    const parsed = parseMachine({
      format: 'coverwright-machine',
      version: 1,
      name: 'Bench cutter',
      bed: { width_mm: 600, height_mm: 400 },
    });
    expect(parsed).toMatchObject({ ok: true, profile: { passes: [], kerfs: [], words: 'none', crosses: false } });
  });

  test.each([
    ['an unknown field', { speed: 30 }, /^speed: got a field that a machine does not have/],
    ['a bed too small', { bed: { width_mm: 5, height_mm: 400 } }, /^bed\.width_mm: got 5; allowed: 20 or more/],
    [
      'a margin beyond the bed',
      { margin_mm: 200, bed: { width_mm: 300, height_mm: 300 } },
      /^margin_mm: got 200; allowed: less than half the bed, 150/,
    ],
    [
      'a kerf in words',
      { kerfs: [{ leather: 'veg', thickness_mm: 2, kerf_mm: 'thin' }] },
      /^kerfs\.0\.kerf_mm: got "thin"; allowed: a number/,
    ],
    [
      'a leather twice',
      {
        kerfs: [
          { leather: 'Veg ', thickness_mm: 2, kerf_mm: 0.2 },
          { leather: 'veg', thickness_mm: 2, kerf_mm: 0.3 },
        ],
      },
      /^kerfs\.1: .*each leather and thickness once/,
    ],
    ['an unknown layer', { passes: [pass('a', ['GLUE'])] }, /^passes\.0\.layers\.0: got "GLUE"; allowed: "TEXT", /],
    ['a pass of cautions', { passes: [pass('a', ['CAUTION'])] }, /^passes\.0\.layers\.0: got "CAUTION"/],
    [
      'words in a cutting pass',
      { passes: [pass('a', ['TEXT', 'CUT'])] },
      /^passes\.0\.layers: got "TEXT, CUT"; allowed: TEXT alone/,
    ],
    [
      'holes after the cut',
      { words: 'none', passes: [pass('a', ['CUT']), pass('b', ['HOLE'])] },
      /^passes\.1\.layers: got "HOLE"; .*before the pass of the cut edge/,
    ],
    [
      'a layer twice',
      { words: 'none', passes: [pass('a', ['MARK']), pass('b', ['FOLD', 'MARK'])] },
      /^passes\.1\.layers: got "MARK"; .*pass a takes it too/,
    ],
    [
      'two passes of one colour',
      {
        words: 'none',
        passes: [pass('a', ['MARK'], { colour: '#00ff00' }), pass('b', ['CUT'], { colour: '#00ff00' })],
      },
      /^passes\.1\.colour: got "#00ff00"; .*pass a has it too/,
    ],
    [
      'a name that DXF refuses',
      { passes: [pass('a', ['CUT'], { layer: 'Schnitt außen' })] },
      /^passes\.0\.layer: got "Schnitt außen"/,
    ],
    [
      'words without a pass',
      { words: 'strokes', passes: [pass('a', ['CUT'])] },
      /^words: got "strokes"; allowed: a pass that takes TEXT/,
    ],
    ['a newer version', { version: 2 }, /^version: got 2; allowed: 1/],
  ])('refuses %s, and says where, what and what to do', (_, change, message) => {
    const issues = issuesOf(change);
    expect(issues.length).toBeGreaterThan(0);
    expect(issues.join('\n')).toMatch(new RegExp(message.source, 'm'));
  });

  test('refuses a file that is no JSON, empty or far too long', () => {
    for (const [text, code] of [
      ['{', 'not_json'],
      ['  ', 'empty'],
      ['x'.repeat(300_000), 'too_large'],
    ] as const) {
      const parsed = parseMachineText(text);
      expect(parsed.ok ? '' : nth(parsed.issues, 0)).toMatchObject({ code, path: '(file)' });
    }
  });

  test('gives a pass without marks of its own those of its first layer', () => {
    const { passes } = soundMachine({
      passes: [pass('a', ['FOLD', 'MARK']), pass('b', ['CUT'], { pen: 7 })],
      words: 'none',
    });
    expect(passes.map(passMarks)).toEqual([
      { layer: 'FOLD', colour: '#0000ff', dxfColour: 5, pen: 1 },
      { layer: 'CUT', colour: '#ff0000', dxfColour: 1, pen: 7 },
    ]);
  });
});

describe('the kerf of a leather', () => {
  const profile = soundMachine({
    kerfs: [
      { leather: 'Shoulder, vegetable-tanned', thickness_mm: 2, kerf_mm: 0.3 },
      { leather: 'Shoulder, vegetable-tanned', thickness_mm: 1, kerf_mm: 0.2 },
      { leather: 'goat', thickness_mm: 0.9, kerf_mm: 0.15 },
    ],
  });
  const shoulder = 'shoulder, vegetable-tanned';

  test('is that of its row, in proportion between two rows, and of the nearest outside them', () => {
    expect(kerfFor(profile, shoulder, 2)).toMatchObject({ kerf_mm: 0.3, by: 'row' });
    const between = kerfFor(profile, shoulder, 1.25);
    expect(between?.kerf_mm).toBeCloseTo(0.225, 12);
    expect(between?.rows.map(({ thickness_mm }) => thickness_mm)).toEqual([1, 2]);
    expect(kerfFor(profile, shoulder, 3.5)).toMatchObject({ kerf_mm: 0.3, by: 'nearest' });
    expect(kerfFor(profile, 'GOAT', 2)).toMatchObject({ kerf_mm: 0.15, by: 'nearest' });
  });

  test('is never taken from another leather', () => {
    expect(kerfFor(profile, 'calf', 1)).toBeNull();
  });
});
