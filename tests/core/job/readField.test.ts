import { describe, expect, test } from 'vitest';
import tideLedger from '../../../public/jobs/tide-ledger.json' with { type: 'json' };
import { fieldIssues, openIssues, understood } from '../../../src/app/fields/fieldState.ts';
import { jobHistory, startHistory } from '../../../src/app/state/jobHistory.ts';
import { typedText } from '../../../src/app/state/typedText.ts';
import { fieldNote } from '../../../src/core/job/fieldNote.ts';
import type { JobPath } from '../../../src/core/job/jobPath.ts';
import { readField } from '../../../src/core/job/readField.ts';

const changes = (path: JobPath, text: string, unit: 'mm' | 'in' = 'mm') => {
  const reading = readField(path, text, unit);
  return reading.ok ? reading.value : reading.message;
};

describe('a field reads what makers type', () => {
  test('a length in the unit of the bench, or in its own', () => {
    expect(changes('book.width_mm', '216')).toEqual([{ path: 'book.width_mm', value: 216 }]);
    expect(changes('book.width_mm', '8 1/2 in')).toEqual([{ path: 'book.width_mm', value: 215.9 }]);
    expect(changes('book.width_mm', '8.5', 'in')).toEqual([{ path: 'book.width_mm', value: 215.9 }]);
  });

  test('a leather weight, as both ends of its range', () => {
    expect(changes('leather.outside', '4-5 oz')).toEqual([
      { path: 'leather.outside.min_mm', value: 1.5875 },
      { path: 'leather.outside.max_mm', value: 1.984375 },
    ]);
  });

  test('a ratio, an angle or a stiffness, with or without its unit, and never as a length', () => {
    expect(changes('leather.outside.neutral', '0,6', 'in')).toEqual([{ path: 'leather.outside.neutral', value: 0.6 }]);
    expect(changes('book.foldBack_deg', '120°')).toEqual([{ path: 'book.foldBack_deg', value: 120 }]);
    expect(changes('leather.outside.modulus_MPa', '80 MPa')).toEqual([
      { path: 'leather.outside.modulus_MPa', value: 80 },
    ]);
  });

  test('and refuses the rest with what was got and what is allowed', () => {
    expect(changes('book.width_mm', 'wide')).toMatch(/^“wide” is not a length\. .* Allowed: 30 to 1000 mm\.$/);
    expect(changes('leather.outside.neutral', 'soft')).toBe(
      '“soft” is not a number. Write one number. Allowed: 0.4 to 0.8.',
    );
    expect(changes('leather.outside', '4-5')).toMatch(/oz or mm/);
  });
});

test('title, help and range of a field come from the schema, through its defaults and both leathers', () => {
  expect(fieldNote('leather.lining.bendRatio')).toMatchObject({ title: 'Bend ratio', min: 0.02, max: 3 });
  expect(fieldNote('pockets.depth_mm').unit).toBe('mm');
  expect(() => fieldNote('book.colour' as JobPath)).toThrow('book.colour');
});

test('a share is typed in percent; under 1 without the sign it is the share itself', () => {
  const share = (value: number) => [{ path: 'supplies.waste', value }];
  expect(changes('supplies.waste', '20 %')).toEqual(share(0.2));
  expect(changes('supplies.waste', '12,5%')).toEqual(share(0.125));
  expect(changes('supplies.waste', '20')).toEqual(share(0.2));
  expect(changes('supplies.waste', '0.2')).toEqual(share(0.2));
  expect(changes('supplies.waste', '0.2 %')).toEqual(share(0.002));
  expect(readField('supplies.waste', '0.2', 'mm')).toMatchObject({ understood: '20 %' });
  for (const text of ['a fifth', '301 %'])
    expect(readField('supplies.waste', text, 'mm')).toMatchObject({
      ok: false,
      message: expect.stringContaining('Allowed: 0 to 300 %.'),
    });
});

test('a change of size is typed in percent with its sign, and half a percent needs no sign', () => {
  const change = (value: number) => [{ path: 'making.changeAlong', value }];
  expect(changes('making.changeAlong', '-1')).toEqual(change(-0.01));
  expect(changes('making.changeAlong', '−1 %')).toEqual(change(-0.01));
  expect(changes('making.changeAlong', '-0.5')).toEqual(change(-0.005));
  expect(changes('making.changeAlong', '0.5')).toEqual(change(0.005));
  expect(changes('making.changeAlong', '1')).toEqual(change(0.01));
  expect(changes('making.changeAlong', '0.02')).toEqual(change(0.02));
  expect(readField('making.changeAlong', '-0.5', 'mm')).toMatchObject({ understood: '−0.5 %' });
  for (const text of ['-6', '4 %', '--1', '-'])
    expect(readField('making.changeAlong', text, 'mm')).toMatchObject({
      ok: false,
      message: expect.stringContaining('Allowed: −5 to 3 %.'),
    });
});

test('a doubt is typed as give or take, two standard uncertainties, and kept as one', () => {
  expect(changes('doubts.book.width_mm.u', '0.5')).toEqual([{ path: 'doubts.book.width_mm.u', value: 0.25 }]);
  expect(changes('doubts.book.width_mm.u', '1/16', 'in')).toEqual([{ path: 'doubts.book.width_mm.u', value: 0.79375 }]);
  expect(changes('doubts.making.changeAlong.u', '0.4')).toEqual([
    { path: 'doubts.making.changeAlong.u', value: 0.002 },
  ]);
  expect(changes('doubts.leather.outside.neutral.u', '0.16')).toEqual([
    { path: 'doubts.leather.outside.neutral.u', value: 0.08 },
  ]);
  for (const [path, text, allowed] of [
    ['doubts.book.width_mm.u', '41', '0 to 40 mm'],
    ['doubts.leather.outside.neutral.u', '0.5', '0 to 0.4'],
    ['doubts.making.changeAlong.u', '11 %', '0 to 10 %'],
    ['doubts.book.width_mm.u', '-1', '0 to 40 mm'],
    ['doubts.leather.outside.neutral.u', '-1', '0 to 0.4'],
  ] as const)
    expect(changes(path, text)).toContain(`Allowed: ${allowed}.`);
});

test('a figure typed without a unit keeps its meaning when the units of the job are switched', () => {
  const typed = { text: '216', unit: 'mm' } as const;
  expect(typedText(typed, 'book.height_mm', 'mm')).toBe('216');
  expect(typedText(typed, 'book.height_mm', 'in')).toBe('216 mm');
  // A share has no unit of length.
  expect(typedText({ text: '75', unit: 'mm' }, 'pockets.share', 'in')).toBe('75');
  expect(typedText({ text: '8 1/2 in', unit: 'mm' }, 'book.height_mm', 'in')).toBe('8 1/2 in');
});

describe('beside a field stands', () => {
  const start = startHistory({ document: tideLedger, typed: {} }, tideLedger);
  const typed = (path: JobPath, text: string) => {
    const reading = readField(path, text, 'mm');
    return jobHistory(start, {
      type: 'edit',
      patches: reading.ok ? reading.value : [],
      typed: { [path]: { text, unit: 'mm' } },
    });
  };

  test('what was understood, where that says more than the text', () => {
    expect(understood(typed('book.width_mm', '8 1/2 in'), 'book.width_mm')).toBe('8 1/2 in = 215.9 mm');
    expect(understood(typed('book.width_mm', '216 mm'), 'book.width_mm')).toBeNull();
    expect(understood(start, 'book.width_mm')).toBeNull();
  });

  test('the refusal of a text, or the issue of a value, at its own path only', () => {
    expect(fieldIssues(typed('book.width_mm', '8 1/2 xx'), 'book.width_mm')[0]).toMatch(/^“8 1\/2 xx” is not/);
    const tooSmall = typed('book.width_mm', '5');
    expect(fieldIssues(tooSmall, 'book.width_mm')[0]).toMatch(/^5 mm is too small: 30 to 1000 mm/);
    expect(fieldIssues(tooSmall, 'book.height_mm')).toEqual([]);
    expect(fieldIssues(start, 'book.width_mm')).toEqual([]);
  });

  test('an issue of one end of a range, at the field of the range', () => {
    expect(fieldIssues(typed('leather.outside', '8.5-9 mm'), 'leather.outside')).toHaveLength(2);
  });

  test('and all of them in one list', () => {
    expect(openIssues(start)).toEqual([]);
    expect(openIssues(typed('book.width_mm', 'wide')).map(({ path }) => path)).toEqual(['book.width_mm']);
    expect(openIssues(typed('book.width_mm', '5')).map(({ path }) => path)).toEqual(['book.width_mm']);
  });
});
