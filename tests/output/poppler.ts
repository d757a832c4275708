import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

/** Whether poppler-utils and qpdf are installed; tests that need them are skipped where they are not. */
export const hasReaders = ['pdftotext', 'pdffonts', 'pdfinfo', 'pdftoppm', 'qpdf'].every(
  (tool) => spawnSync(tool, ['--version']).error === undefined,
);

/** Runs a reader on a PDF; `{file}` in its words is the file. Throws where the reader complains. */
export function readWith(tool: string, words: readonly string[], bytes: Uint8Array): string {
  return withFile(bytes, (file) =>
    readOut(
      tool,
      words.map((word) => (word === '{file}' ? file : word)),
    ),
  );
}

function readOut(tool: string, words: readonly string[]): string {
  const { status, stdout, stderr } = spawnSync(tool, words, { encoding: 'utf8', maxBuffer: 1e8 });
  if (status !== 0) throw new Error(`${tool} ended with ${status}: ${stdout}${stderr}`);
  return stdout;
}

/** A page as grey pixels, row by row from the top, 0 black to 255 white. */
export interface Raster {
  readonly width: number;
  readonly height: number;
  readonly grey: Uint8Array;
}

/** A page as poppler prints it, in greys or in black only. */
export function rasterised(bytes: Uint8Array, page: number, dpi: number, ink: 'grey' | 'black' = 'grey'): Raster {
  return withFile(bytes, (file) => {
    const root = `${file}-page`;
    const kind = ink === 'grey' ? '-gray' : '-mono';
    readOut('pdftoppm', [kind, '-r', String(dpi), '-f', String(page), '-l', String(page), '-singlefile', file, root]);
    const image = readFileSync(`${root}.${ink === 'grey' ? 'pgm' : 'pbm'}`);
    const head = /^P[45]\s+(\d+)\s+(\d+)\s+(?:255\s)?/.exec(image.subarray(0, 64).toString('latin1'));
    if (head === null) throw new Error('pdftoppm wrote no picture');
    const [width, height] = [Number(head[1]), Number(head[2])];
    const data = new Uint8Array(image.subarray(head[0].length));
    if (ink === 'grey') return { width, height, grey: data };
    // Eight pixels a byte, each row from a new byte, 1 black (Netpbm, PBM format).
    const row = Math.ceil(width / 8);
    const isBlack = (x: number, y: number): boolean => ((data[y * row + (x >> 3)]! >> (7 - (x & 7))) & 1) === 1;
    const grey = Uint8Array.from({ length: width * height }, (_, i) =>
      isBlack(i % width, Math.floor(i / width)) ? 0 : 255,
    );
    return { width, height, grey };
  });
}

function withFile<T>(bytes: Uint8Array, use: (file: string) => T): T {
  const folder = mkdtempSync(join(tmpdir(), 'coverwright-'));
  try {
    const file = join(folder, 'sheet.pdf');
    writeFileSync(file, bytes);
    return use(file);
  } finally {
    rmSync(folder, { recursive: true });
  }
}
