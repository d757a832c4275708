import { Bench } from 'tinybench';
import { formatLength } from '../src/core/units/formatLength.ts';
import { mm } from '../src/core/units/mm.ts';
import { parseLength } from '../src/core/units/parseLength.ts';

import { printTable } from './table.ts';

const bench = new Bench({ time: 300 });
for (const text of ['216 mm', '8 1/2 in', '8½″', '1,234']) {
  bench.add(`parseLength ${text}`, () => parseLength(text, { defaultUnit: 'mm' }));
}
bench.add('formatLength 215.9 mm as inches', () =>
  formatLength(mm(215.9), { unit: 'in', denominator: 64, decimals: 1, round: 'up' }),
);
await bench.run();
printTable(bench);
