import { type Color, type Material, type Texture, Vector2 } from 'three';
import { LEATHER_TILES } from '../../../artwork/tiles/leatherTiles.ts';
import { extendShader, PATTERN_VARYING } from './shading.ts';

/** What the grain side of a part shows beyond the grain itself. */
export interface GrainUniforms {
  /** Width and height of the piece, mm; 0 where its cut edges are not marked. */
  readonly piece: { readonly value: Vector2 };
  /** Corners at u = 0 and at the other end, mm: radius of rounded ones, negative length of the legs of clipped ones. */
  readonly corners: { readonly value: Vector2 };
  /** How far the finish of the cut has run over the grain side, 0 to 1, and its colour. */
  readonly run: { value: number };
  readonly runColour: { readonly value: Color };
}

export const grainUniforms = (runColour: Color): GrainUniforms => ({
  piece: { value: new Vector2() },
  corners: { value: new Vector2() },
  run: { value: 1 },
  runColour: { value: runColour },
});

/**
 * Makes a grain side of a base material: tone that varies over the hide, creases and a drawn tone where it is bent sharply, a
 * darker line along worked cut edges. With a hide and creases it also gets the slopes of both, and the roughness of what is too fine to be seen.
 * Comes after the extensions that stand on its normal.
 *
 * The bend is measured where it is drawn: turn of the normal per mm of the pattern, so that every opening has its own.
 * Roughness: the spread of slopes within a pixel, from the length of the mean normal (Toksvig, Mipmapping normal maps, 2005), added to
 * the square of the surface's own alpha, at most 0.18 of it (Tokuyoshi and Kaplanyan, Improved geometric specular antialiasing, 2019).
 * Where wrinkles begin and how deep they are is judged by eye.
 */
export function shadeGrain(
  material: Material,
  uniforms: GrainUniforms,
  reliefs: { readonly hide: Texture; readonly crease: Texture } | null,
): void {
  extendShader(material, `grain ${reliefs !== null}`, (shader) => {
    Object.assign(shader.uniforms, uniforms);
    if (reliefs)
      Object.assign(shader.uniforms, { hideMap: { value: reliefs.hide }, creaseMap: { value: reliefs.crease } });
    shader.fragmentShader = shader.fragmentShader
      .replace(PATTERN_VARYING, `${PATTERN_VARYING}\n${DECLARED}${reliefs ? RELIEFS_DECLARED : ''}`)
      .replace('#include <map_fragment>', `#include <map_fragment>\n${TONE}`);
    if (reliefs)
      shader.fragmentShader = shader.fragmentShader
        .replace('#include <roughnessmap_fragment>', `#include <roughnessmap_fragment>\n${ROUGHNESS}`)
        .replace('#include <normal_fragment_maps>', `#include <normal_fragment_maps>\n${SLOPES}`);
  });
}

const DECLARED = `
  uniform vec2 piece;
  uniform vec2 corners;
  uniform float run;
  uniform vec3 runColour;

  // Turn of the normal over a mm of the pattern along u and along v, radians; above 0 where the grain side is the outer one.
  vec2 turns(vec3 n, vec3 place) {
    vec2 right = dFdx(vPattern);
    vec2 up = dFdy(vPattern);
    float area = right.x * up.y - right.y * up.x;
    if (abs(area) < 1e-9) return vec2(0.0);
    vec4 toward = vec4(up.y, -right.y, -up.x, right.x) / area;
    vec3 nx = dFdx(n), ny = dFdy(n), px = dFdx(place), py = dFdy(place);
    vec3 nu = nx * toward.x + ny * toward.y, nv = nx * toward.z + ny * toward.w;
    return vec2(length(nu) * sign(dot(nu, px * toward.x + py * toward.y)),
      length(nv) * sign(dot(nv, px * toward.z + py * toward.w)));
  }`;

const RELIEFS_DECLARED = `
  uniform sampler2D hideMap;
  uniform sampler2D creaseMap;`;

const TONE = `
  vec2 turned = turns(vNormal, -vViewPosition);
  vec2 creased = smoothstep(vec2(0.05), vec2(0.3), abs(turned));
  {
    float cloud = texture2D(map, vMapUv.yx * 0.043, 4.0).r + texture2D(map, vMapUv * 0.17, 3.0).r;
    diffuseColor.rgb *= mix(0.94, 1.05, smoothstep(1.45, 1.75, cloud));
    // Drawn over a bend the finish thins and pales; pressed together inside one it darkens.
    float drawn = dot(creased, sign(turned));
    diffuseColor.rgb *= mix(vec3(1.0), drawn > 0.0 ? vec3(1.18, 1.12, 1.05) : vec3(0.6, 0.56, 0.52), min(1.0, abs(drawn)));
    if (piece.x > 0.0) {
      vec2 fromCut = min(vPattern, piece - vPattern);
      float corner = vPattern.x < 0.5 * piece.x ? corners.x : corners.y;
      float inside = min(fromCut.x, fromCut.y);
      if (max(fromCut.x, fromCut.y) < corner) inside = corner - length(corner - fromCut);
      else if (corner < 0.0) inside = min(inside, (fromCut.x + fromCut.y + corner) * 0.7071);
      float beside = 1.0 - smoothstep(0.15, 1.1, inside);
      diffuseColor.rgb = mix(diffuseColor.rgb, runColour, 0.75 * run * beside);
    }
  }`;

const ROUGHNESS = `
  {
    float mean = min(1.0, length(texture2D(normalMap, vNormalMapUv).xyz * 2.0 - 1.0));
    float alpha = roughnessFactor * roughnessFactor;
    float spread = min(0.18, 2.0 * (1.0 - mean) / max(0.1, mean));
    roughnessFactor = sqrt(sqrt(alpha * alpha + spread));
    // Valleys hold no polish.
    roughnessFactor = min(1.0, roughnessFactor * mix(1.5, 0.94, smoothstep(0.35, 0.75, sampledDiffuseColor.r)));
  }`;

const SLOPES = `
  {
    vec2 slope = texture2D(hideMap, vPattern / ${LEATHER_TILES.hideRelief.side_mm.toFixed(1)}).xy * 2.0 - 1.0;
    vec2 place = vPattern / ${LEATHER_TILES.creaseRelief.side_mm.toFixed(1)};
    vec2 lines = (texture2D(creaseMap, place).xy * 2.0 - 1.0) * creased.x;
    vec2 across = (texture2D(creaseMap, place.yx).yx * 2.0 - 1.0) * creased.y;
    normal = normalize(tbn * vec3(mapN.xy + slope + lines + across, mapN.z));
  }`;
