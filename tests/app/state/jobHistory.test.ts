import { afterEach, describe, expect, test } from 'vitest';
import choirBookFile from '../../../public/jobs/choir-book.json' with { type: 'json' };
import tideLedgerFile from '../../../public/jobs/tide-ledger.json' with { type: 'json' };
import {
  type JobAction,
  type JobHistory,
  jobHistory,
  placeOf,
  startHistory,
} from '../../../src/app/state/jobHistory.ts';
import { valueAt } from '../../../src/core/job/jobDocument.ts';
import type { JobPath } from '../../../src/core/job/jobPath.ts';
import { JOB_MIGRATIONS, type Migration } from '../../../src/core/job/migrate.ts';

/** The examples in the current version. */
const tideLedger = { ...tideLedgerFile, version: 3, pockets: { share: 0.5 } };
const choirBook = { ...choirBookFile, version: 3, pockets: { share: 0.5 } };

const FIRST_JOB = 'first';
const start = (): JobHistory => startHistory({ document: tideLedger, typed: {} }, tideLedger, { key: FIRST_JOB });
const following = (actions: readonly JobAction[], state = start()): JobHistory => actions.reduce(jobHistory, state);
const WIDTH = 'book.width_mm';

/** One keystroke in a field: the value it reads as, and the text. */
const type = (path: JobPath, text: string, value: unknown = Number(text)): JobAction => ({
  type: 'edit',
  key: path,
  patches: [{ path, value }],
  typed: { [path]: { text, unit: 'mm' } },
});

describe('undo', () => {
  test('takes a whole field back at once, however many keys it took', () => {
    const typed = following([type(WIDTH, '1'), type(WIDTH, '17'), type(WIDTH, '170')]);
    expect(typed.past).toHaveLength(1);
    expect(valueAt(following([{ type: 'undo' }], typed).document, WIDTH)).toBe(165);
  });

  test('parts two visits to one field, and two fields in a row', () => {
    expect(following([type(WIDTH, '170'), { type: 'settle' }, type(WIDTH, '171')]).past).toHaveLength(2);
    expect(following([type(WIDTH, '170'), type('book.height_mm', '250')]).past).toHaveLength(2);
  });

  test('never joins two edits that have no key, such as two remedies', () => {
    const remedy: JobAction = { type: 'edit', patches: [{ path: 'ease.head_mm', value: 2 }] };
    expect(following([remedy, remedy]).past).toHaveLength(2);
  });

  test('brings back document, typed text and picture, and redo does again what undo took away', () => {
    const edited = following([type(WIDTH, '170'), { type: 'settle' }, type(WIDTH, '180')]);
    const back = following([{ type: 'undo' }], edited);
    expect(back.typed[WIDTH]?.text).toBe('170');
    expect(back.good.job.book.width_mm).toBe(170);
    const again = following([{ type: 'redo' }], back);
    expect(again.document).toEqual(edited.document);
    expect(again.typed).toEqual(edited.typed);
  });

  test('at the first state, and redo at the last, change nothing', () => {
    const state = start();
    expect(jobHistory(state, { type: 'undo' })).toBe(state);
    expect(jobHistory(state, { type: 'redo' })).toBe(state);
  });

  test('also brings back the job that another one replaced', () => {
    const opened = following([type(WIDTH, '170'), { type: 'open', document: choirBook }]);
    expect(opened.document).toBe(choirBook);
    expect(opened.typed).toEqual({});
    const back = following([{ type: 'undo' }], opened);
    expect(valueAt(back.document, WIDTH)).toBe(170);
    expect(back.typed[WIDTH]?.text).toBe('170');
  });

  test('offers nothing to redo after a new edit', () => {
    const state = following([type(WIDTH, '170'), { type: 'undo' }, type(WIDTH, '175')]);
    expect(state.future).toEqual([]);
  });
});

describe('a cancelled edit', () => {
  test('leaves neither past nor future', () => {
    const before = following([type(WIDTH, '170'), type('book.height_mm', '250'), { type: 'undo' }]);
    const dragged = following([type('ease.head_mm', '1'), type('ease.head_mm', '2')], before);
    expect(dragged.future).toEqual([]);
    expect(following([{ type: 'cancel' }], dragged)).toEqual(before);
  });

  test('keeps what was saved meanwhile, and nothing of it can be cancelled twice', () => {
    const place = { id: 'a', revision: 1, document: null };
    const dragged = following([type('ease.head_mm', '1'), { type: 'place', key: FIRST_JOB, place }]);
    const cancelled = following([{ type: 'cancel' }], dragged);
    expect(placeOf(cancelled)).toBe(place);
    expect(jobHistory(cancelled, { type: 'cancel' })).toBe(cancelled);
  });

  test('takes back only what came after the field was last left', () => {
    const state = following([type(WIDTH, '170'), { type: 'settle' }, type(WIDTH, '171'), { type: 'cancel' }]);
    expect(valueAt(state.document, WIDTH)).toBe(170);
    expect(state.past).toHaveLength(1);
  });
});

describe('a step that is done', () => {
  const made = { cut: '2026-11-26' };
  const tick: JobAction = { type: 'made', made };
  const doneIn = ({ document }: JobHistory): unknown => document.made;

  test('stays done through undo and redo of the edits around it, and is no step of them', () => {
    const ticked = following([type(WIDTH, '170'), { type: 'settle' }, type(WIDTH, '180'), { type: 'undo' }, tick]);
    expect(ticked.past).toHaveLength(1);
    expect(ticked.future).toHaveLength(1);
    expect(ticked.good.job.made).toEqual(made);
    const back = following([{ type: 'undo' }], ticked);
    expect([valueAt(back.document, WIDTH), doneIn(back)]).toEqual([165, made]);
    const again = following([{ type: 'redo' }, { type: 'redo' }], back);
    expect([valueAt(again.document, WIDTH), doneIn(again)]).toEqual([180, made]);
  });

  test('is not done in another job, which undo brings back as it was', () => {
    const ticked = following([{ type: 'open', document: choirBook }, tick]);
    expect(doneIn(ticked)).toEqual(made);
    expect(doneIn(following([{ type: 'undo' }], ticked))).toBeUndefined();
  });

  test('ends the edit under way, whose cancelling could not take it back', () => {
    const ticked = following([type(WIDTH, '170'), tick, { type: 'cancel' }]);
    expect([valueAt(ticked.document, WIDTH), doneIn(ticked)]).toEqual([170, made]);
  });

  test('is kept beside a value that the job refuses, in the picture too', () => {
    const ticked = following([type(WIDTH, '5'), tick]);
    expect(ticked.parsed.ok).toBe(false);
    expect(doneIn(ticked)).toEqual(made);
    expect(ticked.good.job.made).toEqual(made);
    expect(ticked.good.job.book.width_mm).toBe(165);
  });

  test('leaves nothing behind once every tick is taken away', () => {
    expect(following([tick, { type: 'made', made: {} }]).document).toEqual(tideLedger);
  });
});

describe('the place on the shelf', () => {
  const place = (id: string) => ({ id, revision: 1, document: null });
  const saved = following([{ type: 'place', key: FIRST_JOB, place: place('a') }]);

  test('stays with its job through edits, another job and undo', () => {
    const opened = following([type(WIDTH, '170'), { type: 'open', document: choirBook, place: place('b') }], saved);
    expect(placeOf(opened)?.id).toBe('b');
    expect(placeOf(following([{ type: 'undo' }], opened))?.id).toBe('a');
    expect(placeOf(following([{ type: 'undo' }, { type: 'redo' }], opened))?.id).toBe('b');
  });

  test('is not that of the job before, unless another state of the same job is opened', () => {
    expect(placeOf(following([{ type: 'open', document: choirBook }], saved))).toBeUndefined();
    expect(placeOf(following([{ type: 'open', document: choirBook, isSameJob: true }], saved))?.id).toBe('a');
  });

  test('belongs to one job even where an undone one was opened before it', () => {
    const first = following([{ type: 'open', document: choirBook, place: place('b') }, { type: 'undo' }]);
    expect(placeOf(following([{ type: 'open', document: choirBook }], first))).toBeUndefined();
  });
});

describe('a value that the job refuses', () => {
  const wrong = following([type(WIDTH, '170'), { type: 'settle' }, type(WIDTH, '5')]);

  test('stands in the document with its issue, and the picture keeps the last state that was right', () => {
    expect(valueAt(wrong.document, WIDTH)).toBe(5);
    expect(wrong.parsed.ok).toBe(false);
    expect(!wrong.parsed.ok && wrong.parsed.issues.map(({ path }) => path)).toEqual([WIDTH]);
    expect(wrong.good.job.book.width_mm).toBe(170);
    expect(valueAt(wrong.good.document, WIDTH)).toBe(170);
  });

  test('gives way once it is put right', () => {
    expect(following([type(WIDTH, '172')], wrong).good.job.book.width_mm).toBe(172);
  });
});

test('a text that reads as nothing is kept, and changes no value', () => {
  const state = following([
    { type: 'edit', key: WIDTH, patches: [], typed: { [WIDTH]: { text: 'about 6', unit: 'in' } } },
  ]);
  expect(state.typed[WIDTH]).toEqual({ text: 'about 6', unit: 'in' });
  expect(state.document).toEqual(tideLedger);
});

test('a remedy takes the place of the text typed at its path, and of a text that stood for a range around it', () => {
  const typed = following([
    type('ease.head_mm', '1'),
    {
      type: 'edit',
      patches: [{ path: 'leather.outside.min_mm', value: 1.2 }],
      typed: { 'leather.outside': { text: '1.2-2.0 mm', unit: 'mm' } },
    },
    type(WIDTH, '170'),
  ]);
  const remedied = following(
    [
      {
        type: 'edit',
        patches: [
          { path: 'ease.head_mm', value: 1.5 },
          { path: 'leather.outside.max_mm', value: 1.8 },
        ],
      },
    ],
    typed,
  );
  expect(Object.keys(remedied.typed)).toEqual([WIDTH]);
});

test('a kept document that does not parse still opens, over the picture of the example', () => {
  const state = startHistory({ document: { format: 'coverwright-job', version: 1 }, typed: {} }, choirBook);
  expect(state.parsed.ok).toBe(false);
  expect(state.good.job.name).toBe('Choir book');
});

describe('a job of an earlier version', () => {
  const chain = JOB_MIGRATIONS as Migration[];
  const { length } = chain;
  afterEach(() => {
    chain.length = length;
  });

  test('is brought to the current one as it is opened, before a field is changed', () => {
    const state = start();
    chain.push(({ book, ...rest }) => ({ ...rest, book: { ...(book as object), width_mm: 170 } }));
    const { document } = jobHistory(state, { type: 'open', document: tideLedger });
    expect(document.version).toBe(length + 2);
    expect(valueAt(document, WIDTH)).toBe(170);
  });

  test('of the current version stays the very document that it was', () => {
    expect(following([{ type: 'open', document: choirBook }]).document).toBe(choirBook);
  });
});
