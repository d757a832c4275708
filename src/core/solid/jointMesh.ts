import type { BookModel } from '../book/bookModel.ts';
import { edgeAt, jointSlide } from '../book/bookOutline.ts';
import { addScaled, dot, leftOf, subtract, type Vec2 } from '../math/vec2.ts';
import { backBoardLine, caseShape, spineSection } from './caseMesh.ts';
import type { MeshData } from './meshData.ts';
import { profileSolid } from './profileSolid.ts';

/** Thickness of book cloth with the endpaper pasted on it, mm; at most a share of the board. Common practice, no source. */
const CLOTH = { thickness: 0.4, share: 0.8 };
/** Depth of the groove that is pressed into the cloth between spine piece and board, mm; less on a thin board. Common practice, no source. */
const GROOVE = 1.5;
/** Between the cloth's ends and what they are pasted to, mm. */
const PLAY = 0.02;
/** Least run of cloth drawn, mm. */
const LEAST = 0.05;
const STEPS = 8;

/**
 * The cloth that joins the back board to the spine piece, at the board's swing, radians; the front one is its mirror image.
 * Null without a joint.
 *
 * It lies in the board's outer plane, closed in a groove that is drawn flat as the board opens: the leather outside, which
 * lies over the groove, and the leaves, which begin at the board's inner face, stay clear of it at every swing.
 */
export function backJointMesh(book: BookModel, swing: number): MeshData | null {
  const { joint, spineThickness, spineEnd } = caseShape(book);
  // A board that closes toward the fore-edge leans over the spine piece.
  const room = joint * Math.cos(book.wedge) + book.board * Math.min(0, Math.sin(book.wedge)) - spineThickness;
  if (book.kind !== 'hardback' || room < 1) return null;
  const { along, hinge } = backBoardLine(book, swing);
  const inward = leftOf(along);
  const cloth = Math.min(CLOTH.thickness, CLOTH.share * book.board);
  const end = joint + jointSlide(book, swing) - PLAY;
  const flat = Math.min(1, Math.max(0, swing / (Math.PI / 2)));
  const groove = Math.max(0, Math.min(GROOVE, book.board - cloth - PLAY) * (1 - flat));
  // Bent back past flat the leaves are drawn taut from the spine piece's inner corner to the board's.
  const [corner, above] = [spineEnd * Math.cos(swing + book.wedge), spineEnd * Math.sin(swing + book.wedge)];
  const rise = (cloth + LEAST - above) / (book.board - above);
  const underLeaves = swing > Math.PI / 2 && rise > 0 ? corner + (end - corner) * rise : 0;
  const { from, pastSpine } = clearOfSpine(book, swing, { cloth, deepest: cloth + groove, underLeaves });
  const start = Math.min(end - LEAST, Math.max(from(0), from(cloth), pastSpine) + PLAY + LEAST);
  const shares = Array.from({ length: STEPS + 1 }, (_, i) => i / STEPS);
  const line = (depth: number): Vec2[] => {
    const place = (at: number, deep: number): Vec2 => addScaled(addScaled(hinge, along, at), inward, deep);
    const first = place(Math.min(start - LEAST, from(depth) + PLAY), depth);
    const run = shares.map((share) =>
      place(start + (end - start) * share, depth + groove * Math.sin(Math.PI * share) ** 2),
    );
    return [first, ...run];
  };
  const places = [0, ...shares.map((share) => start + (end - start) * share)];
  const faces = { outer: 'boardCloth', inner: 'endpaper', edge: 'boardCloth' } as const;
  return profileSolid(line(0), line(cloth), places, book.height, { part: 'backJoint', faces });
}

interface Clearance {
  readonly cloth: number;
  /** Depth down to which the groove goes, mm. */
  readonly deepest: number;
  /** Where the inner face is clear of leaves drawn over it, mm from the hinge. */
  readonly underLeaves: number;
}

/**
 * Where the cloth is clear of the spine piece, and of the edge that unbends, mm from the hinge along the board: its end, by the
 * depth in it, and where it may go down to `deepest`.
 */
function clearOfSpine(book: BookModel, swing: number, { cloth, deepest, underLeaves }: Clearance) {
  const { outer, inner } = spineSection(book, { front: swing, back: swing });
  const { along, hinge } = backBoardLine(book, swing);
  const inward = leftOf(along);
  const ring = [...outer, ...[...inner].reverse()].map((place): Vec2 => {
    const off = subtract(place, hinge);
    return [dot(off, along), dot(off, inward)];
  });
  // Straight or hollow, an edge takes nothing of the board.
  const least = Math.max(0, edgeAt(book, swing).onBoard);
  /** Where the outline of the spine piece runs through a depth. */
  const through = (depth: number): number =>
    ring.reduce((clear, [a, n], i) => {
      const [b, m] = ring[(i + 1) % ring.length]!;
      if ((n - depth) * (m - depth) > 0) return clear;
      return Math.max(clear, n === m ? Math.max(a, b) : a + ((b - a) * (depth - n)) / (m - n));
    }, least);
  // The end is cut to the spine piece at both faces, and what of it stands out between them.
  const [outside, inside] = [through(0), Math.max(through(cloth), underLeaves)];
  const at = (depth: number): number => outside + ((inside - outside) * depth) / cloth;
  const within = (depth: number): Vec2[] => ring.filter(([, n]) => n >= 0 && n <= depth);
  const out = Math.max(0, ...within(cloth).map(([a, n]) => a - at(n)));
  return {
    from: (depth: number): number => at(depth) + out,
    pastSpine: Math.max(through(deepest), ...within(deepest).map(([a]) => a)),
  };
}
