import type { Artwork, ToolingDesign, ToolingFace } from '../job/toolingSchema.ts';
import type { Printer } from '../units/printer.ts';
import type { DesignWarning } from './designWarnings.ts';

export const FACE_TITLES: Readonly<Record<ToolingFace, string>> = {
  front: 'Front',
  spine: 'Spine',
  back: 'Back',
  frontPocket: 'Front pocket',
  backPocket: 'Back pocket',
  strap: 'Strap',
};

/** A design as it is listed: `Border of two lines`, `Title “Psalms”`, `Drawing “fish.svg”`. */
export function designName(design: ToolingDesign, artworks: readonly Artwork[]): string {
  if (design.kind === 'border') return design.lines === 2 ? 'Border of two lines' : 'Border';
  if (design.kind === 'title') return `Title “${design.text}”`;
  const artwork = artworks.find(({ id }) => id === design.artwork);
  return artwork === undefined ? 'Drawing' : `Drawing “${artwork.name}”`;
}

const KIND_WORDS = { border: 'border', title: 'title', drawing: 'drawing' } as const;

const BOUND_WORDS: Readonly<Record<DesignWarning['bound'], string>> = {
  'board edge': 'the board edge',
  seam: 'a hole of the seam',
  'spine fold': 'the spine fold',
  mouth: 'the mouth of the pocket',
  strap: 'the strap',
  'strap edge': 'the edge of the strap',
  fastening: 'the fastening',
  corner: 'the corner of the cover',
  'fore-edge': 'the fore-edge',
};

/** Which board edge: those at the sides are both fore-edges. */
const SIDE_WORDS = { left: 'fore-edge', right: 'fore-edge', top: 'head', bottom: 'tail' } as const;

/** `The title comes 2.1 mm from the spine fold; its margin is 5 mm.` */
export function warningWords({ kind }: ToolingDesign, warning: DesignWarning, { length, size }: Printer): string {
  const { bound, side, distance, margin } = warning;
  const at = bound === 'board edge' && side !== null ? ` at the ${SIDE_WORDS[side]}` : '';
  const [name, what] = [`The ${KIND_WORDS[kind]}`, `${BOUND_WORDS[bound]}${at}`];
  if (distance < 0) return `${name} goes ${length(-distance)} beyond ${what}; its margin is ${size(margin)}.`;
  if (distance === 0) return `${name} runs over ${what}; its margin is ${size(margin)}.`;
  return `${name} comes ${length(distance)} from ${what}; its margin is ${size(margin)}.`;
}

/** Where a design stands, for the line under the sheet and for a screen reader. */
export function placeWords(design: ToolingDesign, { size, degrees }: Printer): string {
  if (design.kind === 'border')
    return design.inset_mm === 0 ? 'along the clear part' : `${size(design.inset_mm)} inside the clear part`;
  const { x_mm, y_mm, turn_deg } = design;
  const across =
    x_mm === 0 ? 'on the upright centre line' : `${size(Math.abs(x_mm))} ${x_mm > 0 ? 'right' : 'left'} of the centre`;
  const along =
    y_mm === 0 ? 'on the level centre line' : `${size(Math.abs(y_mm))} ${y_mm > 0 ? 'above' : 'below'} the centre`;
  const place = x_mm === 0 && y_mm === 0 ? 'on both centre lines' : `${across}, ${along}`;
  return turn_deg === 0 ? place : `${place}, turned ${degrees(turn_deg, 'nearest')}`;
}
