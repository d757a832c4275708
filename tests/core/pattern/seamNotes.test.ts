import { describe, expect, test } from 'vitest';
import type { SeamRow } from '../../../src/core/pattern/seam.ts';
import { seamLayering } from '../../../src/core/pattern/seamLayering.ts';
import { seamNotes } from '../../../src/core/pattern/seamNotes.ts';
import { plainSource } from './plainSource.ts';

/** A row of one hole, far from the end of any layer. */
const row = (pitch: number, off = 0): SeamRow => ({
  side: 'tail',
  length: 25 * pitch,
  intervals: 25,
  pitch,
  off,
  holes: [{ at: [180, 4], heading: 0, side: 'tail', isCorner: false, layers: ['outside'] }],
});
const notes = (rows: readonly SeamRow[], change: object = {}): string[] => {
  const source = plainSource(change);
  return seamNotes(source.job, rows, seamLayering(source), source.pieces.outside);
};

describe('the notes of a seam', () => {
  test('name a side whose pitch stands off by more than 5 %, wider or narrower', () => {
    const said = [expect.stringMatching(/^Tail: .* too short for a pitch of 4 mm; it takes 25 of /)];
    expect([notes([row(4.2, 0.05)]), notes([row(3.8, -0.05)])]).toEqual([[], []]);
    expect([notes([row(4.21, 0.0525)]), notes([row(3.79, -0.0525)])]).toEqual([said, said]);
  });

  test('name slits that leave less than half a mm at the narrowest pitch', () => {
    const slits = (slitWidth_mm: number, pitches: readonly number[]) =>
      notes(
        pitches.map((pitch) => row(pitch)),
        { seam: { method: 'lacing', style: 'running' }, construction: { slitWidth_mm } },
      );
    expect(slits(3.5, [4, 5])).toEqual([]);
    expect(slits(3.6, [5, 4])).toEqual([
      expect.stringMatching(/^Slits of 3\.6 mm run into each other at a pitch of 4 mm\. /),
    ]);
    expect(slits(3.6, [5])).toEqual([]);
  });
});
