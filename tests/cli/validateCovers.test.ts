import { afterAll, describe, expect, test } from 'vitest';
import { coverDesign } from '../../src/core/fold/coverDesign.ts';
import { coverLesson } from '../../src/core/learning/coverLesson.ts';
import { defined } from '../defined.ts';
import { soundJob } from '../jobArbitrary.ts';
import { nth } from '../nth.ts';
import { lines, run, scratch } from './commandLine.ts';

const OUTCOME = `name,book.width_mm,book.height_mm,book.thickness_mm,leather.outside,outcome.front_mm,outcome.back_mm,outcome.head_mm,outcome.tail_mm
ledger,165,240,28,4-5 oz,3.1,2.6,1.9,1.4
diary,120,180,20,4-5 oz,,,0.5,0.9
unread,120,180,20,4-5 oz,,,,
`;

const PLAIN = `id,binding,book_height,book_width,book_thickness,unit,leather,pockets,cut_width,cut_height,gap_front,gap_back,gap_head,gap_tail
a,hardback,240,165,28,mm,4-5 oz,two,377,262,2,1.5,-0.5,1
b,paperback,8 1/4,5 1/4,7/8,in,1/16 in,turned 3,18-18 1/2,9,,,,
c,,180,120,,mm,,none,,190,,,,
`;

const rowsOf = (text: string) => lines(text).map((row) => row.split(','));

describe('the validate command on covers that were made', () => {
  const { file, remove } = scratch('validate-covers-');
  afterAll(remove);

  test('compares what was read with what the job foretold', async () => {
    const { status, stdout, stderr } = await run('validate', [file('made.csv', OUTCOME), '--to', 'csv']);
    expect({ status, stderr }).toEqual({ status: 0, stderr: '' });
    const job = soundJob({
      format: 'coverwright-job',
      version: 3,
      name: 'ledger',
      book: { width_mm: 165, height_mm: 240, thickness_mm: 28 },
      leather: { outside: { min_mm: 4 * (25.4 / 64), max_mm: 5 * (25.4 / 64) } },
      outcome: { front_mm: 3.1, back_mm: 2.6, head_mm: 1.9, tail_mm: 1.4 },
    });
    const { evidence } = defined(coverLesson(coverDesign(job), { job: 'a', name: 'a' }));
    const rows = rowsOf(stdout);
    const ledger = rows.filter(([row, cover]) => row === 'length' && cover === 'ledger');
    expect(ledger.map((row) => row[3])).toEqual(['fore-edges', 'head and tail']);
    ledger.forEach((row, i) => {
      const { read_mm, expected_mm, foretold_mm } = nth(evidence, i);
      expect(Number(row[5])).toBeCloseTo(read_mm, 3);
      expect(Number(row[6])).toBeCloseTo(expected_mm, 2);
      expect(Number(row[9])).toBeCloseTo(1.95996 * foretold_mm, 2);
    });
    const all = defined(rows.find(([row]) => row === 'all'));
    const off = rows.filter(([row]) => row === 'length').map((row) => Number(row[7]));
    expect(off).toHaveLength(3);
    expect(Number(all[7])).toBeCloseTo(off.reduce((sum, each) => sum + each, 0) / 3, 2);
    expect(Number(all[8])).toBeCloseTo(Math.sqrt(off.reduce((sum, each) => sum + each * each, 0) / 3), 2);
  });

  test('takes plain columns, and says what it left out', async () => {
    const { status, stdout } = await run('validate', [file('plain.csv', PLAIN)]);
    expect(status).toBe(0);
    expect(stdout).toMatch(/^4 lengths of 2 covers/);
    expect(stdout).toMatch(/^a +fore-edges +3\.5 /m);
    expect(stdout).toMatch(/^a +head and tail +0\.5 /m);
    expect(stdout).toMatch(/^b +cut width +463\.[56] /m);
    expect(stdout).toContain('line 4: a cover without two pockets');
  });

  test('draws them, the mark hollow where it lies outside', async () => {
    const { stdout } = await run('validate', [file('drawn.csv', PLAIN), '--to', 'svg']);
    expect(stdout).toMatch(/^<svg [^>]*>\n<title>4 lengths of finished covers/);
    expect(stdout.match(/<title>a, fore-edges<\/title>/g)).toHaveLength(1);
  });

  test('gives an empty table that it takes', async () => {
    const { stdout } = await run('validate', ['--template']);
    expect((await run('validate', ['--table', '-'], stdout)).stdout).toMatch(/^0 lengths/);
  });

  test.each([
    ['id,cut_width,colour\n1,300,red\n', [], /^colour: /],
    ['id,cut_width,book_height\n1,wide,200\n', [], /^line 2: cut_width: got "wide"/m],
    ['outcome.front_mm,cut_width\n1,300\n', [], /^cut_width: /],
    ['book.width_mm\n120\n', ['--to', 'svg'], /./],
  ])('refuses %j %j with exit 2', async (text, words, said) => {
    const { status, stderr } = await run('validate', [file('bad.csv', text), ...words]);
    expect(status).toBe(2);
    expect(stderr).toMatch(said);
  });
});
