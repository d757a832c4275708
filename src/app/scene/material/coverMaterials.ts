import {
  Color,
  DoubleSide,
  type Material,
  MeshBasicMaterial,
  MeshLambertMaterial,
  type MeshLambertMaterialParameters,
  MeshPhysicalMaterial,
  type MeshPhysicalMaterialParameters,
  type Texture,
  Vector2,
  Vector3,
} from 'three';
import { type TileName, tilesOf } from '../../../artwork/tiles/tiles.ts';
import {
  type CoverColours,
  coverColours,
  type Face,
  type Job,
  type LeatherName,
  type PartName,
} from '../../../core/index.ts';
import { type AreaUniforms, areaUniforms, drawAreas } from './areaLines.ts';
import { type CutUniforms, cutUniforms, shadeCut } from './cutEdgeShading.ts';
import { type GrainUniforms, grainUniforms, shadeGrain } from './grainShading.ts';
import { HOLE_COLOUR } from './palette.ts';
import { pressRelief, type ReliefUniforms, reliefUniforms } from './relief.ts';
import { cutOut, cutOutDepth, type FramesUniform, framesUniform, veil } from './seeThroughMaterial.ts';
import { mixTile, placeOnPattern, showZones, type ZonesUniform } from './shading.ts';
import { tileTexture } from './tile.ts';

export type Look = 'full' | 'light';

/** Order in which a mesh lists its materials; a run of triangles has the index of its face. */
export const FACES = [
  'grain',
  'flesh',
  'cutEdge',
  'boardCloth',
  'boardInside',
  'pageFace',
  'pageEdge',
  'band',
  'endpaper',
  'ribbon',
  'metal',
] as const satisfies readonly Face[];

type FaceMaterials = Record<Face, Material>;

/** Parts of leather, each with its own frames to see through. */
const LEATHER_PARTS = {
  outside: { leather: 'outside', seenThrough: 'grain' },
  frontPocket: { leather: 'pocket', seenThrough: 'grain' },
  backPocket: { leather: 'pocket', seenThrough: 'grain' },
  lining: { leather: 'lining', seenThrough: 'flesh' },
  strap: { leather: 'outside', seenThrough: 'grain' },
  buckleTab: { leather: 'outside', seenThrough: 'grain' },
  penLoop: { leather: 'outside', seenThrough: 'grain' },
} as const satisfies Partial<Record<PartName, { leather: LeatherName; seenThrough: Face }>>;

type LeatherPart = keyof typeof LEATHER_PARTS;

/** Materials of one part of leather. */
interface PartMaterials {
  readonly faces: FaceMaterials;
  readonly frames: FramesUniform;
  readonly zones: ZonesUniform;
  readonly grain: GrainUniforms;
  readonly cut: CutUniforms;
  /** What is tooled into its grain side. */
  readonly relief: ReliefUniforms;
  /** The areas of its grain side that can be tooled, where they are shown. */
  readonly areas: AreaUniforms;
  /** For the face that is seen through, drawn a second time; invisible elsewhere. */
  readonly veils: readonly Material[];
  /** Null where there are no shadows. */
  readonly depth: Material | null;
}

export interface CoverMaterials {
  readonly leather: Record<LeatherPart, PartMaterials>;
  readonly thread: Material;
  readonly lace: Material;
  readonly hole: Material;
  /** Surfaces of the book itself. */
  readonly book: readonly Material[];
  readonly all: readonly Material[];
  dispose(): void;
}

interface Recipe extends MeshPhysicalMaterialParameters {
  readonly color: string;
  /** Share of its light that does not depend on how it faces, in the plain look. */
  readonly evenly?: number;
  readonly relief?: { readonly map: Texture | undefined; readonly depth: number };
}

type Finish = Job['finish'];

/** Builds one material per kind of surface for a look, sharing the procedural pictures between them. */
export function coverMaterials(look: Look, finish: Finish): CoverMaterials {
  const colours = coverColours({ finish });
  const rawColours = coverColours({ finish: { ...finish, edge: 'raw' } });
  const textures: Textures = Object.fromEntries(tilesOf(look).map(([name, tile]) => [name, tileTexture(tile)]));
  if (look === 'light') for (const texture of Object.values(textures)) texture.anisotropy = 1;
  const made: Material[] = [];

  const make = ({
    color,
    map,
    relief,
    evenly = 0,
    polygonOffset = false,
    ...rest
  }: Recipe): MeshLambertMaterial | MeshPhysicalMaterial => {
    const common: MeshLambertMaterialParameters = { color, clipShadows: true, polygonOffset, polygonOffsetFactor: 1 };
    if (map) common.map = map;
    const material =
      look === 'light'
        ? new MeshLambertMaterial({
            ...common,
            color: new Color(color).multiplyScalar(1 - evenly),
            emissive: color,
            emissiveIntensity: 0.9 * evenly,
          })
        : new MeshPhysicalMaterial({
            ...common,
            ...rest,
            ...(relief && { normalMap: relief.map, normalScale: new Vector2(relief.depth, relief.depth) }),
          });
    made.push(material);
    return material;
  };

  const bookFaces = makeBookFaces(make, textures, colours);
  const nothing = new MeshBasicMaterial({ visible: false });
  const partMaterials = (part: LeatherPart): PartMaterials => {
    const { leather, seenThrough } = LEATHER_PARTS[part];
    const frames = framesUniform();
    const zones: ZonesUniform = { value: [new Vector3(1, 0, 0), new Vector3(1, 0, 0)] };
    const { grain: grainColour, flesh, cutEdge } = colours[leather];
    const faces = {
      grain: make({
        color: grainColour,
        map: textures.grain,
        relief: { map: textures.grainRelief, depth: 1 },
        ...SURFACES[surfaceOf(finish, leather)],
      }),
      flesh: make({
        color: flesh,
        map: textures.flesh,
        relief: { map: textures.fleshRelief, depth: 1 },
        roughness: 0.98,
        sheen: 0.4,
        sheenRoughness: 0.55,
        sheenColor: flesh,
      }),
      cutEdge: make({ color: cutEdge, ...CUTS[finish.edge] }),
    };
    for (const face of Object.values(faces)) {
      placeOnPattern(face);
      showZones(face, zones);
    }
    mixTile(faces.flesh);
    const relief = reliefUniforms();
    pressRelief(faces.grain, relief);
    const areas = areaUniforms();
    drawAreas(faces.grain, areas);
    const grain = grainUniforms(new Color(cutEdge));
    const { hideRelief: hide, creaseRelief: crease } = textures;
    shadeGrain(faces.grain, grain, hide && crease ? { hide, crease } : null);
    const cut = cutUniforms();
    shadeCut(faces.cutEdge, {
      uniforms: cut,
      fibre: textures.edge!,
      raw: rawColours[leather].cutEdge,
      grain: grainColour,
      shows: finish.edge === 'painted' ? 0.08 : finish.edge === 'burnished' ? 0.35 : 1,
      isFull: look === 'full',
    });
    cutOut(faces[seenThrough], frames);
    const thin = veil({ color: colours[leather].flesh, map: textures.grain ?? null, clipShadows: true }, frames);
    // The lining shows through the outside, and under that one veil is enough.
    const veils = FACES.map((face) => (face === seenThrough && part !== 'lining' ? thin : nothing));
    const depth = look === 'full' ? cutOutDepth(frames) : null;
    made.push(thin, ...(depth ? [depth] : []));
    return { faces: { ...faces, ...bookFaces }, frames, zones, grain, cut, relief, areas, veils, depth };
  };

  const leather = Object.fromEntries(
    (Object.keys(LEATHER_PARTS) as LeatherPart[]).map((part) => [part, partMaterials(part)]),
  ) as Record<LeatherPart, PartMaterials>;
  return {
    leather,
    thread: make({ color: colours.thread, roughness: 0.85 }),
    lace: make({ color: colours.lace, roughness: 0.6, map: textures.edge, side: DoubleSide }),
    hole: make({ color: HOLE_COLOUR, roughness: 1 }),
    book: Object.values(bookFaces),
    all: made,
    dispose() {
      for (const thing of [...made, nothing, ...Object.values(textures)]) thing.dispose();
    },
  };
}

type Make = (recipe: Recipe) => Material;

/** The light look has no relief. */
type Textures = Readonly<Partial<Record<TileName, Texture>>>;

/** How each surface of the grain side shines. Judged by eye. */
const SURFACES = {
  matt: { roughness: 0.66, specularIntensity: 0.7 },
  satin: { roughness: 0.44 },
  glossy: { roughness: 0.4, clearcoat: 0.6, clearcoatRoughness: 0.2 },
} as const satisfies Record<Finish['outside']['surface'], Partial<Recipe>>;

/** How a finished cut shines: waxed and rubbed, or under paint. Judged by eye. */
const CUTS = {
  raw: { roughness: 0.97 },
  burnished: { roughness: 0.4 },
  painted: { roughness: 0.24 },
} as const satisfies Record<Finish['edge'], Partial<Recipe>>;

const surfaceOf = (finish: Finish, leather: LeatherName) =>
  (leather === 'pocket' ? (finish.pocket ?? finish.outside) : finish[leather]).surface;

/** Not smoothed, fanned leaves whose edges are much darker than their faces would run into stripes. Judged by eye. */
const PAPER = 0.5;

const makeBookFaces = (make: Make, textures: Textures, colours: CoverColours) => ({
  boardCloth: make({
    color: colours.boardCloth,
    map: textures.cloth,
    relief: { map: textures.clothRelief, depth: 0.8 },
    roughness: 0.85,
  }),
  boardInside: make({ color: colours.boardInside, roughness: 0.9 }),
  // Pages that lie on each other end in the edges of both: on their way into the block they must not flicker before these.
  pageFace: make({ color: colours.pageFace, roughness: 0.92, polygonOffset: true, evenly: PAPER }),
  pageEdge: make({ color: colours.pageEdge, map: textures.leaves, roughness: 0.95, evenly: PAPER }),
  band: make({ color: colours.band, map: textures.band, roughness: 0.6 }),
  endpaper: make({ color: colours.endpaper, roughness: 0.92 }),
  ribbon: make({ color: colours.ribbon, roughness: 0.5, side: DoubleSide }),
  metal: make({ color: colours.metal, roughness: 0.35, metalness: 1 }),
});

export const isLeatherPart = (part: PartName): part is LeatherPart => part in LEATHER_PARTS;

/** Materials of a part in the order of `FACES`. */
export function materialsOf({ leather }: CoverMaterials, part: PartName): Material[] {
  // A part of the book has faces of the book alone, which all parts share.
  const { faces } = leather[isLeatherPart(part) ? part : 'outside'];
  return FACES.map((face) => faces[face]);
}
