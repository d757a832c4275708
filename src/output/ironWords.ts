import {
  type CoverDesign,
  type Iron,
  listed,
  MM_PER_INCH,
  type Printer,
  type Strokes,
  seamHoles,
  strokesAlong,
} from '../core/index.ts';

/** `pricking iron, 3 mm (8.47 to the inch), 10 and 2 teeth`. */
export const ironWords = ({ kind, name, pitch_mm, teeth }: Iron, say: Printer): string =>
  `${name || kind}, ${say.exact(pitch_mm)} (${say.number(MM_PER_INCH / pitch_mm, 2)} to the inch), ` +
  `${listed(teeth.map(String))} ${teeth.length === 1 && teeth[0] === 1 ? 'tooth' : 'teeth'}`;

const SIDES = { tail: 'tail', backForeEdge: 'back fore-edge', head: 'head', frontForeEdge: 'front fore-edge' } as const;

/** How often the iron is struck along each side, sides that are alike together; none without an iron. */
export function strokeWords(design: CoverDesign): string[] {
  const seam = seamHoles(design);
  const sides = new Map<string, string[]>();
  for (const row of seam.rows) {
    const strokes = strokesAlong(design, seam, row).map(strokeWord).join(', then ');
    if (strokes !== '') sides.set(strokes, [...(sides.get(strokes) ?? []), SIDES[row.side]]);
  }
  if (sides.size === 0) return [];
  const each = [...sides].map(([strokes, names]) => {
    const along = listed(names);
    return `${along.slice(0, 1).toUpperCase()}${along.slice(1)}: ${strokes}.`;
  });
  return [...each, 'Set the first tooth of each stroke in the last hole of the one before.'];
}

function strokeWord({ teeth, times, again }: Strokes): string {
  if (teeth === 1) return `${times} ${times === 1 ? 'hole by itself' : 'holes one by one'}`;
  const strokes = `${times} ${times === 1 ? 'stroke' : 'strokes'} of ${teeth} teeth`;
  return again === 0 ? strokes : `${strokes}, the last ${again} further back`;
}
