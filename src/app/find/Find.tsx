import { type KeyboardEvent, useEffect, useId, useMemo, useRef, useState } from 'react';
import { termOf, titled } from '../../core/index.ts';
import { useBenchStore } from '../state/BenchContext.tsx';
import { type Findable, found, meantTerm } from './findable.ts';
import { findables } from './findables.ts';
import './find.css';

/** Results listed at most. */
const LISTED = 40;

/** One search over every place, action, result and field, by its plain name. */
export default function Find({ onClose }: { readonly onClose: () => void }) {
  const store = useBenchStore();
  const dialog = useRef<HTMLDialogElement>(null);
  const list = useRef<HTMLDivElement>(null);
  const [all] = useState(() => findables(store));
  const [text, setText] = useState('');
  const [at, setAt] = useState(0);
  const hits = useMemo(() => found(all, text), [all, text]);
  const listed = hits.slice(0, LISTED);
  const id = useId();
  useEffect(() => {
    if (dialog.current?.open === false) dialog.current.showModal();
  }, []);

  const go = (hit: Findable | undefined): void => {
    if (hit === undefined) return;
    dialog.current?.close();
    hit.go();
  };
  const moveTo = (next: number): void => {
    const index = Math.min(Math.max(next, 0), listed.length - 1);
    setAt(index);
    list.current?.children[index]?.scrollIntoView({ block: 'nearest' });
  };
  const onKeyDown = (event: KeyboardEvent): void => {
    const next = { ArrowDown: at + 1, ArrowUp: at - 1, PageDown: at + 8, PageUp: at - 8 }[event.key];
    if (next !== undefined) moveTo(next);
    else if (event.key === 'Enter') go(listed[at]);
    else return;
    event.preventDefault();
  };
  // Typed as a term, or as what it is never called.
  const term = useMemo(() => meantTerm(text), [text]);

  return (
    <dialog ref={dialog} className="find" aria-label="Find" onClose={onClose}>
      <label htmlFor={id}>What are you looking for?</label>
      <input
        id={id}
        type="text"
        autoComplete="off"
        spellCheck={false}
        role="combobox"
        aria-expanded={listed.length > 0}
        aria-controls={`${id}-hits`}
        aria-autocomplete="list"
        aria-activedescendant={listed.length === 0 ? undefined : `${id}-${at}`}
        value={text}
        onChange={(event) => {
          setText(event.target.value);
          setAt(0);
          list.current?.scrollTo({ top: 0 });
        }}
        onKeyDown={onKeyDown}
      />
      <p role="status" className="help">
        {countWords(text, hits.length)}
        {term !== null && ` ${titled(term)}: ${termOf(term).meaning}`}
      </p>
      <div ref={list} id={`${id}-hits`} role="listbox" aria-label="Found">
        {listed.map((hit, i) => (
          // biome-ignore lint/a11y/useKeyWithClickEvents: the keys are the field's, as in every combobox
          // biome-ignore lint/a11y/useFocusableInteractive: the focus stays in the field, which names the chosen one
          <div
            key={`${hit.name} ${hit.where}`}
            id={`${id}-${i}`}
            role="option"
            aria-selected={i === at}
            onPointerMove={() => setAt(i)}
            onClick={() => go(hit)}
          >
            {hit.name} <span>{hit.where}</span>
          </div>
        ))}
      </div>
    </dialog>
  );
}

function countWords(text: string, count: number): string {
  if (text.trim() === '') return 'Places, and what is done most. Type for anything else.';
  if (count === 0) return 'Nothing by that name. Try one word of it.';
  return `${count} found.`;
}
