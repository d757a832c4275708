import { describe, expect, test } from 'vitest';
import { flattened } from '../../../src/core/math/contour.ts';
import { isInside } from '../../../src/core/math/polygonDistance.ts';
import type { Vec2 } from '../../../src/core/math/vec2.ts';
import { type Entity, LAYERS, type PieceDrawing, pictureFrame, type Text } from '../../../src/core/pattern/drawing.ts';
import { hatchLines } from '../../../src/core/pattern/hatchLines.ts';
import { mirroredDrawing } from '../../../src/core/pattern/mirrorDrawing.ts';
import { defined } from '../../defined.ts';
import { nth } from '../../nth.ts';
import { cuttingJobs, ironJobs } from '../../output/cuttingJobs.ts';
import { helvetica, meets, wordsBox } from '../../output/wordsBox.ts';

const jobs = [...cuttingJobs(), ...ironJobs()];
const smallest = defined(jobs.find(({ name }) => name === 'the smallest book')).drawing;

const all = (piece: PieceDrawing): Entity[] => LAYERS.flatMap((layer) => piece.layers[layer]);
const wordsOf = (piece: PieceDrawing): Text[] => all(piece).flatMap((each) => (each.kind === 'text' ? [each] : []));
const boxOf = (text: Text, pad = 0): Vec2[] => {
  const width = helvetica.widthOfTextAtSize(text.text, text.height);
  const back = text.align === 'middle' ? -width / 2 : 0;
  const { at, rotation } = text;
  return wordsBox({ ...text, at: [at[0] + back * Math.cos(rotation), at[1] + back * Math.sin(rotation)], width }, pad);
};
const chains = (entity: Exclude<Entity, Text>): Vec2[][] => {
  if (entity.kind === 'path') return [flattened(entity.segments, 0.01)];
  if (entity.kind === 'hatch') return hatchLines(entity).map(({ from, to }) => [from, to]);
  if (entity.kind === 'picture') return [pictureFrame(entity)];
  return [flattened([entity], 0.01)];
};

describe.each([
  ['grain side up', (drawing: (typeof jobs)[number]['drawing']) => drawing],
  ['mirrored', mirroredDrawing],
])('the words on every piece of many jobs, %s', (_, seen) => {
  test.each(jobs)('lie inside it, on no line, hole or other words: $name', ({ drawing }) => {
    for (const piece of seen(drawing).pieces) {
      const words = wordsOf(piece);
      const edge = flattened(piece.outline, 0.01).slice(0, -1);
      for (const text of words) {
        for (const corner of boxOf(text)) expect([text.text, isInside(corner, edge)]).toEqual([text.text, true]);
        const box = boxOf(text, 0.05);
        for (const entity of all(piece)) {
          if (entity === text) continue;
          const drawn =
            entity.kind === 'text' ? [[...boxOf(entity, 0.05), nth(boxOf(entity, 0.05), 0)]] : chains(entity);
          const isOver = drawn.some((chain) => meets(chain, box));
          expect(isOver, `${text.text} over ${entity.kind === 'text' ? entity.text : entity.kind}`).toBe(false);
        }
      }
    }
  });
});

test('the words of a small piece are all on it, or said in the notes', () => {
  const written = (piece: PieceDrawing): string =>
    wordsOf(piece)
      .map(({ text }) => text)
      .join('\n');
  for (const { name, drawing } of jobs)
    for (const piece of drawing.pieces) {
      expect([name, written(piece)]).toEqual([name, expect.stringMatching(new RegExp(`cut ${piece.count}`))]);
      if (piece.id === 'pocket') expect(written(piece)).toContain('mouth at the right');
      for (const { height } of wordsOf(piece)) expect(height).toBeGreaterThanOrEqual(1.8 - 1e-9);
      for (const { dimension } of piece.sums)
        if (dimension !== 'height' || piece.id === 'outside')
          expect(
            piece.id === 'strap' ||
              piece.id === 'penLoop' ||
              `${written(piece)}${drawing.notes.join()}`.includes(`${dimension} `),
          ).toBe(true);
    }
  expect(smallest.notes.join()).toMatch(
    /Outside, not written on the piece for want of room: this way along the hide's backbone; width 78 mm = 2 x 30 board/,
  );
});

test('a sum is written whole, or not at all', () => {
  for (const { drawing } of jobs)
    for (const piece of drawing.pieces) {
      const written = wordsOf(piece)
        .map(({ text }) => text)
        .join('; ');
      for (const head of ['width', 'height']) {
        const sum = piece.sums.find(({ dimension }) => dimension === head);
        if (sum === undefined || !new RegExp(`${head} [^;]*=`).test(written)) continue;
        for (const { name, each } of sum.parts)
          if (Math.abs(each) > 0.4) expect([piece.id, head, written.includes(name)]).toEqual([piece.id, head, true]);
      }
    }
});
