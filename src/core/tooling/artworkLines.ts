import type { Vec2 } from '../math/vec2.ts';

/** Largest coordinate of an artwork's grid, on its larger side. */
export const ARTWORK_GRID = 10_000;

/** What is wrong with the text of an artwork's lines. */
export interface LinesFault {
  /** Characters before the place. */
  readonly at: number;
  readonly got: string;
  readonly allowed: string;
}

/**
 * Writes polylines as path data of which only relative `m` and `z` are used: `m10,20 3,-4 5,6z m0,9 1,0`. The first pair of
 * each line is its start, from the origin; each later pair leads on from the point before.
 *
 * @param polylines in grid units, whole numbers of 0 to 10,000, y down; two points or more each, closed where the last is the first
 */
export function writeArtworkLines(polylines: readonly (readonly Vec2[])[]): string {
  return polylines
    .map((points) => {
      const isClosed = closes(points);
      const pairs = (isClosed ? points.slice(0, -1) : points).map(([x, y], index, all) => {
        const [fromX, fromY] = all[index - 1] ?? [0, 0];
        return `${x - fromX},${y - fromY}`;
      });
      return `m${pairs.join(' ')}${isClosed ? 'z' : ''}`;
    })
    .join(' ');
}

function closes(points: readonly Vec2[]): boolean {
  const [first, last] = [points[0], points[points.length - 1]];
  return points.length > 3 && first !== undefined && last?.[0] === first[0] && last[1] === first[1];
}

/**
 * Reads what `writeArtworkLines` writes, in linear time.
 *
 * @returns the polylines, a closed one ending with its first point; or the first fault: another character, a line of fewer
 * than two points, a closed one of fewer than three, a point outside of 0 to 10,000
 */
export function readArtworkLines(text: string): { readonly polylines: Vec2[][] } | { readonly fault: LinesFault } {
  const polylines: Vec2[][] = [];
  let at = 0;
  const fault = (got: string, allowed: string, place = at) => ({ fault: { at: place, got, allowed } });
  while (true) {
    const start = at;
    if (text[at] !== 'm') return fault(found(text, at), 'm at the start of a line');
    const line: Vec2[] = [];
    let [x, y] = [0, 0];
    do {
      const place = ++at;
      const stepX = wholeNumber(text, at);
      at += stepX.length;
      if (stepX.length === 0 || text[at] !== ',') return fault(found(text, place), PAIR, place);
      const stepY = wholeNumber(text, at + 1);
      at += 1 + stepY.length;
      if (stepY.length === 0) return fault(found(text, place), PAIR, place);
      x += stepX.value;
      y += stepY.value;
      if (!isOnGrid(x) || !isOnGrid(y)) return fault(`a point at ${x}, ${y}`, ON_GRID, place);
      line.push([x, y]);
    } while (text[at] === ' ' && text[at + 1] !== 'm');
    const isClosed = text[at] === 'z';
    if (line.length < (isClosed ? 3 : 2)) {
      const got = `a line of ${line.length === 1 ? '1 point' : `${line.length} points`}${isClosed ? ', closed' : ''}`;
      return fault(got, '2 points or more in a line, 3 or more in a closed one', start);
    }
    if (isClosed) {
      line.push(line[0]!);
      at++;
    }
    polylines.push(line);
    if (at === text.length) return { polylines };
    if (text[at] !== ' ') return fault(found(text, at), 'one space between two pairs or two lines');
    at++;
  }
}

const PAIR = 'a pair of whole numbers of at most 5 digits, as 3,-4';
const ON_GRID = `points from 0, 0 to ${ARTWORK_GRID}, ${ARTWORK_GRID}`;

const MINUS = 45;
const DIGIT_0 = 48;

/** The whole number of at most 5 digits at a place; length 0 where there is none. */
function wholeNumber(text: string, at: number): { readonly value: number; readonly length: number } {
  const isNegative = text.charCodeAt(at) === MINUS;
  const first = isNegative ? at + 1 : at;
  let [value, end] = [0, first];
  for (; end < first + 5; end++) {
    const digit = text.charCodeAt(end) - DIGIT_0;
    if (!(digit >= 0 && digit <= 9)) break;
    value = 10 * value + digit;
  }
  return { value: isNegative ? -value : value, length: end === first ? 0 : end - at };
}

const isOnGrid = (value: number): boolean => value >= 0 && value <= ARTWORK_GRID;

const found = (text: string, at: number): string =>
  at < text.length ? JSON.stringify(text.slice(at, at + 12)) : 'the end';
