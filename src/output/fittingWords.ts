import { colourWords, type Job, type Printer } from '../core/index.ts';

type Fastening = NonNullable<Job['construction']['strap']>['fastening'];

const COUNTS = ['no', 'one', 'two', 'three', 'four'];

/** Fittings in a customer's words, as `a closure flap with a brass stud`; empty for a cover without any. */
export function fittingWords({ construction: { strap, penLoop, ribbon }, finish }: Job, say: Printer): string[] {
  const colour = colourWords(finish.ribbon);
  return [
    ...(strap === null ? [] : [`a closure ${strap.shape} with ${fastening(strap.fastening, finish.metal)}`]),
    ...(penLoop === null ? [] : [`a loop for a pen of ${say.size(penLoop.pen_mm)}`]),
    ...(ribbon === null
      ? []
      : [ribbon.count === 1 ? `one ${colour} ribbon` : `${COUNTS[ribbon.count]} ${colour} ribbons`]),
  ];
}

/** A magnet lies between the layers: its metal is not seen. */
const fastening = (kind: Fastening, metal: string): string =>
  kind === 'magnet' ? 'a hidden magnet' : `a ${metal} ${kind}${kind === 'buckle' ? ' on a leather tab' : ''}`;

const EDGES: Readonly<Record<Job['finish']['edge'], (colour: string) => string>> = {
  raw: () => 'cut edges left raw',
  burnished: () => 'cut edges burnished',
  painted: (colour) => `cut edges painted ${colour}`,
};

/** Colours and finish in a customer's words: leather, pockets and lining where they differ, thread or lace, edges. */
export function finishWords({ finish, leather, seam, pockets }: Job): string[] {
  const outside = skin(finish.outside);
  const pocket = finish.pocket === null ? outside : skin(finish.pocket);
  return [
    `${outside} leather`,
    ...(pockets.construction === 'turned' || pocket === outside ? [] : [`${pocket} pockets`]),
    ...(leather.lining === null ? [] : [`${skin(finish.lining)} lining`]),
    seam.method === 'lacing' ? `${colourWords(finish.lace)} lace` : `${colourWords(finish.thread)} thread`,
    EDGES[finish.edge](colourWords(finish.edgeColour)),
  ];
}

/** A leather's surface and colour; satin is what leather is and goes without saying. */
const skin = ({ colour, surface }: Job['finish']['outside']): string =>
  `${surface === 'satin' ? '' : `${surface} `}${colourWords(colour)}`;
