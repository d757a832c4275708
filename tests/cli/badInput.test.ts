import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import tideLedger from '../../public/jobs/tide-ledger.json' with { type: 'json' };
import { type Report, reportSchema } from '../../src/core/report/reportSchema.ts';
import { nth } from '../nth.ts';
import { build, lines, run, runProcess, scratch } from './commandLine.ts';

/** The report on a line of output. */
const reportOf = (text: string): Report => reportSchema.parse(JSON.parse(text));

type Change = readonly [path: string, value: unknown];

/** The tide ledger's document with one value set, or taken out where the value is undefined. */
function changed(...changes: Change[]): string {
  const document = structuredClone(tideLedger) as Record<string, unknown>;
  for (const [path, value] of changes) {
    const keys = path.split('.');
    let place = document;
    for (const key of keys.slice(0, -1)) {
      place[key] ??= {};
      place = place[key] as Record<string, unknown>;
    }
    const last = nth(keys, keys.length - 1);
    if (value === undefined) delete place[last];
    else place[last] = value;
  }
  return JSON.stringify(document);
}

/** What is wrong, the text of the file, and the path that the error has to name. */
const BAD: readonly (readonly [what: string, text: string, path: string])[] = [
  ['a text for a number', changed(['book.width_mm', '165']), 'book.width_mm'],
  ['a truth value for a number', changed(['book.height_mm', true]), 'book.height_mm'],
  ['null for a measure', changed(['book.thickness_mm', null]), 'book.thickness_mm'],
  ['a list for a number', changed(['book.width_mm', [165]]), 'book.width_mm'],
  ['an object for a number', changed(['book.width_mm', { mm: 165 }]), 'book.width_mm'],
  ['a missing measure', changed(['book.width_mm', undefined]), 'book.width_mm'],
  ['a missing book', changed(['book', undefined]), 'book'],
  ['a missing leather', changed(['leather', undefined]), 'leather'],
  ['a missing thick end', changed(['leather.outside.max_mm', undefined]), 'leather.outside.max_mm'],
  ['a text for the book', changed(['book', 'tide ledger']), 'book'],
  ['a list for the leather', changed(['leather', []]), 'leather'],
  ['a negative width', changed(['book.width_mm', -165]), 'book.width_mm'],
  ['zero thickness', changed(['book.thickness_mm', 0]), 'book.thickness_mm'],
  ['a negative leather', changed(['leather.outside.min_mm', -1]), 'leather.outside.min_mm'],
  ['a negative ease', changed(['ease.head_mm', -0.5]), 'ease.head_mm'],
  ['a negative error', changed(['book.measured.error_mm', -1]), 'book.measured.error_mm'],
  ['a width of 14 m', changed(['book.width_mm', 14000]), 'book.width_mm'],
  ['a huge number', changed(['book.height_mm', 1e300]), 'book.height_mm'],
  ['a number beyond all range', '{"format":"coverwright-job","version":1,"book":{"width_mm":1e999}}', 'book.width_mm'],
  ['a pitch of 0.1 mm', changed(['seam.pitch_mm', 0.1]), 'seam.pitch_mm'],
  ['a neutral fraction of 2', changed(['leather.outside.neutral', 2]), 'leather.outside.neutral'],
  ['a fold-back of 400 degrees', changed(['book.foldBack_deg', 400]), 'book.foldBack_deg'],
  ['NaN, which JSON does not know', changed().replace('165', 'NaN'), '(file)'],
  ['Infinity, which JSON does not know', changed().replace('165', 'Infinity'), '(file)'],
  ['min over max', changed(['leather.outside.min_mm', 3], ['leather.outside.max_mm', 2]), 'leather.outside.min_mm'],
  [
    'skiving to more than there is',
    changed(['leather.outside.foldThickness_mm', 5]),
    'leather.outside.foldThickness_mm',
  ],
  ['a rise on a flat back', changed(['book.spine.rise_mm', 4]), 'book.spine.rise_mm'],
  ['a rise over half the thickness', changed(['book.spine', { shape: 'rounded', rise_mm: 20 }]), 'book.spine.rise_mm'],
  [
    'boards thicker than the book',
    changed(['book.boardThickness_mm', 12], ['book.thickness_mm', 20]),
    'book.boardThickness_mm',
  ],
  ['an edge radius over half the thickness', changed(['book.cornerRadius_mm', 20]), 'book.cornerRadius_mm'],
  ['a style of the other seam', changed(['seam.style', 'saddle']), 'seam.style'],
  [
    'a height lost in its margins',
    changed(['pattern.outsideHeight_mm', 30], ['seam.edgeMargin_mm', 20]),
    'pattern.outsideHeight_mm',
  ],
  ['a negative doubt', changed(['doubts', { 'book.width_mm': { u: -1 } }]), 'doubts.book.width_mm.u'],
  ['a doubt of null', changed(['doubts', { 'book.width_mm': { u: null } }]), 'doubts.book.width_mm.u'],
  [
    'an unknown distribution',
    changed(['doubts', { 'book.width_mm': { distribution: 'odd' } }]),
    'doubts.book.width_mm.distribution',
  ],
  ['a doubt of nothing known', changed(['doubts', { 'book.weight': { u: 1 } }]), 'doubts.book.weight'],
  [
    'a correlation beyond 1',
    changed(['correlations', [{ a: 'book.width_mm', b: 'book.height_mm', r: 2 }]]),
    'correlations.0.r',
  ],
  ['a wished share of all', changed(['ease', { share: 1 }]), 'ease.share'],
  ['an unknown kind', changed(['book.kind', 'scroll']), 'book.kind'],
  ['an unknown seam', changed(['seam.method', 'glue']), 'seam.method'],
  ['another format', changed(['format', 'another']), 'format'],
  ['a version to come', changed(['version', 99]), 'version'],
  ['an unknown field at the top', changed(['colour', 'red']), 'colour'],
  ['an unknown field deep down', changed(['book.spine.raise_mm', 3]), 'book.spine.raise_mm'],
  ['a misspelt field', changed(['book.widht_mm', 165]), 'book.widht_mm'],
  ['a name of a thousand letters', changed(['name', 'x'.repeat(1000)]), 'name'],
  ['an empty file', '', '(file)'],
  ['white space only', ' \n\t ', '(file)'],
  ['not JSON', 'width: 165', '(file)'],
  ['JSON cut off in the middle', changed().slice(0, 120), '(file)'],
  ['a bare number', '42', '(document)'],
  ['a bare list', '[]', '(document)'],
  ['null', 'null', '(document)'],
  ['nesting 50,000 deep', '['.repeat(50_000) + ']'.repeat(50_000), '(document)'],
  ['nesting deep in a field', changed().replace('165', `${'[['.repeat(5000)}${']]'.repeat(5000)}`), 'book.width_mm'],
  ['a 10 MB file', `${changed()}${' '.repeat(10_000_000)}`, '(file)'],
];

describe('the command line', () => {
  const { file, remove } = scratch('fit-');
  afterAll(remove);
  const runFit = (words: readonly string[], input?: string) => run('fit', words, input);

  test.each(BAD)('refuses %s with exit 2, the path named, and no stack trace', async (_what, text, path) => {
    const { status, stdout, stderr } = await runFit([file('bad.json', text)]);
    expect(status).toBe(2);
    expect(stdout).toBe('');
    expect(lines(stderr).map((line) => line.split(': ')[0])).toContain(path);
    for (const line of lines(stderr)) expect(line).toMatch(/^\S+: got .+; allowed: .+; .+/);
    expect(stderr).not.toMatch(/\n\s+at |node_modules|Error:/);
  });

  test('names every error of a file at once', async () => {
    const { stderr } = await runFit([
      file(
        'bad.json',
        changed(['book.width_mm', 'x'], ['book.height_mm', -1], ['nonsense', 1], ['leather.outside.min_mm', 3]),
      ),
    ]);
    expect(
      lines(stderr)
        .map((line) => line.split(': ')[0])
        .sort(),
    ).toEqual(['book.height_mm', 'book.width_mm', 'leather.outside.min_mm', 'nonsense']);
  });

  test('keeps each error on one line whatever a file holds', async () => {
    const { stderr } = await runFit([file('bad.json', changed(['a\nb\u2028c: d', 1]))]);
    expect(stderr).toMatch(/^.+\n$/);
  });

  test('reads standard input, and prints nothing but the report', async () => {
    const { status, stdout, stderr } = await runFit(['-'], changed());
    expect(status).toBe(0);
    expect(stderr).toBe('');
    expect(JSON.parse(stdout)).toMatchObject({ format: 'coverwright-report', verdict: 'fits' });
  });

  test('exits 1 when a job was computed and fails', async () => {
    const { status, stdout } = await runFit(['--quick', '-'], changed(['pattern.outsideWidth_mm', 360]));
    expect(status).toBe(1);
    expect(JSON.parse(stdout).verdict).toBe('fails');
  });

  test('prints one report a line for several files, and still all good ones when one is bad', async () => {
    const good = file('good.json', changed());
    const { status, stdout, stderr } = await runFit(['--quick', good, file('bad.json', '{'), good]);
    expect(status).toBe(2);
    expect(lines(stdout).map((line) => reportOf(line).verdict)).toEqual(['fits', 'fits']);
    expect(stderr).toContain('bad.json: (file): got ');
  });

  test.each([
    [[], '(files)'],
    [['--nonsense', 'x.json'], '--nonsense'],
    [['--units', 'furlong', 'x.json'], '--units'],
    [['no-such-file.json'], '(file)'],
    [['.'], '(file)'],
  ])('refuses the words %j with exit 2', async (words, path) => {
    const { status, stderr } = await runFit(words);
    expect(status).toBe(2);
    expect(stderr.startsWith(`${path}: got `)).toBe(true);
  });

  test('leaves springy model and trials out where it is told to, by either word, and keeps verdict and rows', async () => {
    const runs = await Promise.all(
      [['-'], ['--quick', '-'], ['--no-strip', '-']].map((words) => runFit(words, changed())),
    );
    const quick = nth(runs, 1);
    const [whole, short] = [reportOf(nth(runs, 0).stdout), reportOf(quick.stdout)];
    expect(whole.fit.nominal).toHaveProperty('strip');
    expect(whole.doubt.trials).toMatchObject({ draws: 2000, differs: '' });
    expect(short.fit.nominal).not.toHaveProperty('strip');
    expect(short.doubt).not.toHaveProperty('trials');
    expect([whole.verdict, whole.headline, whole.doubt.chance]).toEqual([
      short.verdict,
      short.headline,
      short.doubt.chance,
    ]);
    expect(nth(runs, 2)).toMatchObject({ status: 0, stderr: '', stdout: quick.stdout });
  });

  test('works a job that names no unit in inches when asked, and one that does in its own', async () => {
    const asked = reportOf((await runFit(['--quick', '--units', 'in', '-'], changed())).stdout);
    expect(asked.headline).toMatch(/gap \d+\/\d+ to \d+\/\d+ in/);
    expect(asked.pattern.outside.width_mm / 1.5875).toBeCloseTo(Math.round(asked.pattern.outside.width_mm / 1.5875), 6);
    const own = reportOf((await runFit(['--quick', '--units', 'in', '-'], changed(['work.units', 'mm']))).stdout);
    expect(own.headline).toMatch(/gap [\d.]+( to [\d.]+)? mm/);
    expect(own.pattern).toEqual(reportOf((await runFit(['--quick', '-'], changed())).stdout).pattern);
  });

  test('helps', async () => {
    expect(await runFit(['--help'])).toMatchObject({ status: 0, stderr: '' });
  });
});

describe('a process of its own', () => {
  const { file, remove } = scratch('process-');
  beforeAll(build);
  afterAll(remove);

  test.each(['fit', 'validate', 'catalogue'])('ends as the command %s does, and writes the same', async (name) => {
    const good = name === 'catalogue' ? ['-'] : [file('good.json', changed()), ...(name === 'fit' ? ['--quick'] : [])];
    const table = 'name,book.width_mm,book.height_mm,book.thickness_mm,leather.outside\nA,165,240,28,4-5 oz\n';
    for (const words of [good, ['--help'], ['--nonsense'], [file('bad.json', '{')]]) {
      const { status, stdout, stderr } = runProcess(name, words, table);
      expect({ status, stdout, stderr }).toEqual(await run(name, words, table));
    }
  });

  test('exits 1 when a job was computed and fails', () => {
    expect(runProcess('fit', ['--quick', '-'], changed(['pattern.outsideWidth_mm', 360])).status).toBe(1);
  });
});

test.each(['fot', 'toString', ''])('refuses %j, which is no command, and names those that are', (name) => {
  const { status, stdout, stderr } = runProcess(name, ['job.json']);
  expect(status).toBe(2);
  expect(stdout).toBe('');
  expect(lines(stderr)).toEqual([
    `(command): got ${name || 'nothing'}; allowed: fit, validate, catalogue, model, sheets; name one of them`,
  ]);
});
