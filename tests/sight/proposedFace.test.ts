import { describe, expect, test } from 'vitest';
import { distance, type Photograph, solveScene, subtract } from '../../src/core/index.ts';
import { faceOfUnknownHeight } from '../../src/sight/faceOfUnknownHeight.ts';
import { type FaceHint, type ProposedFace, proposedFace } from '../../src/sight/proposedFace.ts';
import { defined } from '../defined.ts';
import { nth } from '../nth.ts';
import { drawnScene } from '../scenes/drawnScene.ts';
import { laidPoints, trulySeen } from '../scenes/renderedScene.ts';
import { takenPhotograph, takenPicture } from '../scenes/takenScene.ts';
import type { LaidBook, TestCamera, TestScene } from '../scenes/testScene.ts';

const { scene, cameras } = drawnScene(5, { kind: 'small', ground: 'table', cover: 'dark', longSide: 1000 });
const book = defined(scene.book);
const TAKEN = cameras.map((camera) => takenPicture(scene, camera));

function proposed(taken: TestScene, from = cameras, isKnown = true) {
  const pictures = from.map((camera) =>
    taken === scene ? nth(TAKEN, cameras.indexOf(camera)) : takenPicture(taken, camera),
  );
  const photographs: Photograph[] = pictures.map((picture, i) => takenPhotograph(picture, nth(from, i)));
  const print = { size: { value: 1, u: 0.005 }, difference: 0.003, across: null, along: null };
  const solved = solveScene(photographs, print);
  if (!solved.ok) throw new Error(solved.code);
  const laid = defined(taken.book ?? book);
  const { thicknessAtSpine, thicknessAtForeEdge } = laid.book;
  const hint: FaceHint = { head: Math.abs(laid.angle) > 1 ? [0, -1] : [0, 1] };
  return isKnown
    ? proposedFace(pictures, photographs, solved.views, [thicknessAtSpine, thicknessAtForeEdge], hint)
    : faceOfUnknownHeight(pictures, photographs, solved.views, print, hint);
}

/** Each found corner is where each photograph shows the book's own, in its stated uncertainty. */
function expectOnBook(face: ProposedFace, laid: LaidBook, from: readonly TestCamera[]): void {
  const { headSpine, headForeEdge, tailForeEdge, tailSpine } = laidPoints(laid);
  face.corners.forEach((corners, i) => {
    [headSpine, headForeEdge, tailForeEdge, tailSpine].forEach((point, k) => {
      if (!nth(face.found, k)) return;
      const { at, u } = nth(defined(corners), k);
      const seen = trulySeen(nth(from, i), point);
      expect(distance(at, seen)).toBeLessThan(Math.max(1.5, Math.min(20, Math.sqrt(Math.max(u[0], u[2])))));
      const [x, y] = subtract(at, seen);
      expect(Math.abs(x)).toBeLessThan(3 * Math.sqrt(u[0]));
      expect(Math.abs(y)).toBeLessThan(3 * Math.sqrt(u[2]));
    });
  });
}

describe('the top face proposed', () => {
  test('its corners are where photographs show those of the book, in their order', () => {
    const face = defined(proposed(scene) ?? undefined);
    expect(face.found).toEqual([true, true, true, true]);
    expectOnBook(face, book, cameras);
  });

  test('the views tell at which height it is', () => {
    const face = defined(proposed(scene, cameras, false) ?? undefined);
    expect(face.found).toEqual([true, true, true, true]);
    expectOnBook(face, book, cameras);
    expect(Math.abs(face.heights[0] - book.book.thicknessAtSpine)).toBeLessThan(1);
    expect(Math.abs(face.heights[1] - book.book.thicknessAtForeEdge)).toBeLessThan(1);
  });

  test('a rounded spine, which stands out over its board, is not taken for it', () => {
    const rounded = drawnScene(51, { longSide: 1000 });
    const face = defined(proposed(rounded.scene, rounded.cameras) ?? undefined);
    expect(face.found.slice(1, 3)).toEqual([true, true]);
    expectOnBook(face, defined(rounded.scene.book), rounded.cameras);
  });

  test('no face is found on a sheet without a book', () => {
    expect(proposed({ ...scene, book: null })?.found ?? []).not.toContain(true);
  });

  test('one photograph does not tell a book from its sheet', () => {
    expect(proposed(scene, cameras.slice(0, 1))).toBeNull();
  });
});
