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

/** A page as poppler prints it. */
export function rasterised(bytes: Uint8Array, page: number, dpi: number): Raster {
  return withFile(bytes, (file) => {
    const root = `${file}-page`;
    const words = ['-gray', '-r', String(dpi), '-f', String(page), '-l', String(page), '-singlefile', file, root];
    readOut('pdftoppm', words);
    const image = readFileSync(`${root}.pgm`);
    const head = /^P5\s+(\d+)\s+(\d+)\s+255\s/.exec(image.subarray(0, 64).toString('latin1'));
    if (head === null) throw new Error('pdftoppm wrote no grey picture');
    return { width: Number(head[1]), height: Number(head[2]), grey: new Uint8Array(image.subarray(head[0].length)) };
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
