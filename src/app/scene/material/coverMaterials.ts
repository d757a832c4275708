import {
  DoubleSide,
  type Material,
  MeshLambertMaterial,
  type MeshLambertMaterialParameters,
  MeshPhysicalMaterial,
  type MeshPhysicalMaterialParameters,
  type Texture,
  Vector2,
  Vector3,
} from 'three';
import { type Face, type LeatherName, leatherOf, type PartName } from '../../../core/index.ts';
import { PALETTE } from './palette.ts';
import { showZone, varyOverLargeAreas, type ZoneUniform } from './shading.ts';
import { tileTexture } from './tile.ts';
import { type TileName, tilesOf } from './tiles.ts';

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
] as const satisfies readonly Face[];

type FaceMaterials = Record<Face, Material>;

export interface CoverMaterials {
  readonly outside: FaceMaterials;
  readonly pocket: FaceMaterials;
  readonly lining: FaceMaterials;
  readonly thread: Material;
  readonly lace: Material;
  readonly hole: Material;
  readonly zone: ZoneUniform;
  /** Surfaces of the book itself. */
  readonly book: readonly Material[];
  readonly all: readonly Material[];
  dispose(): void;
}

interface Recipe extends MeshPhysicalMaterialParameters {
  readonly color: string;
  readonly relief?: { readonly map: Texture | undefined; readonly depth: number };
}

/** Builds one material per kind of surface for a look, sharing the procedural pictures between them. */
export function coverMaterials(look: Look): CoverMaterials {
  const textures: Textures = Object.fromEntries(tilesOf(look).map(([name, tile]) => [name, tileTexture(tile)]));
  if (look === 'light') for (const texture of Object.values(textures)) texture.anisotropy = 1;
  const made: Material[] = [];
  const zone: ZoneUniform = { value: new Vector3(1, 0, 0) };

  const make = ({ color, map, relief, ...rest }: Recipe): MeshLambertMaterial | MeshPhysicalMaterial => {
    const common: MeshLambertMaterialParameters = { color, clipShadows: true };
    if (map) common.map = map;
    const material =
      look === 'light'
        ? new MeshLambertMaterial(common)
        : new MeshPhysicalMaterial({
            ...common,
            ...rest,
            ...(relief && { normalMap: relief.map, normalScale: new Vector2(relief.depth, relief.depth) }),
          });
    made.push(material);
    return material;
  };

  const bookFaces = makeBookFaces(make, textures);
  const leatherFaces = (kind: LeatherName): FaceMaterials => {
    const faces = makeLeatherFaces(make, textures, kind);
    if (look === 'full') varyOverLargeAreas(faces.grain);
    if (kind === 'outside') for (const face of [faces.grain, faces.flesh, faces.cutEdge]) showZone(face, zone);
    return { ...faces, ...bookFaces };
  };

  return {
    outside: leatherFaces('outside'),
    pocket: leatherFaces('pocket'),
    lining: leatherFaces('lining'),
    thread: make({ color: PALETTE.thread, roughness: 0.85 }),
    lace: make({ color: PALETTE.lace, roughness: 0.6, map: textures.edge, side: DoubleSide }),
    hole: make({ color: PALETTE.hole, roughness: 1 }),
    zone,
    book: Object.values(bookFaces),
    all: made,
    dispose() {
      for (const thing of [...made, ...Object.values(textures)]) thing.dispose();
    },
  };
}

type Make = (recipe: Recipe) => Material;

/** The light look has no relief. */
type Textures = Readonly<Partial<Record<TileName, Texture>>>;

function makeLeatherFaces(make: Make, textures: Textures, kind: LeatherName) {
  const colours = PALETTE[kind];
  const grain = make({
    color: colours.grain,
    map: textures.grain,
    relief: { map: textures.grainRelief, depth: 1 },
    roughness: 0.58,
    clearcoat: 0.12,
    clearcoatRoughness: 0.5,
  });
  const flesh = make({
    color: colours.flesh,
    map: textures.flesh,
    relief: { map: textures.fleshRelief, depth: 0.8 },
    roughness: 0.98,
    sheen: 0.35,
    sheenRoughness: 0.6,
    sheenColor: colours.flesh,
  });
  return { grain, flesh, cutEdge: make({ color: colours.cutEdge, map: textures.edge, roughness: 0.85 }) };
}

const makeBookFaces = (make: Make, textures: Textures) => ({
  boardCloth: make({
    color: PALETTE.boardCloth,
    map: textures.cloth,
    relief: { map: textures.clothRelief, depth: 0.8 },
    roughness: 0.85,
  }),
  boardInside: make({ color: PALETTE.boardInside, roughness: 0.9 }),
  pageFace: make({ color: PALETTE.pageFace, roughness: 0.92 }),
  pageEdge: make({ color: PALETTE.pageEdge, map: textures.leaves, roughness: 0.95 }),
  band: make({ color: PALETTE.band, map: textures.band, roughness: 0.6 }),
});

/** Materials of a part in the order of `FACES`. */
export const materialsOf = (materials: CoverMaterials, part: PartName): Material[] =>
  FACES.map((face) => materials[leatherOf(part)][face]);
