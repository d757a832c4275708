import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';

/** Code in the guide for contributors: what stands between backticks, command blocks aside. */
const quoted = [
  ...readFileSync('DEVELOPERS.md', 'utf8')
    .replace(/^```[\s\S]*?^```/gm, '')
    .matchAll(/`([^`]+)`/g),
].map((match) => match[1]!);

const files = [
  ...readdirSync('.'),
  ...['src', 'tests', 'scripts', 'bench', '.ci'].flatMap((folder) =>
    readdirSync(folder, { recursive: true, encoding: 'utf8' }).map((name) => `${folder}/${name}`),
  ),
].map((name) => `/${name}`);

test('every file and folder that the guide for contributors names is there', () => {
  const paths = quoted
    .filter((code) => /^[\w./-]+$/.test(code) && /\w\/\w|\.(tsx?|md|json)$/.test(code))
    .filter((path) => !/^(dist-lib|coverwright)\/|\bNAME\b/.test(path));
  expect(paths.length).toBeGreaterThan(30);
  expect(paths.filter((path) => !files.some((file) => file.endsWith(`/${path}`)))).toEqual([]);
});

test('every function, type and constant that the guide names is in the code', () => {
  const sources = files
    .filter((file) => /\.(tsx?|mjs)$/.test(file) && !file.endsWith('developers.test.ts'))
    .map((file) => readFileSync(`.${file}`, 'utf8'))
    .join('\n');
  const names = quoted.filter((code) => /^[a-z]+[A-Z]\w*$|^[A-Z]\w*[a-z]\w*$|^[A-Z]+_[A-Z_]+$/.test(code));
  expect(names.length).toBeGreaterThan(30);
  expect(names.filter((name) => !new RegExp(`\\b${name}\\b`).test(sources))).toEqual([]);
});
