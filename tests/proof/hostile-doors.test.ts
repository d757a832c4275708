import 'fake-indexeddb/auto';
import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { afterAll, expect, test } from 'vitest';
import { Shelf } from '../../src/app/shelf/shelf.ts';
import { readChosenFile, readShelfFile, shelfFile } from '../../src/app/shelf/shelfFile.ts';
import { openJobFile, openJobText } from '../../src/app/state/openJobFile.ts';
import { coverDesign, designReport, EXAMPLE_JOBS, type JobIssue, openJob } from '../../src/core/index.ts';
import { PLAIN_OFFER } from '../../src/output/customerSheet/offer.ts';
import { machineText, openMachineFile, parseMachineText } from '../../src/output/machine/machineProfile.ts';
import { customerFragment, readCustomerFragment } from '../../src/output/shareLink/customerLink.ts';
import { linkText } from '../../src/output/shareLink/linkText.ts';
import { readShareFragment, shareFragment } from '../../src/output/shareLink/shareLink.ts';
import { value } from '../app/shelf/shelved.ts';
import { defined } from '../defined.ts';
import { soundJob } from '../jobArbitrary.ts';
import { nth } from '../nth.ts';
import { isWholeProof, proofSize } from './proofSize.ts';

/** Hostile inputs of each door; the seed is named so that a case can be drawn again. */
const INPUTS = proofSize(10_000, 100);
const SEED = 20261128;

/** Most processor time that a door may take over one input, ms: what else the machine does is no fault of the door. */
const LONGEST = 1000;

const documents = EXAMPLE_JOBS.map(({ document }) => document);
const MARKUP = ['<img src=x onerror="window.ran=1">', '</script><script>ran=1</script>', 'javascript:ran=1', '{{ran}}'];

/** One place of a sound document, and what is put there. */
const HOSTILE_VALUES: readonly unknown[] = [
  null,
  '',
  'NaN',
  -1,
  0,
  1e308,
  -1e308,
  5e-324,
  0.1 + 0.2,
  2 ** 53,
  true,
  [],
  {},
  [[[[]]]],
  Array.from({ length: 5000 }, () => 0),
  Array.from({ length: 500 }, () => ({})),
  'x'.repeat(100_000),
  '\u0000',
  '\uD800',
  '\u202Egnp.exe',
  'e\u0301'.repeat(50),
  '1e999',
  ...MARKUP,
];

/** Keys that would reach the prototype of every object if they were copied. */
const KEYS = [
  '__proto__',
  'constructor',
  'prototype',
  'toString',
  'hasOwnProperty',
  'then',
  'toJSON',
  '',
  ' ',
  MARKUP[0]!,
];

type Tree = Record<string, unknown>;

/** Ways to all values within a document. */
function ways(value: unknown, way: readonly string[] = []): (readonly string[])[] {
  if (typeof value !== 'object' || value === null) return [way];
  return [way, ...Object.entries(value).flatMap(([key, part]) => ways(part, [...way, key]))];
}

/** The JSON of a document with something else at one place; as text, because no object may have all these keys. */
function withAt(document: object, way: readonly string[], put: unknown, key: string | null): string {
  const copy = structuredClone(document) as Tree;
  const holder = way.slice(0, -1).reduce<Tree>((at, part) => at[part] as Tree, copy);
  const last = way.at(-1);
  if (last === undefined) return JSON.stringify(put);
  if (key === null || typeof holder[last] !== 'object' || holder[last] === null) holder[last] = put;
  else holder[last] = { ...(holder[last] as Tree), KEY: put };
  return JSON.stringify(copy).replace('"KEY"', JSON.stringify(key));
}

/** A text that is not what a door expects, or is it with something hostile in it, around sound documents. */
function hostileText(sound: readonly object[]): fc.Arbitrary<string> {
  const one = fc.constantFrom(...sound);
  const put = fc.oneof(fc.constantFrom(...HOSTILE_VALUES), fc.jsonValue(), fc.string({ unit: 'binary' }), fc.double());
  const placed = one.chain((document) =>
    fc
      .tuple(fc.constantFrom(...ways(document)), put, fc.option(fc.constantFrom(...KEYS), { freq: 3 }))
      .map(([way, value, key]) => withAt(document, way, value, key)),
  );
  const edit = fc.record({ at: fc.nat(), drop: fc.nat(40), put: fc.string({ unit: 'binary', maxLength: 6 }) });
  const damaged = fc.tuple(one, fc.array(edit, { minLength: 1, maxLength: 4 })).map(([document, edits]) =>
    edits.reduce((text, { at, drop, put }) => {
      const from = at % text.length;
      return text.slice(0, from) + put + text.slice(from + drop);
    }, JSON.stringify(document)),
  );
  const nested = fc
    .tuple(fc.constantFrom('[', '{"a":', '[{"a":['), fc.integer({ min: 100, max: 60_000 }), fc.boolean())
    .map(([open, depth, isClosed]) => {
      const close = { '[': ']', '{"a":': '}', '[{"a":[': ']}]' }[open]!;
      return open.repeat(depth) + (isClosed ? `1${close.repeat(depth)}` : '');
    });
  const long = fc.constantFrom(
    ' '.repeat(400_000),
    `"${'\\u0000'.repeat(60_000)}"`,
    `[${'0,'.repeat(150_000)}0]`,
    `{${Array.from({ length: 20_000 }, (_, i) => `"k${i}":${i}`).join(',')}}`,
    `{"jobs":[${'{},'.repeat(3000)}{}]}`,
    `9${'9'.repeat(200_000)}`,
  );
  const twice = one.map((document) =>
    JSON.stringify(document).replace('{', '{"format":"other","version":-1,"book":0,'),
  );
  const mixed = fc
    .array(one, { minLength: 0, maxLength: 3 })
    .map((list) => JSON.stringify({ format: 'coverwright-jobs', version: 1, jobs: list }));
  return fc.oneof(
    { weight: 40, arbitrary: placed },
    { weight: 25, arbitrary: damaged },
    { weight: 10, arbitrary: fc.json() },
    { weight: 8, arbitrary: fc.string({ unit: 'binary' }) },
    { weight: 6, arbitrary: twice },
    { weight: 4, arbitrary: mixed },
    { weight: 4, arbitrary: nested },
    { weight: 3, arbitrary: long },
  );
}

interface Counted {
  taken: number;
  refused: number;
  slowest: number;
}
const counts: Record<string, Counted> = {};

/** Puts inputs to a door: each is answered in time, and a refusal has words. */
async function putTo(
  door: string,
  inputs: fc.Arbitrary<string>,
  open: (input: string) => Promise<readonly JobIssue[] | null> | readonly JobIssue[] | null,
): Promise<void> {
  const counted: Counted = { taken: 0, refused: 0, slowest: 0 };
  counts[door] = counted;
  for (const [i, input] of fc.sample(inputs, { seed: SEED, numRuns: INPUTS }).entries()) {
    const name = `${door} ${i}: ${JSON.stringify(input.slice(0, 120))}`;
    const begun = process.cpuUsage();
    let issues: readonly JobIssue[] | null;
    try {
      issues = await open(input);
    } catch (error) {
      throw new Error(`${name} threw`, { cause: error });
    }
    const { user, system } = process.cpuUsage(begun);
    const took = (user + system) / 1000;
    counted.slowest = Math.max(counted.slowest, took);
    counted[issues === null ? 'taken' : 'refused']++;
    // No ordinary test measures time.
    if (isWholeProof) expect(took, name).toBeLessThan(LONGEST);
    if (issues === null) continue;
    expect(issues.length, name).toBeGreaterThan(0);
    for (const { message } of issues.slice(0, 20)) {
      expect(message, name).not.toMatch(/\bundefined\b|\[object|Maximum call stack|is not a function/);
      expect(message.length, name).toBeLessThan(2000);
    }
  }
  expect(({} as Tree).polluted).toBeUndefined();
  expect(Object.keys(Object.prototype)).toEqual([]);
  expect('ran' in globalThis).toBe(false);
}

/** A job that was taken is whole: it is written and read as the same, and has a report. */
function expectSound(document: object): void {
  const again = openJob(JSON.parse(JSON.stringify(document)));
  expect(again.ok && again.document).toEqual(document);
  expect(designReport(coverDesign(soundJob(document))).headline).not.toMatch(/NaN|undefined|Infinity/);
}

test('job files', () =>
  putTo('job file', hostileText(documents), (text) => {
    const opened = openJobText(text);
    if ('issues' in opened) return opened.issues;
    expectSound(opened.document);
    return null;
  }));

/** Fragments of links: damaged ones, ones of any characters, and sound ones around hostile content. */
function hostileLink(sound: readonly string[], prefix: string, content: fc.Arbitrary<string>): fc.Arbitrary<string> {
  const edit = fc.record({ at: fc.nat(), drop: fc.nat(6), put: fc.string({ maxLength: 4 }) });
  const damaged = fc
    .tuple(fc.constantFrom(...sound), fc.array(edit, { minLength: 1, maxLength: 4 }))
    .map(([link, edits]) =>
      edits.reduce(
        (text, { at, drop, put }) => text.slice(0, at % text.length) + put + text.slice((at % text.length) + drop),
        link,
      ),
    );
  const around = content.map((text) => {
    try {
      return prefix + (linkText(JSON.parse(text), prefix.length) ?? `4.${'A'.repeat(20_000)}`);
    } catch {
      return `${prefix}4.${Buffer.from(text).toString('base64url')}`;
    }
  });
  return fc.oneof(
    { weight: 5, arbitrary: around },
    { weight: 4, arbitrary: damaged },
    { weight: 1, arbitrary: fc.string({ unit: 'binary' }).map((text) => `${prefix}4.${text}`) },
    {
      weight: 1,
      arbitrary: fc.constantFrom(
        ...MARKUP.map((markup) => prefix + encodeURIComponent(markup)),
        `${prefix}${'A'.repeat(1e6)}`,
      ),
    },
  );
}

const jobLinks = documents.map((document) => defined(shareFragment(document)));

test('links', () =>
  putTo('link', hostileLink(jobLinks, '#job=', hostileText(documents)), (fragment) => {
    const opened = readShareFragment(fragment);
    if (!opened.ok) return opened.issues;
    expectSound(opened.document);
    return null;
  }));

const customerLinks = documents.map((document) => defined(customerFragment(document, soundJob(document), PLAIN_OFFER)));

test('a customer’s links', () => {
  const sound = documents.map((job) => ({ job, offer: { ...PLAIN_OFFER, prices: null } }));
  const links = hostileLink(
    customerLinks,
    nth(customerLinks, 0).slice(0, nth(customerLinks, 0).indexOf('=') + 1),
    hostileText(sound),
  );
  return putTo('customer’s link', links, (fragment) => {
    const read = readCustomerFragment(fragment);
    if (!read.ok) return read.issues;
    expectSound(read.document);
    return null;
  });
});

test('imports into the shelf, which keeps every job that it has', async () => {
  const shelf = new Shelf({ name: 'hostile' });
  await shelf.addAll(documents);
  const before = await value(shelf.list());
  // The jobs of a hundred files at once, so that the shelf is written as often as it would be in a day.
  let waiting: object[] = [];
  let added = 0;
  const write = async (): Promise<void> => {
    const imported = await shelf.addAll(waiting as Parameters<Shelf['addAll']>[0]);
    if (!imported.ok) throw new Error(imported.trouble.message);
    added += imported.value;
    waiting = [];
  };
  const shelves = hostileText([
    JSON.parse(shelfFile(documents)),
    JSON.parse(shelfFile(documents.slice(0, 1))),
    ...documents,
  ]);
  await putTo('shelf import', shelves, async (text) => {
    const read = readShelfFile(text);
    waiting.push(...read.documents);
    if (waiting.length > 100) await write();
    return read.documents.length > 0 ? null : (read.broken[0]?.issues ?? [{ message: 'no job' } as JobIssue]);
  });
  await write();
  const after = await value(shelf.list());
  await shelf.close();
  expect(after).toEqual(expect.arrayContaining([...before]));
  expect(after).toHaveLength(before.length + added);
  for (const { document } of after) expect(openJob(document).ok).toBe(true);
});

test('machines', () => {
  const machine = {
    format: 'coverwright-machine',
    version: 1,
    name: 'laser',
    bed: { width_mm: 600, height_mm: 400 },
    kerfs: [{ leather: 'calf', thickness_mm: 2, kerf_mm: 0.2 }],
    passes: [
      {
        name: 'holes',
        layers: ['HOLE'],
        colour: '#ff0000',
        layer: 'HOLE',
        dxfColour: 1,
        pen: 1,
        power: '20',
        speed: 'slow',
      },
    ],
  };
  return putTo('machine', hostileText([machine]), (text) => {
    const parsed = parseMachineText(text);
    if (!parsed.ok) return parsed.issues;
    expect(parseMachineText(machineText(parsed.profile))).toEqual(parsed);
    return null;
  });
});

test('a file that cannot be read any more, or is far too large, is refused at every door', async () => {
  const gone = { size: 7, text: () => Promise.reject(new DOMException('gone', 'NotReadableError')) } as unknown as Blob;
  const huge = { size: 1e9, text: () => Promise.reject(new Error('it was read')) } as unknown as Blob;
  for (const file of [gone, huge]) {
    expect(await openJobFile(file)).toHaveProperty('issues');
    expect((await readChosenFile(file)).documents).toEqual([]);
    expect((await openMachineFile(file)).ok).toBe(false);
  }
});

test('no text of a file can become markup or script: the source has no way to write either', () => {
  for (const file of readdirSync('src', { recursive: true, encoding: 'utf8' }).filter((name) => /\.tsx?$/.test(name)))
    expect(readFileSync(`src/${file}`, 'utf8'), file).not.toMatch(
      /dangerouslySetInnerHTML|\.(inner|outer)HTML|insertAdjacentHTML|document\.write|\beval\(|new Function\(/,
    );
});

afterAll(() => {
  const rows = Object.entries(counts).map(
    ([door, { taken, refused, slowest }]) =>
      `${door}: ${taken} taken, ${refused} refused, slowest ${slowest.toFixed(0)} ms of processor`,
  );
  console.info(`hostile inputs, ${INPUTS} to each door, seed ${SEED}:\n${rows.join('\n')}`);
});
