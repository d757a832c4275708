import { Readable } from 'node:stream';
import { expect, test } from 'vitest';
import { csvRows } from '../../../src/cli/catalogue/csvRows.ts';
import { RowSupply } from '../../../src/cli/catalogue/rowSupply.ts';

async function sources(supply: RowSupply): Promise<string[]> {
  const list: string[] = [];
  for await (const { source } of supply.rows) list.push(source);
  return list;
}

const diskError = Object.assign(new Error('EIO: i/o error, read'), { code: 'EIO', syscall: 'read' });

test('an input that cannot be read on gives the rows before, and the reason', async () => {
  async function* breaking() {
    yield Buffer.from('a,b\n1,2\n3,');
    throw diskError;
  }
  const supply = new RowSupply(csvRows(Readable.from(breaking())), 'jobs.csv', new AbortController().signal);
  expect(await sources(supply)).toEqual(['line 1', 'line 2']);
  expect(supply.fault?.message).toMatch(/^got .*EIO.*jobs\.csv; allowed: /);
});

test('a slip of the program is not called a fault of the input', async () => {
  async function* broken(): AsyncGenerator<never> {
    yield* [];
    throw new TypeError('slip');
  }
  const supply = new RowSupply(broken(), 'jobs.csv', new AbortController().signal);
  await expect(sources(supply)).rejects.toThrow('slip');
});
