import { existsSync, mkdirSync, symlinkSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import tideLedger from '../../public/jobs/tide-ledger.json' with { type: 'json' };
import { lines, run, scratch, utf16 } from './commandLine.ts';

const COMMANDS = ['fit', 'catalogue', 'validate'];
const named = (name: string) => JSON.stringify({ ...tideLedger, name });
const HEADER = 'name,book.width_mm,book.height_mm,book.thickness_mm,leather.outside.min_mm,leather.outside.max_mm';
const table = (name: string, separator = ',') =>
  `${HEADER}\nA,165,240,28,1,2\n${name},165,240,28,1,2\nC,165,240,28,1,2\n`.replaceAll(',', separator);

describe('a file that cannot be read', () => {
  const { folder, file, remove } = scratch('reading-');

  beforeAll(() => {
    symlinkSync('loop.json', join(folder, 'loop.json'));
  });
  afterAll(remove);

  const nowhere = () => [
    join(folder, 'loop.json'),
    join(folder, 'none.json'),
    join(file('plain', ''), 'inside.json'),
    // A file that is there, may be opened, and cannot be read, by root neither.
    ...(existsSync('/proc/self/mem') ? ['/proc/self/mem'] : []),
  ];

  test.each(COMMANDS)('is bad input of %s, named with its place', async (name) => {
    for (const path of nowhere()) {
      const { status, stdout, stderr } = await run(name, [path]);
      expect(status).toBe(2);
      expect(stdout).toBe('');
      expect(lines(stderr)).toHaveLength(1);
      expect(stderr).toMatch(/^\(file\): got .+; allowed: .+; .+\n$/);
      expect(stderr).toContain(path);
    }
  });

  test('is bad input where covers or books stand in it', async () => {
    const books = file('books.csv', 'name,book.width_mm\n');
    for (const path of nowhere())
      for (const words of [
        ['--covers', path, '--books', books],
        ['--covers', file('covers.json', '{}'), '--books', path],
      ])
        expect((await run('catalogue', words)).status).toBe(2);
  });

  test('is one bad row of a folder', async () => {
    const jobs = join(folder, 'jobs');
    mkdirSync(join(jobs, 'folder.json'), { recursive: true });
    symlinkSync('loop.json', join(jobs, 'loop.json'));
    if (existsSync('/dev/zero')) symlinkSync('/dev/zero', join(jobs, 'endless.json'));
    file('jobs/whole.json', named('Whole'));
    const { status, stdout, stderr } = await run('catalogue', [jobs]);
    expect(status).toBe(2);
    expect(JSON.parse(stdout).source).toBe('whole.json');
    expect(stderr).toMatch(/^loop\.json: \(file\): got /m);
    expect(stderr).toMatch(/^folder\.json: \(file\): got /m);
    if (existsSync('/dev/zero')) expect(stderr).toMatch(/^endless\.json: \(file\): got /m);
  });
});

test('a folder without jobs is bad input', async () => {
  const { folder, file, remove } = scratch('empty-');
  file('notes.txt', 'nothing here');
  for (const [name, ...words] of [['catalogue'], ['validate'], ['sheets', '--out', join(folder, 'sheets')]] as const) {
    const { status, stdout, stderr } = await run(name, [folder, ...words]);
    expect({ status, stdout }).toEqual({ status: 2, stdout: '' });
    expect(stderr).toMatch(/^\(file\): got no job files in .+; allowed: .+; .+\n$/);
  }
  remove();
});

describe('the bytes of a text', () => {
  const { folder, file, remove } = scratch('bytes-');
  afterAll(remove);
  const NAME = 'Ναυτικό ημερολόγιο, Żródła';

  test.each(['little', 'big'] as const)('in UTF-16 with its mark, %s end first, read as in UTF-8', async (order) => {
    const [short, wide] = [file('8.json', named(NAME)), file('16.json', utf16(named(NAME), order))];
    expect((await run('fit', ['--quick', wide])).stdout).toBe((await run('fit', ['--quick', short])).stdout);
    expect(await run('validate', [wide])).toMatchObject({ status: 0, stderr: '' });
    const rows = table(`"${NAME}"`);
    const read = await run('catalogue', ['-'], utf16(rows, order));
    expect(read).toMatchObject({ status: 0, stderr: '3 done, 0 bad, output complete\n' });
    expect(read.stdout).toBe((await run('catalogue', ['-'], rows)).stdout);
  });

  test('in Latin-1 are refused by their place, not made up for', async () => {
    const path = file('latin.json', Buffer.from(named('Cahier de mar\u00e9e'), 'latin1'));
    const at = named('Cahier de mar').indexOf('mar') + 3;
    for (const name of ['fit', 'validate']) {
      const { status, stdout, stderr } = await run(name, [path]);
      expect({ status, stdout }).toEqual({ status: 2, stdout: '' });
      expect(stderr).toMatch(/^\(file\): got .*0xE9.*; allowed: .*UTF-8.*; .+\n$/);
      expect(stderr).toContain(`byte ${at + 1}`);
    }
    expect((await run('catalogue', [folder])).stderr).toContain('latin.json: (file): got ');
  });

  test('in Latin-1 cost a table only their own rows', async () => {
    const { status, stdout, stderr } = await run(
      'catalogue',
      ['-'],
      Buffer.from(table('Cahier de mar\u00e9e'), 'latin1'),
    );
    expect(status).toBe(2);
    expect(lines(stdout).map((line) => JSON.parse(line).job.name)).toEqual(['A', 'C']);
    expect(stderr).toMatch(/^line 3: \(row\): got .*0xE9.*; allowed: .*UTF-8.*; .+\n/);
  });

  test('with a U+0000 among them are refused, however it is written', async () => {
    for (const text of [named('Tide\u0000ledger'), named('x').replace('"x"', '"Tide\0ledger"')]) {
      const { status, stderr } = await run('fit', ['-'], text);
      expect(status).toBe(2);
      expect(stderr).toMatch(/^\(file\): got .*U\+0000.*; allowed: .+; .+\n$/);
    }
    expect(await run('fit', ['--quick', '-'], named('a backslash, then \\u0000'))).toMatchObject({
      status: 0,
      stderr: '',
    });
    const { status, stdout, stderr } = await run('catalogue', ['-'], table('Tide\0ledger'));
    expect(status).toBe(2);
    expect(lines(stdout)).toHaveLength(2);
    expect(stderr).toMatch(/^line 3: \(row\): got .*U\+0000.*; allowed: .+; .+\n/);
  });

  test('of a character that JSON writes as an escape and that is none are refused by their place, in every document', async () => {
    const books = file('books.csv', 'name,book.width_mm,book.height_mm,book.thickness_mm\nA,165,240,28\n');
    const job = file('job.json', named('A'));
    for (const [written, got] of [
      ['\\u0000', 'U+0000, written \\u0000'],
      ['\\ud800', 'half a character, written \\ud800'],
      ['\\uDC00', 'half a character, written \\uDC00'],
      ['\\ud83d\\ude00\\ude00', 'half a character, written \\ude00'],
      ['\\\\\\ud83dx', 'half a character, written \\ud83d'],
    ] as const) {
      const path = file('escape.json', `{"name": "${written}"}`);
      for (const [name, ...words] of [
        ['fit', path],
        ['validate', path],
        ['model', path, '--out', join(folder, 'x.glb')],
        ['sheets', path, '--out', folder],
        ['sheets', job, '--profile', path, '--out', folder],
        ['catalogue', '--covers', path, '--books', books],
      ] as const) {
        const { status, stdout, stderr } = await run(name, words);
        expect({ status, stdout }).toEqual({ status: 2, stdout: '' });
        const at = 11 + written.lastIndexOf('\\');
        expect(stderr).toMatch(/^\(file\): got .*; allowed: .+; .+\n$/);
        expect(stderr).toContain(`${got} at character ${at}: ${path}; `);
      }
    }
    // A pair is a character, and a backslash before it makes it text.
    for (const written of ['\\ud83d\\ude00', '\\\\ud800', '\\\\u0000'])
      expect((await run('validate', ['-'], named('x').replace('"x"', `"${written}"`))).stderr).toBe('');
  });

  test('in UTF-16 without its mark are refused', async () => {
    const bytes = utf16(table('B'), 'little').subarray(2);
    const { status, stdout, stderr } = await run('catalogue', ['-'], bytes);
    expect({ status, stdout }).toEqual({ status: 2, stdout: '' });
    expect(stderr).toContain('UTF-16');
  });

  test('in UTF-16 that breaks off are refused', async () => {
    const { status, stderr } = await run('catalogue', ['-'], utf16(table('B'), 'big').subarray(0, -1));
    expect(status).toBe(2);
    expect(stderr).toMatch(/\(row\): got .*UTF-16.*; allowed: .+; .+\n/);
    expect((await run('fit', ['-'], utf16(named('x'), 'little').subarray(0, -1))).status).toBe(2);
  });
});
