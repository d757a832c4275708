import {
  distance,
  homographyBetween,
  mapped,
  markedPage,
  placeOfMark,
  type SeenMark,
  type Vec2,
} from '../core/index.ts';
import { broughtDown, type GreyPicture, lightAt } from './greyPicture.ts';
import { MARK_CELLS, MOST_MISREAD, markCode } from './markDictionary.ts';
import { foundMarks } from './markFinder.ts';
import { type RefinedQuad, refinedQuad } from './refinedQuad.ts';

export interface SeenMarks {
  readonly marks: readonly SeenMark[];
  /** Width over which the edges of the marks rise from 10 to 90 %, median, pixels; 0 where there is no mark. */
  readonly blur: number;
}

/** Pixels of the picture in which marks are sought first. */
const SOUGHT_PIXELS = 2.5e6;
/** How far the sought corners may be off, pixels of that picture: they are whole pixels of a softened picture. */
const COARSE = 2.5;

/**
 * The marks of measuring sheets in a photograph, their corners to a small part of a pixel. They are sought in the picture brought
 * down; those of a page that are not found so are looked for where the others say that they are. A mark seen twice tells
 * nothing and is left out.
 */
export function seenMarks(picture: GreyPicture): SeenMarks {
  const found = new Map<number, RefinedQuad>();
  for (const [id, corners] of soughtMarks(picture)) {
    const quad = refinedMark(picture, corners, COARSE * factorOf(picture));
    if (quad.found) found.set(id, quad);
  }
  for (const id of [...found.keys()]) if (!fits(found.get(id)!, foretold(found, id))) found.delete(id);
  for (const id of [...found.keys()].flatMap(marksBeside)) {
    const quad = found.has(id) ? null : missedMark(picture, id, foretold(found, id));
    if (quad !== null) found.set(id, quad);
  }
  const blurs = [...found.values()].map(({ blur }) => blur).sort((a, b) => a - b);
  return { marks: [...found].map(([id, quad]) => seenMark(id, quad)), blur: blurs[blurs.length >> 1] ?? 0 };
}

/** Sought no farther than the middle of the mark's own rim. */
function refinedMark(picture: GreyPicture, corners: readonly Vec2[], reach: number): RefinedQuad {
  const room = Math.max(2, (0.5 * shortestSide(corners)) / MARK_CELLS);
  return refinedQuad(picture, corners, Math.min(reach, room), { outside: 'lighter', room });
}

function seenMark(id: number, { corners, u }: RefinedQuad): SeenMark {
  const { paper, page, corners: places } = placeOfMark(id)!;
  return {
    page: `${paper} ${page + 1}`,
    mark: String(id),
    corners: places,
    seen: corners,
    u: Math.sqrt(u.reduce((sum, each) => sum + each * each, 0) / u.length),
  };
}

const factorOf = ({ width, height }: GreyPicture): number =>
  Math.max(1, Math.round(Math.sqrt((width * height) / SOUGHT_PIXELS)));

function soughtMarks(picture: GreyPicture): Map<number, Vec2[]> {
  const factor = factorOf(picture);
  const sought = new Map<number, Vec2[]>();
  const twice = new Set<number>();
  for (const { id, corners } of foundMarks(broughtDown(picture, factor))) {
    if (placeOfMark(id) === null) continue;
    if (sought.has(id)) twice.add(id);
    sought.set(
      id,
      corners.map(([x, y]): Vec2 => [x * factor, y * factor]),
    );
  }
  for (const id of twice) sought.delete(id);
  return sought;
}

/** All marks of the page of a mark. */
function marksBeside(id: number): number[] {
  const { paper, page } = placeOfMark(id)!;
  return markedPage(paper, page).marks.map((mark) => mark.id);
}

/** Marks beside it by which a mark is foretold: near ones, for there the lens changes little. */
const BESIDE = 5;

/** Where the corners of a mark should be. */
interface Foretold {
  readonly corners: readonly Vec2[];
  /** How far the corners of the others are from where they foretell one another, root mean square, pixels: lens and curl. */
  readonly off: number;
}

/** The corners of a mark by those of the nearest others of its page; null where there are fewer than two. */
function foretold(found: ReadonlyMap<number, RefinedQuad>, id: number): Foretold | null {
  const { corners } = placeOfMark(id)!;
  const far = (other: number): number => distance(corners[0], placeOfMark(other)!.corners[0]);
  const near = marksBeside(id)
    .filter((other) => other !== id && found.has(other))
    .sort((a, b) => far(a) - far(b))
    .slice(0, BESIDE);
  const from = near.flatMap((other) => [...placeOfMark(other)!.corners]);
  const to = near.flatMap((other) => [...found.get(other)!.corners]);
  const map = near.length < 2 ? null : homographyBetween(from, to);
  return (
    map && {
      corners: corners.map((corner) => mapped(map, corner)),
      off: Math.sqrt(from.reduce((sum, at, i) => sum + distance(mapped(map, at), to[i]!) ** 2, 0) / from.length),
    }
  );
}

const shortestSide = (corners: readonly Vec2[]): number =>
  Math.min(...corners.map((corner, i) => distance(corner, corners[(i + 1) % 4]!)));

/** Whether a mark is of the shape that others foretell. It is not where the edge of what covers it was taken for a side. */
function fits({ corners }: RefinedQuad, shown: Foretold | null): boolean {
  if (shown === null) return true;
  const off = corners.map(([x, y], i): Vec2 => [x - shown.corners[i]![0], y - shown.corners[i]![1]]);
  const [x, y] = [0, 1].map((k) => off.reduce((sum, each) => sum + each[k as 0 | 1] / 4, 0)) as [number, number];
  // Of 900 rendered marks 99 in 100 are within it.
  const most = 0.3 + 0.01 * shortestSide(shown.corners) + 4 * shown.off;
  return off.every((each) => distance(each, [x, y]) < most);
}

/** A mark that was not found by itself: where others foretell it, and only if its cells and its shape say so too. */
function missedMark(picture: GreyPicture, id: number, shown: Foretold | null): RefinedQuad | null {
  const isInside = ([x, y]: Vec2): boolean => x > 2 && y > 2 && x < picture.width - 2 && y < picture.height - 2;
  if (!shown?.corners.every(isInside)) return null;
  const quad = refinedMark(picture, shown.corners, Number.POSITIVE_INFINITY);
  const isIt = quad.found && fits(quad, shown) && misread(picture, quad.corners, markCode(id)) <= MOST_MISREAD;
  return isIt ? quad : null;
}

/** Cells of a mark, those of its black rim too, that are not as its code says. */
function misread(picture: GreyPicture, corners: readonly Vec2[], code: string): number {
  const map = homographyBetween(
    [
      [0, 0],
      [MARK_CELLS, 0],
      [MARK_CELLS, MARK_CELLS],
      [0, MARK_CELLS],
    ],
    corners,
  );
  if (map === null) return MARK_CELLS ** 2;
  const inner = MARK_CELLS - 2;
  const cells = Array.from({ length: MARK_CELLS ** 2 }, (_, i): [light: number, isWhite: boolean] => {
    const [x, y] = [i % MARK_CELLS, Math.floor(i / MARK_CELLS)];
    const isInside = x > 0 && y > 0 && x <= inner && y <= inner;
    return [lightAt(picture, mapped(map, [x + 0.5, y + 0.5])), isInside && code[(y - 1) * inner + x - 1] === '1'];
  });
  const mean = (white: boolean): number => {
    const own = cells.filter(([, isWhite]) => isWhite === white);
    return own.reduce((sum, [light]) => sum + light, 0) / own.length;
  };
  const [white, black] = [mean(true), mean(false)];
  if (!(white - black > 0.05)) return cells.length;
  return cells.filter(([light, isWhite]) => light > (white + black) / 2 !== isWhite).length;
}
