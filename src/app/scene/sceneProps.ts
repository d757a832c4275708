import type { Ref } from 'react';
import type { CoverDesign, PatternZone, Pose, RangePoint } from '../../core/index.ts';
import type { Insets } from './insets.ts';
import type { EdgeHandle, OnEdge } from './marks/EdgePicker.tsx';
import type { Look } from './material/coverMaterials.ts';
import type { PictureHandle } from './PictureTaker.tsx';
import type { Slice } from './slice.ts';
import type { Spot } from './spot.ts';
import type { Viewpoint } from './viewpoints.ts';

/** Why there is no picture of the scene. */
export type SceneAbsence = 'preparing' | 'noWebGl' | 'contextLost';

/** Whether the browser knows WebGL 2, without the cost of a drawing context. The driver may still refuse one. */
export const isWebGlKnown = (): boolean => 'WebGL2RenderingContext' in globalThis;

let granted: boolean | null = null;

/** Whether the driver grants a drawing context. Asked once: that takes as long as a frame. */
export function hasWebGl(): boolean {
  granted ??= grantsContext();
  return granted;
}

function grantsContext(): boolean {
  try {
    const context = document.createElement('canvas').getContext('webgl2');
    // A browser has few contexts; this one is not needed any more.
    context?.getExtension('WEBGL_lose_context')?.loseContext();
    return context !== null;
  } catch {
    return false;
  }
}

export interface CoverSceneProps {
  readonly design: CoverDesign;
  readonly pose: Pose;
  readonly point: RangePoint;
  /** `taut` shows gap and overrun as the pattern is cut, `settled` the shape of the elastic strip. */
  readonly shape?: 'taut' | 'settled';
  readonly slice: Slice | null;
  readonly units: 'mm' | 'in';
  /** `light` draws without shadows, reflections and smoothed edges, for slow machines. */
  readonly look: Look;
  /** Band across the outside's pattern to highlight. */
  readonly highlight?: PatternZone | null;
  /** Whether the areas that can be tooled are drawn, with their sizes. */
  readonly showsAreas?: boolean;
  /** Place on the cover to light, such as the one a check speaks of; comes before `highlight`. */
  readonly spot?: Spot | null;
  /** What lies over the picture at its sides: the cover and its labels keep clear of it. */
  readonly insets?: Insets;
  readonly viewpoint: Viewpoint;
  readonly onViewpointChange: (viewpoint: Viewpoint) => void;
  /** Called once when the first frames take too long. */
  readonly onSlowFrames: () => void;
  /** Called with the reason while there is no finished picture to show, and with null once there is. */
  readonly onAbsence: (reason: SceneAbsence | null) => void;
  readonly colourScheme: 'light' | 'dark';
  readonly formatLength: (mm: number) => string;
  /** What the picture shows, in words. */
  readonly describe: string;
  /** False leaves out hatching and dimensions. */
  readonly marked?: boolean;
  /** Turns slowly about the upright axis while true. */
  readonly turning?: boolean;
  readonly pictureRef?: Ref<PictureHandle>;
  /** Once it is drawn, draws only what is asked of `pictureRef`. */
  readonly filmed?: boolean;
  /**
   * Called with the edge of a board that the pointer is near: while it moves with no button down, with null once it has left,
   * and when it is pressed, with null when nothing is near. Not called for a drag. Pixels are those of the picture.
   */
  readonly onEdge?: OnEdge;
  readonly edgesRef?: Ref<EdgeHandle>;
  /** Called with each frame: what is placed over the picture by `edgesRef` may have moved. */
  readonly onLook?: () => void;
}
