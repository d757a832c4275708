import { execFileSync, spawn, spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { build, lines, processWords, runInto, runProcess, scratch } from './commandLine.ts';

const TIDE_LEDGER = join(import.meta.dirname, '../../public/jobs/tide-ledger.json');
const HEADER = 'name,book.width_mm,book.height_mm,book.thickness_mm,leather.outside.min_mm,leather.outside.max_mm';
const TABLE = `${HEADER}\n${Array.from({ length: 600 }, (_, i) => `Book ${i},165,240,28,1.2,1.6\n`).join('')}`;

/** What a catalogue says in its last line of a full disk. */
const CUT = /^\d+ done, \d+ bad, output not complete: no space left on device, after .*; make room, then .*\n$/;

/** The commands, what they write more of than the small disk holds, and an exit code of theirs that is no failure. */
const COMMANDS: readonly (readonly [name: string, words: readonly string[], input: string])[] = [
  ['fit', ['--quick', TIDE_LEDGER], ''],
  ['fit', ['--quick', TIDE_LEDGER, TIDE_LEDGER], ''],
  ['catalogue', ['-', '--to', 'csv', '--cores', '1'], TABLE],
  ['catalogue', ['-', '--to', 'csv', '--cores', '2'], TABLE],
];

describe('output that cannot be written', () => {
  const { folder, remove } = scratch('output-');
  const disk = join(folder, 'disk');
  let isMounted = false;

  beforeAll(() => {
    build();
    mkdirSync(disk);
    isMounted = spawnSync('mount', ['-t', 'tmpfs', '-o', 'size=8k', 'tmpfs', disk], { stdio: 'ignore' }).status === 0;
  });
  afterAll(() => {
    if (isMounted) execFileSync('umount', [disk]);
    remove();
  });

  test.skipIf(process.platform !== 'linux')('has a full disk to be tested on', () => {
    expect(isMounted || existsSync('/dev/full')).toBe(true);
  });

  test.for(COMMANDS)(
    'of %s %j on a disk that fills up: exit 4, and how far it got',
    ([name, words, input], { skip }) => {
      skip(!isMounted, 'no small disk may be mounted here');
      const path = join(disk, 'output');
      const { status, stderr } = runInto(path, name, words, input);
      expect(status).toBe(4);
      expect(lines(stderr)).toHaveLength(1);
      const written = readFileSync(path);
      expect(written.length).toBe(8192);
      const whole = written.filter((byte) => byte === 10).length;
      expect(stderr).toMatch(name === 'catalogue' ? CUT : /^\(output\): got no space left on device.*/);
      expect(stderr).toContain(`${written.length} bytes (${whole} whole ${whole === 1 ? 'line' : 'lines'})`);
    },
  );

  test.for([
    ['model', [TIDE_LEDGER, '--out', 'cover.glb']],
    ['sheets', [TIDE_LEDGER, '--to', 'pdf', '--out', '.']],
  ] as const)('of %s %j on a disk that fills up: exit 4, an older file left as it was', ([name, words], { skip }) => {
    skip(!isMounted, 'no small disk may be mounted here');
    const older = ['cover.glb', 'tide-ledger-card-a4.template.pdf'].map((file) => join(disk, file));
    rmSync(join(disk, 'output'), { force: true });
    for (const file of older) writeFileSync(file, 'older');
    const { status, stdout, stderr } = runProcess(name, words, '', disk);
    expect({ status, stdout }).toEqual({ status: 4, stdout: '' });
    expect(stderr).toMatch(/^\(output\): got no space left on device.*\n$/);
    for (const file of older) expect(readFileSync(file, 'utf8')).toBe('older');
    expect(readdirSync(disk)).toHaveLength(2);
  });

  test.for([
    ['fit', ['--quick', TIDE_LEDGER, TIDE_LEDGER, TIDE_LEDGER], ''],
    ['catalogue', ['-', '--to', 'csv'], TABLE],
    ['catalogue', ['-', '--to', 'csv', '--out', 'rows.csv'], TABLE],
    ['model', [TIDE_LEDGER, '--out', 'cover.glb'], ''],
    ['sheets', [TIDE_LEDGER, '--out', 'sheets'], ''],
    ['validate', ['-', '--table'], TABLE.replaceAll(',165,', ',x,')],
  ] as const)('of %s %j over the size that a file may have: exit 4', ([name, words, input], { skip }) => {
    skip(process.platform === 'win32', 'no limit is set here');
    const place = join(folder, 'limited');
    mkdirSync(place, { recursive: true });
    const limited = 'ulimit -f 16; "$0" "$@" >output 2>errors';
    const child = spawnSync('sh', ['-c', limited, process.execPath, ...processWords(name, words)], {
      cwd: place,
      input,
    });
    expect(child.status).toBe(4);
    const told = readFileSync(join(place, 'errors'), 'utf8');
    // Where standard error itself may not grow, the exit code says it.
    if (name !== 'validate')
      expect(told).toMatch(/^(\(output\): got|\d+ done, \d+ bad, output not complete:) file too large.*\n$/);
    expect(readdirSync(place).filter((file) => !/^(output|errors|sheets|rows\.csv\.(part|run))$/.test(file))).toEqual(
      [],
    );
  });

  test.for([
    ...COMMANDS,
    ['fit', ['--help'], ''],
    ['catalogue', ['--help'], ''],
    ['validate', ['--help'], ''],
  ] as const)('of %s %j on a full disk: exit 4, and one line on standard error', ([name, words, input], { skip }) => {
    skip(!existsSync('/dev/full'), 'there is no /dev/full here');
    const { status, stderr } = runInto('/dev/full', name, words, input);
    expect(status).toBe(4);
    expect(lines(stderr)).toHaveLength(1);
    expect(stderr).toMatch(/no space left on device, after 0 bytes /);
  });

  test('of errors, where standard error is full: exit 4', ({ skip }) => {
    skip(!existsSync('/dev/full'), 'there is no /dev/full here');
    for (const name of ['fit', 'catalogue', 'validate'])
      expect(
        spawnSync('sh', ['-c', '"$0" "$@" 2>/dev/full', process.execPath, ...processWords(name, ['no-such-file'])])
          .status,
      ).toBe(4);
  });

  test.each(COMMANDS)('of %s %j into a pipe that is shut: quiet, exit 0', async (name, words, input) => {
    const child = spawn(process.execPath, processWords(name, words));
    child.stdout.destroy();
    child.stdin.on('error', () => {});
    child.stdin.end(input);
    let stderr = '';
    child.stderr.on('data', (text) => {
      stderr += text;
    });
    const status = await new Promise((resolve) => child.on('close', resolve));
    expect({ status, stderr }).toEqual({ status: 0, stderr: '' });
  });

  test('is whole where nobody reads the messages any more', async () => {
    const out = join(folder, 'unheard.jsonl');
    const bad = TABLE.replaceAll(/^(Book \d*5),165/gm, '$1,x');
    const child = spawn(process.execPath, processWords('catalogue', ['-', '--out', out]));
    child.stderr.destroy();
    child.stdin.end(bad);
    const status = await new Promise((resolve) => child.on('close', resolve));
    expect(status).toBe(2);
    expect(readFileSync(out, 'utf8')).toBe(runProcess('catalogue', ['-'], bad).stdout);
  });

  test('is whole through a pipe whose reader is slow', async () => {
    const child = spawn(process.execPath, processWords('catalogue', ['-', '--cores', '2']));
    child.stdin.end(TABLE);
    let bytes = 0;
    for await (const chunk of child.stdout) {
      bytes += chunk.length;
      await new Promise((resolve) => setTimeout(resolve, 1));
    }
    expect(bytes).toBe(Buffer.byteLength(runProcess('catalogue', ['-'], TABLE).stdout));
  });
});
