import { Color, DoubleSide, ShaderMaterial } from 'three';
import { CHALK } from './palette.ts';

/** Pitch of the hatching of gap and overrun, and of the dots of the seat, mm. */
const PITCH = { gap: 1.6, overrun: 1.3, seat: 1.2 } as const;

/**
 * What is drawn in the band along an edge: the board's edge as a line, the stop as a dotted one, the seam line as a thin
 * one; between edge and stop a gap hatched or an overrun cross-hatched; dots over the seat. Lines keep their width in the
 * picture; hatching that would run together there gives way to its tone.
 *
 * Needs the attributes `place` (mm along the edge, and across from the board's edge) and `stops` (the stop and the seam
 * line, mm across; a seam line of 0 is not drawn).
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
  attribute vec2 stops;
  varying vec2 vPlace;
  varying vec2 vStops;
  #include <clipping_planes_pars_vertex>

  // In front of the board and the leather that it touches, mm; along the line of sight, so that nothing moves in the picture.
  const float NEARER = 0.3;

  void main() {
    vec4 mvPosition = modelViewMatrix * vec4(position, 1.0);
    #include <clipping_planes_vertex>
    mvPosition.xyz *= 1.0 - NEARER / length(mvPosition.xyz);
    gl_Position = projectionMatrix * mvPosition;
    vPlace = place;
    vStops = stops;
  }`;

const FRAGMENT = `
  uniform vec3 ink;
  uniform vec3 gapWash;
  uniform vec3 gapInk;
  uniform vec3 overrunWash;
  uniform vec3 overrunInk;
  varying vec2 vPlace;
  varying vec2 vStops;
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
    float stop = vStops.x;
    // mm of the surface to a pixel, each way.
    float high = length(vec2(dFdx(along), dFdy(along)));
    float wide = length(vec2(dFdx(across), dFdy(across)));
    bool isGap = stop >= 0.0;
    vec3 wash = isGap ? gapWash : overrunWash;
    vec3 line = isGap ? gapInk : overrunInk;
    vec4 drawn = vec4(0.0);

    float low = min(0.0, stop);
    float far = max(0.0, stop);
    float within = clamp(0.5 + (min(across - low, far - across)) / wide, 0.0, 1.0) * step(1e-6, far - low);
    float pitch = isGap ? ${PITCH.gap.toFixed(2)} : ${PITCH.overrun.toFixed(2)};
    float hatch = hatching((along - across) / pitch);
    if (!isGap) hatch = max(hatch, hatching((along + across) / pitch));
    float told = smoothstep(4.0, 7.0, (far - low) / wide);
    lay(drawn, wash, 0.92 * within);
    lay(drawn, line, within * mix(0.45, 0.85 * hatch, told));

    // The seat: dots in two staggered rows.
    vec2 dot = vec2(along, across - far) / ${PITCH.seat.toFixed(2)};
    vec2 cell = abs(fract(vec2(dot.x + dot.y, dot.x - dot.y)) - 0.5);
    float size = max(high, wide) / ${PITCH.seat.toFixed(2)};
    float dots = clamp(0.5 + (0.2 - length(cell)) / size, 0.0, 1.0);
    float seat = vStops.y > 0.0 ? step(far, across) * step(across, vStops.y) : 0.0;
    lay(drawn, ink, seat * mix(0.1, 0.5 * dots, smoothstep(0.5, 0.2, size)));

    float seam = vStops.y > 0.0 ? stroke((across - vStops.y) / wide, 1.1) : 0.0;
    lay(drawn, ink, 0.75 * seam);
    // Dots of the stop: at least 4 px apart, in steps of two so that they stay where they are as one comes nearer.
    float apart = exp2(ceil(log2(max(0.5, 4.5 * high))));
    float from = abs(fract(along / apart) - 0.5) * apart;
    float round = length(vec2(from / high, (across - stop) / wide));
    lay(drawn, line, clamp(1.6 - round, 0.0, 1.0));
    float edge = across / wide;
    lay(drawn, wash, 0.8 * stroke(edge, 3.6));
    lay(drawn, line, stroke(edge, 1.8));

    if (drawn.a < 0.004) discard;
    gl_FragColor = drawn;
    #include <colorspace_fragment>
  }`;
