import { ColorUtils, type Document, type Material, type TextureInfo } from '@gltf-transform/core';
import { type CoverColours, colourOf, type Face, leatherOf, type MeshData, type PartName } from '../../core/index.ts';
import { png } from '../png.ts';
import type { ReliefPictures } from './reliefPictures.ts';

/** Roughness of each surface, 0 mirror to 1 chalk. Judged by eye. */
const ROUGHNESS: Readonly<Record<Face, number>> = {
  grain: 0.6,
  flesh: 0.95,
  cutEdge: 0.8,
  boardCloth: 0.85,
  boardInside: 0.9,
  endpaper: 0.9,
  pageFace: 0.95,
  pageEdge: 0.95,
  band: 0.9,
  ribbon: 0.5,
  metal: 0.35,
};

/** Makes the materials of a document on demand, one for each kind of surface and one for the grain side of each tooled part. */
export function materialsOf(
  document: Document,
  colours: CoverColours,
  reliefs: ReadonlyMap<PartName, ReliefPictures>,
): (mesh: MeshData, face: Face) => Material {
  const made = new Map<string, Material>();
  return ({ part }, face) => {
    const isLeather = face === 'grain' || face === 'flesh' || face === 'cutEdge';
    const relief = face === 'grain' ? reliefs.get(part) : undefined;
    const kind = isLeather ? `${leatherOf(part)} ${face}` : face;
    const colour = colourOf(colours, part, face);
    const name = relief === undefined ? kind : `tooled ${part}`;
    const known = made.get(name);
    if (known !== undefined) return known;
    const material = document
      .createMaterial(name)
      .setBaseColorFactor(ColorUtils.hexToFactor(Number.parseInt(colour.slice(1), 16), [0, 0, 0, 1]))
      .setMetallicFactor(0)
      .setRoughnessFactor(ROUGHNESS[face]);
    if (relief !== undefined) {
      const picture = (pixels: ReliefPictures['tone'], what: string) =>
        document.createTexture(`${name} ${what}`).setMimeType('image/png').setImage(png(pixels));
      material.setNormalTexture(picture(relief.normals, 'normals')).setBaseColorTexture(picture(relief.tone, 'tone'));
      smooth(material.getNormalTextureInfo());
      smooth(material.getBaseColorTextureInfo());
    }
    made.set(name, material);
    return material;
  };
}

/** Values of glTF 2.0, 5.29 (sampler). */
const [CLAMP_TO_EDGE, LINEAR, LINEAR_MIPMAP_LINEAR] = [33071, 9729, 9987] as const;

/** Not repeated beyond its border, and smoothed at every distance. */
const smooth = (info: TextureInfo | null): void => {
  info?.setWrapS(CLAMP_TO_EDGE).setWrapT(CLAMP_TO_EDGE).setMinFilter(LINEAR_MIPMAP_LINEAR).setMagFilter(LINEAR);
};
