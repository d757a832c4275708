import type { CutSum, Drawing } from '../../core/pattern/drawing.ts';
import { useBench } from '../state/BenchContext.tsx';
import { writtenOut } from './writtenOut.ts';

/** Every cut size, and its sum on demand. */
export function CutSizes({ drawing }: { readonly drawing: Drawing }) {
  const { design, lengths, view } = useBench();
  const { pattern, book, leather } = design.job;
  const { outside } = leather;
  const step = pattern.rounding_mm;
  const often = (name: string, count: number): string => (count === 1 ? name : `${name}, cut ${count}`);
  return (
    <section aria-labelledby="cut-sizes">
      <h2 id="cut-sizes">Cut sizes</h2>
      <p className="only-printed">
        For a book of {lengths.size(book.width_mm)} × {lengths.size(book.height_mm)} × {lengths.size(book.thickness_mm)}{' '}
        closed, boards {lengths.fine(book.boardThickness_mm)}; outside leather {lengths.fine(outside.min_mm)} to{' '}
        {lengths.fine(outside.max_mm)}.
      </p>
      <table className="pieces">
        <thead className="only-heard">
          <tr>
            <th scope="col">Piece</th>
            <th scope="col">Width × height</th>
          </tr>
        </thead>
        <tbody>
          {drawing.pieces.map(({ id, name, count, width, height }) => (
            <tr key={id}>
              <th scope="row">{often(name, count)}</th>
              <td>
                {lengths.cut(width)} × {lengths.cut(height)}
              </td>
            </tr>
          ))}
          {drawing.lengths.map(({ name, count, sum }) => (
            <tr key={name}>
              <th scope="row">{often(name, count)}</th>
              <td>{lengths.cut(sum.total)} long</td>
            </tr>
          ))}
        </tbody>
      </table>
      <p className="help">
        {step === 0
          ? 'Not rounded.'
          : `Rounded up to ${view.units === 'mm' ? `${step} mm` : lengths.size(step)}: leather cut too large can be trimmed.`}{' '}
        Sized for the thick end of the leather{view.units === 'in' ? '; printed up to the next 1/32 in' : ''}. The
        height of pockets and lining is the outside's. Lines of a sum are shown to{' '}
        {lengths.unit === 'mm' ? '0.01 mm' : '0.001 in'}; it adds the unrounded parts.
      </p>
      {writtenOut(drawing).map(({ name, sum }) => (
        <Sum key={name} name={name} sum={sum} />
      ))}
    </section>
  );
}

function Sum({ name, sum: { parts, total } }: { readonly name: string; readonly sum: CutSum }) {
  const { lengths } = useBench();
  return (
    <details className="sum" open>
      <summary>{name}, written out</summary>
      <table>
        <thead>
          <tr>
            <th scope="col" className="only-heard">
              Part
            </th>
            <th scope="col">each</th>
            <th scope="col">{lengths.unit}</th>
          </tr>
        </thead>
        <tbody>
          {parts.map(({ name: part, each, times }) => (
            <tr key={part}>
              <th scope="row">{part}</th>
              <td>{times !== 1 && `${times} × ${lengths.inSum(each)}`}</td>
              <td>{lengths.inSum(each * times)}</td>
            </tr>
          ))}
        </tbody>
        <tfoot>
          <tr>
            <th scope="row" colSpan={2}>
              cut
            </th>
            <td>{lengths.inSum(total)}</td>
          </tr>
        </tfoot>
      </table>
    </details>
  );
}
