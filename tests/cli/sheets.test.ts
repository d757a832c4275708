import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { lines, run, scratch } from './commandLine.ts';

const jobs = join(import.meta.dirname, '../../public/jobs');
const ledger = join(jobs, 'tide-ledger.json');
const DAY = ['--date', '2026-11-27'];

/** A machine of the maker's own; invented. */
const machine = {
  format: 'coverwright-machine',
  version: 1,
  name: 'Quay laser',
  bed: { width_mm: 700, height_mm: 500 },
  kerfs: [
    { leather: 'Calf', thickness_mm: 1.5, kerf_mm: 0.2 },
    { leather: 'Calf', thickness_mm: 2.5, kerf_mm: 0.3 },
  ],
  passes: [
    { name: 'Marks', layers: ['MARK'] },
    { name: 'Holes', layers: ['HOLE', 'SLIT'] },
    { name: 'Edge', layers: ['CUT'] },
  ],
};

describe('the sheets command', () => {
  const { folder, file, remove } = scratch('sheets-');
  afterAll(remove);
  const laser = file('laser.json', JSON.stringify(machine));
  const sheets = (words: readonly string[], to: string, input?: string) =>
    run('sheets', [...words, ...DAY, '--out', join(folder, to)], input);
  const written = (to: string): readonly string[] => readdirSync(join(folder, to)).sort();
  const hashes = (to: string): readonly string[] =>
    written(to).map((name) => {
      const sum = createHash('sha256')
        .update(readFileSync(join(folder, to, name)))
        .digest('hex');
      return `${name} ${sum}`;
    });

  test('writes every paper and machine file of several jobs, says which, and gives the same bytes again', async () => {
    const words = [ledger, join(jobs, 'shore-guide.json'), '--to', 'pdf,svg,dxf,hpgl', '--profile', laser];
    const more = [
      '--sheets',
      'template,layout,bench,drafting,tests,photograph',
      '--paper',
      'letter',
      '--address',
      'https://leather.example/',
    ];
    const { status, stdout } = await sheets([...words, ...more], 'all');
    expect(status).toBe(0);
    expect(lines(stdout).sort()).toEqual(written('all').map((name) => join(folder, 'all', name)));
    expect(written('all')).toEqual(
      ['shore-guide', 'tide-ledger'].flatMap((job) => [
        `${job}-card-letter.drafting-sheet.pdf`,
        `${job}-card-letter.template.pdf`,
        ...['dxf', 'hpgl', 'svg'].map((ending) => `${job}-card-quay-laser-kerf-0-mm.${ending}`),
        `${job}-leather-layout-outside-letter.pdf`,
        ...['dxf', 'svg'].map((ending) => `${job}-leather-layout-outside.${ending}`),
        `${job}-letter.bench-sheet.pdf`,
        `${job}-letter.photograph-sheet.pdf`,
        `${job}-letter.test-strips.pdf`,
      ]),
    );
    await sheets([...words, ...more], 'again');
    expect(hashes('again')).toEqual(hashes('all'));
  });

  test('takes the kerf from the table of the machine, in proportion between two of its rows', async () => {
    const words = [ledger, '--to', 'svg', '--profile', laser, '--leather', 'calf', '--thickness', '2 mm'];
    await sheets(words, 'kerf');
    expect(written('kerf')).toEqual(['tide-ledger-card-quay-laser-kerf-0.25-mm.svg']);
    const other = await sheets([...words.slice(0, -4), '--leather', 'goat'], 'kerf');
    expect(other.status).toBe(2);
    expect(other.stderr).toMatch(/^\(job\): Quay laser has no kerf of the leather “goat”/);
  });

  test('jobs of one name are told apart, whatever their order and length', async () => {
    const long = { ...JSON.parse(readFileSync(ledger, 'utf8')), name: 'Ψ'.repeat(190) };
    const same = ['a', 'b', 'c'].map((name) =>
      file(`${name}.json`, JSON.stringify({ ...long, leather: long.leather })),
    );
    const { status } = await sheets([...same, '--to', 'svg'], 'same');
    expect(status).toBe(0);
    expect(written('same')).toHaveLength(3);
    for (const name of written('same')) expect(Buffer.byteLength(name)).toBeLessThanOrEqual(120);
  });

  test('a folder stands for the jobs in it, and - for standard input', async () => {
    await sheets([jobs, '--to', 'dxf'], 'folder');
    expect(written('folder')).toHaveLength(3);
    await sheets(['-', '--to', 'dxf'], 'input', readFileSync(ledger, 'utf8'));
    expect(hashes('input')).toEqual(hashes('folder').filter((line) => line.startsWith('tide-ledger')));
  });

  test('a bad job is named, and the files of the others are written', async () => {
    const bad = file('bad.json', '{"format": "coverwright-job", "version": 3, "colour": 1}');
    const { status, stderr } = await sheets([bad, ledger, '--to', 'svg'], 'some');
    expect(status).toBe(2);
    expect(stderr).toContain(`${bad}: colour: got `);
    expect(written('some')).toHaveLength(1);
  });

  test('a piece larger than the bed, and a kerf larger than the holes, are said with what to do', async () => {
    const small = file('small.json', JSON.stringify({ ...machine, bed: { width_mm: 200, height_mm: 150 } }));
    const refused = await sheets([ledger, '--to', 'svg', '--profile', small], 'small');
    expect(refused.status).toBe(2);
    expect(refused.stderr).toMatch(/^\(job\): .*bed/);
    const wide = await sheets([join(jobs, 'choir-book.json'), '--to', 'svg', '--kerf', '1.5'], 'wide');
    expect(wide.status).toBe(0);
    expect(wide.stderr).toMatch(/choir-book-card-kerf-1.5-mm.svg: Holes of 1 mm are too small for a kerf of 1.5 mm/);
  });

  test('a machine with a field that is unknown is refused, with its place', async () => {
    const odd = file('odd.json', JSON.stringify({ ...machine, bed: { ...machine.bed, depth_mm: 3 } }));
    const { status, stderr } = await sheets([ledger, '--to', 'svg', '--profile', odd], 'odd');
    expect(status).toBe(2);
    expect(stderr).toMatch(/odd\.json: bed\.depth_mm: got .+; allowed: .+; /);
    expect(existsSync(join(folder, 'odd'))).toBe(false);
  });

  test('a letter that the sheets cannot print is said after the name of the file', async () => {
    const job = file('letters.json', JSON.stringify({ ...JSON.parse(readFileSync(ledger, 'utf8')), name: '潮 🌊' }));
    const { status, stderr } = await sheets([job], 'letters');
    expect(status).toBe(0);
    expect(stderr).toMatch(/template\.pdf: its letters lack 潮 🌊: a box stands for each/);
  });

  test.each([
    [['--to', 'png'], '--to: got png; allowed: one or more of pdf, svg'],
    [['--to', 'hpgl'], '--to: got hpgl without a machine'],
    [['--paper', 'b5'], '--paper: got b5'],
    [['--paper', 'roll:5'], '--paper: got roll:5'],
    [['--bars', '150'], '--bars: got 150'],
    [['--bars', '120,150'], '--bars: got 120,150'],
    [['--kerf', '3'], '--kerf: got 3 mm'],
    [['--kerf', 'thin'], '--kerf: got thin'],
    [['--sheets', 'customer'], '--sheets: got customer'],
    [['--layers', 'cut,knife'], '--layers: got knife'],
    [['--cards', 'two'], '--cards: got two'],
    [['--address', 'here'], '--address: got here'],
    [['--date', '2026-02-30'], '--date: got 2026-02-30'],
    [['--leather', 'calf'], '--leather: got calf'],
    [['--profile', 'nowhere.json'], '(file): got no such file: nowhere.json'],
    [['--colour', 'red'], '--colour: got an unknown option'],
  ])('refuses %j', async (words, said) => {
    const { status, stdout, stderr } = await run('sheets', [ledger, '--out', join(folder, 'none'), ...words]);
    expect({ status, stdout }).toEqual({ status: 2, stdout: '' });
    expect(stderr.startsWith(said)).toBe(true);
    expect(existsSync(join(folder, 'none'))).toBe(false);
  });

  test('refuses to guess a folder, and a folder that cannot be made', async () => {
    expect((await run('sheets', [ledger])).stderr).toMatch(/^--out: got nothing/);
    expect((await run('sheets', [ledger, '--out', join(laser, 'under a file')])).stderr).toMatch(/^--out: got ENOTDIR/);
  });
});
