import {
  BackSide,
  BoxGeometry,
  Color,
  Mesh,
  MeshBasicMaterial,
  PlaneGeometry,
  PMREMGenerator,
  Scene,
  type Texture,
  type WebGLRenderer,
} from 'three';

/** One luminous panel of the workshop: where it hangs, how large it is (m), how bright (1 is a white wall). */
interface Panel {
  readonly at: readonly [number, number, number];
  readonly size: readonly [number, number];
  readonly colour: string;
  readonly brightness: number;
}

/**
 * Two tall windows on the left and one behind, a roof light, the wall across that they light, and daylight reflected by the bench. The one behind is
 * where a cover on the bench, seen from the front right, reflects; it ends within the cover, so that the gloss has an end too.
 */
const PANELS: readonly Panel[] = [
  { at: [-5, 2.4, 2.2], size: [2, 3.4], colour: '#f3f7ff', brightness: 10 },
  { at: [-5, 2.4, -0.9], size: [2, 3.4], colour: '#f3f7ff', brightness: 10 },
  { at: [-3.1, 4.2, -5.2], size: [2.6, 3.6], colour: '#eef4ff', brightness: 8 },
  { at: [1, 5.5, -2.5], size: [4, 1.4], colour: '#eef4ff', brightness: 6 },
  { at: [5, 2.4, 1], size: [5, 3.6], colour: '#fff1dc', brightness: 2.2 },
  { at: [0, -3.5, 0], size: [7, 7], colour: '#d9c3a1', brightness: 0.55 },
];

/** Environment map of a workshop in daylight, prefiltered for the physical materials. */
export function daylightEnvironment(renderer: WebGLRenderer): { texture: Texture; dispose: () => void } {
  const room = new Scene();
  const walls = new Mesh(
    new BoxGeometry(12, 8, 12),
    new MeshBasicMaterial({ color: new Color('#8f8a82').multiplyScalar(0.8), side: BackSide }),
  );
  room.add(walls);
  const panels = PANELS.map(({ at, size, colour, brightness }) => {
    const panel = new Mesh(
      new PlaneGeometry(...size),
      new MeshBasicMaterial({ color: new Color(colour).multiplyScalar(brightness) }),
    );
    panel.position.set(...at);
    panel.lookAt(0, 0, 0);
    return panel;
  });
  room.add(...panels);
  const generator = new PMREMGenerator(renderer);
  const target = generator.fromScene(room, 0.03);
  generator.dispose();
  for (const mesh of [walls, ...panels]) {
    mesh.geometry.dispose();
    mesh.material.dispose();
  }
  return { texture: target.texture, dispose: () => target.dispose() };
}
