import type { BookModel } from '../book/bookModel.ts';
import { caseShape } from './caseMesh.ts';
import { gridNormals, gridOf, gridSolid } from './gridSolid.ts';
import type { MeshData } from './meshData.ts';

/** Depth of a band from the back of the text block, and its greatest height, mm. Common practice, no source. */
const DEPTH = 2.4;
const HEIGHT = 2;
/** Play between band, spine piece and text block, mm. */
const PLAY = 0.12;
/** Between a band's end and the closed board, mm. Free choice. */
const FROM_BOARD = 0.5;
const ROUND_STEPS = 6;
const ALONG_STEPS = 16;

/** The head band: a half round strip on the spine end of the text block, within the square; null where there is no room. */
export function headBandMesh(book: BookModel): MeshData | null {
  const height = Math.min(HEIGHT, book.square - 0.3);
  const { spineInside } = caseShape(book);
  // Boards that close toward the fore-edge are nearest at the pages' side of the band.
  const room = (x: number): number =>
    book.thickness / 2 + x * Math.min(0, Math.tan(book.wedge)) - book.board / Math.cos(book.wedge) - FROM_BOARD;
  const half = room(spineInside(room(0)) + PLAY + DEPTH);
  if (book.kind !== 'hardback' || height < 0.4 || half < 0.5) return null;
  const base = book.height / 2 - book.square;
  const outer = gridOf(ALONG_STEPS + 1, ROUND_STEPS + 1);
  const inner = gridOf(ALONG_STEPS + 1, ROUND_STEPS + 1);
  const uvs = new Float64Array(2 * outer.columns * outer.rows);
  for (let i = 0; i <= ALONG_STEPS; i++) {
    const y = (2 * half * i) / ALONG_STEPS - half;
    const x = spineInside(y) + PLAY;
    for (let j = 0; j <= ROUND_STEPS; j++) {
      const angle = (Math.PI * j) / ROUND_STEPS;
      const at = i * outer.rows + j;
      const across = x + (DEPTH / 2) * (1 + Math.cos(angle));
      const up = base + height * Math.sin(angle);
      outer.points.set([across, y, up], 3 * at);
      inner.points.set([across, y, base], 3 * at);
      uvs.set([y + half, (angle * DEPTH) / 2], 2 * at);
    }
  }
  // Back to front, and from the pages over the top to the spine: out of the round side.
  return gridSolid({
    part: 'headBand',
    outer,
    inner,
    normals: gridNormals(outer),
    uvs,
    faces: { outer: 'band', inner: 'band', edge: 'band' },
  });
}
