import type { ReactNode } from 'react';

interface AssumptionsProps {
  readonly title: string;
  readonly children: ReactNode;
}

/** Values that were not measured, folded away, marked as assumptions, and open to change. */
export function Assumptions({ title, children }: AssumptionsProps) {
  return (
    <details className="assumptions">
      <summary>{title}</summary>
      <p className="help">Assumptions, not measures of this book or hide. Change one where you know better.</p>
      {children}
    </details>
  );
}
