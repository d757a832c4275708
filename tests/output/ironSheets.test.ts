import { describe, expect, test } from 'vitest';
import { seamLength, seamLines } from '../../src/core/materials/seamLine.ts';
import { placeOfHole } from '../../src/core/pattern/evenPitch.ts';
import { patternDrawing } from '../../src/core/pattern/patternDrawing.ts';
import { seamHoles } from '../../src/core/pattern/seamHoles.ts';
import { designReport } from '../../src/core/report/designReport.ts';
import { benchSheetContent } from '../../src/output/benchSheet/benchSheetContent.ts';
import { customerSheet } from '../../src/output/customerSheet/customerSheet.ts';
import { draftingSheet } from '../../src/output/draftingSheet/draftingSheet.ts';
import { titleBlock } from '../../src/output/titleBlock.ts';
import { type Change, coverOf } from '../core/pattern/coverOf.ts';
import { defined } from '../defined.ts';
import { nth } from '../nth.ts';
import { lengthOf } from './draftingSheet/drawnByHand.ts';

const three = { kind: 'pricking iron', name: 'Rowan', pitch_mm: 3, teeth: [10, 2], tooth_mm: 2, angle_deg: 45 };
const stitched = { method: 'stitching', style: 'saddle', edgeMargin_mm: 4, iron: three };
const punch = { kind: 'drive punch', pitch_mm: 6, teeth: [1], tooth_mm: 2.5 };
const punched = { method: 'lacing', style: 'whip', edgeMargin_mm: 5, iron: punch };

/** 1 mm more than 125 strides of 3 mm and two margins, and as much over 82. */
const UNEVEN = { outsideWidth_mm: 384, outsideHeight_mm: 255 };

const benchWords = (change: Change): string => JSON.stringify(benchSheetContent(coverOf(change)).blocks);
const draftOf = (change: Change) => {
  const design = coverOf(change);
  return nth(draftingSheet(design, patternDrawing(design)).drafts, 0).steps.join(' ');
};

describe('a side that is not whole strides', () => {
  test('is divided on the drafting sheet as it is on the template', () => {
    const said = draftOf({ seam: stitched, pattern: UNEVEN });
    expect(said).toContain(
      'Tail and head: from corner hole to corner hole divide the seam line into 125 spaces: 59 of 3 mm, 7 of 3.14 mm, 59 of 3 mm.',
    );
    const tail = nth(seamHoles(coverOf({ seam: stitched, pattern: UNEVEN })).rows, 0);
    const tenths = defined(nth(said.match(/every tenth space ends at ([\d., ]+) mm/) ?? [], 1)).split(', ');
    expect(tenths).toHaveLength(12);
    for (const [i, place] of tenths.entries())
      expect(lengthOf(`${place} mm`)).toBeCloseTo(placeOfHole(tail, 10 * (i + 1)), 1);
  });

  test('is told on the bench sheet with the strides that differ', () => {
    expect(benchWords({ seam: stitched, pattern: UNEVEN })).toContain('tail 125: 59 of 3 mm, 7 of 3.14 mm, 59 of 3 mm');
  });
});

test('thread is reckoned for the length of the seam, uneven strides too', () => {
  // Two margins less than the outside each way.
  expect(seamLength(seamLines(coverOf({ seam: stitched, pattern: UNEVEN })))).toBeCloseTo(2 * (384 - 8 + 255 - 8), 9);
});

describe('a seam that is laced through punched holes', () => {
  const change = { seam: punched };
  test('has no slits on any sheet', () => {
    const design = coverOf(change);
    const sheets = [
      benchWords(change),
      draftOf(change),
      JSON.stringify(customerSheet(design, designReport(design))),
      JSON.stringify(patternDrawing(design)),
      JSON.stringify(titleBlock({ sheet: 'Template', job: design.job, design, document: {} as never })),
    ];
    for (const words of sheets) expect(words).not.toMatch(/\bslits?\b/i);
    expect(benchWords(change)).toContain('Punch the holes');
    expect(sheets[2]).toContain('a hole every 6 mm');
  });

  test('has slits where a chisel cuts them', () => {
    expect(benchWords({ seam: { ...punched, iron: { ...punch, kind: 'lacing chisel' } } })).toContain('Cut the slits');
  });
});

test('the title block names the iron and its holes', () => {
  const seamOf = (change: Change): string => {
    const design = coverOf(change);
    const { facts } = titleBlock({ sheet: 'Template', job: design.job, design, document: {} as never });
    return defined(facts.find(({ name }) => name === 'Seam')).value;
  };
  expect(seamOf({ seam: stitched })).toBe(
    'stitched, 4 mm from the edge, pitch 3 mm by Rowan (pricking iron, 10 and 2 teeth), holes 2 mm',
  );
  expect(seamOf({ seam: punched })).toBe(
    'laced, whip, 5 mm from the edge, pitch 6 mm by drive punch (1 tooth), holes 2.5 mm',
  );
});
