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
import { MARK_CELLS, MOST_MISREAD, markCode, markDetector } from './markDictionary.ts';
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
 * down (js-aruco2, after Garrido-Jurado et al. 2014, Automatic generation and detection of highly reliable fiducial markers under
 * occlusion); those of a page that are not found so are looked for where the others say that they are. A mark seen twice tells
 * nothing and is left out.
 */
export function seenMarks(picture: GreyPicture): SeenMarks {
  const found = new Map<number, RefinedQuad>();
  for (const [id, corners] of soughtMarks(picture)) {
    const quad = refinedMark(picture, corners, COARSE * factorOf(picture));
    if (quad.found) found.set(id, quad);
  }
  for (const [id, quad] of missedMarks(picture, found)) found.set(id, quad);
  const blurs = [...found.values()].map(({ blur }) => blur).sort((a, b) => a - b);
  return { marks: [...found].map(([id, quad]) => seenMark(id, quad)), blur: blurs[blurs.length >> 1] ?? 0 };
}

/** Sought no farther than the middle of the mark's own rim. */
function refinedMark(picture: GreyPicture, corners: readonly Vec2[], reach: number): RefinedQuad {
  const shortest = Math.min(...corners.map((corner, i) => distance(corner, corners[(i + 1) % 4]!)));
  const room = Math.max(2, (0.5 * shortest) / MARK_CELLS);
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
  const { width, height, values } = broughtDown(picture, factor);
  const data = new Uint8Array(4 * values.length);
  for (let i = 0; i < values.length; i++) data.fill(values[i]!, 4 * i, 4 * i + 3);
  const sought = new Map<number, Vec2[]>();
  const twice = new Set<number>();
  for (const { id, corners } of markDetector().detect({ width, height, data })) {
    if (placeOfMark(id) === null) continue;
    if (sought.has(id)) twice.add(id);
    sought.set(
      id,
      corners.map(({ x, y }): Vec2 => [(x + 0.5) * factor, (y + 0.5) * factor]),
    );
  }
  for (const id of twice) sought.delete(id);
  return sought;
}

/** Marks of pages of which others were found: where those say that they are, and only if their cells say so too. */
function missedMarks(picture: GreyPicture, found: ReadonlyMap<number, RefinedQuad>): Map<number, RefinedQuad> {
  const missed = new Map<number, RefinedQuad>();
  const pages = new Map<string, number[]>();
  for (const id of found.keys()) {
    const { paper, page } = placeOfMark(id)!;
    pages.set(`${paper} ${page}`, [...(pages.get(`${paper} ${page}`) ?? []), id]);
  }
  for (const ids of pages.values()) {
    const { paper, page } = placeOfMark(ids[0]!)!;
    const map = homographyBetween(
      ids.flatMap((id) => [...placeOfMark(id)!.corners]),
      ids.flatMap((id) => [...found.get(id)!.corners]),
    );
    if (map === null || ids.length < 2) continue;
    for (const { id, corners } of markedPage(paper, page).marks) {
      if (found.has(id)) continue;
      const guess = corners.map((corner) => mapped(map, corner));
      if (!guess.every(([x, y]) => x > 2 && y > 2 && x < picture.width - 2 && y < picture.height - 2)) continue;
      const quad = refinedMark(picture, guess, Number.POSITIVE_INFINITY);
      if (quad.found && misread(picture, quad.corners, markCode(id)) <= MOST_MISREAD) missed.set(id, quad);
    }
  }
  return missed;
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
