import { Color, DoubleSide, ShaderMaterial, Vector2 } from 'three';

interface HatchedZone {
  readonly wash: string;
  readonly ink: string;
  readonly pitch_mm: number;
  readonly isCrossed: boolean;
}

/**
 * Shades a narrow zone of a surface: a wash with hatching, between two border lines. It keeps a least width in the
 * picture; where the hatching would look like stitching it is filled instead.
 *
 * Needs the attributes `opposite` (the place across the zone) and `place` (mm along, mm across, width in mm).
 */
export function hatchedZone({ wash, ink, pitch_mm, isCrossed }: HatchedZone): ShaderMaterial {
  const uniforms = {
    wash: { value: new Color(wash) },
    ink: { value: new Color(ink) },
    pitch: { value: pitch_mm },
    crossed: { value: isCrossed ? 1 : 0 },
    picture: { value: new Vector2(1, 1) },
  };
  const material = new ShaderMaterial({
    uniforms,
    vertexShader: VERTEX,
    fragmentShader: FRAGMENT,
    side: DoubleSide,
    depthWrite: false,
    polygonOffset: true,
    polygonOffsetFactor: -3,
    polygonOffsetUnits: -12,
  });
  material.onBeforeRender = (renderer) => {
    renderer.getDrawingBufferSize(uniforms.picture.value);
    material.uniformsNeedUpdate = true;
  };
  return material;
}

const VERTEX = `
  attribute vec3 opposite;
  attribute vec3 place;
  uniform vec2 picture;
  varying vec3 vPlace;
  varying float vWidth;

  const float LEAST = 3.0;

  void main() {
    mat4 projected = projectionMatrix * modelViewMatrix;
    gl_Position = projected * vec4(position, 1.0);
    vec4 other = projected * vec4(opposite, 1.0);
    vec2 across = (gl_Position.xy / gl_Position.w - other.xy / other.w) * picture / 2.0;
    vWidth = length(across);
    if (vWidth > 1e-3)
      gl_Position.xy += across / vWidth * max(0.0, LEAST - vWidth) / picture * gl_Position.w;
    vPlace = place;
  }`;

const FRAGMENT = `
  uniform vec3 wash;
  uniform vec3 ink;
  uniform float pitch;
  uniform float crossed;
  varying vec3 vPlace;
  varying float vWidth;

  float line(float phase) {
    return 1.0 - smoothstep(0.0, fwidth(phase), abs(fract(phase + 0.5) - 0.5) - 0.11);
  }

  void main() {
    float hatching = line((vPlace.x - vPlace.y) / pitch);
    hatching = max(hatching, crossed * line((vPlace.x + vPlace.y) / pitch));
    float border = 1.0 - smoothstep(0.5, 1.5, min(vPlace.y, vPlace.z - vPlace.y) / fwidth(vPlace.y));
    float told = smoothstep(5.0, 9.0, vWidth);
    float inked = mix(0.5, max(0.8 * hatching, border), told);
    gl_FragColor = vec4(mix(wash, ink, inked), 1.0);
    #include <colorspace_fragment>
  }`;
