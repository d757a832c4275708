import { pixelOf, rotationBy, seenFrom } from '../../src/core/index.ts';
import { randomDraws } from '../../src/core/math/randomDraws.ts';
import type { Vec2 } from '../../src/core/math/vec2.ts';
import { cross3, dot3, unit3, type Vec3 } from '../../src/core/math/vec3.ts';
import { bookPoints, bookSolids } from './bookSolids.ts';
import { type NoiseTile, noiseTile } from './noiseTile.ts';
import { type PrintedPage, printedPage } from './printedPage.ts';
import { lampDirections, type ShadowMap, shadowMap, skyDirections } from './shadowMap.ts';
import type { LaidBook, LaidPage, TestCamera, TestScene } from './testScene.ts';

/** A photograph as the camera has it before it writes its file. */
export interface RenderedScene {
  readonly width: number;
  readonly height: number;
  /** 4 bytes a pixel, as in a canvas. */
  readonly rgba: Uint8Array;
}

/** Reflectance of the paper and of the ink on it. */
const PAPER: Vec3 = [0.86, 0.86, 0.83];
const INK = 0.05;
/** Neighbours that differ by more than this share are an edge, where a pixel takes 16 rays instead of one. */
const EDGE = 0.06;
const SUB = 4;

/**
 * Takes a photograph of a scene: one ray a pixel and sixteen where neighbours differ, then the lens's falling off and blur, noise
 * of the light (each pixel by itself), and the curve of sRGB (IEC 61966-2-1). The same seed gives the same picture.
 */
export function renderedScene(scene: TestScene, camera: TestCamera): RenderedScene {
  const { width, height } = camera;
  const light = new Float32Array(3 * width * height);
  const colour = new Float32Array(3);
  const ray = rayOf(scene, camera);
  for (let y = 0, i = 0; y < height; y++)
    for (let x = 0; x < width; x++, i += 3) {
      ray(x + 0.5, y + 0.5, colour);
      light.set(colour, i);
    }
  smoothEdges(light, width, height, ray);
  for (let channel = 0; channel < 3; channel++) blur(light, width, height, channel, camera.blur);
  return { width, height, rgba: developed(light, scene.seed, camera) };
}

type Ray = (x: number, y: number, colour: Float32Array) => void;

/** What the camera sees in the direction of a place of its picture. */
function rayOf(scene: TestScene, camera: TestCamera): Ray {
  const { lens, pose } = camera;
  const m = rotationBy(pose.turn);
  // Axes of the camera in the axes of the sheet: to the right, down, away.
  const [right, down, away] = m.map(([x, y, z]): Vec3 => [x, -y, -z]) as [Vec3, Vec3, Vec3];
  const eye = [0, 1, 2].map(
    (k) => -(right[k]! * pose.shift[0] + down[k]! * pose.shift[1] + away[k]! * pose.shift[2]),
  ) as unknown as Vec3;
  const straighten = straightener(camera);
  const ground = groundOf(scene);
  const book = scene.book === null ? null : bookOf(scene, scene.book, eye, camera);
  return (x, y, colour) => {
    const [p, q] = [(x - lens.centre[0]) / lens.focal, (y - lens.centre[1]) / lens.focal];
    const stretch = straighten(p * p + q * q);
    const [u, v] = [p * stretch, q * stretch];
    const dx = u * right[0] + v * down[0] + away[0];
    const dy = u * right[1] + v * down[1] + away[1];
    const dz = u * right[2] + v * down[2] + away[2];
    if (book?.(x, y, dx, dy, dz, colour)) return;
    if (dz > -1e-3) {
      colour.fill(0.1);
      return;
    }
    const far = -eye[2] / dz;
    ground(eye[0] + far * dx, eye[1] + far * dy, dx / dz, dy / dz, colour);
  };
}

/** Factor that takes a distorted place over the focal length back to its direction, by the square of its radius: a table of the lens's inverse. */
function straightener({ lens: { focal, centre, k1, k2 }, width, height }: TestCamera): (square: number) => number {
  const [x, y] = [Math.max(centre[0], width - centre[0]), Math.max(centre[1], height - centre[1])];
  const most = ((x + 2) ** 2 + (y + 2) ** 2) / (focal * focal);
  const steps = 4096;
  const table = Float64Array.from({ length: steps + 2 }, (_, i) => {
    const distorted = Math.sqrt((most * i) / steps);
    if (i === 0) return 1;
    let r = distorted;
    for (let k = 0; k < 30; k++) {
      const r2 = r * r;
      r -= (r * (1 + r2 * (k1 + r2 * k2)) - distorted) / (1 + r2 * (3 * k1 + 5 * k2 * r2));
    }
    return r / distorted;
  });
  return (square) => {
    const at = Math.min(steps, (square / most) * steps);
    const i = Math.floor(at);
    return table[i]! + (at - i) * (table[i + 1]! - table[i]!);
  };
}

type Ground = (x: number, y: number, dx: number, dy: number, colour: Float32Array) => void;

/** Light that a place of the ground sends back; dx and dy say how far a ray goes on for each millimetre of height. */
function groundOf(scene: TestScene): Ground {
  const { pages, print, scraps, light, ground, seed } = scene;
  const noise = noiseTile(seed);
  const sheets = pages.map(({ paper, page, at, angle, curl }) => {
    const printed = printedPage(paper, page);
    return {
      printed,
      at,
      curl,
      cosine: Math.cos(angle),
      sine: Math.sin(angle),
      halfWidth: (printed.width * print.across) / 2,
      halfHeight: (printed.height * print.along) / 2,
    };
  });
  const pieces = scraps.map((scrap) => ({ ...scrap, cosine: Math.cos(scrap.angle), sine: Math.sin(scrap.angle) }));
  const { direct, around } = shadowsOf(scene);
  const sun = unit3(light.sun);
  const level = Math.hypot(sun[0], sun[1]) || 1;
  const surface = SURFACES[ground];
  return (x, y, dx, dy, colour) => {
    let ink = -1;
    for (const { printed, at, curl, cosine, sine, halfWidth, halfHeight } of sheets) {
      // Paper that curls up is met before the ground.
      let [a, b] = [x - at[0], y - at[1]];
      let [s, t] = [cosine * a + sine * b, cosine * b - sine * a];
      const [up, along] = [Math.abs(s / halfWidth), Math.abs(t / halfHeight)];
      if (up > 1.05 || along > 1.05) continue;
      const lift = curl[0] * up * up * up + curl[1] * along * along * along;
      [a, b] = [a + lift * dx, b + lift * dy];
      [s, t] = [cosine * a + sine * b, cosine * b - sine * a];
      if (Math.abs(s) >= halfWidth || Math.abs(t) >= halfHeight) continue;
      ink = inkOf(printed, s / print.across, t / print.along);
      break;
    }
    if (ground === 'screen') {
      const grid = (x * 4) % 1 > 0.25 && (y * 4) % 1 > 0.25 ? 1.25 : 0.75;
      const shine = ink < 0 ? 0.01 : 0.02 + 0.85 * (1 - ink) * grid;
      colour[0] = shine * 0.9;
      colour[1] = shine;
      colour[2] = shine * 1.1;
      return;
    }
    if (ink >= 0) for (let k = 0; k < 3; k++) colour[k] = PAPER[k]! + ink * (INK - PAPER[k]!);
    else surface(noise, x, y, scene.groundColour, colour);
    for (const { at, cosine, sine, width, height, colour: own } of pieces) {
      const [a, b] = [x - at[0], y - at[1]];
      if (Math.abs(cosine * a + sine * b) < width / 2 && Math.abs(cosine * b - sine * a) < height / 2) colour.set(own);
    }
    const fall = 1 - (light.falloff * (-x * sun[0] - y * sun[1])) / level / 1000;
    const shine = (light.ambient * around.at(x, y) + (1 - light.ambient) * direct.at(x, y)) * fall;
    for (let k = 0; k < 3; k++) colour[k]! *= shine;
  };
}

const inkOf = ({ inkAt }: PrintedPage, x: number, y: number): number => inkAt(x, y);

type Surface = (noise: NoiseTile, x: number, y: number, base: Vec3, colour: Float32Array) => void;

const SURFACES: Record<TestScene['ground'], Surface> = {
  wood: (noise, x, y, base, colour) => {
    const plank = Math.floor(y / 120);
    const [a, b] = [x + 371 * plank, y + 53 * plank];
    // Rings cut lengthwise: grain along the plank, and fine pores.
    const ring = Math.sin(b / 3.5 + 5 * noise.at(a / 14, b / 5));
    const pore = noise.at(a / 4, b * 2.2);
    const seam = Math.abs(y - 120 * Math.round(y / 120)) < 0.6 ? 0.35 : 1;
    const tone = (1 + 0.13 * ring + 0.12 * pore + 0.1 * noise.at(plank * 31, 7)) * seam;
    for (let k = 0; k < 3; k++) colour[k] = base[k]! * tone;
  },
  cloth: (noise, x, y, base, colour) => {
    const [a, b] = [x + 0.7 * noise.at(x / 20, y / 20), y + 0.7 * noise.at(y / 20, x / 20 + 99)];
    const weave = Math.sin((a * 2 * Math.PI) / 1.3) * Math.sin((b * 2 * Math.PI) / 1.3);
    const tone = 1 + 0.14 * weave + 0.1 * noise.at(x * 1.1, y * 1.1) + 0.06 * noise.at(x / 9, y / 9);
    for (let k = 0; k < 3; k++) colour[k] = base[k]! * tone;
  },
  table: (noise, x, y, base, colour) => {
    const tone = 1 + 0.03 * noise.at(x / 3, y / 3);
    for (let k = 0; k < 3; k++) colour[k] = base[k]! * tone;
  },
  screen: () => undefined,
};

/** Axes of a book on the ground and its corner, in the axes of the sheet. */
function frameOf({ book, pose, at, angle }: LaidBook): { axes: readonly [Vec3, Vec3, Vec3]; corner: Vec3 } {
  const across: Vec3 = [Math.cos(angle), Math.sin(angle), 0];
  const up: Vec3 = [0, 0, 1];
  const [head, front] = pose === 'lying' ? [cross3(up, across), up] : [up, cross3(across, up)];
  const deep = pose === 'lying' ? book.height : book.thicknessAtSpine;
  const other = pose === 'lying' ? head : front;
  const corner = [0, 1].map((k) => at[k]! - (book.width * across[k]!) / 2 - (deep * other[k]!) / 2) as [number, number];
  return { axes: [across, head, front], corner: [...corner, 0] };
}

/** The named places of a book where it lies, in the axes of the sheet. */
export function laidPoints(laid: LaidBook): Record<keyof ReturnType<typeof bookPoints>, Vec3> {
  const { axes, corner } = frameOf(laid);
  const points = bookPoints(laid.book);
  const laidPoint = ([x, y, z]: Vec3): Vec3 =>
    [0, 1, 2].map((k) => corner[k]! + x * axes[0][k]! + y * axes[1][k]! + z * axes[2][k]!) as unknown as Vec3;
  return Object.fromEntries(
    Object.entries(points).map(([name, point]) => [name, laidPoint(point)]),
  ) as unknown as Record<keyof ReturnType<typeof bookPoints>, Vec3>;
}

/** Places whose hull is the book's. */
function hullPoints(laid: LaidBook): Vec3[] {
  const { axes, corner } = frameOf(laid);
  const { apex, frontBoardInside: _, backBoardInside: __, ...boards } = laidPoints(laid);
  const { height, rise, thicknessAtSpine } = laid.book;
  const back = [0.2, 0.5, 0.8].flatMap((part) =>
    [0, height].map((y): Vec3 => {
      const [x, z] = [-4 * rise * part * (1 - part), part * thicknessAtSpine];
      return [0, 1, 2].map((k) => corner[k]! + x * axes[0][k]! + y * axes[1][k]! + z * axes[2][k]!) as unknown as Vec3;
    }),
  );
  return [...Object.values(boards), apex, ...back];
}

function shadowsOf({ book, light, seed }: TestScene): { direct: ShadowMap; around: ShadowMap } {
  const points = book === null ? null : hullPoints(book);
  const none: ShadowMap = { at: () => 1 };
  if (points === null) return { direct: none, around: none };
  return {
    direct: shadowMap(points, lampDirections(light.sun, light.softness, 40)),
    around: shadowMap(points, skyDirections(64, seed)),
  };
}

type BookRay = (x: number, y: number, dx: number, dy: number, dz: number, colour: Float32Array) => boolean;

/** The book by its convex solids: a ray enters one where it has passed the last of the planes that it meets from outside. */
function bookOf(scene: TestScene, laid: LaidBook, eye: Vec3, camera: TestCamera): BookRay {
  const { book } = laid;
  const { light } = scene;
  const { axes, corner } = frameOf(laid);
  const solids = bookSolids(book).map(({ part, planes }) => ({
    isCover: part === 'cover',
    count: planes.length,
    normals: Float64Array.from(
      planes.flatMap(({ normal }) =>
        [0, 1, 2].map((k) => axes.reduce((sum, axis, i) => sum + normal[i]! * axis[k]!, 0)),
      ),
    ),
    // How far the eye is inside of each plane.
    inside: Float64Array.from(planes, ({ normal, reach }) => {
      const own = axes.map((axis) => dot3(axis, [eye[0] - corner[0], eye[1] - corner[1], eye[2]])) as unknown as Vec3;
      return reach - dot3(normal, own);
    }),
  }));
  const rotation = rotationBy(camera.pose.turn);
  const seen = hullPoints(laid).map((point) => pixelOf(camera.lens, seenFrom(rotation, camera.pose.shift, point)));
  const room = 5 + 0.01 * camera.width;
  const [left, right, top, bottom] = [
    Math.min(...seen.map(([x]) => x)) - room,
    Math.max(...seen.map(([x]) => x)) + room,
    Math.min(...seen.map(([, y]) => y)) - room,
    Math.max(...seen.map(([, y]) => y)) + room,
  ];
  const sun = unit3(light.sun);
  const noise = noiseTile(scene.seed + 1);
  const level = Math.hypot(sun[0], sun[1]) || 1;
  return (x, y, dx, dy, dz, colour) => {
    if (x < left || x > right || y < top || y > bottom) return false;
    let nearest = Number.POSITIVE_INFINITY;
    let solid = solids[0]!;
    let plane = 0;
    for (const each of solids) {
      const { normals, inside, count } = each;
      let enter = 0;
      let leave = Number.POSITIVE_INFINITY;
      let entered = -1;
      for (let i = 0; i < count; i++) {
        const slope = normals[3 * i]! * dx + normals[3 * i + 1]! * dy + normals[3 * i + 2]! * dz;
        const far = inside[i]! / slope;
        if (slope < 0) {
          if (far > enter) {
            enter = far;
            entered = i;
          }
        } else if (far < leave) leave = far;
        if (enter >= leave) break;
      }
      if (entered < 0 || enter >= leave || enter >= nearest) continue;
      nearest = enter;
      solid = each;
      plane = entered;
    }
    if (nearest === Number.POSITIVE_INFINITY) return false;
    const [px, py, pz] = [eye[0] + nearest * dx, eye[1] + nearest * dy, eye[2] + nearest * dz];
    const [nx, ny, nz] = [solid.normals[3 * plane]!, solid.normals[3 * plane + 1]!, solid.normals[3 * plane + 2]!];
    const [qx, qy] = [px - corner[0], py - corner[1]];
    const a = qx * axes[0][0] + qy * axes[0][1] + pz * axes[0][2];
    const b = qx * axes[1][0] + qy * axes[1][1] + pz * axes[1][2];
    const c = qx * axes[2][0] + qy * axes[2][1] + pz * axes[2][2];
    let shade =
      light.ambient * (0.55 + 0.45 * nz) +
      ((1 - light.ambient) * Math.max(0, nx * sun[0] + ny * sun[1] + nz * sun[2])) / sun[2];
    // Less light from below and from between the boards.
    if (nz < 0.5) shade *= 1 - 0.4 * Math.exp(-pz / 8);
    if (!solid.isCover) shade *= 0.7;
    shade *= 1 - (light.falloff * (-px * sun[0] - py * sun[1])) / level / 1000;
    const isFront = nx * axes[2][0] + ny * axes[2][1] + nz * axes[2][2] > 0.9;
    if (solid.isCover) coverColour(book, noise, a, b, c, isFront, colour);
    else {
      const leaf = 0.9 + 0.1 * noise.at(c * 6, (a + b) / 40);
      for (let k = 0; k < 3; k++) colour[k] = book.cover.pages[k]! * leaf;
    }
    for (let k = 0; k < 3; k++) colour[k]! *= shade;
    return true;
  };
}

/** Cloth with its weave, the groove of the joint, and what is stamped on it. */
function coverColour(
  { cover, width, height }: NonNullable<TestScene['book']>['book'],
  noise: NoiseTile,
  a: number,
  b: number,
  c: number,
  isFront: boolean,
  colour: Float32Array,
): void {
  const weave = Math.sin(a * 9) * Math.sin(b * 9 + c * 9);
  let tone = 1 + cover.weave * (0.5 * weave + noise.at(a * 1.7, (b + c) * 1.7)) + 0.05 * noise.at(a / 8, (b + c) / 8);
  let isGold = false;
  if (isFront) {
    if (a > 5 && a < 9) tone *= 0.72;
    const rim = Math.min(a - 16, width - 10 - a, b - 10, height - 10 - b);
    const title = Math.abs(b - 0.7 * height) < 7 && Math.abs(a - width / 2) < 0.25 * width && (a * 0.4) % 2 < 1.2;
    isGold = cover.isStamped && ((rim > 0 && rim < 0.8) || title);
  }
  if (isGold) colour.set(GOLD);
  else for (let k = 0; k < 3; k++) colour[k] = cover.colour[k]! * tone;
}

const GOLD: Vec3 = [0.6, 0.45, 0.16];

/** Takes sixteen rays where a pixel differs from a neighbour. */
function smoothEdges(light: Float32Array, width: number, height: number, ray: Ray): void {
  const grey = new Float32Array(width * height);
  for (let i = 0; i < grey.length; i++)
    grey[i] = 0.3 * light[3 * i]! + 0.59 * light[3 * i + 1]! + 0.11 * light[3 * i + 2]!;
  const isEdge = new Uint8Array(grey.length);
  const mark = (i: number, k: number): void => {
    const [a, b] = [grey[i]!, grey[k]!];
    if (Math.abs(a - b) > EDGE * Math.max(a, b) + 0.005) {
      isEdge[i] = 1;
      isEdge[k] = 1;
    }
  };
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      const i = y * width + x;
      if (x + 1 < width) mark(i, i + 1);
      if (y + 1 < height) mark(i, i + width);
    }
  const colour = new Float32Array(3);
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      const i = y * width + x;
      if (isEdge[i] === 0) continue;
      let [r, g, b] = [0, 0, 0];
      for (let t = 0; t < SUB; t++)
        for (let s = 0; s < SUB; s++) {
          ray(x + (s + 0.5) / SUB, y + (t + 0.5) / SUB, colour);
          r += colour[0]!;
          g += colour[1]!;
          b += colour[2]!;
        }
      light[3 * i] = r / (SUB * SUB);
      light[3 * i + 1] = g / (SUB * SUB);
      light[3 * i + 2] = b / (SUB * SUB);
    }
}

/** Blur by a normal distribution, first along rows and then along columns. */
function blur(light: Float32Array, width: number, height: number, channel: number, sigma: number): void {
  if (sigma <= 0) return;
  const reach = Math.ceil(3 * sigma);
  const kernel = Float32Array.from({ length: 2 * reach + 1 }, (_, i) => Math.exp(-(((i - reach) / sigma) ** 2) / 2));
  const sum = kernel.reduce((a, b) => a + b, 0);
  kernel.forEach((value, i) => {
    kernel[i] = value / sum;
  });
  const rows = new Float32Array(width * height);
  const line = new Float32Array(width + 2 * reach);
  for (let y = 0; y < height; y++) {
    for (let x = -reach; x < width + reach; x++)
      line[x + reach] = light[3 * (y * width + Math.min(width - 1, Math.max(0, x))) + channel]!;
    for (let x = 0; x < width; x++) {
      let value = 0;
      for (let k = 0; k <= 2 * reach; k++) value += kernel[k]! * line[x + k]!;
      rows[y * width + x] = value;
    }
  }
  // Whole rows at a time, which keeps to the order of memory.
  const total = new Float32Array(width);
  for (let y = 0; y < height; y++) {
    total.fill(0);
    for (let k = -reach; k <= reach; k++) {
      const start = Math.min(height - 1, Math.max(0, y + k)) * width;
      const share = kernel[k + reach]!;
      for (let x = 0; x < width; x++) total[x]! += share * rows[start + x]!;
    }
    for (let x = 0; x < width; x++) light[3 * (y * width + x) + channel] = total[x]!;
  }
}

const CURVE_STEPS = 8192;
/** Bytes by the curve of sRGB. */
const CURVE = Uint8Array.from({ length: CURVE_STEPS + 1 }, (_, i) => {
  const linear = i / CURVE_STEPS;
  const value = linear <= 0.0031308 ? 12.92 * linear : 1.055 * linear ** (1 / 2.4) - 0.055;
  return Math.round(255 * value);
});

function developed(
  light: Float32Array,
  seed: number,
  { width, height, exposure, wellDepth, lens }: TestCamera,
): Uint8Array {
  const rgba = new Uint8Array(4 * width * height);
  const draws = randomDraws(seed * 31 + 7);
  // Sums of uniform draws are close to normal, and enough of them lie ready.
  const ready = Float32Array.from(
    { length: 1 << 16 },
    () => (draws() + draws() + draws() + draws() - 2) * Math.sqrt(3),
  );
  let next = Math.floor(draws() * 65536);
  const fading = 0.25 / (lens.focal * lens.focal);
  for (let y = 0, i = 0; y < height; y++) {
    for (let x = 0; x < width; x++, i++) {
      const fade = exposure * (1 - fading * ((x - lens.centre[0]) ** 2 + (y - lens.centre[1]) ** 2));
      for (let k = 0; k < 3; k++) {
        const value = Math.max(0, light[3 * i + k]! * fade);
        next = (Math.imul(next, 40503) + 12345) & 0xffffff;
        const noise = Math.sqrt((value + 0.003) / wellDepth) * ready[next >>> 8]!;
        rgba[4 * i + k] = CURVE[Math.min(CURVE_STEPS, Math.max(0, Math.round(CURVE_STEPS * (value + noise))))]!;
      }
      rgba[4 * i + 3] = 255;
    }
  }
  return rgba;
}

/** Where a place of a page lies on the ground, if the page is flat. */
export function mapPage({ at, angle }: LaidPage, print: TestScene['print'], [x, y]: Vec2): Vec2 {
  const [c, s, a, b] = [Math.cos(angle), Math.sin(angle), x * print.across, y * print.along];
  return [at[0] + c * a - s * b, at[1] + s * a + c * b];
}

/** Where a photograph shows a point of the scene, pixels: the truth, by the model of the camera. */
export const trulySeen = ({ lens, pose }: TestCamera, point: Vec3): Vec2 =>
  pixelOf(lens, seenFrom(rotationBy(pose.turn), pose.shift, point));
