import { useEffect, useRef, useState } from 'react';
import { findables, found } from './findables.ts';
import './find.css';

/** Results shown at a time. */
const SHOWN = 12;

/** One search over every place and field, by its plain name. */
export default function Find({ onClose }: { readonly onClose: () => void }) {
  const dialog = useRef<HTMLDialogElement>(null);
  const [all] = useState(findables);
  const [text, setText] = useState('');
  const hits = found(all, text).slice(0, SHOWN);
  useEffect(() => {
    if (dialog.current?.open === false) dialog.current.showModal();
  }, []);
  const go = (hit: (typeof hits)[number] | undefined): void => {
    if (hit === undefined) return;
    dialog.current?.close();
    hit.go();
  };
  return (
    <dialog ref={dialog} className="find" aria-label="Find" onClose={onClose}>
      <form
        onSubmit={(event) => {
          event.preventDefault();
          go(hits[0]);
        }}
      >
        <label>
          What are you looking for?
          <input type="text" autoComplete="off" value={text} onChange={(event) => setText(event.target.value)} />
        </label>
      </form>
      <ul>
        {hits.map((hit) => (
          <li key={`${hit.name} ${hit.where}`}>
            <button type="button" onClick={() => go(hit)}>
              {hit.name}
            </button>{' '}
            <span>{hit.where}</span>
          </li>
        ))}
      </ul>
      {hits.length === 0 && <p role="status">Nothing by that name. Try one word of it.</p>}
    </dialog>
  );
}
