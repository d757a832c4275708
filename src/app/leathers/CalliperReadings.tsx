import { useState } from 'react';
import { parseLength, type Reading } from '../../core/index.ts';
import { PlainField } from '../fields/PlainField.tsx';
import { useLengths } from '../state/BenchContext.tsx';

interface CalliperReadingsProps {
  /** mm. */
  readonly readings: readonly number[];
  /** The weight as sold, mm. */
  readonly sold: { readonly min_mm: number; readonly max_mm: number };
  readonly change: (readings: number[]) => void;
}

const RANGE = { min: 0.2, max: 8 };
const MOST = 40;

/** A reading further from the weight as sold asks for a second look, mm. Common practice, no source. */
const FAR = 0.4;

/** Thicknesses read over the hide by callipers, one after another. */
export function CalliperReadings({ readings, sold, change }: CalliperReadingsProps) {
  const lengths = useLengths();
  const [text, setText] = useState('');
  const reading: Reading<number> | null =
    text.trim() === '' ? null : parseLength(text, { defaultUnit: lengths.units, range: RANGE });
  const isElsewhere = readings.some((read) => read < sold.min_mm - FAR || read > sold.max_mm + FAR);
  const isFull = readings.length >= MOST;
  const add = (): void => {
    if (reading?.ok !== true || isFull) return;
    change([...readings, reading.value]);
    setText('');
  };
  return (
    <section aria-label="By callipers">
      <h3>By callipers</h3>
      <p className="help">
        {readings.length === 0
          ? 'Read the thickness at several places of the hide. A cover is then cut for this very hide.'
          : `Thinnest ${lengths.size(Math.min(...readings))}, thickest ${lengths.size(Math.max(...readings))}, of ${readings.length} ${readings.length === 1 ? 'reading' : 'readings'}. A cover takes these in place of the weight.`}
      </p>
      {isElsewhere && (
        <p className="issue">A reading is far from the weight that it was sold as: check the unit, or read again.</p>
      )}
      <form
        className="row calliper-form"
        onSubmit={(event) => {
          event.preventDefault();
          add();
        }}
      >
        <PlainField
          title="Thickness read"
          text={text}
          change={setText}
          issues={reading?.ok === false ? [reading.message] : []}
          keys={[]}
          enterKeyHint="done"
        />
        <button type="submit" disabled={reading?.ok !== true || isFull}>
          Add reading
        </button>
      </form>
      <ul className="row calliper-readings" aria-label="Readings">
        {readings.map((value, i) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: readings have no other name
          <li key={i} className="row">
            <span>{lengths.size(value)}</span>
            <button type="button" className="quiet" onClick={() => change(readings.filter((_, at) => at !== i))}>
              Remove<span className="only-heard"> reading {i + 1}</span>
            </button>
          </li>
        ))}
      </ul>
    </section>
  );
}
