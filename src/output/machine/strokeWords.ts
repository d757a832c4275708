import {
  addScaled,
  baseLine,
  CAPITAL,
  heading,
  type LetterFace,
  TAIL,
  type Text,
  textWidth,
  type Vec2,
} from '../../core/index.ts';

/**
 * Words as single strokes, fitted into the box that the pattern keeps free for them: as wide as the text, at most a capital high
 * and a descender deep.
 * @param face of single strokes; letters that it lacks are left out, `face.lacks` names them
 */
export function strokeWords(text: Text, face: LetterFace): Vec2[][] {
  const { polylines, width } = face.outline(text.text);
  if (width === 0) return [];
  const ys = polylines.flat().map(([, y]) => y);
  const across = textWidth(text.text, text.height) / width;
  const up = (CAPITAL * text.height) / Math.max(1, ...ys);
  const down = Math.min(CAPITAL, TAIL / Math.max(1e-9, -Math.min(...ys))) * text.height;
  const [from] = baseLine(text);
  const [along, upright] = [heading(text.rotation), heading(text.rotation + Math.PI / 2)];
  return polylines.map((line) =>
    line.map(([x, y]) => addScaled(addScaled(from, along, x * across), upright, y * (y > 0 ? up : down))),
  );
}
