import { type Material, Vector2, Vector4 } from 'three';
import { type Box2, ofPattern, type TooledPart, type ToolingArea } from '../../../core/index.ts';
import { extendShader, PATTERN_VARYING } from './shading.ts';

/** Most areas on one part: back, spine, front and two turned ends. */
const MOST = 5;

/** Clear parts and flat parts of areas as least and greatest u and v, mm, and where their centre lines cross. */
export interface AreaUniforms {
  readonly areaCount: { value: number };
  readonly areaClear: { readonly value: readonly Vector4[] };
  readonly areaFlat: { readonly value: readonly Vector4[] };
  readonly areaCentre: { readonly value: readonly Vector2[] };
}

export const areaUniforms = (): AreaUniforms => ({
  areaCount: { value: 0 },
  areaClear: { value: Array.from({ length: MOST }, () => new Vector4()) },
  areaFlat: { value: Array.from({ length: MOST }, () => new Vector4()) },
  areaCentre: { value: Array.from({ length: MOST }, () => new Vector2()) },
});

/** Sets the areas that are drawn on a part. */
export function setAreas(uniforms: AreaUniforms, part: TooledPart, areas: readonly ToolingArea[]): void {
  uniforms.areaCount.value = areas.length;
  areas.forEach((area, i) => {
    // Places that are against u are mirrored by their scale of -1.
    const { scale, offset } = ofPattern(area, part);
    const u = (x: number): number => (x - offset[0]) / scale[0];
    const set = (box: Vector4, { x, y }: Box2): void => {
      box.set(Math.min(u(x[0]), u(x[1])), y[0], Math.max(u(x[0]), u(x[1])), y[1]);
    };
    set(uniforms.areaClear.value[i]!, area.clear ?? area.flat);
    set(uniforms.areaFlat.value[i]!, area.flat);
    uniforms.areaCentre.value[i]!.set(u(area.centre[0]), area.centre[1]);
  });
}

/** Draws the outline of each area's clear part, and its centre lines dashed over the flat part. */
export function drawAreas(material: Material, uniforms: AreaUniforms): void {
  extendShader(material, 'areas', (shader) => {
    Object.assign(shader.uniforms, uniforms);
    shader.fragmentShader = shader.fragmentShader
      .replace(
        PATTERN_VARYING,
        `${PATTERN_VARYING}
        uniform int areaCount;
        uniform vec4 areaClear[${MOST}];
        uniform vec4 areaFlat[${MOST}];
        uniform vec2 areaCentre[${MOST}];`,
      )
      .replace(
        '#include <color_fragment>',
        `#include <color_fragment>
        if (areaCount > 0) {
          float pixel = length(fwidth(vPattern));
          float width = max(0.15, 0.3 * pixel);
          float drawn = 0.0;
          for (int i = 0; i < ${MOST}; i++) {
            if (i >= areaCount) break;
            vec4 clear = areaClear[i];
            vec2 beyond = max(clear.xy - vPattern, vPattern - clear.zw);
            drawn = max(drawn, 1.0 - smoothstep(width, width + pixel, abs(max(beyond.x, beyond.y))));
            vec4 level = areaFlat[i];
            vec2 within = step(level.xy, vPattern) * step(vPattern, level.zw);
            vec2 off = abs(vPattern - areaCentre[i]);
            vec2 dash = step(fract(vPattern.yx / 6.0), vec2(0.6));
            vec2 line = (1.0 - smoothstep(0.6 * width, 0.6 * width + pixel, off)) * dash;
            drawn = max(drawn, within.x * within.y * max(line.x, line.y));
          }
          diffuseColor.rgb = mix(diffuseColor.rgb, vec3(0.82, 0.9, 0.98), drawn);
        }`,
      );
  });
}
