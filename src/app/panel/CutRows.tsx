import type { Drawing, Printer } from '../../core/index.ts';

interface CutRowsProps {
  readonly drawing: Drawing;
  readonly print: Pick<Printer, 'size'>;
}

/** Rows of a table of every piece and every length that is cut: `380 mm × 236.5 mm`, `120 mm long`. */
export function CutRows({ drawing: { pieces, lengths }, print }: CutRowsProps) {
  return (
    <tbody>
      {pieces.map(({ id, name, count, width, height }) => (
        <tr key={id}>
          <th scope="row">{often(name, count)}</th>
          <td>
            {print.size(width)} × {print.size(height)}
          </td>
        </tr>
      ))}
      {lengths.map(({ name, count, sum }) => (
        <tr key={name}>
          <th scope="row">{often(name, count)}</th>
          <td>{print.size(sum.total)} long</td>
        </tr>
      ))}
    </tbody>
  );
}

/** A piece, and how often it is cut where that is more than once. */
const often = (name: string, count: number): string => (count === 1 ? name : `${name}, cut ${count}`);
