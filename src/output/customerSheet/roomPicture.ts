import { type CoverDesign, edgeSection, leastWrap, mm, type Printer, type Vec2 } from '../../core/index.ts';

/** What is drawn in the picture, from the lowest layer up. */
export type RoomKind = 'board' | 'lining' | 'pocket' | 'outside' | 'room' | 'overrun';

/** The edge of a board in its pocket, cut across, to scale: mm, y upward. */
export interface RoomPicture {
  /** What it shows. */
  readonly words: string;
  readonly box: { readonly low: Vec2; readonly high: Vec2 };
  readonly shapes: readonly { readonly kind: RoomKind; readonly outline: readonly Vec2[] }[];
  /** What each colour is, the room with its size. */
  readonly key: readonly { readonly kind: RoomKind; readonly words: string }[];
}

/** How much of the board is shown, mm; white around the picture, mm. */
const SHOWN = 16;
const AROUND = 0.8;

/** Room at each fore-edge with the book in the middle, mm, in the leather that leaves least; negative where it is too short. */
export const roomAtEachSide = (design: CoverDesign): number => design.fits[leastWrap(design)].closedSlack / 2;

/**
 * Draws the room between the edge of a board and the place where it stops, in the leather that leaves least of it.
 * @returns null where the boards do not go in, so that there is nothing to draw
 */
export function roomPicture(design: CoverDesign, say: Printer): RoomPicture | null {
  const point = leastWrap(design);
  const fit = design.fits[point];
  if (fit.staysOpen === null) return null;
  const room = roomAtEachSide(design);
  const inTheMiddle = { ...fit, foreEdge: { front: mm(room), back: mm(room) } };
  const middle = { ...design, fits: { ...design.fits, [point]: inTheMiddle } };
  const { board, outside, lining, pocket, reach } = edgeSection(middle, 'backForeEdge', point, 0.5);
  const left = -Math.min(SHOWN, design.needs[point].book.width);
  const cut = (outline: readonly Vec2[]): readonly Vec2[] => outline.map(([u, v]): Vec2 => [Math.max(left, u), v]);
  const thickness = -Math.min(...board.map(([, v]) => v));
  const isShort = room < 0;
  const drawn: RoomPicture['shapes'] = [
    { kind: 'board', outline: cut(board) },
    ...(lining === null ? [] : [{ kind: 'lining' as const, outline: cut(lining) }]),
    ...(pocket === null ? [] : [{ kind: 'pocket' as const, outline: cut(pocket) }]),
    { kind: 'outside', outline: cut(outside) },
    { kind: isShort ? 'overrun' : 'room', outline: rectangle(Math.min(0, room), Math.max(0, room), -thickness, 0) },
  ];
  const heights = drawn.flatMap(({ outline }) => outline.map(([, v]) => v));
  const said = isShort ? `Too short by ${say.gap(room)}` : `Room to spare, at least ${say.gap(room)}`;
  const names: Readonly<Record<RoomKind, string>> = {
    board: 'Board of the book',
    lining: 'Lining',
    pocket: 'Pocket',
    outside: 'Outside leather',
    room: said,
    overrun: said,
  };
  return {
    words: 'The edge of a board in its pocket, cut across and enlarged.',
    box: {
      low: [left, Math.min(...heights) - AROUND],
      high: [reach + AROUND, Math.max(...heights) + AROUND],
    },
    shapes: drawn,
    key: drawn.map(({ kind }) => ({ kind, words: names[kind] })).reverse(),
  };
}

const rectangle = (left: number, right: number, low: number, high: number): readonly Vec2[] => [
  [left, low],
  [right, low],
  [right, high],
  [left, high],
];
