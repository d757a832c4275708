import { type Iron, type Printer, printer } from '../../../core/index.ts';
import { MEASURED, perInchOf, strideOf } from './readIron.ts';

/** Stitches per inch that irons are sold by. Common practice, no source; their strides are computed. */
const PER_INCH = [5, 6, 7, 8, 9, 10, 11, 12] as const;

/** Strides in mm that irons are sold by. Common practice, no source. */
const METRIC = [2.7, 3, 3.38, 3.85, 4, 5, 6] as const;

/** Irons are named in millimetres in an inch job too. */
const MILLIMETRES = printer('mm');

/** Strides by the millimetre and by the inch, the maker's own first. */
export function IronTable({ own, lengths }: { readonly own: readonly Iron[]; readonly lengths: Printer }) {
  const sold = [...PER_INCH.map(strideOf), ...METRIC].sort((a, b) => a - b);
  const rows = [
    ...own.map(({ name, kind, pitch_mm }) => ({ title: name || kind, stride: Number(pitch_mm) })),
    ...sold.map((stride) => ({ title: '', stride })),
  ];
  return (
    <details>
      <summary>Strides by millimetre and by inch</summary>
      <table>
        <caption>My irons, then strides as sold</caption>
        <thead>
          <tr>
            <th scope="col">Iron</th>
            <th scope="col">Stride</th>
            <th scope="col">To the inch</th>
            <th scope="col">Ten strides</th>
          </tr>
        </thead>
        <tbody>
          {rows.map(({ title, stride }, i) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: rows never move, and two irons may be alike
            <tr key={i}>
              <th scope="row">{title || 'as sold'}</th>
              <td>{MILLIMETRES.exact(stride)}</td>
              <td>{perInchOf(stride)}</td>
              <td>{lengths.exact(MEASURED * stride)}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <p className="help">
        A stride is 25.4 mm divided by the stitches per inch. Irons differ from what is stamped on them: measure ten
        strides.
      </p>
    </details>
  );
}
