import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import choirBook from '../../../public/jobs/choir-book.json' with { type: 'json' };
import { answerQuestion } from '../../../src/app/explore/answerQuestion.ts';
import type { Question } from '../../../src/app/explore/exploreMessage.ts';
import { isAnswer } from '../../../src/app/explore/startExploring.ts';
import { isFoldedCover } from '../../../src/app/scene/useFoldedCover.ts';
import { isElasticOverRange } from '../../../src/app/state/solveElastic.ts';
import { isReadArtwork } from '../../../src/app/worker/openArtwork.ts';
import {
  coverDesign,
  createElasticSolvers,
  createSettleSolver,
  elasticOverRange,
  foldedCover,
  settledCover,
} from '../../../src/core/index.ts';
import { jobDocument, soundJob } from '../../jobArbitrary.ts';
import { checkLaw } from '../../laws.ts';

const NONSENSE = [
  undefined,
  null,
  7,
  'done',
  Number.NaN,
  [],
  {},
  [null],
  { thin: {}, nominal: {}, thick: {} },
  { parts: 7 },
];

type Place = readonly (string | number)[];

/** Every number within a value, by its way there; of a long list its first, so that all kinds of numbers are met. */
function numbersIn(value: unknown, way: Place = []): Place[] {
  if (typeof value === 'number') return [way];
  if (typeof value !== 'object' || value === null || value instanceof Uint8Array || value instanceof Uint32Array)
    return [];
  const entries = Object.entries(value);
  return (Array.isArray(value) || ArrayBuffer.isView(value) ? entries.slice(0, 2) : entries).flatMap(([key, part]) =>
    numbersIn(part, [...way, key]),
  );
}

/** A copy of a value with something else at one place. */
function spoiled(value: unknown, way: Place, by: unknown): unknown {
  const copy = structuredClone(value);
  const last = way.length - 1;
  const holder = way.slice(0, last).reduce<unknown>((at, key) => (at as Record<string, unknown>)[key], copy);
  (holder as Record<string, unknown>)[way[last]!] = by;
  return copy;
}

/** Takes the answer, as it comes from a worker, and refuses it with a NaN at any place, and anything else. */
function expectWatched(accepts: (answer: unknown) => boolean, answer: unknown): void {
  const sent = structuredClone(answer);
  expect(accepts(sent)).toBe(true);
  for (const nonsense of NONSENSE) expect(accepts(nonsense), JSON.stringify(nonsense)).toBe(false);
  const places = numbersIn(sent);
  expect(places.length).toBeGreaterThan(0);
  const step = Math.max(1, Math.floor(places.length / 12));
  for (let i = 0; i < places.length; i += step)
    expect(accepts(spoiled(sent, places[i]!, Number.NaN)), places[i]!.join('.')).toBe(false);
}

describe('the page takes what its workers answer, and nothing else:', () => {
  const solvers = createElasticSolvers();

  test('the elastic strip, solved or not', () => {
    const wider = fc.constantFrom(null, -60, 0, 60);
    checkLaw(
      fc.property(jobDocument, wider, (document, by) => {
        const { outside } = coverDesign(soundJob(document)).pieces;
        const pattern = by === null ? {} : { outsideWidth_mm: Math.max(20, outside.width + by) };
        expectWatched(isElasticOverRange, elasticOverRange(coverDesign(soundJob({ ...document, pattern })), solvers));
      }),
      { cases: 4 },
    );
  });

  test('the folded cover, in the making and settled', () => {
    const design = coverDesign(soundJob(choirBook));
    const settle = settledCover(design, 'nominal', createSettleSolver());
    for (const pose of [
      { kind: 'opening', angle: 1 },
      { kind: 'sequence', at: 0.3 },
    ] as const)
      expectWatched(isFoldedCover, foldedCover(design, pose, 'nominal', settle));
  });

  test('curves, what must change, and trials, each to its own question', () => {
    const range = { from: 0.8, to: 3, count: 4 };
    const questions: readonly Question[] = [
      { kind: 'curve', document: choirBook, overlay: null, fieldId: 'leather.outside', resultId: 'foreEdge', range },
      { kind: 'changes', document: choirBook, target: 'all' },
      { kind: 'trials', document: choirBook },
    ];
    const answers = questions.map(answerQuestion);
    questions.forEach((question, i) => {
      expectWatched(
        (answer) => (Array.isArray(answer) && answer.length === 0 ? false : isAnswer(answer, question)),
        answers[i],
      );
      for (const [k, answer] of answers.entries()) expect(isAnswer(answer, question)).toBe(i === k);
    });
    expect(isAnswer(answers[0], { ...questions[0]!, fieldId: 'book.width_mm' } as Question)).toBe(false);
  });

  test('a drawing read, or why it is not', () => {
    const artwork = { id: 'a1', kind: 'lines', name: 'leaf', width: 10, height: 10, lines: 'm0 0 1 1' };
    expectWatched(isReadArtwork, { ok: true, artwork, width_mm: null, leftOut: [] });
    expect(isReadArtwork({ ok: false, issue: { message: 'no' } })).toBe(true);
    expect(isReadArtwork({ ok: true, issue: { message: 'no' } })).toBe(false);
  });
});
