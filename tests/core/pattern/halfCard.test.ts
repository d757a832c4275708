import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { coverDesign } from '../../../src/core/fold/coverDesign.ts';
import { arcPoint, flattened, type Segment } from '../../../src/core/math/contour.ts';
import type { Vec2 } from '../../../src/core/math/vec2.ts';
import type { Entity, PieceDrawing } from '../../../src/core/pattern/drawing.ts';
import { foldExtra, halfCard } from '../../../src/core/pattern/halfCard.ts';
import { oneCard } from '../../../src/core/pattern/oneCard.ts';
import { mm } from '../../../src/core/units/mm.ts';
import { soundJob } from '../../jobArbitrary.ts';
import { checkLaw } from '../../laws.ts';
import { nth } from '../../nth.ts';
import { toChain } from '../../output/outlineDistance.ts';
import { constructedJob } from '../../property/constructionArbitrary.ts';
import { coverOf } from './coverOf.ts';
import { LINED, plainSource } from './plainSource.ts';

const first = ({ pieces }: { readonly pieces: readonly PieceDrawing[] }): PieceDrawing => nth(pieces, 0);
const words = ({ layers }: PieceDrawing): string[] =>
  layers.text.flatMap((entity) => (entity.kind === 'text' ? [entity.text] : []));

interface Card {
  readonly thickness_mm: number;
  readonly neutral: number;
}

/**
 * Where a place of the opened card lies in plan when the card is folded in two: the fibre that keeps its length is walked in
 * small steps from the outermost point of the fold, turning round the crease until it is level, then straight on.
 * @returns for each step, x in plan from the folded edge; the steps are `step` mm of the opened card apart
 */
function foldedFibre({ thickness_mm: c, neutral }: Card, length: number, step: number): number[] {
  let [x, direction] = [c - neutral * c, Math.PI / 2];
  const places = [x];
  for (let s = step; s <= length; s += step) {
    const turn = Math.min(direction, step / (neutral * c));
    x += step * Math.cos(direction - turn / 2);
    direction -= turn;
    places.push(x);
  }
  return places;
}

/** The opened distance from the middle of the fold to what was cut through the folded card x from its edge. */
function opened(fibre: readonly number[], step: number, x: number): number {
  const after = fibre.findIndex((place) => place >= x);
  if (after <= 0) return 0;
  const [low, high] = [nth(fibre, after - 1), nth(fibre, after)];
  return step * (after - 1 + (x - low) / (high - low));
}

const STEP = 0.002;

/** Opened card from a half that was cut through both layers: the points of its cut edge off the fold, on both sides. */
function unfolded({ outline }: PieceDrawing, card: Card, half: number): Vec2[] {
  const fibre = foldedFibre(card, half + 5, STEP);
  return flattened(outline, 1e-3)
    .filter(([x]) => x > card.thickness_mm)
    .flatMap(([x, y]): Vec2[] => {
      const from = opened(fibre, STEP, x);
      return [
        [half + from, y],
        [half - from, y],
      ];
    });
}

const cardOf = fc.record({
  thickness_mm: fc.double({ min: 0.3, max: 1, noNaN: true }),
  neutral: fc.double({ min: 0.4, max: 0.8, noNaN: true }),
});

const middle = (mark: Entity): Vec2 => {
  if (mark.kind === 'arc') return mark.centre;
  if (mark.kind !== 'line') throw new Error(`a hole drawn as ${mark.kind}`);
  return [(mark.from[0] + mark.to[0]) / 2, (mark.from[1] + mark.to[1]) / 2];
};

const segmentsOf = (entity: Entity): readonly Segment[] => {
  if (entity.kind === 'path') return entity.segments;
  return entity.kind === 'line' || entity.kind === 'arc' ? [entity] : [];
};

/** Places along a segment. */
const inside = (segment: Segment): Vec2[] =>
  [0.1, 0.35, 0.6, 0.9].map((share) => {
    if (segment.kind === 'arc') return arcPoint(segment, share);
    const { from, to } = segment;
    return [from[0] + share * (to[0] - from[0]), from[1] + share * (to[1] - from[1])];
  });

describe('the half on the fold', () => {
  test('cut through folded card of 0.3 to 1 mm and opened, is the whole outside within 0.05 mm, for random jobs', () => {
    let worst = 0;
    checkLaw(
      fc.property(constructedJob, cardOf, (document, card) => {
        const design = coverDesign(soundJob({ ...document, mockup: { card } }));
        const [whole, half] = [first(oneCard(design)), first(halfCard(design))];
        const edge = flattened(whole.outline, 1e-3);
        for (const at of unfolded(half, card, whole.width / 2)) worst = Math.max(worst, toChain(at, edge));
        expect(worst).toBeLessThan(0.05);
      }),
      { cost: 8 },
    );
    expect(worst).toBeGreaterThan(0);
  });

  test('keeps the area of the card: a fold about the middle has as much card in it as it takes of the width', () => {
    // A crease with no radius inside is half a disc of radius c, and card keeps its area where it folds about its middle.
    for (const thickness_mm of [0.3, 0.5, 1]) {
      const extra = foldExtra({ thickness_mm: mm(thickness_mm), neutral: 0.5 });
      const half = 100 + extra;
      const section = 2 * (half - thickness_mm) * thickness_mm + (Math.PI * thickness_mm ** 2) / 2;
      expect(section / thickness_mm).toBeCloseTo(200, 9);
      expect(2 * extra).toBeGreaterThan(0.05);
    }
  });

  test('has the holes of the front half where they are on the whole, and the same mirrored on the back', () => {
    checkLaw(
      fc.property(constructedJob, (document) => {
        const design = coverDesign(soundJob({ ...document, construction: { ...document.construction, strap: null } }));
        const [whole, half] = [first(oneCard(design)), first(halfCard(design))];
        const extra = half.width - whole.width / 2;
        // Nearer to the fold a slit may reach over it, and is cut to what lies on the half.
        const isOff = (x: number): boolean => Math.abs(x) > 4;
        const pricked = half.layers.hole.map(middle).filter(([x]) => isOff(x - extra));
        const both = pricked.flatMap(([x, y]) =>
          [-1, 1].map((side): Vec2 => [whole.width / 2 + side * (x - extra), y]),
        );
        const wanted = whole.layers.hole.map(middle).filter(([x]) => isOff(x - whole.width / 2));
        expect(both).toHaveLength(wanted.length);
        for (const [x, y] of both)
          expect(Math.min(...wanted.map(([u, v]) => Math.hypot(u - x, v - y)))).toBeLessThan(1e-6);
      }),
      { cost: 4 },
    );
  });

  test('has no line that the whole has not', () => {
    checkLaw(
      fc.property(constructedJob, (document) => {
        const design = coverDesign(soundJob(document));
        const [whole, half] = [first(oneCard(design)), first(halfCard(design))];
        const shift = half.width - whole.width / 2;
        for (const layer of ['fold', 'seam', 'book', 'mouth', 'lining'] as const) {
          const lines = whole.layers[layer].flatMap(segmentsOf).map((segment) => flattened([segment], 1e-3));
          for (const [x, y] of half.layers[layer].flatMap(segmentsOf).flatMap(inside)) {
            if (x <= shift + 1) continue;
            const at: Vec2 = [x - shift + whole.width / 2, y];
            const off = Math.min(...lines.map((chain) => toChain(at, chain)));
            expect([layer, at, off < 0.002 ? 0 : off]).toEqual([layer, at, 0]);
          }
        }
      }),
      { cost: 4 },
    );
  });

  test('says what one half has and the other has not, and draws it', () => {
    const drawing = halfCard(coverOf({ construction: { strap: {}, penLoop: {} } }));
    const half = first(drawing);
    const said = [...words(half), ...half.unwritten];
    for (const text of [
      'start, back only',
      'finish, back only',
      'strap, back only',
      'fastening, front only',
      'pen loop, front only',
    ])
      expect(said).toContain(text);
    expect(drawing.notes.join(' ')).toContain(
      'On one half alone, marked as front or back only: start and finish of the seam, strap, pen loop.',
    );
    // The strap's own holes are drawn, not pricked through both halves.
    const holes = (change: object) => first(halfCard(coverOf({ construction: change }))).layers.hole.length;
    expect(holes({ strap: {} })).toBe(holes({}));
  });

  test('pricks the middles of slits that lean, and says that they lean alike all round', () => {
    const drawing = halfCard(plainSource({ seam: { method: 'lacing', style: 'whip', pitch_mm: 6 } }));
    expect(new Set(first(drawing).layers.hole.map(({ kind }) => kind))).toEqual(new Set(['arc']));
    expect(drawing.notes.join(' ')).toContain('draw each 2.4 mm long at 45 degrees to the seam, alike all round.');
    const straight = halfCard(plainSource({ seam: { method: 'lacing', style: 'running', pitch_mm: 6 } }));
    expect(new Set(first(straight).layers.hole.map(({ kind }) => kind))).toEqual(new Set(['line']));
  });

  test('says how much the thickness of the card takes, and the width drawn', () => {
    // 1 - pi / 4 of 0.5 mm is 0.107 mm; half of 360 mm is 180 mm.
    const { notes, pieces } = halfCard(plainSource({ mockup: { card: { thickness_mm: 0.5, neutral: 0.5 } } }));
    expect(notes.join(' ')).toContain(
      'Half of 360 mm is 180 mm. The fold of card of 0.5 mm takes 0.11 mm of each half, so it is drawn 180.11 mm wide.',
    );
    expect(nth(pieces, 0).width).toBeCloseTo(180.1073, 4);
    const soft = halfCard(plainSource({ mockup: { card: { thickness_mm: 0.5, neutral: 0.8 } } }));
    expect(soft.notes.join(' ')).toContain('gives 0.13 mm of each half');
  });

  test('says of a hole on the centre line that it is made when the card is open', () => {
    // 88 spaces along 352 mm: the 44th hole stands in the middle.
    expect(halfCard(plainSource()).notes.join(' ')).toContain('lies on the fold');
  });

  test('has room for its words on the examples', () => {
    for (const change of [{}, { work: { units: 'in' } }, { leather: LINED }])
      expect(first(halfCard(coverOf(change))).unwritten).toEqual([]);
  });
});
