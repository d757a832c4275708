import { expect } from 'vitest';
import { needsOverRange } from '../../../src/core/allowance/needs.ts';
import type { JobInput } from '../../../src/core/job/jobSchema.ts';
import type { Entity, Path } from '../../../src/core/pattern/drawing.ts';
import type { PatternSource } from '../../../src/core/pattern/seam.ts';
import { sizePieces } from '../../../src/core/pattern/sizePieces.ts';
import { easeOf } from '../../easeOf.ts';
import { soundJob } from '../../jobArbitrary.ts';
import { type Change, merged } from './coverOf.ts';

/** Seat and curve of the pocket at the fore-edge: R = 1.4 mm, 2 R sin a and 2 R a with cos a = 1 - 2.5/2.8. */
const ANGLE = Math.acos(1 - 2.5 / 2.8);
export const SEAT = 2.8 * Math.sin(ANGLE);
export const CURVE = 2.8 * ANGLE;

/** Depth of a pocket that is cut 58 mm wide: margin + curve + depth - seat. */
export const DEPTH = 58 - 4 - CURVE + SEAT;

const base: JobInput = {
  format: 'coverwright-job',
  version: 1,
  book: { width_mm: 150, height_mm: 220, thickness_mm: 30, boardThickness_mm: 2.5, jointDip_mm: 0, square_mm: 3 },
  leather: { outside: { min_mm: 2, max_mm: 2, neutral: 2 / Math.PI, bendRatio: 0.2 } },
  seam: { method: 'stitching', edgeMargin_mm: 4, pitch_mm: 4 },
  ease: { foreEdge_mm: 1, head_mm: 1, tail_mm: 1 },
  pockets: { depth_mm: DEPTH },
  pattern: { outsideWidth_mm: 360, outsideHeight_mm: 228, rounding_mm: 0 },
  construction: { hole_mm: 1 },
};

/**
 * A cover whose places are whole millimetres. Outside 360 x 228, pocket 58 wide, leather 2 mm with K = 2/pi, margin 4,
 * book 150 x 220 x 30.
 *
 * The wrap of the closed book is 150 + 2 + 30 + 2 + 150 (a fold takes pi/2 K t = 2): of the 360 mm 13 are left at each
 * end, so the folds lie at 163 to 165 and 195 to 197. Holes stand 4 mm apart, 89 of them along 352 mm and 56 up 220 mm,
 * corners counted twice; each mouth, at 58 and 302, lies midway between two holes.
 */
export const plainSource = (change: Change = {}): PatternSource => {
  const job = soundJob(merged(base, change));
  const needs = needsOverRange(job);
  return { job, needs, pieces: sizePieces(job, needs, easeOf(job, needs)) };
};

/** Turned ends 50 mm deep, in an outside of 460 mm: a turn takes 2.5 + pi K t = 6.5, the middle of the fold is at 53.25. */
export const TURNED = {
  pockets: { construction: 'turned', depth_mm: 50 },
  pattern: { outsideWidth_mm: 460, outsideHeight_mm: 228 },
};

/** A lining of 1 mm: with the outside's K its neutral line lies 2/pi deep, that of the outside 1 + 4/pi. */
export const LINED = { lining: { min_mm: 1, max_mm: 1, neutral: 2 / Math.PI } };

/** Numbers to be met within 1e-6, in the same structure. */
export function nearly<T>(value: T): T {
  if (typeof value === 'number') return expect.closeTo(value, 6);
  if (Array.isArray(value)) return value.map(nearly) as T;
  if (typeof value === 'object' && value !== null && Object.getPrototypeOf(value) === Object.prototype)
    return Object.fromEntries(Object.entries(value).map(([key, inner]) => [key, nearly(inner)])) as T;
  return value;
}

/** A straight mark as [x, y, x, y], a hole as its centre. */
export const placesOf = (entities: readonly Entity[]): number[][] =>
  entities.map((entity) => {
    if (entity.kind === 'line') return [...entity.from, ...entity.to];
    if (entity.kind === 'arc') return [...entity.centre];
    throw new Error(`${entity.kind} is no single line or circle`);
  });

/** The corners of a path of straight lines. */
export const cornersOf = (entity: Entity | undefined): number[][] =>
  (entity as Path).segments.flatMap((segment) => (segment.kind === 'line' ? [[...segment.from]] : []));

/** `count` numbers from a first one on. */
export const series = (first: number, step: number, count: number): number[] =>
  Array.from({ length: count }, (_, i) => first + i * step);
