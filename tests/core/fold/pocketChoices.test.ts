import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type CoverDesign, coverDesign } from '../../../src/core/fold/coverDesign.ts';
import { type PocketChoice, pocketChoices } from '../../../src/core/fold/pocketChoices.ts';
import { shareCovered } from '../../../src/core/pattern/pocketDepth.ts';
import { jobDocument, soundJob } from '../../jobArbitrary.ts';
import { checkLaw } from '../../laws.ts';
import { coverOf } from '../pattern/coverOf.ts';

const degrees = (angle: number): number => (angle * 180) / Math.PI;
const sharesOf = ({ choices }: { choices: readonly PocketChoice[] }) => choices.map(({ share }) => share);
const withShare = (share: number, change: object = {}): CoverDesign => coverOf({ pockets: { share }, ...change });

describe('the choices of how much board a pocket covers', () => {
  test('are half, two thirds, three quarters and what the cover has, in order, each once', () => {
    const shares = sharesOf(pocketChoices(withShare(0.4)));
    expect(shares).toEqual([expect.closeTo(0.4, 1), 1 / 2, 2 / 3, 3 / 4]);
    const { choices } = pocketChoices(withShare(2 / 3));
    expect(choices.map(({ isCurrent }) => isCurrent)).toEqual([false, true, false]);
  });

  test('ask for the fold-back past flat that clears the board covered: cos = 1 - share, without any gap', () => {
    // Ease 0 in leather of one thickness without rounding: 1 - 1/2, 1 - 2/3 and 1 - 3/4 have their angles at 60, 70.5 and 75.5.
    const leather = { outside: { min_mm: 1.6, max_mm: 1.6 } };
    const exact = { leather, ease: { foreEdge_mm: 0, head_mm: 0, tail_mm: 0 }, pattern: { rounding_mm: 0 } };
    const { choices } = pocketChoices(withShare(0.95, { ...exact, seating: 'front' }));
    const step = 0.5 / 165;
    for (const [i, share] of [1 / 2, 2 / 3, 3 / 4].entries()) {
      const angle = choices[i]?.loadingAngle ?? Number.NaN;
      expect(1 - Math.cos(angle)).toBeGreaterThanOrEqual(share - 1e-9);
      expect(1 - Math.cos(angle)).toBeLessThanOrEqual(share + step + 1e-9);
    }
  });

  test('tell which do not load and which do not hold', () => {
    const { choices } = pocketChoices(withShare(2 / 3, { book: { foldBack_deg: 65 } }));
    expect(choices.map(({ loads }) => loads)).toEqual([true, true, false, false]);
    expect(choices.every(({ loads, loadingAngle }) => loads === degrees(loadingAngle) <= 65 + 1e-6)).toBe(true);
    const held = pocketChoices(coverOf({ pockets: { share: 0.75, hold_mm: 100 } })).choices;
    expect(held.map(({ holds }) => holds)).toEqual([false, true, true]);
  });

  test('load where leather of every thickness does, and hold just as much as is asked for', () => {
    const current = (change: object) => pocketChoices(coverOf(change)).choices.find(({ isCurrent }) => isCurrent);
    const { fits } = coverOf({ pockets: { depth_mm: 100 } });
    const [thin, thick] = [degrees(fits.thin.pocket.loadingAngle), degrees(fits.thick.pocket.loadingAngle)];
    expect(thick).toBeGreaterThan(thin);
    const between = { pockets: { depth_mm: 100 }, book: { foldBack_deg: (thin + thick) / 2 } };
    expect(current(between)?.loads).toBe(false);
    const least = Math.min(...Object.values(fits).map(({ pocket }) => pocket.held));
    expect(current({ pockets: { depth_mm: 100, hold_mm: least } })?.holds).toBe(true);
    expect(current({ pockets: { depth_mm: 100, hold_mm: least + 0.01 } })?.holds).toBe(false);
  });

  test('say what kept the tool from the share asked for', () => {
    expect(pocketChoices(withShare(2 / 3)).keptBy).toBeNull();
    expect(pocketChoices(withShare(2 / 3, { book: { foldBack_deg: 60 } })).keptBy).toBe('loading');
    expect(pocketChoices(coverOf({ pockets: { share: 0.2, hold_mm: 90 } })).keptBy).toBe('hold');
    // A depth that is given is nobody's but the maker's.
    expect(pocketChoices(coverOf({ pockets: { share: 0.2, hold_mm: 90, depth_mm: 60 } })).keptBy).toBeNull();
  });

  test('are what a cover with that depth would have, and go together: deeper holds more and asks for more fold-back', () => {
    checkLaw(
      fc.property(jobDocument, (document) => {
        const { choices } = pocketChoices(coverDesign(soundJob(document)));
        for (const { depth, share, held, loadingAngle, isCurrent } of choices) {
          const pockets = isCurrent ? document.pockets : { ...document.pockets, depth_mm: depth };
          const alone = coverDesign(soundJob({ ...document, pockets }));
          expect(alone.pieces.pocketDepth).toBe(depth);
          expect(Math.abs(shareCovered(depth, alone.needs.thick) - share) * document.book.width_mm).toBeLessThan(
            0.5 + 1e-9,
          );
          const fits = Object.values(alone.fits).map(({ pocket }) => pocket);
          expect(held).toBe(Math.min(...fits.map((pocket) => pocket.held)));
          expect(loadingAngle).toBe(Math.max(...fits.map((pocket) => pocket.loadingAngle)));
        }
      }),
      { cost: 10 },
    );
  });
});
