import { describe, expect, test } from 'vitest';
import { coverSupplies } from '../../../src/core/materials/coverSupplies.ts';
import { quote } from '../../../src/core/materials/quote.ts';
import { workSteps } from '../../../src/core/materials/workSteps.ts';
import { toolingAmount } from '../../../src/core/tooling/toolingAmount.ts';
import { defined } from '../../defined.ts';
import { nth } from '../../nth.ts';
import type { Change } from '../pattern/coverOf.ts';
import { plainCover } from './plainCover.ts';

const DIAGONAL = { id: 'd', name: 'diagonal', kind: 'lines', width: 30, height: 40, lines: 'm0,0 30,40' };
const PICTURE = { id: 'p', name: 'picture', kind: 'picture', width: 2, height: 1, pixels: 'eJz7DwABAQEA' };
const cover = (designs: readonly object[], change: Change = {}) =>
  plainCover({ ...change, tooling: { designs, artworks: [DIAGONAL, PICTURE] } } as Change);
const tool = (design: ReturnType<typeof plainCover>) =>
  workSteps(design.job, coverSupplies(design)).find(({ id }) => id === 'tool');

describe('what is tooled', () => {
  test('is nothing without a design', () => {
    expect(toolingAmount(plainCover())).toEqual({ faces: [], line: 0, isEstimated: false });
    expect(tool(plainCover())).toBeUndefined();
  });

  test('is as long as its lines: a diagonal of 30 by 40 mm twice is 100 mm', () => {
    const amount = toolingAmount(
      cover([{ kind: 'drawing', area: 'front', artwork: 'd', width_mm: 30, repeat: { columns: 2 } }]),
    );
    expect(amount.line).toBeCloseTo(100, 6);
    expect(amount.isEstimated).toBe(false);
    // 197 to 347 mm less 5 mm at each side, 4.5 to 223.5 mm less 5 mm at each.
    expect(nth(amount.faces, 0)).toMatchObject({ face: 'front', clear: expect.closeTo(140 * 209, 3) });
  });

  test('counts a letter of a title as five times its height, a space as nothing, and says that this is estimated', () => {
    const amount = toolingAmount(cover([{ kind: 'title', area: 'spine', text: 'A B', height_mm: 8 }]));
    expect([amount.line, amount.isEstimated]).toEqual([80, true]);
  });

  test('counts a picture as strokes a millimetre apart: 20 by 10 mm are 200 mm', () => {
    const { faces, line } = toolingAmount(
      cover([{ kind: 'drawing', area: 'back', artwork: 'p', width_mm: 20, turn_deg: 30 }]),
    );
    expect([nth(faces, 0).pictures, nth(faces, 0).line, line]).toEqual([
      expect.closeTo(200, 6),
      0,
      expect.closeTo(200, 6),
    ]);
  });

  test('is timed by 100 mm of line, and freehand tooling as the step itself', () => {
    const designs = [{ kind: 'drawing', area: 'front', artwork: 'd', width_mm: 60 }];
    const rates = { prices: { hour: 60 }, minutes: { tooling: 4, tool: 50 } };
    const priced = cover(designs, { rates } as Change);
    expect(tool(priced)?.minutes).toBeCloseTo(4, 6);
    const line = defined(quote(priced, coverSupplies(priced)).lines.find(({ name }) => name === 'Tool the design'));
    expect(line.amount).toBe(4);
    expect(tool(cover([], { rates, order: { tool: true } } as Change))?.minutes).toBe(50);
  });
});
