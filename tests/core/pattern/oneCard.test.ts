import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { coverDesign } from '../../../src/core/fold/coverDesign.ts';
import { flattened } from '../../../src/core/math/contour.ts';
import type { Vec2 } from '../../../src/core/math/vec2.ts';
import type { Drawing, Entity, PieceDrawing, PieceId } from '../../../src/core/pattern/drawing.ts';
import { oneCard } from '../../../src/core/pattern/oneCard.ts';
import { patternDrawing } from '../../../src/core/pattern/patternDrawing.ts';
import { defined } from '../../defined.ts';
import { soundJob } from '../../jobArbitrary.ts';
import { checkLaw } from '../../laws.ts';
import { nth } from '../../nth.ts';
import { toChain } from '../../output/outlineDistance.ts';
import { constructedJob } from '../../property/constructionArbitrary.ts';
import { coverOf } from './coverOf.ts';
import { LINED, nearly, placesOf, plainSource, TURNED } from './plainSource.ts';

const ids = ({ pieces }: Drawing): PieceId[] => pieces.map(({ id }) => id);
const pieceOf = ({ pieces }: Drawing, id: PieceId): PieceDrawing | undefined => pieces.find((each) => each.id === id);
const words = ({ layers }: PieceDrawing): string[] =>
  layers.text.flatMap((entity) => (entity.kind === 'text' ? [entity.text] : []));

/** Middle of a hole, and both ends of a slit. */
const points = (mark: Entity): Vec2[] => {
  if (mark.kind === 'arc') return [mark.centre];
  if (mark.kind !== 'line') throw new Error(`a hole drawn as ${mark.kind}`);
  return [mark.from, mark.to];
};

const chain = (entity: Entity): Vec2[] => {
  if (entity.kind !== 'line' && entity.kind !== 'arc') throw new Error(`a line drawn as ${entity.kind}`);
  return flattened([entity], 1e-4);
};

/** Asks that a piece, laid under the card by `place`, has its edge on the card's edge or lines and its holes on its holes. */
function expectServed(card: PieceDrawing, piece: PieceDrawing, lines: readonly Entity[], place: (at: Vec2) => Vec2) {
  const edges = [flattened(card.outline, 1e-4), ...lines.map(chain)];
  const own = flattened(piece.outline, 1e-4).map(place);
  for (const at of own) expect(Math.min(...edges.map((edge) => toChain(at, edge)))).toBeLessThan(1e-3);
  const holes = card.layers.hole.flatMap(points);
  for (const hole of piece.layers.hole.flatMap(points)) {
    const [x, y] = place(hole);
    expect(Math.min(...holes.map(([u, v]) => Math.hypot(u - x, v - y)))).toBeLessThan(1e-6);
  }
  for (const line of lines) for (const at of chain(line)) expect(toChain(at, own)).toBeLessThan(1e-3);
}

describe('the card for all pieces', () => {
  test('serves for the pockets of both ends and the lining of random jobs, turned over to their flesh side', () => {
    let [pockets, linings] = [0, 0];
    checkLaw(
      fc.property(constructedJob, (document) => {
        const design = coverDesign(soundJob(document));
        const pattern = patternDrawing(design);
        const drawing = oneCard(design);
        const card = nth(drawing.pieces, 0);
        const { width, height } = card;
        const [pocket, lining] = [pieceOf(pattern, 'pocket'), pieceOf(pattern, 'lining')];
        if (pocket !== undefined && pieceOf(drawing, 'pocket') === undefined) {
          pockets++;
          const [front, back] = card.layers.mouth;
          expectServed(card, pocket, [defined(front)], ([x, y]) => [width - x, y]);
          expectServed(card, pocket, [defined(back)], ([x, y]) => [x, height - y]);
        }
        if (lining !== undefined && pieceOf(drawing, 'lining') === undefined) {
          linings++;
          expectServed(card, lining, card.layers.lining, ([x, y]) => [(width + lining.width) / 2 - x, y]);
        }
        // What the card does not serve for is cut by a card of its own.
        for (const { id } of pattern.pieces) {
          const lines = id === 'pocket' ? card.layers.mouth : id === 'lining' ? card.layers.lining : [];
          const isWhole = id === 'lining' && words(card).join(' ').includes('lining: the whole card');
          expect([id, ids(drawing).includes(id) !== (lines.length > 0 || isWhole)]).toEqual([id, true]);
        }
      }),
      { cost: 4 },
    );
    expect(Math.min(pockets, linings)).toBeGreaterThan(0);
  });

  test('has the mouths a pocket width from the cut edges, and the ends of the lining about the middle', () => {
    // The pocket is 58 mm wide in an outside of 360 mm.
    const card = nth(oneCard(plainSource({ leather: LINED })).pieces, 0);
    expect(placesOf(card.layers.mouth).sort((a, b) => nth(a, 0) - nth(b, 0))).toEqual(
      nearly([
        [58, 0, 58, 228],
        [302, 228, 302, 0],
      ]),
    );
    const ends = placesOf(card.layers.lining).map(([x]) => defined(x));
    expect(nth(ends, 0) + nth(ends, 1)).toBeCloseTo(360, 9);
    expect(words(card)).toEqual(
      expect.arrayContaining(['mouth of the front pocket', 'mouth of the back pocket', 'end of the lining']),
    );
    expect(words(card).join(' ')).toContain('pockets: one end up to its mouth line, 58 mm wide, 82 holes each');
  });

  test('keeps its own words clear: nothing is left unwritten on the examples', () => {
    for (const change of [{}, { work: { units: 'in' } }, { leather: LINED }]) {
      const card = nth(oneCard(coverOf(change)).pieces, 0);
      expect(card.unwritten).toEqual([]);
    }
  });

  test('says of turned ends that the mouths are the cut edges', () => {
    const drawing = oneCard(plainSource(TURNED));
    const card = nth(drawing.pieces, 0);
    expect(card.layers.mouth).toEqual([]);
    expect(words(card)).toContain('pocket mouths: the cut edges at both ends');
    expect(drawing.notes.join(' ')).toContain('no pocket is cut');
  });

  test('leaves a pocket that is wider than half the card on a card of its own', () => {
    const drawing = oneCard(plainSource({ pockets: { depth_mm: 190 } }));
    expect(ids(drawing)).toEqual(['outside', 'pocket']);
    expect(nth(drawing.pieces, 0).layers.mouth).toEqual([]);
  });

  test('says how the leather lies under it, and of card how the card does', () => {
    const [leather, card] = [plainSource(), { ...plainSource(), isCard: true }].map((source) =>
      oneCard(source).notes.join(' '),
    );
    expect(leather).toContain('Outside: lay the card as drawn on the leather, grain side up');
    expect(leather).toContain(
      'Pockets: lay the card as drawn on the leather, flesh side up, because here the grain side faces the book',
    );
    expect(card).toContain('Outside: lay the card as drawn on the trial card, outside face up');
    const curved = oneCard(plainSource({ construction: { mouth: 'curved' } })).notes.join(' ');
    expect(curved).toContain('prick through the card along each');
  });
});
