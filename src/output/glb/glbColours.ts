import { ColorUtils, type Document, type Material } from '@gltf-transform/core';
import { type Face, type LeatherName, leatherOf, type MeshData } from '../../core/index.ts';

type LeatherFace = Extract<Face, 'grain' | 'flesh' | 'cutEdge'>;
type BookFace = Exclude<Face, LeatherFace>;
type LeatherColours = Readonly<Record<LeatherFace, string>>;

/** Colours of leathers and book, as `#rrggbb` in sRGB. */
export type GlbColours = Readonly<Record<LeatherName, LeatherColours>> & Readonly<Record<BookFace, string>>;

/** Roughness of each surface, 0 mirror to 1 chalk. Judged by eye. */
const ROUGHNESS: Readonly<Record<Face, number>> = {
  grain: 0.6,
  flesh: 0.95,
  cutEdge: 0.8,
  boardCloth: 0.85,
  boardInside: 0.9,
  pageFace: 0.95,
  pageEdge: 0.95,
  band: 0.9,
};

/** Makes the materials of a document on demand, one for each kind of surface. */
export function materialsOf(document: Document, colours: GlbColours): (mesh: MeshData, face: Face) => Material {
  const made = new Map<string, Material>();
  return ({ part }, face) => {
    const isLeather = face === 'grain' || face === 'flesh' || face === 'cutEdge';
    const leather = leatherOf(part);
    const [name, colour] = isLeather ? [`${leather} ${face}`, colours[leather][face]] : [face, colours[face]];
    const known = made.get(name);
    if (known !== undefined) return known;
    const material = document
      .createMaterial(name)
      .setBaseColorFactor(ColorUtils.hexToFactor(Number.parseInt(colour.slice(1), 16), [0, 0, 0, 1]))
      .setMetallicFactor(0)
      .setRoughnessFactor(ROUGHNESS[face]);
    made.set(name, material);
    return material;
  };
}
