import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { expect, test } from '@playwright/test';

const assets = join(import.meta.dirname, '../../dist/assets');
const page = readFileSync(join(import.meta.dirname, '../../dist/index.html'), 'utf8');
const zipped = (name: string) => gzipSync(readFileSync(join(assets, name))).length;

/**
 * Bytes, gzipped, never raised: what the page runs before its first words, the job with its verdict, and with it what the page
 * runs before it answers to keys. React DOM is half of the latter.
 */
const BUDGET = { words: 56_000, keys: 132_000 };

test('the first words need under 56 kB of script, an answer to a key under 132 kB, and 3D is a chunk of its own under 330 kB, gzipped', () => {
  const scripts = readdirSync(assets).filter((name) => name.endsWith('.js'));
  const initial = scripts.filter((name) => page.includes(name));
  const bench = scripts.filter((name) => name.startsWith('bench-'));
  const scene = scripts.filter((name) => /WebGLRenderer/.test(readFileSync(join(assets, name), 'utf8')));
  const size = (names: string[]) => names.reduce((sum, name) => sum + zipped(name), 0);
  const kB = (names: string[]) => `${(size(names) / 1000).toFixed(1)} kB`;
  console.info(`first words ${kB(initial)}, the bench ${kB(bench)}, 3D ${kB(scene)} gzip`);
  expect(initial.length).toBeGreaterThan(0);
  expect(size(initial)).toBeLessThan(BUDGET.words);
  expect(bench.length).toBe(1);
  expect(size([...initial, ...bench])).toBeLessThan(BUDGET.keys);
  expect(scene.length).toBeGreaterThan(0);
  expect(scene.every((name) => !initial.includes(name))).toBe(true);
  expect(size(scene)).toBeLessThan(330_000);
});
