import {
  type CoverDesign,
  capital,
  type Iron,
  listed,
  MM_PER_INCH,
  type Printer,
  type Strokes,
  seamHoles,
  sideName,
  strokesAlong,
} from '../core/index.ts';

const toothWords = ({ teeth }: Iron): string =>
  `${listed(teeth.map(String))} ${teeth.length === 1 && teeth[0] === 1 ? 'tooth' : 'teeth'}`;

/** `Rowan (pricking iron, 10 and 2 teeth)`: which iron it is, beside its pitch. */
export const ironName = (iron: Iron): string =>
  iron.name === '' ? `${iron.kind} (${toothWords(iron)})` : `${iron.name} (${iron.kind}, ${toothWords(iron)})`;

/** `pricking iron, 3 mm (8.47 to the inch), 10 and 2 teeth`. */
export const ironWords = (iron: Iron, say: Printer): string =>
  `${iron.name || iron.kind}, ${say.exact(iron.pitch_mm)} (${say.number(MM_PER_INCH / iron.pitch_mm, 2)} to the inch), ${toothWords(iron)}`;

/** How often the iron is struck along each side, sides that are alike together; none without an iron. */
export function strokeWords(design: CoverDesign): string[] {
  const seam = seamHoles(design);
  const sides = new Map<string, string[]>();
  for (const row of seam.rows) {
    const strokes = strokesAlong(design, seam, row).map(strokeWord).join(', then ');
    if (strokes !== '') sides.set(strokes, [...(sides.get(strokes) ?? []), sideName(row.side)]);
  }
  return [...sides].map(([strokes, names]) => `${capital(listed(names))}: ${strokes}.`);
}

function strokeWord({ teeth, times, again }: Strokes): string {
  if (teeth === 1) return `${times} ${times === 1 ? 'hole by itself' : 'holes one by one'}`;
  const strokes = `${times} ${times === 1 ? 'stroke' : 'strokes'} of ${teeth} teeth`;
  return again === 0 ? strokes : `${strokes}, the last ${again} further back`;
}
