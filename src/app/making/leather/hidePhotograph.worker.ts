import {
  MARKED_PAPERS,
  MOST_DEFECTS,
  OUTLINE_LIMITS,
  type PrintScale,
  placedOnSheet,
  planeScale,
  printScale,
  type Scene,
  solveScene,
  type Vec2,
} from '../../../core/index.ts';
import { type FlatPicture, flattened } from '../../../sight/flattened.ts';
import { leatherOutline } from '../../../sight/leatherOutline.ts';
import { openPhotograph } from '../../../sight/openPhotograph.ts';
import { seenMarks } from '../../../sight/seenMarks.ts';
import { serveQuestions } from '../../worker/serveQuestions.ts';
import type { SeenLeather } from './pictureScale.ts';

export interface HidePhotographQuestion {
  readonly file: File;
  /** Whether the hide was photographed from its grain side: it is drawn from its flesh side. */
  readonly isMirrored: boolean;
}

/** A photograph of a hide laid flat and to scale, by pages of the sheet that lie on it; null where there is none in it. */
export type HidePhotograph = {
  /** JPEG. */
  readonly bytes: Uint8Array<ArrayBuffer>;
  readonly width: number;
  readonly height: number;
  readonly mm: number;
  /** How far off a length over all of it may be, as a share: by the photograph, and by a print that was not measured. */
  readonly u: number;
  readonly uPrint: number;
  readonly pages: readonly string[];
  /** The leather in it, in pixels from the lower left corner; null where nothing stands out. */
  readonly seen: SeenLeather | null;
} | null;

/** Longer side of the picture as it is kept, px. */
const LONGEST = 2400;
const QUALITY = 0.85;

const UNMEASURED: PrintScale = printScale('A4', { across: null, along: null }, 0);

serveQuestions<HidePhotographQuestion, HidePhotograph>(
  async ({ file, isMirrored }) => {
    const { grey, preview, camera, focal } = await openPhotograph(file);
    const { marks } = seenMarks(grey);
    if (marks.length === 0) return null;
    const photograph = { width: grey.width, height: grey.height, camera, focal, marks, points: [] };
    const scene = solveScene([photograph], UNMEASURED);
    const view = scene.ok ? scene.views[0] : null;
    const flat = view == null ? null : flattened(preview, grey, view, LONGEST);
    if (flat === null) return null;
    const rim: Vec2[] = [0.1, 0.9].flatMap((x) => [0.1, 0.9].map((y): Vec2 => [x * grey.width, y * grey.height]));
    const scale = planeScale(photograph, UNMEASURED, rim);
    if ('ok' in scale) return null;
    const seen = seenLeather(flat, scene.ok ? scene.pages : new Map(), isMirrored);
    const canvas = new OffscreenCanvas(flat.width, flat.height);
    const context = canvas.getContext('2d')!;
    context.putImageData(new ImageData(flat.rgba, flat.width, flat.height), 0, 0);
    // What was not seen is white: JPEG makes it black.
    context.globalCompositeOperation = 'destination-over';
    context.fillStyle = 'white';
    context.fillRect(0, 0, flat.width, flat.height);
    const shown = isMirrored ? mirrored(canvas) : canvas;
    const blob = await shown.convertToBlob({ type: 'image/jpeg', quality: QUALITY });
    return {
      bytes: new Uint8Array(await blob.arrayBuffer()),
      ...{ width: flat.width, height: flat.height, mm: flat.mm, u: scale.u, uPrint: scale.uPrint },
      pages: [...new Set(marks.map(({ page }) => page))],
      seen,
    };
  },
  (answer) => (answer === null ? [] : [answer.bytes.buffer]),
);

/** Leather by its colour, the pages left out of account. */
function seenLeather(flat: FlatPicture, pages: Scene['pages'], isMirrored: boolean): SeenLeather | null {
  const { mm, corner, width, height } = flat;
  const areas = [...pages].map(([name, placement]) => {
    const { width: across, height: along } = MARKED_PAPERS[name.startsWith('A4') ? 'A4' : 'Letter'];
    return [-1, 1].flatMap((x) =>
      [-x, x].map((y): Vec2 => {
        const [p, q] = placedOnSheet(placement, [(x * across) / 2, (y * along) / 2]);
        return [(p - corner[0]) / mm, height - (q - corner[1]) / mm];
      }),
    );
  });
  const found = leatherOutline(flat, areas, { corners: OUTLINE_LIMITS.corners, defects: MOST_DEFECTS });
  if (found === null) return null;
  const upright = (polygon: readonly Vec2[]): Vec2[] =>
    polygon.map(([x, y]) => [isMirrored ? width - x : x, height - y]);
  return { outline: upright(found.outline), defects: found.defects.map(upright) };
}

function mirrored(canvas: OffscreenCanvas): OffscreenCanvas {
  const other = new OffscreenCanvas(canvas.width, canvas.height);
  const context = other.getContext('2d')!;
  context.scale(-1, 1);
  context.drawImage(canvas, -canvas.width, 0);
  return other;
}
