import { type ReactNode, Suspense } from 'react';
import { Awaited, awaitedWords } from './Awaited.tsx';
import { ErrorBoundary } from './ErrorBoundary.tsx';

interface LatePartProps {
  readonly name: string;
  /** Class that reserves its place, so that nothing moves when it comes. */
  readonly room?: string;
  /** What stands there meanwhile in place of words, of the same size. */
  readonly instead?: ReactNode;
  readonly children: ReactNode;
}

/** A part of the bench that is fetched after the first paint; says so until it is there, and why if it never comes. */
export function LatePart({ name, room = '', instead, children }: LatePartProps) {
  return (
    <ErrorBoundary instead={(error) => <p role="alert">{`The ${name} could not be shown: ${error.message}`}</p>}>
      <Suspense
        fallback={
          <Awaited>
            {(isLate) =>
              isLate || instead === undefined ? (
                <p className={`help not-printed ${room}`}>{awaitedWords(`The ${name}`, isLate)}</p>
              ) : (
                instead
              )
            }
          </Awaited>
        }
      >
        {children}
      </Suspense>
    </ErrorBoundary>
  );
}
