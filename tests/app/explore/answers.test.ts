import { describe, expect, test } from 'vitest';
import choirBook from '../../../public/jobs/choir-book.json' with { type: 'json' };
import tideLedger from '../../../public/jobs/tide-ledger.json' with { type: 'json' };
import { answerQuestion } from '../../../src/app/explore/answerQuestion.ts';
import type { Answers, Questions } from '../../../src/app/explore/exploreMessage.ts';
import { overlaysFor } from '../../../src/app/explore/overlays.ts';
import { type JobDocument, patched } from '../../../src/core/job/jobDocument.ts';
import { parseJob } from '../../../src/core/job/parseJob.ts';
import { CARD, TEMPERS, temperOf, temperPatches } from '../../../src/core/leather/temper.ts';
import { nth } from '../../nth.ts';

const trialsOf = (document: JobDocument): Questions['trials'] => ({ kind: 'trials', document });
const changesOf = (document: JobDocument): Questions['changes'] => ({
  kind: 'changes',
  document,
  target: 'all',
});

describe('an answer', () => {
  const range = { from: 0.8, to: 3, count: 12 };
  const curveOf = (overlay: JobDocument | null, fieldId = 'leather.outside'): Answers['curve'] =>
    answerQuestion({
      kind: 'curve',
      document: fieldId.startsWith('leather.lining') ? choirBook : tideLedger,
      overlay,
      fieldId,
      resultId: 'foreEdge',
      range,
    }) as Answers['curve'];

  test('can be sent from the worker: nothing in it is a function', () => {
    const all = [curveOf(choirBook), answerQuestion(changesOf(tideLedger)), answerQuestion(trialsOf(choirBook))];
    for (const answer of all) expect(structuredClone(answer)).toEqual(answer);
  });

  test('has the second job over the same values, or none where that job lacks the field', () => {
    const { curve, overlay } = curveOf(choirBook);
    expect(overlay?.field.present).toBe(2.38125);
    const even = ({ points }: typeof curve, present: number) =>
      points.map(({ at }) => at).filter((at) => at !== present);
    expect(even(overlay!, 2.38125)).toEqual(even(curve, 1.984375));
    expect(curveOf(tideLedger, 'leather.lining').overlay).toBeNull();
  });

  test('is refused for a field that the job itself lacks', () => {
    expect(() =>
      answerQuestion({
        kind: 'curve',
        document: tideLedger,
        overlay: null,
        fieldId: 'leather.lining',
        resultId: 'head',
        range,
      }),
    ).toThrow('leather.lining');
  });
});

describe('what is laid over', () => {
  test('is a job, each named once', () => {
    const overlays = overlaysFor(tideLedger, choirBook);
    for (const { document } of overlays) expect(parseJob(document).ok).toBe(true);
    expect(new Set(overlays.map(({ name }) => name)).size).toBe(overlays.length);
    expect(overlays[0]).toMatchObject({ id: 'pinned', name: 'Choir book, pinned' });
  });
});

describe('a temper', () => {
  test('that was chosen is the one found, for every word and one after another', () => {
    let document: JobDocument = tideLedger;
    let before = nth(TEMPERS, 1);
    for (const temper of [...TEMPERS, CARD, ...TEMPERS]) {
      document = patched(document, temperPatches('outside', temper, before));
      const parsed = parseJob(document);
      if (!parsed.ok) throw new Error(parsed.issues[0]?.message);
      expect(temperOf(parsed.job.leather.outside)?.name).toBe(temper.name);
      expect(parsed.job.leather.outside.density_kg_m3).toBe(temper === CARD ? CARD.density_kg_m3 : 950);
      before = temper;
    }
  });

  test("keeps the maker's density, and card removes the skiving", () => {
    const own = patched(tideLedger, [
      { path: 'leather.outside.density_kg_m3', value: 870 },
      { path: 'leather.outside.foldThickness_mm', value: 1.2 },
    ]);
    const firm = patched(own, temperPatches('outside', nth(TEMPERS, 2), nth(TEMPERS, 1)));
    expect(firm).toMatchObject({ leather: { outside: { density_kg_m3: 870, foldThickness_mm: 1.2 } } });
    const card = patched(own, temperPatches('outside', CARD, nth(TEMPERS, 1)));
    expect(parseJob(card).ok).toBe(true);
    expect(card).toMatchObject({ leather: { outside: { max_mm: 0.5 } } });
  });
});
