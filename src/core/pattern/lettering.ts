import type { Vec2 } from '../math/vec2.ts';
import { type Entity, LAYERS, type Layer, type PieceDrawing, type Text } from './drawing.ts';
import { FreeRoom } from './freeRoom.ts';
import { type Box, CAPITAL, TAIL, textWidth } from './textBox.ts';

const TITLE = 6;
const BODY = 3.2;
const LEADING = 1.35;

/** Smallest letters that are still read, mm. */
const LEAST = 1.8;

/** From full size down to the smallest letters of a label's lines. */
const SCALES = Array.from({ length: 7 }, (_, i) => (LEAST / BODY) ** (i / 6));

/** Numbers of rows to try for the lines of a label, in this order; 0 is one row a line. */
const JOINED = [0, 3, 2, 1];
const UPRIGHT = Math.PI / 2;

/** A line of a label, or lines that stay together, such as a sum. */
export type LabelLines = string | readonly string[];

/** A word, the wanted place of its middle, letter height (mm), rotation (radians), and the layer whose marks it names. */
export type Word = readonly [text: string, near: Vec2, height: number, rotation?: number, names?: Layer];

/** Marks on a piece, and the words beside them. */
export interface NamedMarks {
  readonly marks: readonly Entity[];
  readonly words: readonly Word[];
}

/** Sets words on a piece where they lie on no line, hole or other words. */
export interface Lettering {
  /** Sets a title and lines as near to the middle of a box as is free; reduced, turned or split where there is no room. */
  label(title: string, lines: readonly LabelLines[], box: Box): Text[];
  word(...word: Word): Text[];
  /** Texts that found no room, to be printed elsewhere. */
  readonly unwritten: readonly string[];
}

interface Row {
  readonly text: string;
  readonly height: number;
}

/** Letters a piece that has all its lines already. */
export function letteringOn({
  outline,
  width,
  height,
  layers,
}: Pick<PieceDrawing, 'outline' | 'width' | 'height' | 'layers'>): Lettering {
  const room = new FreeRoom(
    outline,
    width,
    height,
    LAYERS.flatMap((layer) => layers[layer]),
  );
  const unwritten: string[] = [];

  /** Sets rows under one another, nearest to a place; null where they do not fit. */
  const block = (rows: readonly Row[], near: Vec2, rotation: number): Text[] | null => {
    const first = rows[0]!;
    const long = Math.max(...rows.map((row) => textWidth(row.text, row.height)));
    const lead = (row: Row): number => row.height * (row === first ? CAPITAL + TAIL : LEADING);
    const tall = rows.reduce((sum, row) => sum + lead(row), 0);
    const isUpright = rotation !== 0;
    const size = isUpright ? ([tall, long] as const) : ([long, tall] as const);
    const middle = room.nearest(...size, near);
    if (middle === null) return null;
    const from = middle[0] - size[0] / 2;
    let down = 0;
    const texts = rows.map(({ text, height }, i): Text => {
      down += lead(rows[i]!);
      const [u, v] = [-long / 2, tall / 2 - down + TAIL * height];
      const at: Vec2 = isUpright ? [middle[0] - v, middle[1] + u] : [middle[0] + u, middle[1] + v];
      return { kind: 'text', at, height, rotation, align: 'start', block: [from, from + size[0]], text };
    });
    // The whole block is taken, because a mirrored piece moves the block and keeps its rows aligned left.
    room.take({ x: from, y: middle[1] - size[1] / 2, width: size[0], height: size[1] });
    return texts;
  };

  /** Sets title and lines at the largest scale that fits, level or upright, one row a line or joined into fewer rows. */
  const fitted = (title: string | null, lines: readonly string[], near: Vec2, scales: readonly number[]) => {
    for (const count of lines.length > 1 ? JOINED : [0])
      for (const scale of scales)
        for (const rotation of [0, UPRIGHT]) {
          const rows = [
            ...(title === null ? [] : [{ text: title, height: TITLE * scale }]),
            ...joined(lines, count).map((text) => ({ text, height: BODY * scale })),
          ];
          const texts = block(rows, near, rotation);
          if (texts !== null) return { texts, scale };
        }
    return null;
  };

  const set = (title: string | null, groups: readonly LabelLines[], near: Vec2, scales = SCALES): Text[] => {
    for (let count = groups.length; count >= (title === null ? 1 : 0); count--) {
      const found = fitted(title, groups.slice(0, count).flat(), near, scales);
      if (found === null) continue;
      // Lines that do not fit under the title go where there is room, in letters no larger.
      const smaller = SCALES.filter((scale) => scale <= found.scale);
      return [...found.texts, ...(count < groups.length ? set(null, groups.slice(count), near, smaller) : [])];
    }
    if (title !== null) unwritten.push(title);
    const [first, ...rest] = groups;
    if (first !== undefined) unwritten.push(...[first].flat());
    return rest.length > 0 ? set(null, rest, near, scales) : [];
  };

  return {
    unwritten,
    label: (title, lines, { x, y, width, height }) => set(title, lines, [x + width / 2, y + height / 2]),
    word(text, near, height, rotation = 0, names) {
      for (let size = height; size >= Math.min(height, LEAST); size *= 0.85) {
        const texts = block([{ text, height: size }], near, rotation);
        if (texts !== null) return names === undefined ? texts : texts.map((each) => ({ ...each, names }));
      }
      unwritten.push(text);
      return [];
    },
  };
}

/** Lines joined into `count` rows of about one length; 0 leaves each its own row. */
function joined(lines: readonly string[], count: number): readonly string[] {
  if (count === 0) return lines;
  const total = lines.reduce((sum, text) => sum + textWidth(`${text}; `, 1), 0);
  const rows: string[][] = [[]];
  let before = 0;
  for (const text of lines) {
    const width = textWidth(`${text}; `, 1);
    if (rows.at(-1)!.length > 0 && before + width / 2 > (total / count) * rows.length) rows.push([]);
    rows.at(-1)!.push(text);
    before += width;
  }
  return rows.map((row) => row.join('; ').replaceAll('=; ', '= '));
}
