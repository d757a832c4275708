import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { fitReport } from '../../../src/core/fitReport.ts';
import { EXAMPLE_JOBS } from '../../../src/core/job/examples.ts';
import { soundJob } from '../../jobArbitrary.ts';
import { build, lines, run as runCommand, runProcess, scratch } from '../commandLine.ts';

const HEADER =
  'name,book.width_mm,book.height_mm,book.thickness_mm,leather.outside.min_mm,leather.outside.max_mm,pattern.outsideWidth_mm';

describe('the catalogue command', () => {
  const { folder, file, remove } = scratch('catalogue-');
  beforeAll(build);
  afterAll(remove);
  const run = (words: readonly string[], input?: string) => runCommand('catalogue', words, input);

  test('prints for each row the report that the job has alone', async () => {
    const { status, stdout, stderr } = await run(['-'], `${HEADER}\nTide ledger,165,240,28,1.5875,1.984375,\n`);
    expect(stderr).toBe('1 done, 0 bad, output complete\n');
    expect(status).toBe(0);
    const { source, ...report } = JSON.parse(stdout);
    const job = soundJob({
      format: 'coverwright-job',
      version: 3,
      name: 'Tide ledger',
      book: { width_mm: 165, height_mm: 240, thickness_mm: 28 },
      leather: { outside: { min_mm: 1.5875, max_mm: 1.984375 } },
    });
    expect(source).toBe('line 2');
    expect(report).toEqual(JSON.parse(JSON.stringify(fitReport(job))));
  });

  test('names bad rows by line, leaves them out, and exits 2', async () => {
    const rows = [HEADER, 'A,165,240,28,1,2,', 'B,x,240,28,1,2,', 'C,165', 'D,165,-1,28,3,2,', 'E,165,240,28,1,2,'];
    for (const cores of ['1', '2']) {
      const { status, stdout, stderr } = runProcess('catalogue', ['-', '--cores', cores], `${rows.join('\n')}\n`);
      expect(status).toBe(2);
      expect(lines(stdout).map((line) => JSON.parse(line).job.name)).toEqual(['A', 'E']);
      const complaints = lines(stderr);
      expect(complaints.pop()).toBe('2 done, 3 bad, output complete');
      expect(complaints.map((line) => line.split(': ').slice(0, 2))).toEqual([
        ['line 3', 'book.width_mm'],
        ['line 4', '(row)'],
        ['line 5', 'book.height_mm'],
        ['line 5', 'leather.outside.min_mm'],
      ]);
      for (const line of complaints) expect(line).toMatch(/^line \d+: \S+: got .+; allowed: .+; .+/);
    }
  });

  test('exits 1 when a job fails, and says so in its row', async () => {
    const { status, stdout } = await run(['-', '--to', 'csv'], `${HEADER}\nA,165,240,28,1,2,340\nB,165,240,28,1,2,\n`);
    expect(status).toBe(1);
    expect(lines(stdout).map((line) => line.split(',')[2])).toEqual(['verdict', 'fails', 'fits']);
  });

  test('gives both chances of a report, by the quick reckoning and without trials, in percent, rounded down', async () => {
    const table = `${HEADER}\nA,165,240,28,1,2,\n`;
    const { doubt } = JSON.parse((await run(['-'], table)).stdout);
    expect(doubt).not.toHaveProperty('trials');
    const [names, cells] = lines((await run(['-', '--to', 'csv'], table)).stdout).map((line) => line.split(','));
    for (const name of ['closes', 'fits']) {
      const told = Number(cells?.[names?.indexOf(`chance.${name}_percent`) ?? -1]);
      expect(told).toBeLessThanOrEqual(100 * doubt.chance[name]);
      expect(told).toBeGreaterThan(100 * doubt.chance[name] - 1e-2);
    }
  });

  test('gives the same output on any number of cores', async () => {
    const rows = Array.from(
      { length: 1500 },
      (_, i) => `Book ${i},${100 + (i % 97)},${150 + (i % 53)},${i % 40},1,1.6,`,
    );
    const path = file('many.csv', `${HEADER}\n${rows.join('\n')}\n`);
    for (const to of ['csv', 'jsonl']) {
      const one = await run([path, '--to', to, '--cores', '1']);
      const three = runProcess('catalogue', [path, '--to', to, '--cores', '3']);
      expect(one.stderr.length).toBeGreaterThan(0); // books of no thickness
      expect(lines(one.stdout).length).toBeGreaterThan(1000);
      expect(three.stdout).toBe(one.stdout);
      expect(three.stderr).toBe(one.stderr);
      expect(three.status).toBe(one.status);
    }
  });

  test('reads lengths and weights as they are typed on the page, and refuses what could be read two ways', async () => {
    const expected = fitReport(
      soundJob({
        format: 'coverwright-job',
        version: 3,
        name: 'A',
        book: { width_mm: 165.5, height_mm: 215.9, thickness_mm: 28 },
        leather: { outside: { min_mm: 1.5875, max_mm: 1.984375 } },
      }),
    );
    const typed = 'name,book.width_mm,book.height_mm,book.thickness_mm,leather.outside';
    for (const table of [
      `${HEADER}\nA,165.5,8 1/2 in,2.8 cm,4 oz,5 oz,\n`,
      `${HEADER}\nA,"165,5","8-1/2""","28,0",4 oz,"1,984375",\n`,
      `${HEADER.replaceAll(',', ';')}\nA;165,5;8 1/2;28;4 oz;5 oz;\n`,
      `${typed}\nA,165.5,215.9 mm,28,4-5 oz\n`,
      `${typed.replaceAll(',', ';')}\nA;165,5;8½ in;2,8 cm;4 to 5 oz\n`,
    ]) {
      const { status, stdout, stderr } = await run(['-'], table);
      expect({ status, stderr }).toEqual({ status: 0, stderr: '1 done, 0 bad, output complete\n' });
      const { source: _source, ...report } = JSON.parse(stdout);
      expect(report).toEqual(JSON.parse(JSON.stringify(expected)));
    }
    const bad = `${typed.replaceAll(',', ';')}\nA;1,500;8 ft;28 oz;4-5\nB;165;240;x;\n`;
    const { status, stdout, stderr } = await run(['-'], bad);
    expect({ status, stdout }).toEqual({ status: 2, stdout: '' });
    const complaints = lines(stderr);
    expect(complaints.map((line) => line.split(': ').slice(0, 2).join(' '))).toEqual([
      'line 2 book.width_mm',
      'line 2 book.height_mm',
      'line 2 book.thickness_mm',
      'line 2 leather.outside',
      'line 3 book.thickness_mm',
      'line 3 leather',
      '0 done, 2 bad, output complete',
    ]);
    expect(complaints[0]).toMatch(/got "1,500"; allowed: .+; Write 1\.500 or 1500: the comma could mean either\.$/);
    expect(complaints[1]).toContain('Feet are not read');
    expect(complaints[3]).toContain('Add the unit, oz or mm.');
  });

  test('reads books for ready-made covers as they are typed too', async () => {
    const covers = file('covers.json', JSON.stringify(COVERS));
    const match = (books: string) => run(['--covers', covers, '--books', '-'], books);
    const typed = await match(`${BOOKS.replaceAll(',', ';')}\nA;165,5;8 1/2 in;28 mm\nB;1,500;2;3\n`);
    expect(typed.status).toBe(2);
    expect(typed.stdout).toBe((await match(`${BOOKS}\nA,165.5,215.9,28\n`)).stdout);
    expect(typed.stderr).toContain('line 3: book.width_mm: got "1,500"; ');
    expect(typed.stderr).toContain('the comma could mean either');
  });

  test('takes the jobs of a folder in the order of their names', async () => {
    const jobs = join(folder, 'jobs');
    mkdirSync(jobs);
    EXAMPLE_JOBS.forEach(({ document }, i) => {
      file(`jobs/${9 - i}.json`, JSON.stringify(document));
    });
    file('jobs/5.json', '{');
    file('jobs/notes.txt', 'not a job');
    const { status, stdout, stderr } = await run([jobs]);
    expect(status).toBe(2);
    expect(lines(stdout).map((line) => JSON.parse(line).source)).toEqual(['7.json', '8.json', '9.json']);
    expect(stderr).toMatch(/^5\.json: \(file\): got /);
  });

  test('writes no cell that a spreadsheet would run', async () => {
    const { stdout } = await run(['-', '--to', 'csv'], `${HEADER}\n"=HYPERLINK(""x"")",165,240,28,1,2,\n`);
    expect(stdout).toContain(`"'=HYPERLINK(""x"")"`);
  });

  const COVERS = {
    format: 'coverwright-covers',
    version: 1,
    covers: [
      {
        name: 'Small',
        leather: { outside: { min_mm: 1.2, max_mm: 1.6 } },
        pockets: { depth_mm: 67 },
        pattern: { outsideWidth_mm: 271, outsideHeight_mm: 201 },
      },
      {
        name: 'Large',
        leather: { outside: { min_mm: 1.5875, max_mm: 1.984375 } },
        seam: { method: 'lacing' },
        pockets: { depth_mm: 84 },
        pattern: { outsideWidth_mm: 385, outsideHeight_mm: 262 },
      },
    ],
  };
  const BOOKS = 'name,book.width_mm,book.height_mm,book.thickness_mm';

  test('finds the ready-made cover for each book, and exits 1 when a book has none', async () => {
    const covers = file('covers.json', JSON.stringify(COVERS));
    const books = file('books.csv', `${BOOKS}\nTide ledger,165,240,28\nShore guide,118,186,17\nAtlas,300,400,30\n`);
    const { status, stdout } = await run(['--covers', covers, '--books', books]);
    expect(status).toBe(1);
    expect(
      lines(stdout)
        .map((line) => JSON.parse(line))
        .map(({ book, best }) => [book, best?.cover ?? null]),
    ).toEqual([
      ['Tide ledger', 'Large'],
      ['Shore guide', 'Small'],
      ['Atlas', null],
    ]);
    const table = await run(['--covers', covers, '--books', books, '--to', 'csv']);
    expect(new Set(lines(table.stdout).map((line) => line.split(',').length)).size).toBe(1);
  });

  test('refuses covers that are not sound and columns that are no book fields', async () => {
    const broken = file('broken.json', JSON.stringify({ ...COVERS, covers: [{ name: 'x' }] }));
    const covers = file('covers.json', JSON.stringify(COVERS));
    const books = file('books.csv', `${BOOKS}\n`);
    expect(await run(['--covers', broken, '--books', books])).toMatchObject({ status: 2, stdout: '' });
    expect((await run(['--covers', broken, '--books', books])).stderr).toContain('covers.0.leather: got nothing');
    const { status, stderr } = await run(['--covers', covers, '--books', '-'], 'name,seam.method\n');
    expect(status).toBe(2);
    expect(stderr).toMatch(/^seam\.method: got /);
  });

  test.each([
    [[], '(files)'],
    [['a.csv', 'b.csv'], '(files)'],
    [['no-such-file.csv'], '(file)'],
    [['--nonsense', 'a.csv'], '--nonsense'],
    [['--to', 'xml', 'a.csv'], '--to'],
    [['--units', 'furlong', 'a.csv'], '--units'],
    [['--cores', '0', 'a.csv'], '--cores'],
    [['--cores', '1.5', 'a.csv'], '--cores'],
    [['--max-gap', 'x', 'a.csv'], '--max-gap'],
    [['--covers', 'a.json'], '--books'],
    [['--books', 'a.csv'], '--covers'],
  ])('refuses the words %j with exit 2', async (words, path) => {
    const { status, stdout, stderr } = await run(words);
    expect(status).toBe(2);
    expect(stdout).toBe('');
    expect(stderr.startsWith(`${path}: got `)).toBe(true);
  });

  test.each([
    ['an empty table', '', '(file)'],
    ['a misspelt column', 'book.widht_mm\n1\n', 'book.widht_mm'],
    ['a first row that never ends', '"name\n', 'line 1'],
  ])('refuses %s with exit 2', async (_what, text, path) => {
    const { status, stdout, stderr } = await run(['-'], text);
    expect(status).toBe(2);
    expect(stdout).toBe('');
    expect(stderr.startsWith(`${path}: got `)).toBe(true);
  });

  test('helps', async () => {
    expect(await run(['--help'])).toMatchObject({ status: 0, stderr: '' });
  });
});
