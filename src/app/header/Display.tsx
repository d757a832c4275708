import { useId } from 'react';
import { useBench, useBenchStore, useDispatch } from '../state/BenchContext.tsx';
import type { ViewChoice } from '../state/viewChoice.ts';

/** How things are shown: the unit, light or dark, and how the picture is drawn. */
export function Display() {
  const dispatch = useDispatch();
  const { setView } = useBenchStore().getState();
  const { scheme, look, units } = useBench(({ view, lengths }) => ({
    scheme: view.scheme,
    look: view.look,
    units: lengths.units,
  }));
  const id = useId();
  // The next new cover starts in the unit chosen last.
  const workIn = (chosen: ViewChoice['units']): void => {
    setView({ units: chosen });
    dispatch({ type: 'edit', patches: [{ path: 'work', value: { units: chosen } }] });
  };
  return (
    <div className="display">
      <label htmlFor={`${id}-units`}>Units</label>
      <select id={`${id}-units`} value={units} onChange={(event) => workIn(event.target.value as ViewChoice['units'])}>
        <option value="mm">mm</option>
        <option value="in">inches</option>
      </select>
      <label htmlFor={`${id}-scheme`}>Page</label>
      <select
        id={`${id}-scheme`}
        value={scheme}
        onChange={(event) => setView({ scheme: event.target.value as ViewChoice['scheme'] })}
      >
        <option value="system">as the system</option>
        <option value="light">light</option>
        <option value="dark">dark</option>
      </select>
      <label htmlFor={`${id}-look`}>Picture</label>
      <select
        id={`${id}-look`}
        value={look}
        onChange={(event) => setView({ look: event.target.value as ViewChoice['look'] })}
      >
        <option value="full">full</option>
        <option value="light">plain, for slow machines</option>
      </select>
    </div>
  );
}
