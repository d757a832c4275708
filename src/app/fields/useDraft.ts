import { useState } from 'react';
import type { Reading } from '../../core/index.ts';
import { useFieldIssues } from './fieldState.ts';

interface Draft {
  readonly text: string;
  /** The value of the text, as printed; another value ends the draft. */
  readonly of: string;
  readonly refused: string | null;
}

/**
 * Text of an entry while it is typed, where the job keeps only the value.
 *
 * The text stays as typed until the value becomes another one, as by undo; a text that cannot be read changes nothing.
 */
export function useDraft<T>(
  path: string,
  value: T,
  print: (value: T) => string,
  read: (text: string) => Reading<T>,
  commit: (value: T) => void,
) {
  const [draft, setDraft] = useState<Draft | null>(null);
  const issues = useFieldIssues(path);
  const mark = (of: T): string => `${print(of)} ${JSON.stringify(of)}`;
  const live = draft?.of === mark(value) ? draft : null;
  const change = (text: string): void => {
    const reading = read(text);
    setDraft({
      text,
      of: mark(reading.ok ? reading.value : value),
      refused: reading.ok ? null : reading.message,
    });
    if (reading.ok) commit(reading.value);
  };
  const refused = live?.refused ?? null;
  return { text: live?.text ?? print(value), issues: [...(refused === null ? [] : [refused]), ...issues], change };
}
