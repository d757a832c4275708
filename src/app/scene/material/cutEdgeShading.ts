import { Color, type Material, type Texture } from 'three';
import { LEATHER_TILES } from '../../../artwork/tiles/leatherTiles.ts';
import { extendShader, PATTERN_VARYING } from './shading.ts';

/** How far the cut edges of a part are worked, 0 to 1. */
export interface CutUniforms {
  readonly bevelled: { value: number };
  readonly burnished: { value: number };
}

export const cutUniforms = (): CutUniforms => ({ bevelled: { value: 1 }, burnished: { value: 1 } });

interface Cut {
  readonly uniforms: CutUniforms;
  readonly fibre: Texture;
  /** Colours of the raw cut and of the grain. */
  readonly raw: string;
  readonly grain: string;
  /** How much of the fibre still shows in the finished cut: none under paint. */
  readonly shows: number;
  /** Whether it is drawn with roughness and relief. */
  readonly isFull: boolean;
}

/**
 * Draws a cut edge: as the knife leaves it pale fibre under the thin dark grain layer; bevelled its arrises are taken off;
 * burnished or painted it has the finish's own colour and gloss, and is round. Toward the flesh side it darkens, where
 * another sheet lies against it: so the sheets of a seam are told apart.
 *
 * Needs the attribute `depth`: 0 on the grain side, 1 on the flesh side. Shares and depths are judged by eye.
 */
export function shadeCut(material: Material, { uniforms, fibre, raw, grain, shows, isFull }: Cut): void {
  extendShader(material, `cut ${isFull}`, (shader) => {
    Object.assign(shader.uniforms, uniforms, {
      fibreMap: { value: fibre },
      rawColour: { value: new Color(raw) },
      grainColour: { value: new Color(grain) },
      fibreShows: { value: shows },
    });
    shader.vertexShader = shader.vertexShader
      .replace('#include <common>', '#include <common>\nattribute float depth;\nvarying float vDepth;')
      .replace('#include <begin_vertex>', '#include <begin_vertex>\nvDepth = depth;');
    shader.fragmentShader = shader.fragmentShader
      .replace(PATTERN_VARYING, `${PATTERN_VARYING}\n${DECLARED}`)
      .replace('#include <color_fragment>', `${COLOUR}\n#include <color_fragment>`)
      .replace('#include <normal_fragment_maps>', `#include <normal_fragment_maps>\n${ROUND}`);
    if (isFull)
      shader.fragmentShader = shader.fragmentShader.replace(
        '#include <roughnessmap_fragment>',
        `#include <roughnessmap_fragment>
        roughnessFactor = mix(0.97, roughnessFactor, burnished);`,
      );
  });
}

const DECLARED = `
  varying float vDepth;
  uniform float bevelled;
  uniform float burnished;
  uniform float fibreShows;
  uniform sampler2D fibreMap;
  uniform vec3 rawColour;
  uniform vec3 grainColour;`;

const COLOUR = `
  {
    // The sheet's thickness follows from how fast its depth changes over the surface.
    vec3 toGrain = overSurface(dFdx(vDepth), dFdy(vDepth), normalize(vNormal));
    float deep = vDepth / max(0.05, length(toGrain));
    float fibre = texture2D(fibreMap, vec2(vPattern.x + vPattern.y, deep) / ${LEATHER_TILES.edge.side_mm.toFixed(1)}).r;
    // Loose toward the flesh side, dense under the grain.
    vec3 cut = rawColour * mix(0.55, 1.25, fibre) * mix(1.06, 0.86, vDepth);
    cut = mix(grainColour * 0.55, cut, smoothstep(0.06, 0.2, vDepth));
    vec3 worked = diffuseColor.rgb * mix(1.0, mix(0.6, 1.3, fibre), fibreShows);
    diffuseColor.rgb = mix(cut, worked, burnished);
    // Taken-off arrises catch the eye as two fine lines; the meeting of two sheets is a dark one.
    float arris = smoothstep(0.12, 0.0, vDepth);
    diffuseColor.rgb *= 1.0 + 0.3 * arris * bevelled * (1.0 - burnished);
    diffuseColor.rgb *= mix(1.0, 0.25, smoothstep(0.7, 1.0, vDepth));
  }`;

const ROUND = `
  {
    vec3 inward = overSurface(dFdx(vDepth), dFdy(vDepth), normal);
    float from = 2.0 * vDepth - 1.0;
    float lean = bevelled * sign(from) * smoothstep(0.55, 1.0, abs(from)) + 0.55 * burnished * from;
    if (dot(inward, inward) > 0.0) normal = normalize(normal + lean * normalize(inward));
  }`;
