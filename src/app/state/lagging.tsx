import { memo, type ReactNode, useDeferredValue } from 'react';
import { BenchContext, useBench } from './BenchContext.tsx';

/**
 * Lets a part of the bench lag: while a key press is answered it stays as it is, and follows when the page has time.
 *
 * Not for a part with fields of the job in it: a field must show what was just typed.
 */
export function lagging<Props extends object>(Part: (props: Props) => ReactNode) {
  const Still = memo(Part);
  return function Lagging(props: Props) {
    const bench = useDeferredValue(useBench());
    return (
      <BenchContext value={bench}>
        <Still {...props} />
      </BenchContext>
    );
  };
}
