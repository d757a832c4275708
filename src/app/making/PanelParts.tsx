import type { ReactNode } from 'react';

interface PanelProps {
  /** What the maker decides, beside it; null where there is nothing to decide yet. */
  readonly fields: ReactNode;
  /** What follows, first and large. */
  readonly children: ReactNode;
  readonly name: string;
}

/** One part of the workbench: what follows, and beside it the fields that it follows from. */
export function Panel({ name, fields, children }: PanelProps) {
  return (
    <div className="panel-parts">
      <div className="panel-outcome">{children}</div>
      {fields !== null && (
        <form className="job-form" aria-label={name} onSubmit={(event) => event.preventDefault()}>
          {fields}
        </form>
      )}
    </div>
  );
}

/** Notes for the maker, one a line. */
export function Notes({ notes }: { readonly notes: readonly string[] }) {
  if (notes.length === 0) return null;
  return (
    <ul className="bench-notes">
      {notes.map((note) => (
        <li key={note}>{note}</li>
      ))}
    </ul>
  );
}
