import { tracedOutlines } from '../artwork/picture/tracedOutlines.ts';
import { inverse, isInside, isSimplePolygon, polygonArea, thinnedLine, type Vec2 } from '../core/index.ts';
import type { ColourPicture } from './colourPicture.ts';
import { LIGHT } from './light.ts';
import { eroded, filled, grown, largest, opened, parts } from './mask.ts';

/** What a picture of a hide on a floor shows of it: polygons in pixels, y down. */
export interface LeatherOutline {
  readonly outline: readonly Vec2[];
  /** Spots of another colour within it, the largest first. */
  readonly defects: readonly (readonly Vec2[])[];
}

export interface OutlineLimits {
  readonly corners: number;
  readonly defects: number;
}

/** Longer side of the picture in which the hide is told from the floor, cells. */
const CELLS = 480;
/** Width of the rim that counts as floor, as a share of the longer side. */
const RIM = 0.03;
/** Colours nearer than this are one: units of CIELAB, of which about 2 are just seen. */
const SAME = 3;
/** Spreads from the floor's colour at which hide may part from it at the nearest: floors alone part at less than 1. */
const APART = 1.3;
/** A hide covers at least this share of the picture, and a defect at least so many cells and at most this share of the hide. */
const SIZES = { hide: 0.03, defect: 6, largest: 0.1 } as const;
/** How far a defect's colour is from the hide's, in spreads of the hide's colour, and in units of CIELAB at least. */
const DEFECT = { spreads: 6, least: 12 } as const;

/**
 * Proposes the outline of a hide, and spots in it, by colour: the rim of the picture is floor, each place has a distance from the
 * floor's colour in its own spreads (CIELAB, CIE 15), Otsu's threshold (1979) parts them, and the largest connected part with its holes
 * filled is the hide.
 *
 * @param skipped areas whose colour says nothing, such as the pages of a sheet that lie on the hide
 * @returns null where nothing large stands out from the floor
 */
export function leatherOutline(
  picture: ColourPicture,
  skipped: readonly (readonly Vec2[])[],
  limits: OutlineLimits,
): LeatherOutline | null {
  const cells = coloured(picture);
  const { width, height, side } = cells;
  const areas = skipped.map((area) => covered(cells, area));
  const isSkipped = Uint8Array.from(cells.isSeen, (_, i) => (areas.some((area) => area[i]) ? 1 : 0));
  // The rim of what is seen: a photograph laid flat has slanted sides.
  const rim = Math.max(2, Math.round(RIM * Math.max(width, height)));
  const within = eroded(cells.isSeen, width, height, rim, 0);
  const floor = colourOf(cells, (i) => !within[i] && !isSkipped[i]);
  if (floor === null) return null;
  const away = fromColour(cells, floor);
  const threshold = otsu(away, (i) => cells.isSeen[i] === 1 && !isSkipped[i]);
  if (!(threshold > APART)) return null;
  const isOther = Uint8Array.from(away, (value, i) => (cells.isSeen[i] && !isSkipped[i] && value > threshold ? 1 : 0));
  // What lies on the hide is hide; what lies on the floor is none.
  const onHide = areas.filter((area) => {
    const [near, far] = [grown(area, width, height, 1), grown(area, width, height, 4)];
    let [hide, all] = [0, 0];
    far.forEach((value, i) => {
      if (!(value && cells.isSeen[i]) || near[i]) return;
      all++;
      hide += isOther[i]!;
    });
    return hide > all / 2;
  });
  for (const area of onHide)
    area.forEach((value, i) => {
      if (value) isOther[i] = 1;
    });
  const hide = filled(largest(opened(isOther, width, height), width, height), width, height);
  const area = hide.reduce((sum, each) => sum + each, 0);
  if (area < SIZES.hide * width * height) return null;

  const inPicture = (polygon: readonly Vec2[]): Vec2[] => polygon.map(([x, y]) => [x * side, y * side]);
  // Between cells the colour says where the edge runs.
  const shade = Float64Array.from(away, (value, i) =>
    isSkipped[i] ? 2 * isOther[i]! : Math.min(2, value / threshold),
  );
  const outline = outlineOf(hide, shade, width, height, limits.corners);
  if (outline === null) return null;

  const inner = eroded(hide, width, height, 3);
  const own = colourOf(cells, (i) => inner[i] === 1 && !isSkipped[i]);
  const off = own === null ? null : fromColour(cells, own);
  const near = grown(isSkipped, width, height, 2);
  const isSpot = Uint8Array.from(hide, (_, i) =>
    off !== null && inner[i] && !near[i] && off[i]! > DEFECT.spreads && off[i]! * own!.spread > DEFECT.least ? 1 : 0,
  );
  return {
    outline: inPicture(outline),
    defects: parts(isSpot, width, height)
      .filter((part) => part.length >= SIZES.defect && part.length < SIZES.largest * area)
      .sort((a, b) => b.length - a.length)
      .slice(0, limits.defects)
      .flatMap((part) => {
        const mask = new Uint8Array(hide.length);
        for (const i of part) mask[i] = 1;
        const around = outlineOf(grown(mask, width, height, 1), null, width, height, 24);
        return around === null ? [] : [inPicture(around)];
      }),
  };
}

interface Cells {
  readonly width: number;
  readonly height: number;
  /** Pixels of the picture along a cell. */
  readonly side: number;
  /** Mean colour of each cell in CIELAB. */
  readonly colours: Float32Array;
  readonly isSeen: Uint8Array;
}

function coloured({ width, height, rgba }: ColourPicture): Cells {
  const side = Math.max(1, Math.ceil(Math.max(width, height) / CELLS));
  const [across, down] = [Math.max(1, Math.floor(width / side)), Math.max(1, Math.floor(height / side))];
  const colours = new Float32Array(3 * across * down);
  const isSeen = new Uint8Array(across * down);
  for (let i = 0; i < across * down; i++) {
    const [left, top] = [(i % across) * side, Math.floor(i / across) * side];
    let [r, g, b, count] = [0, 0, 0, 0];
    for (let y = top; y < top + side; y++)
      for (let x = left; x < left + side; x++) {
        const at = 4 * (y * width + x);
        if (rgba[at + 3] === 0) continue;
        r += LIGHT[rgba[at]!]!;
        g += LIGHT[rgba[at + 1]!]!;
        b += LIGHT[rgba[at + 2]!]!;
        count++;
      }
    if (2 * count < side * side) continue;
    isSeen[i] = 1;
    colours.set(lab(r / count, g / count, b / count), 3 * i);
  }
  return { width: across, height: down, side, colours, isSeen };
}

/** CIELAB of linear sRGB under D65 (CIE 15:2004; matrix of IEC 61966-2-1). */
function lab(r: number, g: number, b: number): [number, number, number] {
  const root = (t: number): number => (t > 216 / 24389 ? Math.cbrt(t) : (841 / 108) * t + 4 / 29);
  const x = root((0.4124 * r + 0.3576 * g + 0.1805 * b) / 0.95047);
  const y = root(0.2126 * r + 0.7152 * g + 0.0722 * b);
  const z = root((0.0193 * r + 0.1192 * g + 0.9505 * b) / 1.08883);
  return [116 * y - 16, 500 * (x - y), 200 * (y - z)];
}

/** A colour that changes evenly over the picture, as light falls off. */
interface Colour {
  /** For lightness and the two hues: value at the upper left, and its change along x and y, CIELAB a cell. */
  readonly terms: readonly (readonly [number, number, number])[];
  /** How far its places lie from it, CIELAB. */
  readonly spread: number;
}

/** Rounds in which places far from the colour found so far are left out. */
const ROUNDS = 4;

/** The colour of the seen cells that count, by least squares over most of them, and their usual distance from it; null where hardly any do. */
function colourOf(cells: Cells, counts: (i: number) => boolean): Colour | null {
  const { colours, isSeen, width } = cells;
  const own: number[] = [];
  for (let i = 0; i < isSeen.length; i++) if (isSeen[i] && counts(i)) own.push(i);
  if (own.length < 20) return null;
  let kept = own;
  let colour: Colour | null = null;
  for (let round = 0; round < ROUNDS; round++) {
    const normal = [0, 1, 2].map(() => [0, 0, 0]);
    const right = [0, 1, 2].map(() => [0, 0, 0]);
    for (const i of kept) {
      const row = [1, i % width, Math.floor(i / width)];
      row.forEach((p, a) => {
        row.forEach((q, b) => {
          normal[a]![b]! += p * q;
        });
        for (let k = 0; k < 3; k++) right[k]![a]! += p * colours[3 * i + k]!;
      });
    }
    // A little stiffness, for cells that stand in a row.
    normal.forEach((row, a) => {
      row[a]! += 1e-6 * row[a]! + 1e-9;
    });
    const back = inverse(normal);
    const terms = right.map(
      (of) => back.map((row) => row.reduce((sum, value, k) => sum + value * of[k]!, 0)) as [number, number, number],
    );
    const flat: Colour = { terms, spread: 1 };
    const distances = own.map((i) => distanceTo(cells, flat, i));
    const spread = Math.max(SAME, [...distances].sort((a, b) => a - b)[distances.length >> 1]!);
    colour = { terms, spread };
    kept = own.filter((_, k) => distances[k]! <= 2 * spread);
  }
  return colour;
}

/** Distance of a cell from a colour, in its spreads; shadows change lightness, so that counts half. */
function distanceTo({ colours, width }: Cells, { terms, spread }: Colour, i: number): number {
  const [x, y] = [i % width, Math.floor(i / width)];
  const off = (k: 0 | 1 | 2): number => colours[3 * i + k]! - terms[k]![0] - terms[k]![1] * x - terms[k]![2] * y;
  return Math.hypot(off(0) / 2, off(1), off(2)) / spread;
}

const fromColour = (cells: Cells, colour: Colour): Float64Array =>
  Float64Array.from(cells.isSeen, (seen, i) => (seen ? distanceTo(cells, colour, i) : 0));

/** Cells whose middle lies in an area. */
function covered({ width, height, side }: Cells, area: readonly Vec2[]): Uint8Array {
  const mask = new Uint8Array(width * height);
  const range = (k: 0 | 1, count: number): [number, number] => {
    const places = area.map((corner) => corner[k] / side);
    return [Math.max(0, Math.floor(Math.min(...places))), Math.min(count - 1, Math.ceil(Math.max(...places)))];
  };
  const [left, right] = range(0, width);
  const [top, foot] = range(1, height);
  for (let y = top; y <= foot; y++)
    for (let x = left; x <= right; x++)
      if (isInside([(x + 0.5) * side, (y + 0.5) * side], area)) mask[y * width + x] = 1;
  return mask;
}

const BINS = 256;

/** The value that parts values into two kinds with the least spread within each (Otsu 1979), those over the 99th in 100 taken as that. */
function otsu(values: Float64Array, counts: (i: number) => boolean): number {
  const own = Array.from(values).filter((_, i) => counts(i));
  const most = [...own].sort((a, b) => a - b)[Math.floor(0.99 * own.length)] ?? 0;
  if (!(most > 0)) return 0;
  const bins = new Float64Array(BINS);
  for (const value of own) bins[Math.min(BINS - 1, Math.floor((value / most) * BINS))]!++;
  const total = bins.reduce((sum, count, i) => sum + count * i, 0);
  let [below, sum, best, at] = [0, 0, 0, 0];
  bins.forEach((count, i) => {
    below += count;
    sum += count * i;
    const above = own.length - below;
    if (below === 0 || above === 0) return;
    const apart = below * above * (sum / below - (total - sum) / above) ** 2;
    if (apart > best) [best, at] = [apart, i + 1];
  });
  return (at / BINS) * most;
}

/**
 * The outline of a mask in cells, y down, with few enough corners; null for one that has none or crosses itself.
 * @param shade how much each cell is hide: 1 at the edge; null for the mask's own edge
 */
function outlineOf(
  mask: Uint8Array,
  shade: Float64Array | null,
  width: number,
  height: number,
  corners: number,
): Vec2[] | null {
  const inner = eroded(mask, width, height, 1);
  const outer = grown(mask, width, height, 1);
  // Darker inside, as the tracer wants it: the edge is where the grey is 128.
  const values = Uint8Array.from(mask, (value, i) => {
    if (shade === null) return value ? 0 : 255;
    if (inner[i]) return 0;
    if (!outer[i]) return 255;
    const clamped = Math.max(0, Math.min(2, shade[i]!));
    return value ? Math.min(127, 255 - Math.round(127.5 * clamped)) : Math.max(128, 255 - Math.round(127.5 * clamped));
  });
  const loops = tracedOutlines({ width, height, values }, 128).map((loop) => loop.slice(0, -1));
  const outline = loops.sort((a, b) => Math.abs(polygonArea(b)) - Math.abs(polygonArea(a)))[0];
  if (outline === undefined || outline.length < 3) return null;
  for (let tolerance = 0.4; tolerance < 40; tolerance *= 1.4) {
    // Thinned in two halves, so that the ends of neither are where it is closed.
    const half = outline.length >> 1;
    const thin = [
      ...thinnedLine(outline.slice(0, half + 1), tolerance).slice(0, -1),
      ...thinnedLine([...outline.slice(half), outline[0]!], tolerance).slice(0, -1),
    ];
    if (thin.length >= 3 && thin.length <= corners && isSimplePolygon(thin.map(([x, y]) => [x, y]))) return thin;
  }
  return null;
}
