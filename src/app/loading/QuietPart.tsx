import { type ReactNode, Suspense } from 'react';
import { ErrorBoundary } from './ErrorBoundary.tsx';

/** A part that is fetched later and nobody waits for: nothing stands in its place until it comes, nor if it never does. */
export const QuietPart = ({ children }: { readonly children: ReactNode }) => (
  <ErrorBoundary instead={() => null}>
    <Suspense>{children}</Suspense>
  </ErrorBoundary>
);
