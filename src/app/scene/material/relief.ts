import {
  DataTexture,
  LinearFilter,
  LinearMipmapLinearFilter,
  type Material,
  RedFormat,
  type Texture,
  Vector2,
  Vector4,
} from 'three';
import type { PartRelief } from '../../../core/index.ts';
import { extendShader } from './shading.ts';

/** What is pressed into the grain side of a part. */
export interface ReliefUniforms {
  /** Depth of the map's 255, mm; 0 where nothing is tooled. */
  readonly reliefDepth: { value: number };
  readonly reliefMap: { value: Texture | null };
  /** From the uv, mm, to the map: scale and offset. */
  readonly reliefPlace: { readonly value: Vector4 };
  /** Size of a pixel of the map, mm. */
  readonly reliefPixel: { readonly value: Vector2 };
}

export const reliefUniforms = (): ReliefUniforms => ({
  reliefDepth: { value: 0 },
  reliefMap: { value: null },
  reliefPlace: { value: new Vector4() },
  reliefPixel: { value: new Vector2() },
});

/** The depths of a relief as a texture. */
export function reliefTexture({ map }: PartRelief): DataTexture {
  const texture = new DataTexture(map.depths, map.columns, map.rows, RedFormat);
  texture.minFilter = LinearMipmapLinearFilter;
  texture.magFilter = LinearFilter;
  texture.generateMipmaps = true;
  // Thin lines must not flicker where the leather is seen at a slant.
  texture.anisotropy = 8;
  texture.needsUpdate = true;
  return texture;
}

/** Lays a relief on a part, or takes it off where there is no texture. */
export function setRelief(
  { reliefDepth, reliefMap, reliefPlace, reliefPixel }: ReliefUniforms,
  relief: { readonly of: PartRelief; readonly texture: Texture; readonly depth: number } | null,
): void {
  reliefDepth.value = relief?.depth ?? 0;
  reliefMap.value = relief?.texture ?? null;
  if (relief === null) return;
  const { scale, offset, map } = relief.of;
  reliefPlace.value.set(...scale, ...offset);
  reliefPixel.value.set(map.size[0] / map.columns, map.size[1] / map.rows);
}

/**
 * Presses a relief into a material: normals from the slopes of the depth, and in the pressed leather a darker, smoother and
 * glossier grain, as a warm tool on damp leather leaves it. How much darker and glossier is judged by eye.
 *
 * A height -d over a surface turns its normal n to n + grad d. The gradient comes from differences of the map over a pixel
 * of the map or half one of the screen, whichever is larger, so that a far relief fades and does not flicker.
 */
export function pressRelief(material: Material, uniforms: ReliefUniforms): void {
  extendShader(material, 'relief', (shader) => {
    Object.assign(shader.uniforms, uniforms);
    shader.fragmentShader = shader.fragmentShader
      .replace('#include <clipping_planes_pars_fragment>', `#include <clipping_planes_pars_fragment>\n${PRESSED}`)
      .replace(
        '#include <map_fragment>',
        `#include <map_fragment>
        float pressed = reliefDepth > 0.0 ? pressedAt(vPattern) : 0.0;
        // From afar a line is narrower than a pixel, and still to be seen.
        diffuseColor.rgb *= mix(vec3(1.0), vec3(0.5, 0.46, 0.43), min(1.0, 1.6 * pressed));`,
      )
      .replace(
        '#include <roughnessmap_fragment>',
        `#include <roughnessmap_fragment>
        roughnessFactor = mix(roughnessFactor, 0.36, pressed);`,
      )
      .replace(
        '#include <normal_fragment_maps>',
        `#include <normal_fragment_maps>
        if (reliefDepth > 0.0) {
          vec3 rise = pressedSlope(nonPerturbedNormal);
          normal = normalize(mix(normal, nonPerturbedNormal, 0.8 * pressed) + rise);
          nonPerturbedNormal = normalize(nonPerturbedNormal + rise);
        }`,
      );
  });
}

/** Comes after what all the materials declare, the place in the view among it. */
const PRESSED = `
  uniform float reliefDepth;
  uniform sampler2D reliefMap;
  uniform vec4 reliefPlace;
  uniform vec2 reliefPixel;

  // Share of the depth at a place of the pattern; beyond the map the leather is untouched.
  float pressedAt(vec2 place) {
    vec2 at = place * reliefPlace.xy + reliefPlace.zw;
    vec2 inside = step(vec2(0.0), at) * step(at, vec2(1.0));
    return texture2D(reliefMap, at, -0.5).r * inside.x * inside.y;
  }

  // Gradient of the depth over the surface with the normal n, in the frame of the view.
  vec3 pressedSlope(vec3 n) {
    vec2 screen = max(abs(dFdx(vPattern)), abs(dFdy(vPattern)));
    vec2 reach = max(reliefPixel, 0.5 * screen);
    vec2 onX = vec2(reach.x, 0.0);
    vec2 onY = vec2(0.0, reach.y);
    vec2 slope = reliefDepth / (2.0 * reach) * vec2(
      pressedAt(vPattern + onX) - pressedAt(vPattern - onX),
      pressedAt(vPattern + onY) - pressedAt(vPattern - onY)
    );
    return overSurface(dot(slope, dFdx(vPattern)), dot(slope, dFdy(vPattern)), n);
  }`;
