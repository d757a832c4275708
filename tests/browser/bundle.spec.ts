import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { expect, test } from '@playwright/test';

const assets = join(import.meta.dirname, '../../dist/assets');
const page = readFileSync(join(import.meta.dirname, '../../dist/index.html'), 'utf8');
const zipped = (name: string) => gzipSync(readFileSync(join(assets, name))).length;

/** Bytes, gzipped. The verdict with its doubt (inputs, propagation, sizing, budget) takes 12 kB of it. */
const BUDGET = 127_000;

test('first paint needs under 127 kB of script, and 3D is a chunk of its own under 330 kB, gzipped', () => {
  const scripts = readdirSync(assets).filter((name) => name.endsWith('.js'));
  const initial = scripts.filter((name) => page.includes(name));
  const scene = scripts.filter((name) => /WebGLRenderer/.test(readFileSync(join(assets, name), 'utf8')));
  const size = (names: string[]) => names.reduce((sum, name) => sum + zipped(name), 0);
  console.info(`initial script ${(size(initial) / 1000).toFixed(1)} kB, 3D ${(size(scene) / 1000).toFixed(1)} kB gzip`);
  expect(initial.length).toBeGreaterThan(0);
  expect(size(initial)).toBeLessThan(BUDGET);
  expect(scene.length).toBeGreaterThan(0);
  expect(scene.every((name) => !initial.includes(name))).toBe(true);
  expect(size(scene)).toBeLessThan(330_000);
});
