import { describe, expect, test } from 'vitest';
import { type Photograph, solveScene, subtract } from '../../src/core/index.ts';
import { proposedFace } from '../../src/sight/proposedFace.ts';
import { defined } from '../defined.ts';
import { nth } from '../nth.ts';
import { drawnScene } from '../scenes/drawnScene.ts';
import { laidPoints, trulySeen } from '../scenes/renderedScene.ts';
import { takenPhotograph, takenPicture } from '../scenes/takenScene.ts';
import type { TestScene } from '../scenes/testScene.ts';

const { scene, cameras } = drawnScene(5, { kind: 'small', ground: 'table', cover: 'dark', longSide: 1000 });
const book = defined(scene.book);

function proposed(taken: TestScene) {
  const pictures = cameras.map((camera) => takenPicture(taken, camera));
  const photographs: Photograph[] = pictures.map((picture, i) => takenPhotograph(picture, nth(cameras, i)));
  const size = { value: 1, u: 0.005 };
  const solved = solveScene(photographs, { size, difference: 0.003, across: null, along: null });
  if (!solved.ok) throw new Error(solved.code);
  const { thicknessAtSpine, thicknessAtForeEdge } = book.book;
  const isTurned = Math.abs(book.angle) > 1;
  return proposedFace(pictures, photographs, solved.views, [thicknessAtSpine, thicknessAtForeEdge], {
    head: isTurned ? [0, -1] : [0, 1],
  });
}

describe('the top face proposed', () => {
  test('its corners are where photographs show those of the book, in their order', () => {
    const face = defined(proposed(scene));
    const { headSpine, headForeEdge, tailForeEdge, tailSpine } = laidPoints(book);
    expect(face.found).toEqual([true, true, true, true]);
    face.corners.forEach((corners, i) => {
      [headSpine, headForeEdge, tailForeEdge, tailSpine].forEach((point, k) => {
        const { at, u } = nth(defined(corners), k);
        const [xx, , yy] = u;
        const [x, y] = subtract(at, trulySeen(nth(cameras, i), point));
        expect(Math.abs(x)).toBeLessThan(3 * Math.sqrt(xx));
        expect(Math.abs(y)).toBeLessThan(3 * Math.sqrt(yy));
      });
    });
  });

  test('no face is found on a sheet without a book', () => {
    expect(proposed({ ...scene, book: null })?.found ?? []).not.toContain(true);
  });
});
