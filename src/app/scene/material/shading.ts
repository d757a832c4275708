import type { Material, Vector3 } from 'three';

/**
 * Bands of the outside's pattern to highlight, each from x to y, mm, of its width, or of its height if z is 1; empty if
 * x > y.
 */
export interface ZonesUniform {
  readonly value: readonly [Vector3, Vector3];
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

/** Place of a fragment on the flat piece, mm. Declared after `<common>`, before what reads it. */
export const PATTERN_VARYING = 'varying vec2 vPattern;';

/** Gradient over the surface with the normal n of a quantity that changes so much to the next pixel right and up; view frame. */
const OVER_SURFACE = `
  vec3 overSurface(float toRight, float toUp, vec3 n) {
    vec3 right = dFdx(-vViewPosition);
    vec3 up = dFdy(-vViewPosition);
    vec3 acrossUp = cross(up, n);
    float area = dot(right, acrossUp);
    return area == 0.0 ? vec3(0.0) : (toRight * acrossUp + toUp * cross(n, right)) / area;
  }`;

/** Gives the shader of a material the place on the flat piece, and gradients. Comes before the extensions that read them. */
export function placeOnPattern(material: Material): void {
  extendShader(material, 'pattern', (shader) => {
    shader.vertexShader = shader.vertexShader
      .replace('#include <common>', `#include <common>\n${PATTERN_VARYING}`)
      .replace('#include <uv_vertex>', '#include <uv_vertex>\nvPattern = uv;');
    shader.fragmentShader = shader.fragmentShader
      .replace('#include <common>', `#include <common>\n${PATTERN_VARYING}`)
      // After the place in the view is declared, and before what the extensions declare.
      .replace('#include <logdepthbuf_pars_fragment>', `#include <logdepthbuf_pars_fragment>\n${OVER_SURFACE}`);
  });
}

/** Highlights bands of a piece, with a thin line at each end. */
export function showZones(material: Material, zones: ZonesUniform): void {
  extendShader(material, 'zones', (shader) => {
    shader.uniforms.zones = zones;
    shader.fragmentShader = shader.fragmentShader
      .replace(PATTERN_VARYING, `${PATTERN_VARYING}\nuniform vec3 zones[2];`)
      .replace(
        '#include <color_fragment>',
        `#include <color_fragment>
        for (int i = 0; i < 2; i++) {
          vec3 zone = zones[i];
          if (zone.x > zone.y) continue;
          float place = mix(vPattern.x, vPattern.y, zone.z);
          float inside = step(zone.x, place) * step(place, zone.y);
          float border = 1.0 - smoothstep(0.35, 0.7, min(abs(place - zone.x), abs(place - zone.y)));
          diffuseColor.rgb = mix(diffuseColor.rgb, vec3(0.93, 0.86, 0.62), 0.42 * inside);
          diffuseColor.rgb = mix(diffuseColor.rgb, vec3(0.1, 0.07, 0.05), 0.8 * border);
        }`,
      );
  });
}

/** Lays the tile of a base material twice over itself, turned and larger the second time: alone it would show as a grid from afar. */
export function mixTile(material: Material): void {
  extendShader(material, 'mixed', (shader) => {
    shader.fragmentShader = shader.fragmentShader.replace(
      '#include <map_fragment>',
      `vec4 sampledDiffuseColor = mix(texture2D(map, vMapUv), texture2D(map, mat2(0.8, 0.6, -0.6, 0.8) * vMapUv * 0.43), 0.6);
      diffuseColor *= sampledDiffuseColor;`,
    );
  });
}
