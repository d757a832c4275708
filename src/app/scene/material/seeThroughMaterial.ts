import {
  type Material,
  MeshDepthMaterial,
  MeshLambertMaterial,
  type MeshLambertMaterialParameters,
  Vector4,
} from 'three';
import type { SeeThrough } from '../../../core/index.ts';
import { extendShader, PATTERN_VARYING, placeOnPattern } from './shading.ts';

/** Outer and inner boxes of up to two frames, as least s and v, greatest s and v, mm; all 0 where there is no frame. */
export interface FramesUniform {
  readonly value: readonly [outer: Vector4, inner: Vector4, outer: Vector4, inner: Vector4];
}

export const framesUniform = (): FramesUniform => ({
  value: [new Vector4(), new Vector4(), new Vector4(), new Vector4()],
});

export function setFrames({ value }: FramesUniform, frames: SeeThrough['frames']): void {
  const boxes = frames.flatMap(({ outer, inner }) => [outer, inner]);
  for (const [i, box] of value.entries()) {
    const { s, v } = boxes[i] ?? { s: [0, 0], v: [0, 0] };
    box.set(s[0]!, v[0]!, s[1]!, v[1]!);
  }
}

/** How much of the leather's colour stays in the middle of a frame, and how far from its border that is reached, mm. */
const VEIL = 0.3;
const FEATHER = 1.2;

/** Leaves out what lies in the frames. */
export const cutOut = (material: Material, frames: FramesUniform): void =>
  onFrames(material, frames, 'if (insideFrames() > 0.0) discard;');

/** Leather thinned to a veil, for what lies in the frames: it hides nothing and is drawn over what shows through it. */
export function veil(look: MeshLambertMaterialParameters, frames: FramesUniform): Material {
  const material = new MeshLambertMaterial({ ...look, transparent: true, depthWrite: false });
  placeOnPattern(material);
  onFrames(
    material,
    frames,
    `float inside = insideFrames();
    if (inside <= 0.0) discard;
    diffuseColor.a *= mix(1.0, ${VEIL}, smoothstep(0.0, ${FEATHER}, inside));`,
  );
  return material;
}

/** Depth for the shadow map, without what lies in the frames: what shows through is lit. */
export function cutOutDepth(frames: FramesUniform): Material {
  const material = new MeshDepthMaterial();
  extendShader(material, 'frames', (shader) => {
    shader.uniforms.frames = frames;
    shader.vertexShader = shader.vertexShader
      .replace('#include <common>', `#include <common>\n${PATTERN_VARYING}`)
      .replace('#include <begin_vertex>', '#include <begin_vertex>\nvPattern = uv;');
    shader.fragmentShader = shader.fragmentShader
      .replace('#include <common>', `#include <common>\n${PATTERN_VARYING}\n${INSIDE_FRAMES}`)
      .replace('#include <map_fragment>', 'if (insideFrames() > 0.0) discard;');
  });
  return material;
}

function onFrames(material: Material, frames: FramesUniform, act: string): void {
  extendShader(material, `frames ${act}`, (shader) => {
    shader.uniforms.frames = frames;
    shader.fragmentShader = shader.fragmentShader
      .replace(PATTERN_VARYING, `${PATTERN_VARYING}\n${INSIDE_FRAMES}`)
      .replace('#include <color_fragment>', `#include <color_fragment>\n{ ${act} }`);
  });
}

/** How far inside a frame a place of the pattern lies, mm; not positive outside. */
const INSIDE_FRAMES = `
  uniform vec4 frames[4];

  float insideFrames() {
    float inside = 0.0;
    for (int i = 0; i < 4; i += 2) {
      vec4 within = vec4(vPattern - frames[i].xy, frames[i].zw - vPattern);
      vec4 beyond = vec4(frames[i + 1].xy - vPattern, vPattern - frames[i + 1].zw);
      float toOuter = min(min(within.x, within.y), min(within.z, within.w));
      float toInner = max(max(beyond.x, beyond.y), max(beyond.z, beyond.w));
      inside = max(inside, min(toOuter, toInner));
    }
    return inside;
  }`;
