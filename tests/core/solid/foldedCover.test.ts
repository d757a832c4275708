import fc from 'fast-check';
import { Triangle, Vector3 } from 'three';
import { describe, expect, test } from 'vitest';
import { coverDesign } from '../../../src/core/fold/coverDesign.ts';
import { EXAMPLE_JOBS } from '../../../src/core/job/examples.ts';
import { holeCount, seamHoles } from '../../../src/core/pattern/seamHoles.ts';
import { foldedCover } from '../../../src/core/solid/foldedCover.ts';
import type { FoldedCover, MeshData } from '../../../src/core/solid/meshData.ts';
import { openingRange } from '../../../src/core/solid/openingRange.ts';
import type { Pose } from '../../../src/core/solid/pose.ts';
import { validateClearance } from '../../../src/core/solid/validateClearance.ts';
import { solidVolume, validateSolid } from '../../../src/core/solid/validateSolid.ts';
import { defined } from '../../defined.ts';
import { jobDocument, soundJob } from '../../jobArbitrary.ts';
import { checkLaw } from '../../laws.ts';
import { nth } from '../../nth.ts';
import { sampledPoses } from './sampledPoses.ts';

const POSES: readonly Pose[] = [
  ...[0, 0.1, 0.2, 0.34, 0.45, 0.5, 0.55, 0.6, 0.64, 0.7, 0.85, 1].map((at): Pose => ({ kind: 'sequence', at })),
  ...[0, 0.4, 0.9, 1.5, 2, 2.6, Math.PI].map((angle): Pose => ({ kind: 'opening', angle })),
];

const tide = EXAMPLE_JOBS[0].document as Record<string, object>;
const VARIANTS: readonly (readonly [string, unknown])[] = [
  ...EXAMPLE_JOBS.map(({ id, document }) => [id, document] as const),
  ['turned ends', { ...tide, pockets: { construction: 'turned', depth_mm: 60 } }],
  ['a lining', { ...tide, leather: { ...tide.leather, lining: { min_mm: 0.8, max_mm: 1 } } }],
  ['unequal leathers', { ...tide, leather: { ...tide.leather, pocket: { min_mm: 0.8, max_mm: 1 } } }],
  ['a wedge', { ...tide, book: { ...tide.book, foreEdgeThickness_mm: 34 } }],
  ['rounded edges of the back', { ...tide, book: { ...tide.book, cornerRadius_mm: 5 } }],
  ['a board too wide for the wrap', { ...tide, pattern: { outsideWidth_mm: 360 } }],
];

/** Extent of a mesh along one axis, mm. */
function extent({ positions }: MeshData, axis: 0 | 1 | 2): number {
  let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (let i = axis; i < positions.length; i += 3) {
    low = Math.min(low, defined(positions[i]));
    high = Math.max(high, defined(positions[i]));
  }
  return high - low;
}

const partOf = (parts: readonly MeshData[], name: string): MeshData => {
  const found = parts.find(({ part }) => part === name);
  if (found === undefined) throw new Error(`no part ${name}`);
  return found;
};

describe('no part passes through another at any position', () => {
  test.each(VARIANTS.map(([name, document], variant) => ({ name, document, variant })))(
    '$name',
    ({ document, variant }) => {
      const design = coverDesign(soundJob(document));
      for (const { pose, point } of sampledPoses(POSES, variant)) {
        const faults = validateClearance(foldedCover(design, pose, point).parts);
        expect({ pose, point, faults }).toEqual({ pose, point, faults: [] });
      }
    },
  );

  test('and the check of that finds a board that is pushed into the leather', () => {
    const { parts } = foldedCover(coverDesign(soundJob(tide)), { kind: 'opening', angle: 0 });
    const pushed = parts.map((mesh) =>
      mesh.part === 'frontBoard'
        ? { ...mesh, positions: mesh.positions.map((v, i) => (i % 3 === 1 ? v + 0.5 : v)) }
        : mesh,
    );
    const faults = validateClearance(pushed);
    expect(faults.some(({ a, b }) => a === 'frontBoard' || b === 'frontBoard')).toBe(true);
    expect(Math.max(...faults.map(({ depth }) => depth))).toBeCloseTo(0.5, 1);
  });
});

describe('the solids', () => {
  test.each(VARIANTS)('are closed, outward and finite: %s', (_name, document) => {
    const design = coverDesign(soundJob(document));
    for (const pose of POSES) {
      for (const mesh of foldedCover(design, pose).parts) {
        expect({ part: mesh.part, pose, faults: validateSolid(mesh) }).toEqual({ part: mesh.part, pose, faults: [] });
        expect(solidVolume(mesh)).toBeGreaterThan(0);
        expect(mesh.positions.every(Number.isFinite)).toBe(true);
      }
    }
  });

  test('of random jobs are finite at random positions', () => {
    checkLaw(
      fc.property(jobDocument, fc.double({ min: 0, max: 1, noNaN: true }), (document, at) => {
        const design = coverDesign(soundJob(document));
        for (const pose of [
          { kind: 'sequence', at },
          { kind: 'opening', angle: Math.PI * at },
        ] as const) {
          const cover = foldedCover(design, pose);
          for (const mesh of cover.parts) expect(mesh.positions.every(Number.isFinite)).toBe(true);
          for (const hole of cover.seam)
            expect([...hole.at, ...hole.along, ...hole.out].every(Number.isFinite)).toBe(true);
        }
      }),
      { cost: 3 },
    );
  });
});

test('a cover that is let go springs open to where it rests, and stays shut where that is not known', () => {
  const design = coverDesign(soundJob(tide));
  const rest = { opening: 0.6, least: 0.2, most: 1.2 };
  const { least } = defined(openingRange(design, 'nominal') ?? undefined);
  expect(foldedCover(design, { kind: 'sequence', at: 1, rest }).opening).toBeCloseTo(0.6, 12);
  expect(foldedCover(design, { kind: 'sequence', at: 1 }).opening).toBeCloseTo(least, 12);
});

describe('the flat pattern', () => {
  test.each(EXAMPLE_JOBS)('on the bench is cut to the pattern, and as thick as the leather: $id', ({ document }) => {
    const design = coverDesign(soundJob(document));
    const outside = partOf(foldedCover(design, { kind: 'sequence', at: 0 }).parts, 'outside');
    // Over the thinned end of a lining its layers keep their slant, which shows as thousandths of a millimetre.
    expect(Math.abs(extent(outside, 0) - design.needs.nominal.leathers.outside.thickness)).toBeLessThan(0.01);
    expect(extent(outside, 1)).toBeCloseTo(design.pieces.outside.width, 3);
    expect(extent(outside, 2)).toBeCloseTo(design.pieces.outside.height, 3);
  });

  test('of any job keeps its last column, though the lengths of its stretches add up to a hair more than the pattern', () => {
    checkLaw(
      fc.property(jobDocument, (document) => {
        const design = coverDesign(soundJob(document));
        const outside = partOf(foldedCover(design, { kind: 'sequence', at: 0 }, 'thick').parts, 'outside');
        expect(extent(outside, 1)).toBeCloseTo(design.pieces.outside.width, 3);
      }),
    );
  });

  test('keeps the leather: folding changes the volume of the outside by less than a hundredth', () => {
    const design = coverDesign(soundJob(tide));
    const volume = (pose: Pose) => solidVolume(partOf(foldedCover(design, pose).parts, 'outside'));
    const flat = volume({ kind: 'sequence', at: 0 });
    const { outside } = design.pieces;
    expect(flat / (outside.width * outside.height * design.needs.nominal.leathers.outside.thickness)).toBeCloseTo(1, 4);
    for (const pose of POSES) expect(Math.abs(volume(pose) / flat - 1)).toBeLessThan(0.01);
  });
});

describe('the seam', () => {
  test('runs round the cover inside its margin, hole after hole at the pitch that each one gives', () => {
    const design = coverDesign(soundJob(tide));
    const { seam } = foldedCover(design, { kind: 'sequence', at: 0 });
    const { edgeMargin_mm: margin } = design.job.seam;
    const { outside } = design.pieces;
    expect(seam.length).toBe(holeCount(seamHoles(design)));
    for (const { at, pitch } of seam) {
      const fromEdge = Math.min(outside.width / 2 - Math.abs(at[1]), outside.height / 2 - Math.abs(at[2]));
      expect(fromEdge).toBeCloseTo(margin, 3);
      expect(Math.abs(pitch / design.job.seam.pitch_mm - 1)).toBeLessThan(0.06);
    }
  });
});

/** Distance of a place from the surface of a part, mm. */
function distanceFrom({ positions, indices }: MeshData, [x, y, z]: readonly [number, number, number]): number {
  const [place, near] = [new Vector3(x, y, z), new Vector3()];
  const [a, b, c] = [new Vector3(), new Vector3(), new Vector3()];
  const triangle = new Triangle(a, b, c);
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i < indices.length; i += 3) {
    for (const [k, corner] of [a, b, c].entries()) corner.fromArray(positions, 3 * nth(indices, i + k));
    least = Math.min(least, triangle.closestPointToPoint(place, near).distanceTo(place));
  }
  return least;
}

describe('the marks', () => {
  const banded = ({ marks }: FoldedCover) =>
    marks.flatMap((mark) => (mark.band === null ? [] : [{ ...mark, band: mark.band }]));
  const apart = (a: readonly number[], b: readonly number[]) => Math.hypot(...a.map((at, k) => at - nth(b, k)));

  test.each(VARIANTS.slice(0, 6))(
    'measure the gap in the plane of the board, and the seat along the leather, %s',
    (_, document) => {
      const cover = foldedCover(coverDesign(soundJob(document)), { kind: 'opening', angle: 0 }, 'thick');
      // The face that the board sees is the lining's, where there is one. At the fore-edge the lining may end before the seam.
      const layers = ['outside', 'lining'].flatMap((name) => cover.parts.filter(({ part }) => part === name));
      const marks = banded(cover);
      expect(marks.map(({ edge }) => edge).sort()).toEqual([
        'backForeEdge',
        'frontForeEdge',
        'head',
        'head',
        'tail',
        'tail',
      ]);
      for (const { edge, from, to, value, out, band } of marks) {
        const { rungs, across } = band;
        expect(apart(from, to)).toBeCloseTo(Math.abs(value), 9);
        expect(to.reduce((sum, at, k) => sum + (at - nth(from, k)) * nth(out, k), 0)).toBeCloseTo(0, 9);
        const [edgeAt, stopAt] = [across.indexOf(0), across.indexOf(value)];
        for (const rung of rungs) expect(apart(nth(rung, edgeAt), nth(rung, stopAt))).toBeCloseTo(Math.abs(value), 9);
        const seat = rungs.map((rung) => rung.slice(stopAt + 1));
        // Between two rungs the band runs straight: it must not leave the leather there by more than is drawn in front of it.
        const middles = seat
          .slice(1)
          .flatMap((rung, i) =>
            rung.map(
              (place, k) =>
                place.map((at, axis) => (at + nth(nth(nth(seat, i), k), axis)) / 2) as [number, number, number],
            ),
          );
        for (const place of [...seat.flat(), ...middles].filter((_, i) => i % 7 === 0)) {
          const off = Math.min(...layers.map((layer) => distanceFrom(layer, place)));
          expect({ edge, place, on: off < 0.1 }).toEqual({ edge, place, on: true });
        }
      }
    },
  );

  test.each(VARIANTS.slice(0, 4))('begin at the edge of the board itself, %s', (_, document) => {
    const design = coverDesign(soundJob(document));
    const cover = foldedCover(design, { kind: 'opening', angle: 0 }, 'thick');
    const { parts } = cover;
    for (const { edge, from } of banded(cover)) {
      const off = Math.min(...['frontBoard', 'backBoard'].map((part) => distanceFrom(partOf(parts, part), from)));
      expect({ edge, isOn: off < 0.05 }).toEqual({ edge, isOn: true });
    }
  });

  test('of head and tail stand on both boards, so that each side of the book shows them', () => {
    const { marks } = foldedCover(coverDesign(soundJob(tide)), { kind: 'opening', angle: 0 }, 'thick');
    for (const edge of ['head', 'tail']) {
      const [front, back] = marks.filter((mark) => mark.edge === edge);
      expect(front!.value).toBe(back!.value);
      // Closed, the front board looks up in the frame of the meshes and the back one down.
      expect(front!.out[1]).toBeGreaterThan(0.9);
      expect(back!.out[1]).toBeLessThan(-0.9);
    }
  });

  test('of a cover that closes give the gaps of the fit', () => {
    const design = coverDesign(soundJob(tide));
    const { marks } = foldedCover(design, { kind: 'opening', angle: 0 }, 'thick');
    const value = (edge: string) => marks.find((mark) => mark.edge === edge)?.value;
    const { fits } = design;
    expect(value('frontForeEdge')).toBeCloseTo(fits.thick.foreEdge.front, 2);
    expect(value('head')).toBe(fits.thick.head);
    expect(value('tail')).toBe(fits.thick.tail);
  });

  test('of a cover too short for its book give overruns, and the opening stops where the wrap does', () => {
    const sized = coverDesign(soundJob(tide)).pieces.outside.width;
    const slack = coverDesign(soundJob(tide)).fits.thick.closedSlack;
    const design = coverDesign(soundJob({ ...tide, pattern: { outsideWidth_mm: sized - slack - 1 } }));
    const cover = foldedCover(design, { kind: 'opening', angle: 0 }, 'thick');
    expect(cover.opening).toBeCloseTo(defined(design.fits.thick.staysOpen), 3);
    expect(cover.marks.find(({ edge }) => edge === 'gape')?.value).toBeCloseTo(design.fits.thick.gape, 6);
    expect(cover.marks.find(({ edge }) => edge === 'frontForeEdge')?.value).toBeLessThan(0);
  });
});
