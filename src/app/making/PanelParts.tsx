import type { ReactNode } from 'react';

interface PanelProps {
  /** What the maker decides, at the left. */
  readonly fields: ReactNode;
  /** What follows from it. */
  readonly children: ReactNode;
  readonly name: string;
}

/** One part of the workbench: its fields beside what follows from them. */
export function Panel({ name, fields, children }: PanelProps) {
  return (
    <div className="panel-parts">
      <form className="job-form" aria-label={name} onSubmit={(event) => event.preventDefault()}>
        {fields}
      </form>
      <div className="panel-outcome">{children}</div>
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
