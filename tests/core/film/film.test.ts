import { describe, expect, test } from 'vitest';
import { filmSteps, jamIn } from '../../../src/core/film/filmSteps.ts';
import { coverDesign } from '../../../src/core/fold/coverDesign.ts';
import { EXAMPLE_JOBS } from '../../../src/core/job/examples.ts';
import { foldedCover } from '../../../src/core/solid/foldedCover.ts';
import { staging } from '../../../src/core/solid/staging.ts';
import { defined } from '../../defined.ts';
import { soundJob } from '../../jobArbitrary.ts';

const tide = EXAMPLE_JOBS[0].document as Record<string, object>;
const design = coverDesign(soundJob(tide));
const swingsAt = (of: typeof design, at: number) => staging(of, 'nominal', { kind: 'sequence', at }).standing.swings;
const step = (of: typeof design, id: string) => defined(filmSteps(of, 'nominal').find((each) => each.id === id));

describe('the film', () => {
  test.each(EXAMPLE_JOBS)('bends both boards back as far as the check says, and no farther: $id', ({ document }) => {
    const of = coverDesign(soundJob(document));
    const { from, to } = step(of, 'secondBoard');
    const places = Array.from({ length: 41 }, (_, i) => from + ((to - from) * i) / 40);
    const bent = places.map((at) => swingsAt(of, at));
    const most = Math.max(...bent.flatMap(({ front, back }) => [front, back])) - Math.PI / 2;
    expect(most).toBeCloseTo(of.fits.nominal.pocket.loadingAngle, 6);
  });

  test('stops where the boards bend back no farther, the second before its mouth', () => {
    const stiff = coverDesign(soundJob({ ...tide, book: { ...tide.book, foldBack_deg: 40 } }));
    const jam = defined(jamIn(filmSteps(stiff, 'nominal')));
    expect(jam.needs.value).toBe(stiff.fits.nominal.pocket.loadingAngle);
    for (const at of [jam.at, 1]) {
      const { film } = foldedCover(stiff, { kind: 'sequence', at });
      expect(film.jam?.jam).toEqual(jam);
      expect(swingsAt(stiff, at).back - Math.PI / 2).toBeCloseTo((40 * Math.PI) / 180, 6);
    }
  });

  test('stops at the first board where it is too high, and at closing where the wrap is too short', () => {
    const height = design.pieces.outside.height - 8;
    const low = coverDesign(soundJob({ ...tide, pattern: { outsideHeight_mm: height } }));
    expect(jamIn(filmSteps(low, 'nominal'))?.at).toBeCloseTo(step(low, 'firstBoard').to, 6);
    const width = design.pieces.outside.width - design.fits.nominal.closedSlack - 1;
    const short = coverDesign(soundJob({ ...tide, pattern: { outsideWidth_mm: width } }));
    const jam = defined(jamIn(filmSteps(short, 'nominal')));
    const { opening } = foldedCover(short, { kind: 'sequence', at: 1 });
    expect(opening).toBeCloseTo(defined(short.fits.nominal.staysOpen), 6);
    expect(jam.at).toBeGreaterThan(step(short, 'close').from);
  });
});
