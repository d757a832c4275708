import jpeg from 'jpeg-js';
import { PNG } from 'pngjs';
import { afterAll, afterEach, beforeEach, expect, test, vi } from 'vitest';
import type { PictureDecoder } from '../../src/artwork/picture/decodePicture.ts';
import { greyOf, greySize } from '../../src/artwork/picture/grey.ts';
import { readArtwork } from '../../src/artwork/readArtwork.ts';
import { Refusal } from '../../src/artwork/refusal.ts';
import { EXAMPLE_JOBS, parseJob, picturePixels, readArtworkLines } from '../../src/core/index.ts';
import { ELSEWHERE, HOSTILE_FAMILIES, hostileDrawing, PAYLOAD } from '../artwork/hostileDrawings.ts';
import { proofSize } from './proofSize.ts';

const FILES = proofSize(10_000, 200);
const counts = { taken: 0, refused: 0 };

/** In place of the browser's decoder, which the browser test has: two readers that share nothing with it. */
const decode: PictureDecoder = async (bytes, { type, width, height }) => {
  try {
    const decoded =
      type === 'image/png'
        ? PNG.sync.read(Buffer.from(bytes))
        : jpeg.decode(bytes, { maxMemoryUsageInMB: 256, tolerantDecoding: false });
    if (decoded.width !== width || decoded.height !== height) throw new Error('another size');
    const size = greySize(width, height);
    return greyOf(size.width, size.height, decoded.data);
  } catch (error) {
    throw new Refusal(
      'unreadable',
      `is a picture that cannot be decoded (${String(error).slice(0, 20)})`,
      'a picture',
      'save it again',
    );
  }
};

const reached: string[] = [];

beforeEach(() => {
  for (const name of [
    'fetch',
    'XMLHttpRequest',
    'WebSocket',
    'EventSource',
    'Worker',
    'importScripts',
    'alert',
    'eval',
    'Function',
  ])
    vi.stubGlobal(name, (...words: unknown[]) => {
      reached.push(`${name} ${String(words[0]).slice(0, 80)}`);
      throw new Error(`${name} was called`);
    });
});

afterEach(() => vi.unstubAllGlobals());

test(`${FILES} hostile files: nothing runs, nothing is fetched, each is refused in plain words or gives clean numbers`, async () => {
  const document = JSON.stringify(EXAMPLE_JOBS[0].document);
  for (let index = 0; index < FILES; index++) {
    const { name, bytes, outcome, file } = hostileDrawing(index);
    const read = await readArtwork({ name: file, bytes }, decode, { as: index % 3 === 0 ? 'picture' : 'lines' });
    if (outcome !== 'either') expect(read.ok ? 'taken' : 'refused', name).toBe(outcome);
    counts[read.ok ? 'taken' : 'refused']++;
    if (!read.ok) {
      expect(read.issue.words, name).toMatch(/^The drawing [^<>]+; allowed: [^<>]+\. [A-Z][^<>]+\.$/);
      expect(read.issue.words!.length, name).toBeLessThan(400);
      expect(read.issue.words, name).not.toMatch(/undefined|NaN|\[object|worked through/);
      continue;
    }
    const { artwork, leftOut, width_mm } = read;
    const said = JSON.stringify([artwork, leftOut].map((part) => ({ ...part, name: '' })));
    expect(said.includes(PAYLOAD) || said.includes(ELSEWHERE), name).toBe(false);
    expect(width_mm === null || Number.isFinite(width_mm), name).toBe(true);
    if (artwork.kind === 'lines') {
      expect(artwork.lines, name).toMatch(/^[mz\d, -]+$/);
      expect(readArtworkLines(artwork.lines), name).toHaveProperty('polylines');
    } else expect(picturePixels(artwork), name).not.toBeNull();
    const job = JSON.parse(document);
    const kept = parseJob({
      ...job,
      tooling: { artworks: [artwork], designs: [{ kind: 'drawing', area: 'front', artwork: artwork.id }] },
    });
    expect(kept.ok ? [] : kept.issues, name).toEqual([]);
  }
  expect(reached).toEqual([]);
  expect(PAYLOAD in globalThis).toBe(false);
  expect(JSON.stringify(EXAMPLE_JOBS[0].document)).toBe(document);
});

test('every family of hostile files is among them', () => {
  expect(FILES).toBeGreaterThanOrEqual(HOSTILE_FAMILIES);
});

afterAll(() =>
  console.log(
    `hostile files: ${FILES} of ${HOSTILE_FAMILIES} families, ${counts.taken} taken clean, ${counts.refused} refused`,
  ),
);
