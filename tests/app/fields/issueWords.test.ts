import { expect, test } from 'vitest';
import tideLedger from '../../../public/jobs/tide-ledger.json' with { type: 'json' };
import { openIssues } from '../../../src/app/fields/fieldState.ts';
import { issueLine } from '../../../src/app/fields/issueWords.ts';
import { jobHistory, startHistory } from '../../../src/app/state/jobHistory.ts';
import { patched } from '../../../src/core/job/jobDocument.ts';
import type { JobPath } from '../../../src/core/job/jobPath.ts';
import { parseJob } from '../../../src/core/job/parseJob.ts';
import { readField } from '../../../src/core/job/readField.ts';

const linesFor = (...values: readonly (readonly [path: JobPath, value: unknown])[]): readonly string[] => {
  const parsed = parseJob(
    patched(
      tideLedger,
      values.map(([path, value]) => ({ path, value })),
    ),
  );
  return parsed.ok ? [] : parsed.issues.map(issueLine);
};

test('a broken rule is told by its labels, in sentences and with units', () => {
  expect(linesFor(['book.thickness_mm', 4])).toEqual([
    'Board: Two boards of 2.5 mm are thicker than the whole book (4 mm). Thickness is taken over both boards: check both.',
  ]);
  expect(linesFor(['book.thickness_mm', 5])[0]).toContain('are as thick as the whole book (5 mm)');
  expect(linesFor(['book.spine.rise_mm', 3])).toEqual([
    'Rise: 3 mm; it must be 0 for a flat spine. Choose a rounded spine, or set the rise to 0.',
  ]);
  expect(linesFor(['pattern.outsideWidth_mm', 50], ['seam.edgeMargin_mm', 30])).toEqual([
    'Outside width: 50 mm; it must be more than the two edge margins, 60 mm. Give a larger size, or leave it empty.',
  ]);
  expect(linesFor(['leather.outside.min_mm', 3])).toEqual([
    'Outside weight: 3 mm; it must be at most the thick end, 1.984375 mm. Swap the two ends of the range.',
  ]);
});

test('a figure out of range is told with both ends of its own range', () => {
  expect(linesFor(['book.width_mm', 5])).toEqual([
    'Width: 5 mm is too small: 30 to 1000 mm is allowed. Check the measure and its unit.',
  ]);
  expect(linesFor(['book.foldBack_deg', 400])).toEqual([
    'Boards bend back: 400 deg is too large: 0 to 180 deg is allowed. Check the measure and its unit.',
  ]);
});

test('a measure that was left out is missing, and no more is said of it', () => {
  expect(linesFor(['book.width_mm', undefined])).toEqual(['Width is missing.']);
  expect(linesFor(['pockets.depth_mm', '40'])[0]).toMatch(/^Pocket depth: /);
});

test('no broken rule shows a path, a null or a machine name', () => {
  const broken = [
    ...linesFor(['construction.corners', 'rounded'], ['construction.lining', 'full'], ['seam.style', 'whip']),
    ...linesFor(
      ['construction.penLoop', {}],
      ['pockets.construction', 'turned'],
      ['construction.strap', { width_mm: 8 }],
    ),
    ...linesFor(['leather.outside.foldThickness_mm', 5], ['book.square_mm', 25], ['book.width_mm', 60]),
    ...linesFor(['mockup.readings', { closes: true, opening_deg: 4 }], ['book.cornerRadius_mm', 20]),
    ...linesFor(['pattern.outsideHeight_mm', 30], ['seam.edgeMargin_mm', 20], ['book.foreEdgeThickness_mm', 250]),
  ];
  expect(broken.length).toBeGreaterThanOrEqual(9);
  for (const line of broken) {
    expect(line).toMatch(/^[A-Z][\w -]+: .+\.$/);
    expect(line).not.toMatch(/null|\w\.\w+_|_mm|_deg|undefined/);
  }
});

test('a field that is wrong twice is listed once, by its label', () => {
  const start = startHistory({ document: tideLedger, typed: {} }, tideLedger);
  const typed = (path: JobPath, text: string) => {
    const reading = readField(path, text, 'mm');
    return openIssues(
      jobHistory(start, {
        type: 'edit',
        patches: reading.ok ? reading.value : [],
        typed: { [path]: { text, unit: 'mm' } },
      }),
    ).map(({ label, words }) => `${label}${words}`);
  };
  expect(typed('leather.outside', '8.5-9 mm')).toEqual([
    'Outside weight: 8.5 mm is too large: 0.2 to 8 mm is allowed. Check the measure and its unit.',
  ]);
  expect(typed('book.width_mm', ' ')).toEqual(['Width is missing.']);
  expect(typed('book.width_mm', 'abc')).toEqual([
    'Width: “abc” is not a length. Write one number and its unit, as 216 mm or 8 1/2 in. Allowed: 30 to 1000 mm.',
  ]);
});

test('colours and surfaces are told by the leather they are of', () => {
  expect(linesFor(['finish.pocket', { colour: 'brown' }])).toEqual([
    'Pocket colour: "brown"; wanted: a colour as red, green and blue, as "#8f5b3a". Correct this value.',
  ]);
  expect(linesFor(['finish.outside.surface', 'wet'])[0]).toMatch(/^Outside surface: "wet"; wanted: "matt", "satin"/);
});
