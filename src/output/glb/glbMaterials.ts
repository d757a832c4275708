import { ColorUtils, type Document, type Material, type TextureInfo } from '@gltf-transform/core';
import type { CoverColours } from '../../core/index.ts';
import type { ModelFace, ModelPart } from '../model/modelParts.ts';
import { surfaceOf } from '../model/surface.ts';
import { tilePicture } from '../model/tilePicture.ts';
import { type Pixels, png } from '../png.ts';
import type { ReliefPictures } from './reliefPictures.ts';

/**
 * Makes the materials of a document on demand, one for each kind of surface and one for the grain side of each tooled part.
 * Pictures of tiles lie at the first places of a vertex, those of what is tooled at the second. Only what is tooled has
 * normals of its own, and so tangents.
 */
export function materialsOf(
  document: Document,
  colours: CoverColours,
  reliefs: ReadonlyMap<ModelPart, ReliefPictures>,
): (part: ModelPart, face: ModelFace) => Material {
  const made = new Map<string, Material>();
  const textures = new Map<string, ReturnType<Document['createTexture']>>();
  const picture = (name: string, pixels: () => Pixels) => {
    const texture = textures.get(name) ?? document.createTexture(name).setMimeType('image/png').setImage(png(pixels()));
    textures.set(name, texture);
    return texture;
  };
  return (part, face) => {
    const surface = surfaceOf(colours, part, face);
    const relief = face === 'grain' ? reliefs.get(part) : undefined;
    const name = relief === undefined ? surface.name : `tooled ${part}`;
    const known = made.get(name);
    if (known !== undefined) return known;
    const { tone } = surface;
    const material = document
      .createMaterial(name)
      .setBaseColorFactor(ColorUtils.hexToFactor(Number.parseInt(surface.colour.slice(1), 16), [0, 0, 0, 1]))
      .setMetallicFactor(surface.metalness)
      .setRoughnessFactor(surface.roughness);
    if (tone !== null) {
      material.setBaseColorTexture(picture(tone, () => tilePicture(tone)));
      smooth(material.getBaseColorTextureInfo(), REPEAT);
    }
    if (relief !== undefined) {
      material.setNormalTexture(picture(`${name} normals`, () => relief.normals));
      // The grain shades the colour, so what is pressed darkens the light that falls in.
      material.setOcclusionTexture(picture(`${name} tone`, () => relief.tone));
      for (const info of [material.getNormalTextureInfo(), material.getOcclusionTextureInfo()])
        smooth(info?.setTexCoord(1) ?? null, CLAMP_TO_EDGE);
    }
    made.set(name, material);
    return material;
  };
}

/** Values of glTF 2.0, 5.29 (sampler). */
const [REPEAT, CLAMP_TO_EDGE, LINEAR, LINEAR_MIPMAP_LINEAR] = [10497, 33071, 9729, 9987] as const;

/** Smoothed at every distance. */
const smooth = (info: TextureInfo | null, wrap: typeof REPEAT | typeof CLAMP_TO_EDGE): void => {
  info?.setWrapS(wrap).setWrapT(wrap).setMinFilter(LINEAR_MIPMAP_LINEAR).setMagFilter(LINEAR);
};
