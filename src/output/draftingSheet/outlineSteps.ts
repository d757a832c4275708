import { listed, type PieceDrawing, type Printer } from '../../core/index.ts';
import { type BoxShape, boxShape, type TakenCorner } from './boxShape.ts';

/**
 * A length to be set off by a rule: true to 0.005 mm, in inches to 0.001 in. Where no fraction of an inch says it, the
 * nearest one that a rule shows stands behind it.
 */
export function measured(value: number, print: Printer): string {
  const text = print.exact(value);
  return print.units === 'in' && text.includes('.') && text.endsWith(' in')
    ? `${text} (about ${print.length(value)})`
    : text;
}

/**
 * Sentences that draw the cut edge of a piece by rule, set square and compasses, in the order of work: a rectangle ABCD
 * checked by its diagonals, then its corners, then its curves.
 */
export function outlineSteps(piece: PieceDrawing, print: Printer): string[] {
  const { width, height } = piece;
  const shape = boxShape(piece);
  const [wide, high] = [measured(width, print), measured(height, print)];
  const diagonal = print.length(Math.hypot(width, height));
  return [
    'Draw a straight line along the lower edge of the card. Mark A near its left end.',
    `From A measure ${wide} along it to B.`,
    'At A and at B draw lines upward, at right angles to AB.',
    `From A measure ${high} upward to D, and from B measure ${high} upward to C. Join D and C.`,
    `Check: A to C and B to D must both be ${diagonal}, and D to C ${print.length(width)}. If not, draw the right angles again.`,
    ...cornerSteps(shape, print),
    ...shape.scooped.map(
      ({ from, to, depth }) =>
        `The edge from ${from} to ${to} is curved: from its middle measure ${measured(depth, print)} inward. Bend a thin rule through the three points and draw along it.`,
    ),
  ];
}

function cornerSteps({ taken }: BoxShape, print: Printer): string[] {
  const sizes = new Map<string, TakenCorner[]>();
  for (const corner of taken) {
    const key = `${corner.style} ${measured(corner.size, print)}`;
    sizes.set(key, [...(sizes.get(key) ?? []), corner]);
  }
  return [...sizes.values()].map((alike) => {
    const { style, size } = alike[0]!;
    const names = listed(alike.map(({ name }) => name));
    const which = alike.length === 1 ? `Corner ${names} is` : `Corners ${names} are`;
    const mark = `${which} ${style}: mark ${measured(size, print)} from the corner on both its edges`;
    return style === 'cut off'
      ? `${mark} and join the marks.`
      : `${mark}. Square lines inward from the marks meet in the centre. Draw the arc from mark to mark about it.`;
  });
}
