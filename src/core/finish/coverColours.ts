import type { Finish } from '../job/finishSchema.ts';
import type { Job, LeatherName } from '../job/jobSchema.ts';
import { type Face, leatherOf, type PartName } from '../solid/meshData.ts';

/** Colours of one leather, `#rrggbb` in sRGB (IEC 61966-2-1). */
export interface LeatherColours {
  readonly grain: string;
  readonly flesh: string;
  readonly cutEdge: string;
}

/** Surfaces that have one colour whatever part they are on. */
type PlainFace = Exclude<Face, keyof LeatherColours>;

/** What every surface of a cover, its fittings and its book is coloured by, `#rrggbb` in sRGB. */
export interface CoverColours
  extends Readonly<Record<LeatherName, LeatherColours>>,
    Readonly<Record<PlainFace, string>> {
  readonly thread: string;
  readonly lace: string;
}

/** The book is not the maker's: cloth, paper and band have colours of their own. Judged by eye. */
const BOOK = {
  boardCloth: '#45586a',
  boardInside: '#d8d0bd',
  endpaper: '#cdbfa0',
  pageFace: '#efe6d0',
  pageEdge: '#eadfc4',
  band: '#e3d7b8',
} as const satisfies Partial<Record<Face, string>>;

/** Undyed fibre, as flesh side and cut of vegetable-tanned leather show it. Judged by eye. */
const FIBRE = '#d2b48c';
const METALS: Readonly<Record<Finish['metal'], string>> = { brass: '#c9a14a', nickel: '#b9bcbe', black: '#2b2b2d' };
/** Share of the fibre's own colour on the flesh side, in a raw cut, and of black in a burnished one. Judged by eye. */
const FLESH = 0.55;
const RAW = 0.4;
const BURNISHED = 0.38;

/** Colours of a cover as its finish has them: the flesh side and the cut follow from the grain side. */
export function coverColours({ finish }: Pick<Job, 'finish'>): CoverColours {
  const of = ({ colour }: Finish['outside']): LeatherColours => ({
    grain: colour,
    flesh: mixed(colour, FIBRE, FLESH),
    cutEdge: cutColour(finish, colour),
  });
  return {
    ...BOOK,
    outside: of(finish.outside),
    pocket: of(finish.pocket ?? finish.outside),
    lining: of(finish.lining),
    thread: finish.thread,
    lace: finish.lace,
    ribbon: finish.ribbon,
    metal: METALS[finish.metal],
  };
}

/** Colour of a face of a part. */
export const colourOf = (colours: CoverColours, part: PartName, face: Face): string =>
  face === 'grain' || face === 'flesh' || face === 'cutEdge' ? colours[leatherOf(part)][face] : colours[face];

const cutColour = ({ edge, edgeColour }: Finish, grain: string): string =>
  edge === 'painted' ? edgeColour : edge === 'raw' ? mixed(grain, FIBRE, RAW) : mixed(grain, '#000000', BURNISHED);

/** A colour with a share of another, 0 to 1, mixed in sRGB. */
function mixed(colour: string, other: string, share: number): string {
  const [a, b] = [colour, other].map((hex) => [1, 3, 5].map((at) => Number.parseInt(hex.slice(at, at + 2), 16)));
  const parts = a!.map((part, i) => Math.round(part + (b![i]! - part) * share));
  return `#${parts.map((part) => part.toString(16).padStart(2, '0')).join('')}`;
}
