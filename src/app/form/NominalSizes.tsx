import { useId, useState } from 'react';
import { NOMINAL_SERIES, nominalBoard } from '../../core/index.ts';
import { useBench, useDispatch, useLengths } from '../state/BenchContext.tsx';

/** Fills width and height from a named size, as a first estimate. */
export function NominalSizes() {
  const square = useBench(({ history }) => history.good.job.book.square_mm);
  const dispatch = useDispatch();
  const lengths = useLengths();
  const id = useId();
  const [name, setName] = useState('A5');
  const series = NOMINAL_SERIES.find(({ sizes }) => sizes.some((size) => size.name === name))!;
  const board = nominalBoard(series.sizes.find((size) => size.name === name)!, square);
  const fill = (): void =>
    dispatch({
      type: 'edit',
      patches: [
        { path: 'book.width_mm', value: board.width_mm },
        { path: 'book.height_mm', value: board.height_mm },
      ],
    });
  return (
    <details>
      <summary>Sizes by name</summary>
      <div className="field">
        <label htmlFor={id}>Page trimmed to</label>
        <select id={id} value={name} onChange={(event) => setName(event.target.value)}>
          {NOMINAL_SERIES.map(({ title, source, sizes }) => (
            <optgroup key={title} label={`${title} (${source})`}>
              {sizes.map((size) => (
                <option key={size.name}>{size.name}</option>
              ))}
            </optgroup>
          ))}
        </select>
        <p className="field-notes">
          Board {lengths.size(board.width_mm)} × {lengths.size(board.height_mm)} for this page
          {square > 0 ? `, with a square of ${lengths.size(square)}` : ', flush with the pages'}. Source:{' '}
          {series.source}.{' '}
          <button type="button" onClick={fill}>
            Fill in width and height
          </button>
        </p>
        <p className="field-notes help">A name is no measure: take both off the book before you cut.</p>
      </div>
    </details>
  );
}
