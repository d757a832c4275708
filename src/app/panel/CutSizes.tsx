import { useMemo } from 'react';
import { type CoverDesign, type CutSum, cutStep, patternDrawing, sumColumn } from '../../core/index.ts';
import { useLengths } from '../state/BenchContext.tsx';
import { lagging } from '../state/lagging.tsx';
import { CutRows } from './CutRows.tsx';
import { writtenOut } from './writtenOut.ts';

/** Every cut size, and its sum on demand. Fetched after the first paint. */
function CutSizes({ design }: { readonly design: CoverDesign }) {
  const drawing = useMemo(() => patternDrawing(design), [design]);
  const lengths = useLengths();
  const step = cutStep(design.job);
  return (
    <section aria-labelledby="cut-sizes">
      <h3 id="cut-sizes">Cut sizes</h3>
      <table className="pieces">
        <thead className="only-heard">
          <tr>
            <th scope="col">Piece</th>
            <th scope="col">Width × height</th>
          </tr>
        </thead>
        <CutRows drawing={drawing} print={lengths} />
      </table>
      <p className="help">
        {step === 0 ? 'Not rounded.' : `Rounded up to ${lengths.size(step)}: leather cut too large can be trimmed.`}{' '}
        Sized for the thick end of the leather. The height of pockets and lining is the outside's.
      </p>
      {writtenOut(drawing).map(({ name, sum }) => (
        <Sum key={name} name={name} sum={sum} />
      ))}
    </section>
  );
}

function Sum({ name, sum }: { readonly name: string; readonly sum: CutSum }) {
  const lengths = useLengths();
  const { unit, total, lines } = sumColumn(sum, lengths);
  return (
    <details className="sum">
      <summary>{name}, written out</summary>
      <table>
        <thead>
          <tr>
            <th scope="col" className="only-heard">
              Part
            </th>
            <th scope="col">each</th>
            <th scope="col">{unit}</th>
          </tr>
        </thead>
        <tbody>
          {lines.map(({ name: part, times, isLess, each, whole }) => (
            <tr key={part}>
              <th scope="row">{part}</th>
              <td>{times !== 1 && `${times} × ${each}`}</td>
              <td>{isLess ? `−${whole}` : whole}</td>
            </tr>
          ))}
        </tbody>
        <tfoot>
          <tr>
            <th scope="row" colSpan={2}>
              cut
            </th>
            <td>{total}</td>
          </tr>
        </tfoot>
      </table>
    </details>
  );
}

export default lagging(({ design }) => ({ design }), CutSizes);
