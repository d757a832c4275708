import type { Material, Vector3 } from 'three';

/** Band of the outside's pattern to highlight: x to y, mm, of its width, or of its height if z is 1; empty if x > y. */
export interface ZoneUniform {
  readonly value: Vector3;
}

type Shader = Parameters<Material['onBeforeCompile']>[0];

/** Extends the shader of a material after its earlier extensions; `key` tells the programs apart. */
export function extendShader(material: Material, key: string, extend: (shader: Shader) => void): void {
  const before = material.onBeforeCompile;
  const keyBefore = material.customProgramCacheKey();
  material.onBeforeCompile = (shader, renderer) => {
    before.call(material, shader, renderer);
    extend(shader);
  };
  material.customProgramCacheKey = () => `${keyBefore}|${key}`;
}

/** Varies the tone by the grain's own tile, stretched, so that the tile does not visibly repeat. */
export function varyOverLargeAreas(material: Material): void {
  extendShader(material, 'vary', (shader) => {
    shader.fragmentShader = shader.fragmentShader.replace(
      '#include <map_fragment>',
      `#include <map_fragment>
      {
        float cloud = texture2D(map, vMapUv * 0.061, 3.0).r + texture2D(map, vMapUv.yx * 0.17, 3.0).r;
        diffuseColor.rgb *= mix(0.92, 1.1, smoothstep(0.7, 1.3, cloud));
      }`,
    );
  });
}

/** Highlights a band of the outside, with a thin line at each end. */
export function showZone(material: Material, zone: ZoneUniform): void {
  extendShader(material, 'zone', (shader) => {
    shader.uniforms.zone = zone;
    shader.vertexShader = shader.vertexShader
      .replace('#include <common>', '#include <common>\nvarying vec2 vPattern;')
      .replace('#include <uv_vertex>', '#include <uv_vertex>\nvPattern = uv.xy;');
    shader.fragmentShader = shader.fragmentShader
      .replace('#include <common>', '#include <common>\nuniform vec3 zone;\nvarying vec2 vPattern;')
      .replace(
        '#include <color_fragment>',
        `#include <color_fragment>
        if (zone.x <= zone.y) {
          float place = mix(vPattern.x, vPattern.y, zone.z);
          float inside = step(zone.x, place) * step(place, zone.y);
          float border = 1.0 - smoothstep(0.35, 0.7, min(abs(place - zone.x), abs(place - zone.y)));
          diffuseColor.rgb = mix(diffuseColor.rgb, vec3(0.93, 0.86, 0.62), 0.42 * inside);
          diffuseColor.rgb = mix(diffuseColor.rgb, vec3(0.1, 0.07, 0.05), 0.8 * border);
        }`,
      );
  });
}
