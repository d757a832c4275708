import type { Vec2 } from '../math/vec2.ts';
import type { Text } from './drawing.ts';

/** A box that text is set in, mm. */
export interface LabelBox {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

const TITLE = 6;
const BODY = 3.2;
const LEADING = 1.35;

/** Mean width of a letter over its height in an ordinary sans serif. */
export const LETTER = 0.5;

/** Smallest letters that are still read, mm. */
const LEAST = 1.8;

/**
 * Sets a title and lines under it in the middle of a box, smaller where they would not fit; lines that would be too small
 * to read are left out, the title never.
 */
export function label(title: string, lines: readonly string[], box: LabelBox): Text[] {
  const widest = Math.max(TITLE * title.length, ...lines.map((text) => BODY * text.length)) * LETTER;
  const tall = (TITLE + BODY * lines.length) * LEADING;
  const scale = Math.min(1, box.width / widest, box.height / tall);
  if (BODY * scale < LEAST) {
    const alone = Math.min(1, box.width / (TITLE * title.length * LETTER), box.height / TITLE);
    const y = box.y + (box.height - TITLE * alone) / 2;
    return [row(title, [box.x + box.width / 2, y], TITLE * alone, 'middle')];
  }
  const left = box.x + (box.width - widest * scale) / 2;
  const top = box.y + (box.height + tall * scale) / 2;
  return [
    { ...row(title, [left, top - TITLE * scale], TITLE * scale, 'start'), room: widest * scale },
    ...lines.map((text, i) => ({
      ...row(text, [left, top - (TITLE * LEADING + BODY * (1 + i * LEADING)) * scale], BODY * scale, 'start'),
      room: widest * scale,
    })),
  ];
}

const row = (text: string, at: Vec2, height: number, align: Text['align']): Text => ({
  kind: 'text',
  at,
  height,
  rotation: 0,
  align,
  text,
});
