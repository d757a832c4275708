import { lazy, Suspense, useId, useLayoutEffect, useRef, useState } from 'react';
import { createPortal } from 'react-dom';
import { termIn, termOf, titled, type Word } from '../../core/index.ts';
import './term.css';

const TermDrawing = lazy(() => import('../sheet/TermDrawing.tsx'));

interface TermProps {
  readonly word: Word;
  /** The term as it stands in its sentence, where that is not the word itself: in the plural, or with a capital. */
  readonly said?: string;
}

/** Room between a term and its note, and between the note and the edge of the window, px. */
const CLEAR = 6;

/** Puts a note under the word that opens it, or over it where there is more room, inside the window. */
function place(note: HTMLElement, word: HTMLElement): void {
  const at = word.getBoundingClientRect();
  const { width, height } = note.getBoundingClientRect();
  const left = Math.min(Math.max(CLEAR, at.left), window.innerWidth - width - CLEAR);
  const isUnder = at.bottom + CLEAR + height <= window.innerHeight || at.top < window.innerHeight - at.bottom;
  const top = isUnder ? at.bottom + CLEAR : at.top - CLEAR - height;
  note.style.left = `${left}px`;
  note.style.top = `${Math.max(CLEAR, Math.min(top, window.innerHeight - height - CLEAR))}px`;
}

/**
 * A term that can be pressed for its meaning and a small drawing on this book's own cover. The note stands outside the term's
 * sentence or label, which it would lengthen for those who hear it.
 */
export function Term({ word, said = word }: TermProps) {
  const id = useId();
  const button = useRef<HTMLButtonElement>(null);
  const [host, setHost] = useState<Element | null>(null);
  // What stands outside a modal dialog can be neither read nor pressed while it is open.
  useLayoutEffect(() => setHost(button.current?.closest('dialog') ?? document.body), []);
  const [isOpen, setOpen] = useState(false);
  return (
    <>
      <button ref={button} type="button" className="term" popoverTarget={id}>
        {said}
      </button>
      {host !== null &&
        createPortal(
          <div
            id={id}
            popover="auto"
            role="dialog"
            aria-label={titled(word)}
            className="term-note"
            onBeforeToggle={({ newState }) => setOpen(newState === 'open')}
            onToggle={({ currentTarget, newState }) => {
              if (newState === 'open' && button.current !== null) place(currentTarget, button.current);
            }}
          >
            {isOpen && <TermMeaning word={word} />}
          </div>,
          host,
        )}
    </>
  );
}

/** What a term means, in a sentence and on this book's own cover. */
export function TermMeaning({ word }: { readonly word: Word }) {
  const { meaning, shown } = termOf(word);
  return (
    <>
      <strong>{titled(word)}</strong> <span>{meaning}</span>
      {shown !== undefined && (
        <Suspense fallback={<span className="term-drawing-room" />}>
          <TermDrawing part={shown} />
        </Suspense>
      )}
    </>
  );
}

/** The title of a field; one that is a term can be pressed for its meaning. */
export function FieldTitle({ title }: { readonly title: string }) {
  return termIn(title)?.said === title ? <WithTerm text={title} /> : title;
}

/** A text in which the first term can be pressed; as it stands where there is none. */
export function WithTerm({ text }: { readonly text: string }) {
  const found = termIn(text);
  if (found === null) return text;
  return (
    <>
      {found.before}
      <Term word={found.word} said={found.said} />
      {found.after}
    </>
  );
}
