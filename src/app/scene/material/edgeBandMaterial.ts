import { Color, DoubleSide, ShaderMaterial } from 'three';
import { CHALK } from './palette.ts';

/** Pitch of the hatching of an overrun, mm. */
const PITCH = 1.3;

/**
 * What is drawn in the band along an edge: between the board's edge and the stop a gap as a plain band or an overrun
 * cross-hatched, a line at each of its ends. Lines keep their width in the picture; hatching that would run together there
 * gives way to its tone. Nothing is dashed: beside a seam, dashes are thread.
 *
 * Needs the attributes `place` (mm along the edge, and across from the board's edge) and `stop` (mm across).
 */
export function edgeBandMaterial(): ShaderMaterial {
  const uniforms = Object.fromEntries(
    Object.entries(CHALK).map(([name, colour]) => [name, { value: new Color(colour) }]),
  );
  return new ShaderMaterial({
    uniforms,
    vertexShader: VERTEX,
    fragmentShader: FRAGMENT,
    side: DoubleSide,
    transparent: true,
    depthWrite: false,
    clipping: true,
  });
}

const VERTEX = `
  attribute vec2 place;
  attribute float stop;
  varying vec2 vPlace;
  varying float vStop;
  #include <clipping_planes_pars_vertex>

  // In front of the board and the leather that it touches, mm; along the line of sight, so that nothing moves in the picture.
  const float NEARER = 0.3;

  void main() {
    vec4 mvPosition = modelViewMatrix * vec4(position, 1.0);
    #include <clipping_planes_vertex>
    mvPosition.xyz *= 1.0 - NEARER / length(mvPosition.xyz);
    gl_Position = projectionMatrix * mvPosition;
    vPlace = place;
    vStop = stop;
  }`;

const FRAGMENT = `
  uniform vec3 gapWash;
  uniform vec3 gapInk;
  uniform vec3 overrunWash;
  uniform vec3 overrunInk;
  varying vec2 vPlace;
  varying float vStop;
  #include <clipping_planes_pars_fragment>

  // Cover of a line so many pixels wide, at a distance in pixels from its middle.
  float stroke(float away, float width) {
    return clamp(0.5 + width / 2.0 - abs(away), 0.0, 1.0);
  }

  float hatching(float phase) {
    return clamp(0.5 + (0.13 - abs(fract(phase + 0.5) - 0.5)) / fwidth(phase), 0.0, 1.0);
  }

  void lay(inout vec4 drawn, vec3 colour, float cover) {
    float alpha = cover + drawn.a * (1.0 - cover);
    if (alpha > 0.0) drawn.rgb = (colour * cover + drawn.rgb * drawn.a * (1.0 - cover)) / alpha;
    drawn.a = alpha;
  }

  void main() {
    #include <clipping_planes_fragment>
    float along = vPlace.x;
    float across = vPlace.y;
    float stop = vStop;
    // mm of the surface to a pixel.
    float wide = length(vec2(dFdx(across), dFdy(across)));
    bool isGap = stop >= 0.0;
    vec3 wash = isGap ? gapWash : overrunWash;
    vec3 line = isGap ? gapInk : overrunInk;
    vec4 drawn = vec4(0.0);

    float low = min(0.0, stop);
    float far = max(0.0, stop);
    float within = clamp(0.5 + (min(across - low, far - across)) / wide, 0.0, 1.0) * step(1e-6, far - low);
    lay(drawn, wash, 0.95 * within);
    if (!isGap) {
      float hatch = max(hatching((along - across) / ${PITCH.toFixed(2)}), hatching((along + across) / ${PITCH.toFixed(2)}));
      lay(drawn, line, within * mix(0.45, 0.85 * hatch, smoothstep(4.0, 7.0, (far - low) / wide)));
    }
    lay(drawn, line, stroke((across - stop) / wide, 1.8));
    float edge = across / wide;
    lay(drawn, wash, 0.8 * stroke(edge, 3.6));
    lay(drawn, line, stroke(edge, 1.8));

    if (drawn.a < 0.004) discard;
    gl_FragColor = drawn;
    #include <colorspace_fragment>
  }`;
