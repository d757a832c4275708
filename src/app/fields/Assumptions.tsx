import type { ReactNode } from 'react';

interface AssumptionsProps {
  readonly title: string;
  readonly children: ReactNode;
}

/** Values nobody measured: kept out of the way, said to be assumptions, and open to change. */
export function Assumptions({ title, children }: AssumptionsProps) {
  return (
    <details className="assumptions">
      <summary>{title}</summary>
      <p className="help">Assumptions, not measures of this book or hide. Change one where you know better.</p>
      {children}
    </details>
  );
}
