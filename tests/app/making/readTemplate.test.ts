import { afterEach, expect, test, vi } from 'vitest';
import { readTemplate } from '../../../src/app/making/template/readTemplate.ts';
import {
  keepTemplateChoice,
  keptTemplateChoice,
  type TemplateChoice,
} from '../../../src/app/making/template/templateChoice.ts';
import { templatePages } from '../../../src/app/making/template/templatePages.ts';
import { coverDesign } from '../../../src/core/fold/coverDesign.ts';
import { EXAMPLE_JOBS } from '../../../src/core/job/examples.ts';
import { parseJob } from '../../../src/core/job/parseJob.ts';
import { patternDrawing } from '../../../src/core/pattern/patternDrawing.ts';
import { patternPdf } from '../../../src/output/pdf/patternPdf.ts';
import { readPdf } from '../../output/pdfReading.ts';

const settings = (change: Partial<TemplateChoice> = {}) => readTemplate({ ...keptTemplateChoice(), ...change });

afterEach(() => vi.unstubAllGlobals());

test('nothing typed means the chosen sheet, no correction and no laser', () => {
  expect(settings()).toEqual({ paper: 'A4', bars: undefined, kerf_mm: undefined, issues: {}, suspicion: null });
});

test('both bars correct the printer; one alone, or one that is far off, does not', () => {
  expect(settings({ barX: '149.2', barY: '150.4 mm' }).bars).toEqual({ x_mm: 149.2, y_mm: 150.4 });
  expect(settings({ barX: '149.2' })).toMatchObject({
    bars: undefined,
    issues: { barY: expect.stringMatching(/both/) },
  });
  expect(settings({ barX: '149.2', barY: '100' })).toMatchObject({
    bars: undefined,
    issues: { barY: expect.stringMatching(/The check bar upright measures 100 mm/) },
  });
  expect(settings({ barX: 'long', barY: '150' }).issues.barX).toMatch(/^“long” is not a length/);
});

test('bars that show a fitted page are told from a printer that is off', () => {
  expect(settings({ barX: '141.1', barY: '141.1' }).suspicion).toMatch(/94\.1 %.*Letter/);
  expect(settings({ paper: 'Letter', barX: '145.9', barY: '145.9' }).suspicion).toMatch(/97\.3 %.*A4/);
  expect(settings({ barX: '149', barY: '149' }).suspicion).toBeNull();
});

test('a roll must be one that printers take, and a kerf one that a beam burns', () => {
  expect(settings({ paper: 'roll', roll: '24 in' }).paper).toEqual({ roll_mm: 609.6 });
  expect(settings({ paper: 'roll', roll: '20' })).toMatchObject({ paper: null, issues: { roll: expect.any(String) } });
  expect(settings({ kerf: '0.2' }).kerf_mm).toBe(0.2);
  expect(settings({ kerf: '3' })).toMatchObject({
    kerf_mm: undefined,
    issues: { kerf: expect.stringMatching(/0 to 2/) },
  });
});

test('the pages said beforehand are the pages of the file', async () => {
  const parsed = parseJob(EXAMPLE_JOBS[0].document);
  if (!parsed.ok) throw new Error(parsed.issues[0]?.message);
  const drawing = patternDrawing(coverDesign(parsed.job));
  const bars = { x_mm: 148, y_mm: 151 };
  for (const paper of ['A4', 'Tabloid', { roll_mm: 610 }] as const)
    expect(await readPdf(await patternPdf(drawing, { paper, bars }))).toHaveLength(
      templatePages(drawing, paper, { bars }).pages,
    );
});

test('the printer is kept in the browser, and what cannot be read is left alone', () => {
  let kept: string | null = null;
  vi.stubGlobal('localStorage', { getItem: () => kept, setItem: (_: string, text: string) => (kept = text) });
  const choice: TemplateChoice = { ...keptTemplateChoice(), paper: 'Letter', barX: '149', leftOut: ['text'] };
  keepTemplateChoice(choice);
  expect(keptTemplateChoice()).toEqual(choice);
  kept = '{"paper":"napkin"}';
  expect(keptTemplateChoice().paper).toBe('A4');
});
