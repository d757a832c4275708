import { MeshLambertMaterial, MeshStandardMaterial, Vector3, Vector4 } from 'three';
import type { Look } from '../material/coverMaterials.ts';
import { extendShader } from '../material/shading.ts';
import type { FootShadow } from './footShadow.ts';

/** Surface of the bench: ruled, darkened under the work, fading into the page far out. */
export function benchMaterial(look: Look, shadow: FootShadow) {
  const uniforms = {
    /** Pitch, fine rules to a strong one, ink, 1 for light ink on dark. */
    rules: { value: new Vector4() },
    /** Centre x and z, and the distance at which the bench has faded, mm. */
    fade: { value: new Vector3(0, 0, 1) },
    foot: { value: shadow.texture },
    footArea: { value: shadow.area },
  };
  const material =
    look === 'light'
      ? new MeshLambertMaterial({ transparent: true })
      : new MeshStandardMaterial({ transparent: true, roughness: 0.9, envMapIntensity: 0.7 });
  material.depthWrite = false;
  if (look === 'light') material.defines = { ...material.defines, LIGHT_LOOK: '' };
  extendShader(material, 'bench', (shader) => {
    Object.assign(shader.uniforms, uniforms);
    shader.vertexShader = shader.vertexShader
      .replace('#include <common>', '#include <common>\nvarying vec2 vBench;')
      .replace('#include <begin_vertex>', '#include <begin_vertex>\nvBench = (modelMatrix * vec4(position, 1.0)).xz;');
    shader.fragmentShader = shader.fragmentShader
      .replace('#include <common>', `#include <common>\n${FUNCTIONS}`)
      .replace('#include <color_fragment>', `#include <color_fragment>\n${COLOUR}`);
  });
  return { material, uniforms };
}

const FUNCTIONS = `
  varying vec2 vBench;
  uniform vec4 rules;
  uniform vec3 fade;
  uniform vec4 footArea;
  uniform sampler2D foot;

  float ruled(float pitch, float width) {
    vec2 place = vBench / pitch;
    vec2 away = abs(fract(place - 0.5) - 0.5) / fwidth(place);
    // Rules closer than a few pixels would run together, so they fade.
    float seen = 1.0 - smoothstep(0.1, 0.35, max(fwidth(place).x, fwidth(place).y));
    return seen * (1.0 - min(1.0, min(away.x, away.y) / width));
  }

  float footShadow() {
    vec2 at = (vBench - footArea.xy) / footArea.zw;
    if (any(lessThan(at, vec2(0.0))) || any(greaterThan(at, vec2(1.0)))) return 0.0;
    vec2 step = 6.0 / footArea.zw;
    #ifdef LIGHT_LOOK
    return textureLod(foot, at, 3.0).r;
    #endif
    float dark = 2.0 * textureLod(foot, at, 2.5).r;
    dark += textureLod(foot, at + step * vec2(1.0, 0.4), 3.0).r + textureLod(foot, at - step * vec2(1.0, 0.4), 3.0).r;
    dark += textureLod(foot, at + step * vec2(-0.4, 1.0), 3.0).r + textureLod(foot, at - step * vec2(-0.4, 1.0), 3.0).r;
    return dark / 6.0;
  }`;

const COLOUR = `
  float rule = rules.z * max(0.7 * ruled(rules.x, 1.0), 1.5 * ruled(rules.x * rules.y, 1.2));
  diffuseColor.rgb = mix(diffuseColor.rgb, vec3(rules.w), rule);
  diffuseColor.rgb *= 1.0 - 0.75 * footShadow();
  diffuseColor.a *= 1.0 - smoothstep(0.35, 1.0, distance(vBench, fade.xy) / fade.z);`;
