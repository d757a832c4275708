import { useBench } from '../state/BenchContext.tsx';
import { type CutSum, cutSums } from './cutSums.ts';

/** Every cut size, and its sum on demand. */
export function CutSizes() {
  const { design, lengths, view } = useBench();
  const { outside, pocket, lining } = design.pieces;
  const step = design.job.pattern.rounding_mm;
  const size = ({ width, height }: { width: number; height: number }): string =>
    `${lengths.cut(width)} × ${lengths.cut(height)}`;
  return (
    <section aria-labelledby="cut-sizes">
      <h2 id="cut-sizes">Cut sizes</h2>
      <table className="pieces">
        <thead className="only-heard">
          <tr>
            <th scope="col">Piece</th>
            <th scope="col">Width × height</th>
          </tr>
        </thead>
        <tbody>
          <tr>
            <th scope="row">Outside</th>
            <td>{size(outside)}</td>
          </tr>
          {pocket.count > 0 && (
            <tr>
              <th scope="row">Pockets, two</th>
              <td>{size(pocket)}</td>
            </tr>
          )}
          {lining !== null && (
            <tr>
              <th scope="row">Centre lining</th>
              <td>{size(lining)}</td>
            </tr>
          )}
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
      {cutSums(design).map((sum) => (
        <Sum key={sum.name} sum={sum} />
      ))}
    </section>
  );
}

function Sum({ sum: { name, lines, sum, cut } }: { readonly sum: CutSum }) {
  const { lengths } = useBench();
  const isGiven = Math.abs(sum - cut) > 1e-6;
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
          {lines.map(({ name: part, each, times }) => (
            <tr key={part}>
              <th scope="row">{part}</th>
              <td>{times !== null && `${times} × ${lengths.inSum(each)}`}</td>
              <td>{lengths.inSum(each * (times ?? 1))}</td>
            </tr>
          ))}
        </tbody>
        <tfoot>
          <tr>
            <th scope="row" colSpan={2}>
              {isGiven ? 'what the tool would cut' : 'cut'}
            </th>
            <td>{lengths.inSum(sum)}</td>
          </tr>
          {isGiven && (
            <tr>
              <th scope="row" colSpan={2}>
                cut, as given by the maker
              </th>
              <td>{lengths.inSum(cut)}</td>
            </tr>
          )}
        </tfoot>
      </table>
    </details>
  );
}
