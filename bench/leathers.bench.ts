import { Bench } from 'tinybench';
import { LEATHERS } from '../src/app/shelf/leatherKind.ts';
import { leatherWords } from '../src/app/shelf/leatherWords.ts';
import { shelfSearch } from '../src/app/shelf/searchShelf.ts';
import { readShelfFile, shelfFile } from '../src/app/shelf/shelfFile.ts';
import { openLeather, shopKnowledge } from '../src/core/index.ts';
import { printTable } from './table.ts';

/** What a maker may type, key by key. */
const TYPED = 'shoulder 5-6 oz waxed';

/** Leathers with notes of some 400 characters. */
const records = Array.from({ length: 5000 }, (_, i) => {
  const opened = openLeather({
    format: 'coverwright-leather',
    version: 1,
    name: `${['Side', 'Shoulder', 'Butt', 'Skin'][i % 4]} ${i}`,
    min_mm: 1 + (i % 7) / 10,
    max_mm: 1.4 + (i % 7) / 10,
    tannage: ['vegetable', 'chrome', 'alum'][i % 3],
    finish: i % 5 === 0 ? 'waxed' : 'plain',
    notes: `Bought in lot ${i}. ${'Even over the back, looser toward the belly. '.repeat(8)}`,
  });
  if (!opened.ok) throw new Error(opened.issues[0]?.message);
  const { document } = opened;
  return { id: String(i), revision: 1, name: document.name, document, savedAt: i, removedAt: null };
});

const search = shelfSearch(records, leatherWords);
const file = shelfFile(
  records.map(({ document }) => document),
  LEATHERS,
);
/** The same with three tests each, one in ten of which contradicts the rest. */
const tested = records.map(({ document }, i) => {
  const opened = openLeather({
    ...document,
    tests: {
      folds: [{ thickness_mm: 1.8, fold_mm: 4 + (i % 10) / 10 }],
      bends: [{ thickness_mm: 1.8, radius_mm: 5, angle_deg: 180, length_mm: 19 + (i % 7) / 20 }],
      changes: [{ worked: 'cased', before_mm: 100, after_mm: i % 10 === 0 ? 92 : 99 }],
    },
  });
  if (!opened.ok) throw new Error(opened.issues[0]?.message);
  return opened.document;
});
const bench = new Bench({ time: 500 });
bench.add('words of 5,000 leathers, prepared once', () => shelfSearch(records, leatherWords));
let typed = 0;
bench.add('a key of a search among 5,000 leathers', () => search(TYPED.slice(0, 1 + (typed++ % TYPED.length))));
bench.add('a file of 5,000 leathers read', () => readShelfFile(file, LEATHERS));
bench.add('what 5,000 tested leathers teach together', () => shopKnowledge(tested));
await bench.run();
printTable(bench);
