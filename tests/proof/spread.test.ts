import { spawn, spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { build, lines, runProcess, scratch } from '../cli/commandLine.ts';
import { defined } from '../defined.ts';
import { proofSize } from './proofSize.ts';

const root = join(import.meta.dirname, '../..');
const readme = readFileSync(join(root, 'README.md'), 'utf8');

/** The recipes of the README, each as it stands there. */
const [, section] = readme.split('### A run over many machines\n');
const recipes = Array.from(defined(section).matchAll(/```sh\n(.*?)```/gs), ([, recipe]) => defined(recipe)).slice(0, 3);

const has = (tool: string): boolean => spawnSync('which', [tool]).status === 0;

const ROWS = proofSize(4000, 60);
const rows = Array.from({ length: ROWS }, (_, i) => ({
  name: i % 5 === 0 ? `Book ${i}, "large"` : `Book ${i}`,
  width: i % 7 === 3 ? 'x' : String(120 + (i % 90)),
  height: 180 + (i % 60),
  thickness: 10 + (i % 20),
  leather: i % 2 === 0 ? '4-5 oz' : '1.2-1.6 mm',
}));
const quoted = (text: string): string => `"${text.replaceAll('"', '""')}"`;
const table = [
  'name,book.width_mm,book.height_mm,book.thickness_mm,leather.outside',
  ...rows.map((row) => [quoted(row.name), row.width, row.height, row.thickness, row.leather].join(',')),
].join('\n');

describe('a run spread by other engines', () => {
  const { folder, file, remove } = scratch('spread-proof-');
  let whole = '';
  beforeAll(() => {
    build();
    whole = runProcess('catalogue', [file('jobs.csv', `${table}\n`)]).stdout;
  });
  afterAll(remove);

  /** A recipe run in the folder of this test, `npm` in the project's. */
  const script = (recipe: string): string => recipe.replaceAll('npm run', `npm run --prefix ${root}`);
  const shell = (recipe: string, env = {}) =>
    spawnSync('sh', ['-c', script(recipe)], { cwd: folder, encoding: 'utf8', env: { ...process.env, ...env } });
  const read = (name: string): string => readFileSync(join(folder, name), 'utf8');
  /** Reports are long: which rows there are says more than where two texts differ. */
  const expectWhole = (told: string): void => {
    const sources = (text: string): string[] => lines(text).map((line) => line.slice(0, 22));
    expect(sources(told)).toEqual(sources(whole));
    expect(told === whole).toBe(true);
  };

  test('there are three recipes', () => {
    expect(recipes.map((recipe) => /parallel|TASK|sqlite3/.exec(recipe)?.[0])).toEqual(['parallel', 'TASK', 'sqlite3']);
  });

  test.skipIf(!has('parallel'))('by GNU parallel over two workers, killed and begun again, row for row', async () => {
    const recipe = defined(recipes[0]);
    // A group of its own, so that all of it can be killed.
    const child = spawn('sh', ['-c', script(recipe)], { cwd: folder, detached: true, stdio: 'ignore' });
    const ended = new Promise((resolve) => child.on('exit', resolve));
    await setTimeout(proofSize(2500, 1500));
    try {
      process.kill(-defined(child.pid), 'SIGKILL');
    } catch {
      // A quick machine is done already.
    }
    await ended;
    shell(recipe);
    expectWhole(read('done.jsonl'));
    console.log(`GNU parallel: ${lines(whole).length} of ${ROWS} rows, as one run gives them`);
  });

  test('as the tasks of a job array, each started twice', () => {
    const parts = proofSize(16, 2);
    let joined = '';
    for (let task = 1; task <= parts; task++) {
      for (let time = 0; time < 2; time++)
        shell(defined(recipes[1]).replace('done-', 'task-'), { TASK: String(task), TASKS: String(parts) });
      joined += read(`task-${task}.jsonl`);
    }
    expectWhole(joined);
  });

  test.skipIf(!has('sqlite3'))('in the pipe of a database: as many rows as were sound, none twice', () => {
    const sql = rows.map(
      ({ name, width, height, thickness, leather }) =>
        `INSERT INTO books VALUES ('${name}', '${width}', ${height}, ${thickness}, '${leather}');`,
    );
    const made = spawnSync('sqlite3', [join(folder, 'books.db')], {
      input: `BEGIN; CREATE TABLE books (name, width, height, thickness, leather); ${sql.join('\n')} COMMIT;`,
      encoding: 'utf8',
    });
    expect(made.stderr).toBe('');
    shell(defined(recipes[2]));
    const told = spawnSync('sqlite3', [join(folder, 'books.db'), 'SELECT name FROM fits'], { encoding: 'utf8' });
    expect(lines(told.stdout)).toEqual(rows.filter(({ width }) => width !== 'x').map(({ name }) => name));
  });
});
