import { describe, expect, test } from 'vitest';
import { endFrames, shownSegments } from '../../../src/app/strip/endFrame.ts';
import { endHandles, handleValue, mouthHandle, sizeHandle } from '../../../src/app/strip/handles.ts';
import { rulerTicks } from '../../../src/app/strip/rulerTicks.ts';
import { spreadLabels } from '../../../src/app/strip/spreadLabels.ts';
import { outsideWords } from '../../../src/app/strip/stripLabels.ts';
import { stripLayout } from '../../../src/app/strip/stripLayout.ts';
import { boardEdge, cutEdge, type End, mouth, rangeTracks, seamLine, track } from '../../../src/app/strip/track.ts';
import { untunedDesign, untuning } from '../../../src/app/strip/untunedDesign.ts';
import { type CoverDesign, coverDesign } from '../../../src/core/fold/coverDesign.ts';
import { patternZone } from '../../../src/core/fold/patternZone.ts';
import { heightSegments, type StripSegment, stripSegments } from '../../../src/core/fold/segments.ts';
import { EXAMPLE_JOBS } from '../../../src/core/job/examples.ts';
import { type JobDocument, type Patch, patched } from '../../../src/core/job/jobDocument.ts';
import { parseJob } from '../../../src/core/job/parseJob.ts';
import { RANGE_POINTS } from '../../../src/core/leather/leatherModel.ts';
import { printer } from '../../../src/core/units/printer.ts';
import { defined } from '../../defined.ts';
import { nth } from '../../nth.ts';

function designOf(document: unknown, patches: readonly Patch[] = []) {
  const parsed = parseJob(patched(document as JobDocument, patches));
  if (!parsed.ok) throw new Error(parsed.issues[0]?.message);
  return coverDesign(parsed.job);
}

const [tideLedger] = EXAMPLE_JOBS;
const kinds = (segments: readonly StripSegment[]): string => segments.map(({ kind }) => kind).join(' ');
const total = (segments: readonly StripSegment[]): number => segments.reduce((sum, { length }) => sum + length, 0);

describe('the stretches of the strip', () => {
  const cases: readonly (readonly [string, readonly Patch[]])[] = [
    ['as it is', []],
    ['with turned ends', [{ path: 'pockets.construction', value: 'turned' }]],
    ['with the boards at the spine', [{ path: 'seating', value: 'spine' }]],
    ['with the boards to the front', [{ path: 'seating', value: 'front' }]],
    ['cut too small', [{ path: 'pattern.outsideWidth_mm', value: 250 }]],
    ['with rounded edges', [{ path: 'book.cornerRadius_mm', value: 4 }]],
    ['with a swollen fore-edge', [{ path: 'book.foreEdgeThickness_mm', value: 56 }]],
  ];
  test.each(cases)('add up to the outside width and follow without a break: every book %s', (_, patches) => {
    for (const { document } of EXAMPLE_JOBS) {
      const design = designOf(document, patches);
      for (const point of RANGE_POINTS) {
        const segments = stripSegments(design, point);
        expect(total(segments)).toBeCloseTo(design.pieces.outside.width, 9);
        expect(nth(segments, 0).from).toBe(0);
        for (const [i, segment] of segments.entries()) {
          expect(segment.to - segment.from).toBeCloseTo(segment.length, 9);
          if (i > 0) expect(segment.from).toBe(nth(segments, i - 1).to);
        }
        expect(new Set(segments.map(({ id }) => id)).size).toBe(segments.length);
      }
    }
  });

  test('stand in the order of the wrap', () => {
    expect(kinds(stripSegments(designOf(tideLedger.document), 'thick'))).toBe(
      'edgeMargin seat gap board fold spine fold board gap seat edgeMargin',
    );
    const turned = designOf(tideLedger.document, [{ path: 'pockets.construction', value: 'turned' }]);
    expect(kinds(stripSegments(turned, 'thick'))).toBe(
      'turnedEnd turn gap board fold spine fold board gap turn turnedEnd',
    );
  });

  test('show spare length at the spine as its own stretch when the boards sit there', () => {
    const segments = stripSegments(designOf(tideLedger.document, [{ path: 'seating', value: 'spine' }]), 'thick');
    expect(defined(segments.find(({ id }) => id === 'spineGap')).length).toBeGreaterThan(0);
    expect(defined(segments.find(({ id }) => id === 'frontGap')).length).toBe(0);
  });

  test('run backward where the board overruns its seat', () => {
    const small = designOf(tideLedger.document, [{ path: 'pattern.outsideWidth_mm', value: 376 }]);
    const gap = defined(stripSegments(small, 'thick').find(({ id }) => id === 'frontGap'));
    expect(gap.length).toBe(small.fits.thick.foreEdge.front);
    expect(gap.length).toBeLessThan(0);
    expect(gap.to).toBeLessThan(gap.from);
  });

  test('of a flat back are the board, one fold of K t a quarter turn, and the thickness', () => {
    const design = designOf(tideLedger.document);
    const length = (id: string): number =>
      defined(stripSegments(design, 'thick').find((segment) => segment.id === id)).length;
    expect(length('frontBoard')).toBeCloseTo(165, 9);
    expect(length('spine')).toBeCloseTo(28, 9);
    // One leather thickness a fold: (pi/2)(2/pi) t.
    expect(length('frontFold')).toBeCloseTo(1.984375, 9);
  });
});

describe('labels along a line', () => {
  test('stay where they wish to be when they do not crowd', () => {
    expect(spreadLabels([10, 50, 90], [10, 10, 10], 100)).toEqual([10, 50, 90]);
  });

  test('that crowd stand side by side about their middle', () => {
    expect(spreadLabels([50, 50, 50], [10, 10, 10], 100)).toEqual([40, 50, 60]);
  });

  test('never overlap and never leave the line, whatever they wish', () => {
    let seed = 20261;
    const random = (): number => {
      seed = (seed * 48271) % 2147483647;
      return seed / 2147483647;
    };
    for (let round = 0; round < 200; round++) {
      const sizes = Array.from({ length: 1 + Math.floor(random() * 12) }, () => 5 + random() * 30);
      const room = sizes.reduce((sum, size) => sum + size, 0) * (1 + random());
      const wishes = sizes.map(() => (random() * 2 - 0.5) * room).sort((a, b) => a - b);
      const centres = spreadLabels(wishes, sizes, room);
      const edges = centres.flatMap((centre, i) => [centre - nth(sizes, i) / 2, centre + nth(sizes, i) / 2]);
      for (let i = 1; i < edges.length; i++) expect(nth(edges, i) - nth(edges, i - 1)).toBeGreaterThan(-1e-6);
      expect(edges[0]).toBeGreaterThan(-1e-6);
      expect(edges.at(-1)).toBeLessThan(room + 1e-6);
    }
  });
});

describe('the layout of the strip', () => {
  const tide = track(designOf(tideLedger.document), 'width', 'thick', 'thick end');
  const { segments } = tide;
  const labels = segments.map(({ id }) => ({ id, lines: ['edge', 'margin', '12.3 mm'], side: '' }));

  test('sets every label above where the room allows it, else half of them below', () => {
    const wide = stripLayout(tide, labels, 2, 900, 382.5);
    expect(wide.labels.every(({ top }) => top === 0)).toBe(true);
    const narrow = stripLayout(tide, labels, 2, 400, 382.5);
    expect(narrow.labels.filter(({ top }) => top === 0)).toHaveLength(6);
    expect(narrow.width).toBe(400);
  });

  test('grows wider than the room rather than let labels overlap', () => {
    expect(stripLayout(tide, labels, 2, 200, 382.5).width).toBeGreaterThan(200);
  });

  test('is to scale from end to end', () => {
    const { place, width } = stripLayout(tide, labels, 2, 900, 382.5);
    expect((place(300) - place(100)) / (place(382.5) - place(0))).toBeCloseTo(200 / 382.5, 12);
    expect(place(-382.5 / 2)).toBeGreaterThan(0);
    expect(place(382.5 / 2)).toBeLessThan(width);
  });
});

test('the ruler numbers whole inches, or every 50 mm, and ends within the piece', () => {
  expect(rulerTicks(382.5, 'mm').filter(({ text }) => text !== null)).toHaveLength(8);
  expect(rulerTicks(50, 'mm').at(-1)).toEqual({ at: 50, text: '50' });
  const inches = rulerTicks(25.4 * 3, 'in');
  expect(inches.filter(({ text }) => text !== null).map(({ text }) => text)).toEqual(['0', '1', '2', '3']);
  expect(inches).toHaveLength(13);
});

describe('the stretches from head to tail', () => {
  test('add up to the outside height, whatever is tuned', () => {
    for (const { document } of EXAMPLE_JOBS) {
      for (const patches of [
        [],
        [{ path: 'pattern.outsideHeight_mm', value: 200 }],
        [{ path: 'ease.head_mm', value: 3 }],
      ] as const) {
        const design = designOf(document, patches);
        for (const point of RANGE_POINTS) {
          const segments = heightSegments(design, point);
          expect(total(segments)).toBeCloseTo(design.pieces.outside.height, 9);
          expect(kinds(segments)).toBe('edgeMargin seat gap board gap seat edgeMargin');
        }
      }
    }
  });
});

describe('a handle', () => {
  const ends: readonly End[] = ['first', 'last'];
  /** Exact sizes, so that a line's place follows the field without the rounding of cut sizes. */
  const exact: Patch = { path: 'pattern.rounding_mm', value: 0 };
  const sized: readonly Patch[] = [
    exact,
    { path: 'pattern.outsideWidth_mm', value: 383 },
    { path: 'pattern.outsideHeight_mm', value: 257 },
  ];
  const turned: Patch = { path: 'pockets.construction', value: 'turned' };
  const books = EXAMPLE_JOBS.flatMap(({ document }) => [
    { document, patches: [exact] },
    { document, patches: sized },
    { document, patches: [exact, turned] },
    { document, patches: [...sized, turned] },
  ]);

  /** Where the lines of one end stand: cut edge, and margin against the rest. */
  const lines = (design: CoverDesign, axis: 'width' | 'height', end: End) => {
    const laid = track(design, axis, 'thick', '');
    return { cut: cutEdge(laid, end), seam: seamLine(laid, end) };
  };

  test('takes its line as far as it goes itself, at every end of every book', () => {
    for (const { document, patches } of books) {
      const before = designOf(document, patches);
      for (const axis of ['width', 'height'] as const) {
        for (const end of ends) {
          const outward = end === 'first' ? -1 : 1;
          for (const line of ['cut', 'seam'] as const) {
            const handle = endHandles(before, axis, end)[line];
            const value = handleValue(handle, 0.8, 'mm');
            const travel = (value - handleValue(handle, 0, 'mm')) / handle.rate;
            // The handle's own value lies on no step where the tool has decided it.
            const after = designOf(document, [
              ...patches,
              { path: handle.path, value: handle.value + handle.rate * travel },
            ]);
            const moved = outward * (lines(after, axis, end)[line] - lines(before, axis, end)[line]);
            // A sized ease follows what it pays for, and so by a little the margin.
            const digits = before.pieces.ease.sized.length > 0 ? 2 : 6;
            expect(moved, `${handle.name} at ${axis} ${end}`).toBeCloseTo(travel, digits);
            expect(travel).not.toBe(0);
          }
        }
      }
    }
  });

  test('at a mouth takes the mouth along, and the outside size both cut edges', () => {
    for (const { document } of EXAMPLE_JOBS) {
      const before = designOf(document, [exact]);
      const deeper = designOf(document, [exact, { path: 'pockets.depth_mm', value: before.pieces.pocketDepth + 3 }]);
      expect(mouthHandle(before).rate * (defined(mouth(deeper)) - defined(mouth(before)))).toBeCloseTo(3, 9);
      const handle = sizeHandle(before, 'width');
      const wider = designOf(document, [exact, { path: handle.path, value: handle.value + 2 * handle.rate }]);
      expect(lines(wider, 'width', 'last').cut - lines(before, 'width', 'last').cut).toBeCloseTo(2, 9);
    }
  });

  test('goes in whole steps of the unit and stays within what the field allows', () => {
    const { seam } = endHandles(designOf(tideLedger.document), 'width', 'first');
    expect(seam.path).toBe('ease.foreEdge_mm');
    expect(handleValue(seam, 0.33, 'mm')).toBe(1.3);
    expect(handleValue(seam, 0.33, 'in')).toBeCloseTo((3 * 25.4) / 64, 6);
    expect(handleValue(seam, -50, 'mm')).toBe(0);
    expect(handleValue(seam, 50, 'mm')).toBe(20);
  });
});

describe('the untuned pattern', () => {
  const untunedOf = (document: unknown): JobDocument =>
    patched(document as JobDocument, untuning(document as JobDocument));

  test('stands behind a tuned one and is what taking the tuning back gives', () => {
    for (const { document } of EXAMPLE_JOBS) {
      const plain = untunedOf(document);
      const untuned = designOf(plain);
      for (const path of [
        'ease.tail_mm',
        'seam.edgeMargin_mm',
        'pockets.depth_mm',
        'pattern.outsideWidth_mm',
      ] as const) {
        const tuned = patched(plain, [{ path, value: { 'pattern.outsideWidth_mm': 500 }[path as string] ?? 15 }]);
        const shown = defined(untunedDesign(tuned, designOf(tuned)));
        expect(shown.pieces).toEqual(untuned.pieces);
        expect(patched(tuned, untuning(tuned))).not.toHaveProperty(path);
      }
    }
  });

  test('is not shown while nothing differs from it', () => {
    const plain = untunedOf(tideLedger.document);
    expect(untunedDesign(plain, designOf(plain))).toBeNull();
    const { foreEdge_mm, head_mm, tail_mm } = designOf(plain).pieces.ease;
    const same = patched(plain, [{ path: 'ease', value: { foreEdge_mm, head_mm, tail_mm } }]);
    expect(untunedDesign(same, designOf(same))).toBeNull();
  });
});

test('enlarged ends hold every track to one scale, the untuned cover among them', () => {
  const [thick, thin] = (['thick', 'thin'] as const).map((point) =>
    track(designOf(tideLedger.document), 'width', point, point),
  );
  const untuned = track(
    designOf(tideLedger.document, [{ path: 'pattern.outsideWidth_mm', value: 400 }]),
    'width',
    'thick',
    '',
  );
  const frames = endFrames([thick!, thin!, untuned], 300, { tab: 20, board: 50 });
  expect(frames.first.scale).toBe(frames.last.scale);
  for (const end of ['first', 'last'] as const) {
    const { place, shown } = frames[end];
    expect(place(cutEdge(untuned, end))).toBeCloseTo(end === 'first' ? 20 : 280, 9);
    for (const each of [thick!, thin!]) {
      const xs = shownSegments(each, frames[end]).flatMap(({ from, to }) => [place(from), place(to)]);
      expect(Math.min(...xs)).toBeGreaterThanOrEqual(-1e-9);
      expect(Math.max(...xs)).toBeLessThanOrEqual(300 + 1e-9);
    }
    // Of the board of every track there is at least what was asked for.
    for (const each of [thick!, thin!])
      expect(Math.abs(boardEdge(each, end) - shown[end === 'first' ? 1 : 0]) * frames.first.scale).toBeGreaterThan(
        50 - 1e-9,
      );
  }
});

test('a zone of the pattern is found by the name of its stretch, on either axis', () => {
  const design = designOf(tideLedger.document);
  const { height } = design.pieces.outside;
  const { edgeMargin_mm: margin } = design.job.seam;
  expect(patternZone(design, 'thick', 'tailMargin')).toEqual({ axis: 'height', from: height - margin, to: height });
  expect(patternZone(design, 'thick', 'frontMargin')).toEqual({ axis: 'width', from: 0, to: margin });
  expect(patternZone(design, 'thick', 'frontTurn')).toBeNull();
});

test('the size of the outside is as cut, and beside it as made where the leather changes its size', () => {
  const sized = (state: string) =>
    outsideWords(
      designOf(defined(tideLedger).document, [{ path: 'making.state', value: state }]),
      'width',
      printer('mm'),
    );
  expect(sized('dry')).toBe('outside 382.5 mm');
  expect(sized('cased')).toMatch(/^outside 38\d(\.5)? mm, once made 38\d\.\d mm$/);
});

test('thin and thick end have a track each where any leather has a range, and one track is enough where none has', () => {
  const ranged = (patches: readonly Patch[]): number =>
    rangeTracks(designOf(tideLedger.document, patches), 'height', printer('mm')).length;
  const of = (leather: 'outside' | 'pocket', min: number, max: number): Patch[] => [
    { path: `leather.${leather}.min_mm`, value: min },
    { path: `leather.${leather}.max_mm`, value: max },
  ];
  expect(ranged(of('outside', 1.6, 2))).toBe(2);
  expect(ranged([...of('outside', 1.8, 1.8), ...of('pocket', 1, 1.4)])).toBe(2);
  expect(ranged([...of('outside', 1.8, 1.8), ...of('pocket', 1, 1)])).toBe(1);
});
