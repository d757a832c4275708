import { memo, type ReactNode, useDeferredValue } from 'react';
import { useBench } from './BenchContext.tsx';
import type { Bench } from './bench.ts';

/**
 * Passes a part what it needs of the bench as deferred props: during a key press the part keeps its last state, and
 * renders when the page has time. Fields within it do not lag, because they select from the bench themselves.
 */
export function lagging<Needs extends object, Props extends Needs>(
  select: (bench: Bench) => Needs,
  Part: (props: Props) => ReactNode,
) {
  const Still = memo(Part) as unknown as (props: Props) => ReactNode;
  return function Lagging(props: Omit<Props, keyof Needs>) {
    const needs = useDeferredValue(useBench(select));
    return <Still {...({ ...props, ...needs } as Props)} />;
  };
}
