import type { BookModel } from '../book/bookModel.ts';
import { boardDirections, CLOSED, edgeAt, jointSlide, type Opening, outlinePolygon } from '../book/bookOutline.ts';
import { remembered } from '../math/remembered.ts';
import { addScaled, distance, heading, leftOf, type Vec2 } from '../math/vec2.ts';
import { mm } from '../units/mm.ts';
import { type Grid, gridNormals, gridOf, gridSolid } from './gridSolid.ts';
import type { MeshData } from './meshData.ts';
import { profileSolid } from './profileSolid.ts';

/** Width of the joint of a hardback, from the spine plane to the board, mm. Common practice, no source. */
const JOINT = 7;
/** Thickness of the spine piece as a share of the board: case makers use thinner card there. Free choice. */
const SPINE_SHARE = 0.8;

/** Share of the width that is left to the joint at most, where a rounded edge takes much of the board. Free choice. */
const MOST_JOINT = 0.8;

/** Between the spine piece and the board of a cover without a joint, mm. */
const PLAY = 0.05;

/** What the case of a book is made of: where the boards begin, and the spine piece between them. */
export interface CaseShape {
  /** From the hinge to the inner end of the panel. */
  readonly joint: number;
  readonly spineThickness: number;
  /** x of the spine piece's inner corner at the board line. */
  readonly spineEnd: number;
  /** Inner face of the spine piece: x at a distance y from the middle. */
  spineInside(y: number): number;
}

/** Shape of the case of a closed book; a paperback's cover runs on into its spine without a joint. */
export const caseShape = remembered((book: BookModel): CaseShape => {
  const { board, edgeRadius, width, wedge } = book;
  const spineThickness = board * (book.kind === 'hardback' ? SPINE_SHARE : 1);
  // A rounded edge unbends as the board opens and draws it in, by less than its own thickness while the two could meet.
  const clear = edgeRadius > 0 ? Math.max(edgeRadius, edgeAt(book, 0).onBoard) + board + 0.5 : 0;
  // The end of a board that closes toward the fore-edge leans over the spine piece.
  const beside = (spineThickness + PLAY + board * Math.max(0, -Math.sin(wedge))) / Math.cos(wedge);
  const joint = Math.min(Math.max(book.kind === 'hardback' ? JOINT : 0, beside, clear), MOST_JOINT * width);
  const { corner, circle } = spineProfile(book);
  return {
    joint,
    spineThickness,
    // Round an edge whose board closes toward the fore-edge the spine piece turns farther than square.
    spineEnd: edgeRadius > spineThickness ? corner[0] + edgeRadius * Math.max(0, -Math.sin(wedge)) : spineThickness,
    spineInside(y) {
      const away = Math.abs(y);
      const beyond = away - corner[1];
      const edge = edgeRadius - spineThickness;
      const onBack = (): number =>
        circle ? circle.x - Math.sqrt(Math.max(0, (circle.radius - spineThickness) ** 2 - away ** 2)) : spineThickness;
      if (edge <= 0 || beyond <= 0) return onBack();
      return Math.max(onBack(), corner[0] - Math.sqrt(Math.max(0, edge ** 2 - beyond ** 2)));
    },
  };
});

/** Outside of the spine: centre of its rounded front edge, circle of a rounded back, and where the two meet. */
interface SpineProfile {
  readonly corner: Vec2;
  readonly circle: { readonly x: number; readonly radius: number } | null;
  /** Polar angle at which back and edge meet, about either centre, radians. */
  readonly meet: number;
}

/** A rounded edge of the spine piece, and the polar angle at which it begins at the board. */
interface SpineEdge extends SpineProfile {
  readonly begins: number;
}

/** Share of half the thickness that a rounded edge may take here: at 1 both edges meet, and nothing is left between them. */
const ROUNDEST = 1 - 1e-6;

function spineProfile(book: BookModel, swing = 0): SpineProfile {
  const edgeRadius = mm(Math.min(book.edgeRadius, (ROUNDEST * book.thickness) / 2));
  const { points, radius, back } = outlinePolygon({ ...book, edgeRadius }, { front: swing, back: swing });
  const corner = points[1]!;
  if (back === null) return { corner, circle: null, meet: Math.PI };
  const x = points[(back.first + back.last) / 2]![0] + back.radius;
  return {
    corner,
    circle: { x, radius: back.radius + radius },
    meet: back.radius > 0 ? Math.atan2(corner[1], corner[0] - x) : Math.PI / 2,
  };
}

/** Width of the covering turned in over a board's edges, beside the pastedown, mm; less on a small board. Common practice, no source. */
const TURN_IN = 4;

/** The line on which the outer face of the back board lies at its swing, radians: from the hinge toward the fore-edge. */
export const backBoardLine = (book: BookModel, swing: number): { readonly hinge: Vec2; readonly along: Vec2 } => ({
  hinge: [0, -book.thickness / 2],
  along: heading(boardDirections(book, { front: swing, back: swing }).back),
});

/** The back board at its swing, radians, with its pastedown on a hardback's; the front board is its mirror image. */
export function backBoardMesh(book: BookModel, swing: number): MeshData {
  const { hinge, along } = backBoardLine(book, swing);
  const inward = leftOf(along);
  const slide = jointSlide(book, swing);
  const { joint } = caseShape(book);
  const turnIn = Math.min(TURN_IN, (book.width - joint) / 4, book.height / 4);
  const columns = [joint, book.width - turnIn, book.width];
  const rows = [0, turnIn, book.height - turnIn, book.height];
  const [outer, inner] = [0, book.board].map((depth) => {
    const grid = gridOf(columns.length, rows.length);
    grid.points.set(
      columns.flatMap((at) => {
        const [x, y] = addScaled(addScaled(hinge, along, at + slide), inward, depth);
        return rows.flatMap((up) => [x, y, up - book.height / 2]);
      }),
    );
    return grid;
  }) as [Grid, Grid];
  const solid = gridSolid({
    part: 'backBoard',
    outer,
    inner,
    normals: gridNormals(outer),
    uvs: Float64Array.from(columns.flatMap((at) => rows.flatMap((up) => [at - joint, up]))),
    faces: { outer: 'boardCloth', inner: 'boardInside', edge: 'boardCloth' },
  });
  return book.kind === 'hardback' ? withPastedown(solid, rows.length) : solid;
}

/** Six indices for each cell of a grid. */
const CELL = 6;

/** A board whose inner face is pasted over from the joint up to what is turned in: the middle cell of its first column. */
function withPastedown(board: MeshData, rows: number): MeshData {
  const [outer, inner, edge] = board.faces as [Run, Run, Run];
  const indices = board.indices.slice();
  const cells = indices.subarray(inner.start, inner.start + inner.count);
  const middle = CELL * Math.floor((rows - 1) / 2);
  const pasted = cells.slice(middle, middle + CELL);
  cells.copyWithin(CELL, 0, middle);
  cells.set(pasted, 0);
  return {
    ...board,
    indices,
    faces: [
      outer,
      { face: 'endpaper', start: inner.start, count: CELL },
      { ...inner, start: inner.start + CELL, count: inner.count - CELL },
      edge,
    ],
  };
}

type Run = MeshData['faces'][number];

/** Largest turn of a facet of a curved spine, radians, and how far a facet may stand off its arc, mm. */
const MAX_TURN = Math.PI / 60;
const MAX_SAGITTA = 0.02;

/**
 * Most by which a rounded edge of the spine piece unbends, radians, and as a share of its turn; and the swings between which it
 * comes back, under leaves that are drawn taut over its end. Free choice: the piece is stiff.
 */
const UNBENDS = { most: 0.5, share: 0.5, backFrom: 1.6, backAt: 2.1 };

/** Outside and inside of the spine piece, front to back. */
interface SpineSection {
  readonly outer: readonly Vec2[];
  readonly inner: readonly Vec2[];
}

/** An edge less round than the spine piece is thick stays outside of it, and the piece is alike however the book stands. */
const bends = (book: BookModel): boolean => book.edgeRadius > caseShape(book).spineThickness;

/**
 * Section of the spine piece, following the back of the book: flat, edge-rounded or round. A rounded edge unbends as its board
 * opens, so that it stays behind a pocket that reaches onto it.
 */
export const spineSection = (book: BookModel, opening: Opening): SpineSection =>
  bends(book) ? sectionAt(book, opening) : closedSection(book);

const closedSection = remembered((book: BookModel) => sectionAt(book, CLOSED));

function sectionAt(book: BookModel, opening: Opening): SpineSection {
  const { thickness, edgeRadius, wedge } = book;
  const { spineThickness } = caseShape(book);
  const outer: Vec2[] = [];
  const inner: Vec2[] = [];
  /** As many facets however the book stands: those of the closed one. */
  const arc = (centre: Vec2, radius: number, from: number, to: number, closed: number): void => {
    const step = Math.min(MAX_TURN, 2 * Math.sqrt((2 * MAX_SAGITTA) / radius));
    const count = Math.max(1, Math.ceil(Math.abs(closed) / step));
    for (let i = 0; i <= count; i++) {
      const way = heading(from + ((to - from) * i) / count);
      outer.push(addScaled(centre, way, radius));
      inner.push(addScaled(centre, way, Math.max(0.01, radius - spineThickness)));
    }
  };
  const shut = spineProfile(book);
  const isRounded = bends(book);
  const turn = isRounded ? shut.meet - Math.PI / 2 - wedge : 0;
  const [front, back] = [opening.front, opening.back].map((swing) => {
    const kept = Math.min(1, Math.max(0, (UNBENDS.backAt - swing) / (UNBENDS.backAt - UNBENDS.backFrom)));
    const unbent = kept * Math.max(0, Math.min(swing, UNBENDS.most, UNBENDS.share * turn));
    return { ...spineProfile(book, unbent), begins: Math.PI / 2 + wedge + unbent };
  }) as [SpineEdge, SpineEdge];
  if (isRounded) arc(front.corner, edgeRadius, front.begins, front.meet, turn);
  if (shut.circle)
    arc([shut.circle.x, 0], shut.circle.radius, front.meet, 2 * Math.PI - back.meet, 2 * (Math.PI - shut.meet));
  else if (!isRounded) {
    const half = thickness / 2 - edgeRadius;
    // Boards that close toward the fore-edge leave less room inside than outside.
    const inside = half + spineThickness * Math.min(0, Math.tan(wedge));
    outer.push([0, half], [0, -half]);
    inner.push([spineThickness, inside], [spineThickness, -inside]);
  }
  const [x, y] = back.corner;
  if (isRounded) arc([x, -y], edgeRadius, 2 * Math.PI - back.meet, 2 * Math.PI - back.begins, turn);
  return { outer, inner };
}

/** The spine piece. */
export const spineMesh = (book: BookModel, opening: Opening): MeshData =>
  bends(book) ? meshOf(book, sectionAt(book, opening)) : closedMesh(book);

const closedMesh = remembered((book: BookModel) => meshOf(book, closedSection(book)));

function meshOf(book: BookModel, { outer, inner }: SpineSection): MeshData {
  let at = 0;
  const along = outer.map((place, i) => {
    at += distance(place, outer[Math.max(0, i - 1)]!);
    return at;
  });
  const faces = { outer: 'boardCloth', inner: 'boardInside', edge: 'boardCloth' } as const;
  return profileSolid(outer, inner, along, book.height, { part: 'spine', faces });
}
