import { describe, expect, test } from 'vitest';
import { EXAMPLE_JOBS } from '../../../src/core/job/examples.ts';
import { parseJob } from '../../../src/core/job/parseJob.ts';
import type { ToolingDesign } from '../../../src/core/job/toolingSchema.ts';
import type { DesignWarning } from '../../../src/core/tooling/designWarnings.ts';
import { designName, placeWords, warningWords } from '../../../src/core/tooling/designWords.ts';
import { printer } from '../../../src/core/units/printer.ts';
import { nth } from '../../nth.ts';

function designOf(written: object): ToolingDesign {
  const artworks = [{ id: 'a', name: 'fish', kind: 'lines', width: 10, height: 10, lines: 'm0,0 10,10' }];
  const parsed = parseJob({
    ...nth(EXAMPLE_JOBS, 0).document,
    tooling: { designs: [{ area: 'front', ...written }], artworks },
  });
  if (!parsed.ok) throw new Error(parsed.issues[0]?.message);
  return nth(parsed.job.tooling.designs, 0);
}

const title = (written: object = {}) => designOf({ kind: 'title', text: 'Psalms', ...written });
const border = (written: object = {}) => designOf({ kind: 'border', ...written });

const warning = (written: Partial<DesignWarning>): DesignWarning => ({
  bound: 'spine fold',
  side: 'left',
  distance: 2.08,
  margin: 5,
  ...written,
});

describe('a warning', () => {
  test.each([
    [{}, 'The title comes 2.1 mm from the spine fold; its margin is 5 mm.'],
    [
      { bound: 'board edge', side: 'top' },
      'The title comes 2.1 mm from the board edge at the head; its margin is 5 mm.',
    ],
    [{ bound: 'board edge' }, 'The title comes 2.1 mm from the board edge at the fore-edge; its margin is 5 mm.'],
    [{ distance: -3.04 }, 'The title goes 3.0 mm beyond the spine fold; its margin is 5 mm.'],
    [{ bound: 'seam', side: null, distance: 0 }, 'The title runs over a hole of the seam; its margin is 5 mm.'],
  ] as const)('of %j says how near and how near it may come', (written, words) => {
    expect(warningWords(title(), warning(written), printer('mm'))).toBe(words);
  });

  test('is in inches where the job is', () => {
    expect(warningWords(border(), warning({ distance: 25.4 / 16, margin: 25.4 / 4 }), printer('in'))).toBe(
      'The border comes 1/16 in from the spine fold; its margin is 1/4 in.',
    );
  });
});

describe('where a design stands', () => {
  test.each([
    [title(), 'on both centre lines'],
    [title({ x_mm: 12 }), '12 mm right of the centre, on the level centre line'],
    [title({ y_mm: -3.5 }), 'on the upright centre line, 3.5 mm below the centre'],
    [title({ x_mm: -1, y_mm: 2, turn_deg: -90 }), '1 mm left of the centre, 2 mm above the centre, turned −90°'],
    [border(), 'along the clear part'],
    [border({ inset_mm: 3 }), '3 mm inside the clear part'],
  ])('%#: %o', (design, words) => {
    expect(placeWords(design, printer('mm'))).toBe(words);
  });
});

test('a design is listed by what it says or by the name of its file', () => {
  const artworks = [{ id: 'a', name: 'fish', kind: 'lines', width: 10, height: 10, lines: 'm0,0 10,10' }] as const;
  expect(designName(title(), [])).toBe('Title “Psalms”');
  expect(designName(border(), [])).toBe('Border');
  expect(designName(border({ lines: 2 }), [])).toBe('Border of two lines');
  expect(designName(designOf({ kind: 'drawing', artwork: 'a' }), artworks)).toBe('Drawing “fish”');
});
