import type { Font, Path } from '@cantoo/fontkit';
import type { LetterFace, LetterOutline, Vec2 } from '../../core/index.ts';
import { flattened } from '../flattened.ts';
import { capitalOutline, FLATNESS, lackedBy } from './letterLines.ts';

/**
 * A face by the outlines of a font file (TrueType, OpenType or WOFF), kerned and with its ligatures.
 *
 * @param tall the letter whose top is the capital height
 * @returns the face; rejects with an Error where the bytes are no font
 */
export async function fontFace(id: string, title: string, bytes: Uint8Array, tall = 'H'): Promise<LetterFace> {
  const { create } = await import('@cantoo/fontkit');
  const font = create(bytes);
  if ('fonts' in font) throw new Error('A file of several fonts was found where one font is needed.');
  const capital = font.layout(tall).bbox.maxY;
  const has = (letter: string) => font.hasGlyphForCodePoint(letter.codePointAt(0)!);
  return {
    id,
    title,
    isStroke: false,
    lacks: (text) => lackedBy(text, has),
    outline: (text) => outlineOf(font, [...text].filter(has).join(''), capital),
  };
}

function outlineOf(font: Font, text: string, capital: number): LetterOutline {
  const { glyphs, positions } = font.layout(text);
  const lines: Vec2[][] = [];
  let pen = 0;
  glyphs.forEach(({ path, advanceWidth }, i) => {
    const { xOffset, yOffset, xAdvance } = positions?.[i] ?? { xOffset: 0, yOffset: 0, xAdvance: advanceWidth };
    for (const line of pathLines(path, FLATNESS * capital))
      lines.push(line.map(([x, y]) => [pen + xOffset + x, yOffset + y]));
    pen += xAdvance;
  });
  return capitalOutline(lines, capital);
}

/** The contours of a glyph, each closed, whether or not its path says so: a letter is a filled area. */
function pathLines({ commands }: Path, tolerance: number): Vec2[][] {
  const lines: Vec2[][] = [];
  for (const { command, args } of commands) {
    const points = pairs(args);
    if (command === 'moveTo') lines.push(points);
    const line = lines[lines.length - 1];
    const from = line?.[line.length - 1];
    if (line === undefined || from === undefined) continue;
    if (command === 'lineTo') line.push(...points);
    else if (command !== 'moveTo' && command !== 'closePath') line.push(...flattened([from, ...points], tolerance));
  }
  return lines.filter((line) => line.length > 2).map((line) => (isClosed(line) ? line : [...line, line[0]!]));
}

const isClosed = (line: readonly Vec2[]): boolean => line[0]![0] === line.at(-1)![0] && line[0]![1] === line.at(-1)![1];

const pairs = (numbers: readonly number[]): Vec2[] =>
  Array.from({ length: numbers.length / 2 }, (_, i) => [numbers[2 * i]!, numbers[2 * i + 1]!]);
