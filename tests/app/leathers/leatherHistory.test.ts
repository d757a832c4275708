import { expect, test } from 'vitest';
import { type LeatherAction, leatherHistory, startLeather } from '../../../src/app/leathers/leatherHistory.ts';
import { freshLeather } from '../../../src/app/shelf/newLeather.ts';

const leather = freshLeather();
const called = (name: string, field?: string): LeatherAction => ({
  type: 'change',
  leather: { ...leather, name },
  field,
});
const after = (...actions: readonly LeatherAction[]) => actions.reduce(leatherHistory, startLeather(leather));
const UNDO: LeatherAction = { type: 'undo' };
const REDO: LeatherAction = { type: 'redo' };

test('keys in one field are one step, and a field that was left begins another', () => {
  const typed = after(called('S', 'name'), called('Si', 'name'), { type: 'settle' }, called('Sid', 'name'));
  expect(leatherHistory(typed, UNDO).present.name).toBe('Si');
  expect([UNDO, UNDO].reduce(leatherHistory, typed).present).toBe(leather);
  expect([UNDO, UNDO, REDO, REDO].reduce(leatherHistory, typed).present.name).toBe('Sid');
});

test('changes of different fields are steps of their own, and what is done after undo ends redo', () => {
  const changed = after(called('A', 'name'), called('B', 'notes'), called('C', 'name'));
  expect(changed.past).toHaveLength(3);
  const again = [UNDO, UNDO, called('D')].reduce(leatherHistory, changed);
  expect(again.future).toEqual([]);
  expect(leatherHistory(again, UNDO).present.name).toBe('A');
});

test('with nothing to undo or redo it stays as it is', () => {
  const start = startLeather(leather);
  for (const action of [UNDO, REDO, { type: 'settle' } as const]) expect(leatherHistory(start, action)).toBe(start);
});
