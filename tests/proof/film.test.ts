import { expect, test } from 'vitest';
import { filmSteps, jamIn } from '../../src/core/film/filmSteps.ts';
import { type CoverDesign, coverDesign, madeDesign } from '../../src/core/fold/coverDesign.ts';
import {
  type HalfSection,
  placeSection,
  type SectionPoint,
  sectionStops,
} from '../../src/core/fold/section/halfSection.ts';
import { EXAMPLE_JOBS } from '../../src/core/job/examples.ts';
import { liningDifference } from '../../src/core/pattern/foldZones.ts';
import { foldedCover } from '../../src/core/solid/foldedCover.ts';
import { staging } from '../../src/core/solid/staging.ts';
import { validateClearance } from '../../src/core/solid/validateClearance.ts';
import { FILM_DESIGNS } from '../core/film/filmDesigns.ts';
import { defined } from '../defined.ts';
import { FITTINGS } from '../fittingParts.ts';
import { soundJob } from '../jobArbitrary.ts';
import { nth } from '../nth.ts';
import { proofSize } from './proofSize.ts';

/** How far one part may reach into another, and how far a length may be off, mm. */
const ALLOWED = { depth: 0.05, length: 1e-6 };
const POSITIONS = proofSize(60, 3);
const POINTS = ['thin', 'thick'] as const;

/** The section as it lies, at both ends of every stretch and along every bend. */
const placesOf = (half: HalfSection): SectionPoint[] => {
  const stops = [...new Set([...sectionStops(half), half.toLiningEnd])].sort((a, b) => a - b);
  return placeSection(half, stops, { wrapped: 1, turnedFolds: [Math.PI / 2, Math.PI / 2] });
};

/** Length of a line as it lies: arcs of at most 5 degrees, each by its own turn. */
const lengthOf = (places: readonly SectionPoint[], at: (place: SectionPoint) => readonly [number, number]): number =>
  places.slice(1).reduce((sum, place, i) => {
    const before = nth(places, i);
    const [[x, y], [u, v]] = [at(place), at(before)];
    const chord = Math.hypot(x - u, y - v);
    const turn = Math.abs(place.theta - before.theta) / 2;
    return sum + (turn > 1e-9 ? (chord * turn) / Math.sin(turn) : chord);
  }, 0);

/** Length of the outside's neutral line. */
const lengthAsLaid = (half: HalfSection): number => lengthOf(placesOf(half), ({ neutral }) => neutral);

/** Length of the lining's neutral line, which lies `depth` outside of the face that the book lies on. */
const liningAsLaid = (half: HalfSection, depth: number): number =>
  lengthOf(
    placesOf(half).filter(({ d }) => d <= half.toLiningEnd + 1e-9),
    ({ inner: [x, y], theta }) => [x + depth * Math.sin(theta), y - depth * Math.cos(theta)],
  );

/**
 * How much a full lining puckers along a half. It is cut to the outside and sewn to it all round, so it has the outside's
 * length on a curve that lies inside: parallel curves differ by turn times distance (Steiner's formula for parallel curves).
 */
const pucker = (half: HalfSection, depth: number): number => {
  const places = placesOf(half);
  const [first, last] = [nth(places, 0), nth(places, places.length - 1)];
  return (last.theta - first.theta) * (first.lining + half.neutralFraction * first.outside - depth);
};

test.each(FILM_DESIGNS)(
  '%s: no part reaches into another, and the neutral line is as long as the pattern',
  (name, design) => {
    const made = madeDesign(design);
    let [deepest, longest] = [0, 0];
    for (let i = 0; i < POSITIONS; i++) {
      // Every design sees other places in the sample.
      const at = (i + (POSITIONS < 60 ? (name.length % 7) / 7 : 0)) / (POSITIONS - (POSITIONS < 60 ? 0 : 1));
      const point = nth(POINTS, (i + name.length) % 2);
      const pose = { kind: 'sequence', at } as const;
      const found = validateClearance(foldedCover(design, pose, point).parts, ALLOWED.depth);
      deepest = Math.max(deepest, ...found.map(({ depth }) => depth));
      expect({ at, point, faults: found }).toEqual({ at, point, faults: [] });
      const { front, back } = staging(made, point, pose).standing;
      const off = lengthAsLaid(front) + lengthAsLaid(back) - made.pieces.outside.width;
      longest = Math.max(longest, Math.abs(off));
      const { lining } = made.needs[point].leathers;
      if (lining === null || made.pieces.lining === null) continue;
      const isFull = made.job.construction.lining === 'full';
      for (const half of [front, back]) {
        const short = made.pieces.lining.width / 2 - liningAsLaid(half, lining.neutralDepth);
        longest = Math.max(longest, Math.abs(short - (isFull ? pucker(half, lining.neutralDepth) : 0)));
      }
    }
    console.log(
      `${name}: ${POSITIONS} places, deepest ${deepest.toFixed(2)} mm, length off by ${longest.toExponential(1)} mm`,
    );
    expect(longest).toBeLessThan(ALLOWED.length);
  },
);

test('a full lining puckers round the closed spine by as much as the pattern says', () => {
  const design = defined(FILM_DESIGNS.find(([name]) => name === 'lined in full, stitched')?.[1]);
  const made = madeDesign(design);
  const { front, back } = staging(made, 'thick', { kind: 'opening', angle: 0 }).standing;
  const { neutralDepth } = defined(made.needs.thick.leathers.lining);
  const laid = liningAsLaid(front, neutralDepth) + liningAsLaid(back, neutralDepth);
  const short = defined(made.pieces.lining).width - laid;
  expect(short).toBeGreaterThan(1);
  expect(Math.abs(short - liningDifference(made))).toBeLessThan(ALLOWED.length);
});

/** Places at which a part once reached into another. */
const KEPT = [
  ['scooped mouth', 'thin', 0.71],
  ['scooped mouth', 'thick', 0.7],
  ['clipped corners', 'thin', 0.6],
] as const;

test.each(KEPT)('%s, %s leather: no part reaches into another at %f of the film', (name, point, at) => {
  const design = FILM_DESIGNS.find(([known]) => known === name)?.[1];
  expect(validateClearance(foldedCover(defined(design), { kind: 'sequence', at }, point).parts, ALLOWED.depth)).toEqual(
    [],
  );
});

const FITTED = [
  ['stud, pen loop and ribbons', 0, { strap: {}, penLoop: {}, ribbon: { count: 2 } }, 'separate'],
  ['snap on a flap', 1, { strap: { shape: 'flap', fastening: 'snap', width_mm: 150 } }, 'separate'],
  ['magnet over turned ends', 2, { strap: { fastening: 'magnet' }, ribbon: {} }, 'turned'],
  ['buckle over turned ends', 0, { strap: { fastening: 'buckle' } }, 'turned'],
] as const;

test.each(FITTED)('%s: no fitting reaches into another part on the film', (name, book, fittings, construction) => {
  const { document } = EXAMPLE_JOBS[book];
  const own = (document as { construction?: object }).construction;
  const design = coverDesign(
    soundJob({ ...document, construction: { ...own, ...fittings }, pockets: { construction } }),
  );
  let deepest = 0;
  for (let i = 0; i < POSITIONS; i++) {
    const at = (i + (POSITIONS < 60 ? (name.length % 7) / 7 : 0)) / (POSITIONS - (POSITIONS < 60 ? 0 : 1));
    const point = nth(POINTS, i % 2);
    const { parts } = foldedCover(design, { kind: 'sequence', at }, point);
    const found = validateClearance(parts, ALLOWED.depth).filter(({ a, b }) => FITTINGS.has(a) || FITTINGS.has(b));
    deepest = Math.max(deepest, ...found.map(({ depth }) => depth));
    expect({ at, point, found }).toEqual({ at, point, found: [] });
  }
  console.log(`${name}: ${POSITIONS} places, deepest ${deepest.toFixed(2)} mm`);
});

/** Widest that both boards are bent back past flat, radians. */
function mostBent(design: CoverDesign): number {
  const step = filmSteps(design, 'nominal').find(({ id }) => id === 'secondBoard');
  const { from, to } = step ?? { from: 0, to: 1 };
  const bent = Array.from({ length: 41 }, (_, i) => {
    const at = from + ((to - from) * i) / 40;
    return staging(madeDesign(design), 'nominal', { kind: 'sequence', at }).standing.swings;
  });
  return Math.max(...bent.flatMap(({ front, back }) => [front, back])) - Math.PI / 2;
}

test.each(FILM_DESIGNS)('%s: boards are bent back by the angle of the check', (_, design) => {
  const { loadingAngle } = design.fits.nominal.pocket;
  expect(mostBent(design)).toBeCloseTo(loadingAngle, 6);
});

test.each(FILM_DESIGNS)('%s: boards that bend back less stop there', (_, design) => {
  const { loadingAngle } = design.fits.nominal.pocket;
  const degrees = (loadingAngle * 90) / Math.PI;
  const stiff = coverDesign(soundJob({ ...design.job, book: { ...bookOf(design), foldBack_deg: degrees } }));
  expect(jamIn(filmSteps(stiff, 'nominal'))).not.toBeNull();
  expect(mostBent(stiff)).toBeCloseTo(loadingAngle / 2, 6);
});

const bookOf = ({ job }: CoverDesign): object => job.book;
