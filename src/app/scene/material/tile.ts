import {
  DataTexture,
  LinearFilter,
  LinearMipmapLinearFilter,
  NoColorSpace,
  RepeatWrapping,
  RGBAFormat,
  SRGBColorSpace,
} from 'three';
import { type Tile, tilePixels } from '../../../artwork/tiles/tilePixels.ts';

/** A tile as a texture for uv in mm. */
export function tileTexture(tile: Tile): DataTexture {
  const texture = new DataTexture(tilePixels(tile), tile.size, tile.size, RGBAFormat);
  texture.wrapS = texture.wrapT = RepeatWrapping;
  texture.repeat.set(1 / tile.side_mm, 1 / tile.side_mm);
  texture.minFilter = LinearMipmapLinearFilter;
  texture.magFilter = LinearFilter;
  texture.generateMipmaps = true;
  texture.anisotropy = 8;
  texture.colorSpace = tile.kind === 'tone' ? SRGBColorSpace : NoColorSpace;
  texture.needsUpdate = true;
  return texture;
}
