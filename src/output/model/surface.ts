import type { TileName } from '../../artwork/tiles/tiles.ts';
import { type CoverColours, colourOf, leatherOf } from '../../core/index.ts';
import { isSeam, type ModelFace, type ModelPart } from './modelParts.ts';

/** How a kind of surface takes light, and the tiles that show it: shades of its colour, and its relief. */
interface Matter {
  /** 0 mirror to 1 chalk. Judged by eye. */
  readonly roughness: number;
  /** 0 not a metal, 1 metal. */
  readonly metalness: 0 | 1;
  readonly tone: TileName | null;
  readonly relief: TileName | null;
}

/** A surface of the model: what a file makes one material of. */
export interface Surface extends Matter {
  /** Names it in a file; surfaces of one name are alike. */
  readonly name: string;
  /** `#rrggbb` in sRGB (IEC 61966-2-1). */
  readonly colour: string;
}

const matter = (roughness: number, tone: TileName | null = null, relief: TileName | null = null): Matter => ({
  roughness,
  metalness: 0,
  tone,
  relief,
});

const MATTER: Readonly<Record<ModelFace, Matter>> = {
  grain: matter(0.6, 'grain', 'grainRelief'),
  flesh: matter(0.95, 'flesh'),
  cutEdge: matter(0.8, 'edge'),
  boardCloth: matter(0.85, 'cloth'),
  boardInside: matter(0.9),
  endpaper: matter(0.9),
  pageFace: matter(0.95),
  pageEdge: matter(0.95, 'leaves'),
  band: matter(0.9, 'band'),
  ribbon: matter(0.5),
  thread: matter(0.85),
  lace: matter(0.6, 'edge'),
  metal: { roughness: 0.35, metalness: 1, tone: null, relief: null },
};

/** The surface of a face of a part. */
export function surfaceOf(colours: CoverColours, part: ModelPart, face: ModelFace): Surface {
  if (isSeam(part) || face === 'thread' || face === 'lace') {
    const strand = face === 'lace' ? 'lace' : 'thread';
    return { ...MATTER[strand], name: strand, colour: colours[strand] };
  }
  const isLeather = face === 'grain' || face === 'flesh' || face === 'cutEdge';
  return {
    ...MATTER[face],
    name: isLeather ? `${leatherOf(part)} ${face}` : face,
    colour: colourOf(colours, part, face),
  };
}
