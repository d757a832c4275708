import { getDocument, OPS } from 'pdfjs-dist/legacy/build/pdf.mjs';
import type { Vec2 } from '../../src/core/math/vec2.ts';
import { defined } from '../defined.ts';
import { nth } from '../nth.ts';

/** One painted path of a page, in mm from the lower left: chains of points, curves broken into chords. */
export interface ReadPath {
  readonly chains: readonly (readonly Vec2[])[];
  readonly lineWidth: number;
  readonly isDashed: boolean;
  /** Lengths of dashes and gaps, mm. */
  readonly dash: readonly number[];
}

export interface ReadPage {
  readonly width: number;
  readonly height: number;
  readonly paths: readonly ReadPath[];
  /** Boxes that drawing was clipped to. */
  readonly clips: readonly { readonly low: Vec2; readonly high: Vec2 }[];
  readonly words: readonly ReadWords[];
  readonly pictures: readonly ReadPicture[];
  /** Fonts that the words are set in. */
  readonly fonts: readonly ReadFont[];
}

/** A picture by three corners of it, mm, and its size in pixels. */
interface ReadPicture {
  readonly topLeft: Vec2;
  readonly topRight: Vec2;
  readonly bottomLeft: Vec2;
  readonly width: number;
  readonly height: number;
}

export interface ReadWords {
  readonly text: string;
  /** On the base line. */
  readonly at: Vec2;
  /** Along the line of words, and of the letters' body across it, mm. */
  readonly width: number;
  readonly height: number;
  /** Radians counterclockwise. */
  readonly rotation: number;
}

interface ReadFont {
  /** With the tag of a subset where there is one. */
  readonly name: string;
  /** Bytes of its outlines in the file, 0 where the reader must find a font of its own. */
  readonly size: number;
}

const MM = 25.4 / 72;

/** Number of chords that each curve is read as. */
const CHORDS = 128;

/** Path operators inside a constructed path, as the reader numbers them. */
const PATH = { moveTo: 0, lineTo: 1, curveTo: 2, closePath: 4 } as const;

/** Reads a PDF back with an independent reader. Throws on any transform but that of a picture: ours have no other. */
export async function readPdf(bytes: Uint8Array): Promise<ReadPage[]> {
  const file = await getDocument({ data: bytes.slice(), verbosity: 0, fontExtraProperties: true }).promise;
  const pages: ReadPage[] = [];
  for (let number = 1; number <= file.numPages; number++) {
    const page = await file.getPage(number);
    const [, , width, height] = page.view as [number, number, number, number];
    const { fnArray, argsArray } = await page.getOperatorList();
    const paths: ReadPath[] = [];
    const clips: { low: Vec2; high: Vec2 }[] = [];
    let pen = { lineWidth: 1, isDashed: false, dash: [] as readonly number[] };
    let isClip = false;
    const saved: { pen: typeof pen; matrix: typeof matrix }[] = [];
    const pictures: ReadPicture[] = [];
    let matrix: readonly number[] | null = null;
    fnArray.forEach((operator, i) => {
      const args = argsArray[i] as unknown[];
      if (operator === OPS.save) saved.push({ pen, matrix });
      if (operator === OPS.restore) ({ pen, matrix } = defined(saved.pop()));
      if (operator === OPS.transform) {
        if (matrix !== null) throw new Error('a transform in a transform: the reader would have to follow it');
        matrix = args as number[];
      }
      if (operator === OPS.paintImageXObject) {
        const [a, b, c, d, x, y] = defined(matrix).map((each) => each * MM) as [
          number,
          number,
          number,
          number,
          number,
          number,
        ];
        const [, width, height] = args as [string, number, number];
        // An image fills the unit square, its first row at the top.
        pictures.push({ topLeft: [x + c, y + d], topRight: [x + a + c, y + b + d], bottomLeft: [x, y], width, height });
      }
      if (operator === OPS.setLineWidth) pen = { ...pen, lineWidth: (args[0] as number) * MM };
      if (operator === OPS.setDash) {
        const dash = (args[0] as number[]).map((length) => length * MM);
        pen = { ...pen, isDashed: dash.length > 0, dash };
      }
      if (operator === OPS.clip) isClip = true;
      if (operator !== OPS.constructPath) return;
      if (matrix !== null) throw new Error('a path in a transform: the reader would have to follow it');
      const [paint, [buffer]] = args as [number, [ArrayLike<number>]];
      const chains = chainsOf(buffer);
      if (paint === OPS.endPath || isClip) {
        const points = chains.flat();
        const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)];
        clips.push({ low: [Math.min(...xs), Math.min(...ys)], high: [Math.max(...xs), Math.max(...ys)] });
        isClip = false;
        return;
      }
      paths.push({ chains, ...pen });
    });
    const content = await page.getTextContent();
    const words = content.items.flatMap((item) =>
      'str' in item && item.str !== ''
        ? [
            {
              text: item.str,
              at: [item.transform[4] * MM, item.transform[5] * MM] as Vec2,
              width: item.width * MM,
              height: Math.hypot(item.transform[0], item.transform[1]) * MM,
              rotation: Math.atan2(item.transform[1], item.transform[0]),
            },
          ]
        : [],
    );
    const fontIds = new Set(content.items.flatMap((item) => ('str' in item && item.str !== '' ? [item.fontName] : [])));
    const fonts = [...fontIds].map((id): ReadFont => {
      const { name, data } = page.commonObjs.get(id) as { name: string; data?: Uint8Array };
      return { name, size: data?.length ?? 0 };
    });
    pages.push({ width: width * MM, height: height * MM, paths, clips, words, pictures, fonts });
  }
  await file.destroy();
  return pages;
}

function chainsOf(buffer: ArrayLike<number>): Vec2[][] {
  const chains: Vec2[][] = [];
  let chain: Vec2[] = [];
  let i = 0;
  const take = (): Vec2 => {
    const point: Vec2 = [nth(buffer, i) * MM, nth(buffer, i + 1) * MM];
    i += 2;
    return point;
  };
  while (i < buffer.length) {
    const operator = buffer[i++];
    if (operator === PATH.moveTo) {
      chain = [take()];
      chains.push(chain);
    } else if (operator === PATH.lineTo) chain.push(take());
    else if (operator === PATH.curveTo) {
      const from = nth(chain, -1);
      const [a, b, to] = [take(), take(), take()];
      for (let k = 1; k <= CHORDS; k++) chain.push(bezier(from, a, b, to, k / CHORDS));
    } else if (operator === PATH.closePath) chain.push(nth(chain, 0));
    else throw new Error(`path operator ${operator} is not known`);
  }
  return chains;
}

function bezier(p: Vec2, a: Vec2, b: Vec2, q: Vec2, t: number): Vec2 {
  const s = 1 - t;
  const mix = (k: 0 | 1): number => s ** 3 * p[k] + 3 * s * s * t * a[k] + 3 * s * t * t * b[k] + t ** 3 * q[k];
  return [mix(0), mix(1)];
}
