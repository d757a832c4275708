import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import choirBook from '../../../../public/jobs/choir-book.json' with { type: 'json' };
import tideLedger from '../../../../public/jobs/tide-ledger.json' with { type: 'json' };
import { filmSteps } from '../../../../src/core/film/filmSteps.ts';
import { type CoverDesign, coverDesign, madeDesign } from '../../../../src/core/fold/coverDesign.ts';
import { EXAMPLE_JOBS } from '../../../../src/core/job/examples.ts';
import { distance, type Vec2 } from '../../../../src/core/math/vec2.ts';
import { ribbonOf } from '../../../../src/core/pattern/ribbon.ts';
import { type BentPath, bentPlaces, bentUpTo, pathOverPegs } from '../../../../src/core/solid/fittings/bentPath.ts';
import { closureLie, closureOf, frontPlace } from '../../../../src/core/solid/fittings/closurePath.ts';
import { loopPath } from '../../../../src/core/solid/fittings/penLoopMesh.ts';
import { lineAt, lineOfHalves } from '../../../../src/core/solid/fittings/sectionLine.ts';
import { foldedCover } from '../../../../src/core/solid/foldedCover.ts';
import type { MeshData, PartName } from '../../../../src/core/solid/meshData.ts';
import { openingRange } from '../../../../src/core/solid/openingRange.ts';
import type { Pose } from '../../../../src/core/solid/pose.ts';
import { staging } from '../../../../src/core/solid/staging.ts';
import { standingAt } from '../../../../src/core/solid/standing.ts';
import { validateClearance } from '../../../../src/core/solid/validateClearance.ts';
import { validateSolid } from '../../../../src/core/solid/validateSolid.ts';
import { defined } from '../../../defined.ts';
import { soundJob } from '../../../jobArbitrary.ts';
import { nth } from '../../../nth.ts';
import { constructedJob } from '../../../property/constructionArbitrary.ts';
import { type Change, merged } from '../../pattern/coverOf.ts';

const FITTINGS: ReadonlySet<PartName> = new Set(['strap', 'fastening', 'buckleTab', 'penLoop', 'ribbons']);
const FLAP = { shape: 'flap', width_mm: 120, reach_mm: 60, end_mm: 20 };

const covered = (book: object, strap: object, change: Change = {}): CoverDesign =>
  coverDesign(soundJob(merged(merged(book, { construction: { strap } }), change)));

const fittingsOf = (parts: readonly MeshData[]): MeshData[] => parts.filter(({ part }) => FITTINGS.has(part));
const partOf = (parts: readonly MeshData[], name: PartName): MeshData =>
  defined(parts.find(({ part }) => part === name));

/** Length of the stretch of a path, by chords so short that they are the arcs to 1e-7. */
function chordLength(path: BentPath, length: number): number {
  const steps = 200_000;
  const places = bentPlaces(
    path,
    Array.from({ length: steps + 1 }, (_, k) => (length * k) / steps),
  );
  let sum = 0;
  for (let k = 1; k < places.length; k++) sum += distance(places[k - 1]!.at, places[k]!.at);
  return sum;
}

describe('a sheet over pegs', () => {
  const square: Vec2[] = [
    [0, 0],
    [10, 0],
    [10, 4],
    [2, 4],
  ];

  test('has straight stretches between them and an arc of the neutral line about each: 10 + pi/2 + 4 + pi/2 + 8', () => {
    expect(pathOverPegs(square, 1).pieces).toEqual([
      { length: 10, turn: 0 },
      { length: Math.PI / 2, turn: Math.PI / 2 },
      { length: 4, turn: 0 },
      { length: Math.PI / 2, turn: Math.PI / 2 },
      { length: 8, turn: 0 },
    ]);
  });

  test('that is let go after a part of its turn goes on straight from there', () => {
    const [place] = bentPlaces(bentUpTo(pathOverPegs(square, 1), Math.PI / 4), [10 + Math.PI / 4 + 5]);
    // A quarter turn half done about (10, 0), then 5 mm on at 45 degrees.
    const half = Math.SQRT1_2;
    expect(defined(place).at[0]).toBeCloseTo(10 + half + 5 * half, 12);
    expect(defined(place).at[1]).toBeCloseTo(-half + 5 * half, 12);
  });
});

describe.each([
  ['thick', choirBook],
  ['thin', tideLedger],
] as const)('a closure of the %s book', (_name, book) => {
  test('is as long on its neutral line as it is cut, free, half way and fastened', () => {
    for (const strap of [{}, FLAP]) {
      const design = covered(book, strap);
      const closure = defined(closureOf(design, 'nominal') ?? undefined);
      const { least } = defined(openingRange(design, 'nominal') ?? undefined);
      expect(closure.length).toBeCloseTo(closure.strap.sum.total, 12);
      for (const [opening, fastened] of [
        [2, 0],
        [least, 0.4],
        [least, 1],
      ] as const) {
        const { front, back } = standingAt(design, 'nominal', opening);
        const { path } = closureLie(closure, lineOfHalves(front, back), {
          fastened,
          covered: 0,
          raised: 1,
          benchTurn: 0,
          board: [],
        });
        expect(Math.abs(chordLength(path, closure.length) - closure.length)).toBeLessThan(1e-6);
      }
    }
  });

  test('lies free in the plane of the back where ends are turned, not round their fold', () => {
    const design = covered(book, {}, { pockets: { construction: 'turned' } });
    const closure = defined(closureOf(design, 'nominal') ?? undefined);
    const { front, back, benchTurn } = standingAt(design, 'nominal', 2);
    const { path } = closureLie(closure, lineOfHalves(front, back), {
      fastened: 0,
      covered: 0,
      raised: 1,
      benchTurn,
      board: [],
    });
    expect(Math.abs(path.pieces.reduce((sum, { turn }) => sum + turn, 0))).toBeLessThan(0.1);
  });

  test('comes to its fastening where the pattern has it: within 2 mm of the reach', () => {
    for (const point of ['thin', 'nominal', 'thick'] as const) {
      const closure = defined(closureOf(covered(book, {}), point) ?? undefined);
      // The pattern takes the thick end; a snap's height and the slack of a thinner leather take the rest. It rounds up besides.
      const { total, parts } = closure.strap.sum;
      const rounded = total - parts.reduce((sum, { each, isRest }) => sum + (isRest ? 0 : each), 0);
      expect(Math.abs(closure.reach - 35 - rounded)).toBeLessThan(2);
    }
  });
});

const POSES: readonly Pose[] = [
  ...[0, 0.5, 0.95, 0.985, 1].map((at): Pose => ({ kind: 'sequence', at })),
  ...[0, 0.01, Math.PI].map((angle): Pose => ({ kind: 'opening', angle })),
];

describe('fittings', () => {
  test.each([
    ['stud', {}],
    ['snap', { fastening: 'snap' }],
    ['buckle', { fastening: 'buckle' }],
    ['magnet, on a flap', { ...FLAP, fastening: 'magnet' }],
  ] as const)('are closed solids that pass through nothing: %s', (_name, strap) => {
    const design = covered(tideLedger, strap, {
      construction: { penLoop: 'shape' in strap ? null : {} },
    });
    for (const pose of POSES) {
      const { parts } = foldedCover(design, pose);
      for (const mesh of fittingsOf(parts)) expect(validateSolid(mesh)).toEqual([]);
      const cover = parts.filter(({ part }) => part === 'outside' || part.endsWith('Pocket'));
      const faults = validateClearance([...fittingsOf(parts), ...cover], 0.05).filter(
        ({ a, b }) => FITTINGS.has(a) || FITTINGS.has(b),
      );
      expect({ pose, faults }).toEqual({ pose, faults: [] });
    }
  });

  test('are pushed in where they stand: a strap sunk by 0.3 mm is found', () => {
    const { parts } = foldedCover(covered(tideLedger, {}), { kind: 'opening', angle: 0 });
    const sunk = parts.map((mesh) =>
      mesh.part === 'strap' ? { ...mesh, positions: mesh.positions.map((x, i) => (i % 3 === 1 ? x - 0.3 : x)) } : mesh,
    );
    expect(validateClearance(sunk).some(({ a, b }) => a === 'strap' || b === 'strap')).toBe(true);
  });

  test('of metal have few triangles', () => {
    for (const fastening of ['stud', 'snap', 'buckle', 'magnet'] as const) {
      const { parts } = foldedCover(covered(choirBook, { fastening }), { kind: 'opening', angle: 0 });
      expect(partOf(parts, 'fastening').indices.length / 3).toBeLessThan(1500);
    }
  });

  test('keep their vertices from opening to opening, for pictures that move', () => {
    const design = covered(choirBook, { fastening: 'snap' });
    const [closed, open] = [0, 2].map((angle) => foldedCover(design, { kind: 'opening', angle }).parts);
    for (const part of ['strap', 'fastening'] as const)
      expect(partOf(defined(open), part).indices).toEqual(partOf(defined(closed), part).indices);
  });

  test('show the holes of the strap on the strap: as many as the pattern, on its grain side', () => {
    const design = covered(choirBook, {});
    const { strapSeam, parts } = foldedCover(design, { kind: 'opening', angle: 1 });
    const closure = defined(closureOf(design, 'nominal') ?? undefined);
    expect(strapSeam.length).toBe(closure.strap.holes.length);
    const { positions } = partOf(parts, 'strap');
    for (const { at } of strapSeam) {
      let nearest = Number.POSITIVE_INFINITY;
      for (let k = 0; k < positions.length; k += 3)
        nearest = Math.min(
          nearest,
          Math.hypot(positions[k]! - at[0], positions[k + 1]! - at[1], positions[k + 2]! - at[2]),
        );
      expect(nearest).toBeLessThan(12);
    }
  });
});

describe('fittings of the film', () => {
  const turned = { pockets: { construction: 'turned' } };
  const lined = { leather: { lining: { min_mm: 1.8, max_mm: 1.8 } } };
  const heavy = { leather: { outside: { min_mm: 3, max_mm: 3.9, bendRatio: 0.4 } } };

  test.each([
    ['ribbons while the boards are bent back', { construction: { ribbon: {} } }, 'secondBoard', 0.4],
    ['a snap under ends not folded', { ...turned, construction: { strap: { fastening: 'snap' } } }, 'assemble', 0.2],
    ['a snap under pockets', { construction: { strap: { fastening: 'snap' } } }, 'assemble', 0.1],
    ['a pen loop in the tent', { ...heavy, construction: { penLoop: {} } }, 'secondBoard', 0.5],
    [
      'a pen loop that the lining is laid over',
      { ...lined, construction: { penLoop: {}, lining: 'full' } },
      'assemble',
      0.465,
    ],
  ] as const)('pass through nothing: %s', (_name, change, id, share) => {
    const design = coverDesign(soundJob(merged(tideLedger, change)));
    const { from, to } = defined(filmSteps(design, 'thick').find((step) => step.id === id));
    const { parts } = foldedCover(design, { kind: 'sequence', at: from + (to - from) * share }, 'thick');
    expect(validateClearance(parts, 0.05).filter(({ a, b }) => FITTINGS.has(a) || FITTINGS.has(b))).toEqual([]);
  });
});

test('a free strap goes past the tip of the second board, which is not in its pocket yet', () => {
  const design = coverDesign(
    soundJob({ ...nth(EXAMPLE_JOBS, 0).document, construction: { strap: {} }, pockets: { construction: 'separate' } }),
  );
  // The board once reached 1 mm into the strap here.
  const { parts } = foldedCover(design, { kind: 'sequence', at: 38 / 59 }, 'thin');
  expect(validateClearance(parts, 0.05).filter(({ a, b }) => FITTINGS.has(a) || FITTINGS.has(b))).toEqual([]);
});

/** Random jobs in which a strap or its stud once reached into the cover. */
test.each([
  ['a stud in a sharp bend of the front', 2, 23, 'thick', { kind: 'sequence', at: 0.681 }],
  ['a strap over the step of a lining, its end not folded', 1, 101, 'thick', { kind: 'sequence', at: 0.2107 }],
  ['a strap up from the step of a lining to a fold', 1, 181, 'nominal', { kind: 'sequence', at: 0.8157 }],
  ['the facets of a strap over that step', 2, 93, 'thin', { kind: 'opening', angle: 0.725 }],
  ['the end of a strap over the step of a lining', 5, 142, 'nominal', { kind: 'opening', angle: 0 }],
] as const)('%s passes through nothing', (_name, seed, draw, point, pose) => {
  const document = nth(fc.sample(constructedJob, { seed, numRuns: draw + 1 }), draw);
  const { parts } = foldedCover(coverDesign(soundJob(document)), pose, point);
  expect(validateClearance(parts, 0.05).filter(({ a, b }) => FITTINGS.has(a) || FITTINGS.has(b))).toEqual([]);
});

test.each([
  ['thin', { kind: 'opening', angle: 0 }, 0],
  ['thin', { kind: 'sequence', at: 0.7492 }, 51],
  ['nominal', { kind: 'sequence', at: 0.7143 }, 88],
] as const)('a buckle and its tab pass through nothing: %s, %o, draw %d', (point, pose, draw) => {
  const document = nth(fc.sample(constructedJob, { seed: 6, numRuns: draw + 1 }), draw);
  const construction = { ...document.construction, strap: { width_mm: 30, fastening: 'buckle' } };
  const { parts } = foldedCover(coverDesign(soundJob({ ...document, construction })), pose, point);
  expect(validateClearance(parts, 0.05).filter(({ a, b }) => FITTINGS.has(a) || FITTINGS.has(b))).toEqual([]);
});

test('a fastening stands on the front, also where the front is bent beyond it', () => {
  const change = { pockets: { construction: 'turned' }, construction: { strap: { fastening: 'buckle' } } };
  const design = coverDesign(soundJob(merged(tideLedger, change)));
  const closure = defined(closureOf(madeDesign(design), 'thin') ?? undefined);
  const { from, to } = defined(filmSteps(design, 'thin').find(({ id }) => id === 'secondBoard'));
  for (const share of [0.5, 0.65, 0.8]) {
    const pose = { kind: 'sequence', at: from + (to - from) * share } as const;
    const { front, back } = staging(madeDesign(design), 'thin', pose).standing;
    const line = lineOfHalves(front, back);
    const on = lineAt(line, closure.edges[0] + closure.reach);
    expect(distance(frontPlace(closure, line, closure.reach).grain, on.grain)).toBeLessThan(0.1);
  }
});

describe('ribbons', () => {
  const design = coverDesign(soundJob(merged(tideLedger, { construction: { ribbon: { count: 2 } } })));

  test.each([0, 0.006, 1, Math.PI])('lie on the open page, closed solids that pass through nothing, at %d', (angle) => {
    const { parts } = foldedCover(design, { kind: 'opening', angle });
    expect(validateSolid(partOf(parts, 'ribbons'))).toEqual([]);
    expect(validateClearance(parts, 0.05).filter(({ a, b }) => FITTINGS.has(a) || FITTINGS.has(b))).toEqual([]);
  });

  test('are as long as they are cut, less the end that is fixed in the spine, closed and open', () => {
    const cut = defined(ribbonOf(design) ?? undefined);
    for (const angle of [0, 2]) {
      const { uvs } = partOf(foldedCover(design, { kind: 'opening', angle }).parts, 'ribbons');
      const longest = uvs.reduce((most, u, i) => (i % 2 === 0 ? Math.max(most, u) : most), 0);
      // The middle line's chords over the bend of a page fall short by their sagittas.
      expect(Math.abs(longest - (cut.sum.total - 25))).toBeLessThan(0.2);
    }
  });
});

describe('a pen loop', () => {
  test('is round, as long as it is cut, and lets its pen pass', () => {
    const path = loopPath(2 * Math.PI * 6.5, 0.02);
    expect(chordLength(path, 2 * Math.PI * 6.5)).toBeCloseTo(2 * Math.PI * 6.5, 6);
    const places = bentPlaces(path, [0, 2 * Math.PI * 6.5]);
    // Both ends meet at the neck.
    expect(distance(defined(places[0]).at, defined(places[1]).at)).toBeCloseTo(0.02, 9);
    // Pen of 10 mm and ease of 1 mm in leather of 2 mm with its neutral line in the middle: r = 5.5 + 1.
    const arc = defined(path.pieces[1]);
    expect(arc.length / arc.turn - 1).toBeGreaterThan(5);
  });
});
