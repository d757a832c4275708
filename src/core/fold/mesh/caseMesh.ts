import type { BookModel } from '../../book/bookModel.ts';
import { boardDirections, bookOutline, CLOSED, jointSlide, symmetricOpening } from '../../book/bookOutline.ts';
import { circularSegment } from '../../math/circularSegment.ts';
import { addScaled, heading, leftOf, type Vec2 } from '../../math/vec2.ts';
import { gridOf, gridSolid } from './gridSolid.ts';
import type { MeshData, PartName } from './meshData.ts';

/** Width of the joint of a hardback, from the spine plane to the board, mm. Common practice, no source. */
const JOINT = 7;
/** Thickness of the spine piece as a share of the board: case makers use thinner card there. Free choice. */
const SPINE_SHARE = 0.8;

/** What the case of a book is made of: where the boards begin, and the spine piece between them. */
export interface CaseShape {
  /** From the hinge to the inner end of the panel. */
  readonly joint: number;
  readonly spineThickness: number;
  /** Inner face of the spine piece: x at a distance y from the middle. */
  spineInside(y: number): number;
}

/** Shape of the case of a closed book; a paperback's cover runs on into its spine without a joint. */
export function caseShape(book: BookModel): CaseShape {
  const { board, thickness, rise, edgeRadius, width } = book;
  const spineThickness = board * (book.kind === 'hardback' ? SPINE_SHARE : 1);
  // A rounded edge unbends as the board opens and draws it in, by less than its own thickness while the two could meet.
  const clear = edgeRadius > 0 ? edgeRadius + board + 0.5 : 0;
  const joint = Math.min(Math.max(book.kind === 'hardback' ? JOINT : spineThickness, clear), width / 2);
  const circle = circularSegment(thickness, rise);
  const straight = thickness / 2 - edgeRadius;
  return {
    joint,
    spineThickness,
    spineInside(y) {
      const away = Math.abs(y);
      if (rise > 0) {
        const inside = circle.radius - spineThickness;
        return circle.radius - rise - Math.sqrt(Math.max(0, inside * inside - away * away));
      }
      const beyond = away - straight;
      if (beyond <= 0 || edgeRadius <= spineThickness) return spineThickness;
      const inside = edgeRadius - spineThickness;
      return edgeRadius - Math.sqrt(Math.max(0, inside * inside - beyond * beyond));
    },
  };
}

/** A flat or curved sheet of the case: outer and inner profile in the section, full height of the book. */
function panel(part: PartName, outer: readonly Vec2[], inner: readonly Vec2[], height: number): MeshData {
  const grids = [outer, inner].map((profile) => {
    const grid = gridOf(profile.length, 2);
    profile.forEach(([x, y], i) => {
      grid.points.set([x, y, -height / 2, x, y, height / 2], 6 * i);
    });
    return grid;
  });
  const normals = new Float64Array(6 * outer.length);
  const uvs = new Float64Array(4 * outer.length);
  let along = 0;
  outer.forEach(([x, y], i) => {
    const before = outer[Math.max(0, i - 1)]!;
    const after = outer[Math.min(outer.length - 1, i + 1)]!;
    const length = Math.hypot(after[0] - before[0], after[1] - before[1]);
    // Column direction x z: out of the book where the profile runs front to back.
    const n = [(after[1] - before[1]) / length, -(after[0] - before[0]) / length, 0];
    normals.set([...n, ...n], 6 * i);
    if (i > 0) along += Math.hypot(x - before[0], y - before[1]);
    uvs.set([along, 0, along, height], 4 * i);
  });
  return gridSolid({
    part,
    outer: grids[0]!,
    inner: grids[1]!,
    normals,
    uvs,
    faces: { outer: 'boardCloth', inner: 'boardInside', edge: 'boardCloth' },
  });
}

/** The back board at an opening; the front board is its mirror image. */
export function backBoardMesh(book: BookModel, opening: number): MeshData {
  const swing = symmetricOpening(opening);
  const direction = boardDirections(book, swing).back;
  const along = heading(direction);
  const inward = leftOf(along);
  const slide = jointSlide(book, swing.back);
  const hinge: Vec2 = [0, -book.thickness / 2];
  const outer = [caseShape(book).joint + slide, book.width + slide].map((at) => addScaled(hinge, along, at));
  return panel(
    'backBoard',
    outer,
    outer.map((at) => addScaled(at, inward, book.board)),
    book.height,
  );
}

/** Angle between two places of a curved spine, radians. */
const SPINE_STEP = Math.PI / 60;

/** The spine piece, following the back of the closed book: flat, edge-rounded or round. */
export function spineMesh(book: BookModel): MeshData {
  const { thickness, rise, edgeRadius } = book;
  const { spineThickness } = caseShape(book);
  const outer: Vec2[] = [];
  const inner: Vec2[] = [];
  const arc = (centre: Vec2, radius: number, from: number, to: number): void => {
    const count = Math.max(1, Math.ceil(Math.abs(to - from) / SPINE_STEP));
    for (let i = 0; i <= count; i++) {
      const way = heading(from + ((to - from) * i) / count);
      outer.push(addScaled(centre, way, radius));
      inner.push(addScaled(centre, way, Math.max(0.01, radius - spineThickness)));
    }
  };
  if (rise > 0) {
    const { radius, halfAngle } = circularSegment(thickness, rise);
    arc([radius - rise, 0], radius, Math.PI - halfAngle, Math.PI + halfAngle);
  } else if (edgeRadius > spineThickness) {
    const [x, y] = bookOutline(book, CLOSED).points[1]!;
    arc([x, y], edgeRadius, Math.PI / 2 + book.wedge, Math.PI);
    arc([x, -y], edgeRadius, Math.PI, (3 * Math.PI) / 2 - book.wedge);
  } else {
    const half = thickness / 2 - edgeRadius;
    // Boards that close toward the fore-edge leave less room inside than outside.
    const inside = half + spineThickness * Math.min(0, Math.tan(book.wedge));
    outer.push([0, half], [0, -half]);
    inner.push([spineThickness, inside], [spineThickness, -inside]);
  }
  return panel('spine', outer, inner, book.height);
}
