import { type Printer, readField } from '../../core/index.ts';
import './form.css';

interface LeatherPictureProps {
  /** The weight as typed. */
  readonly text: string;
  readonly lengths: Printer;
}

/** Length of leather that is drawn, and the room between its two ends, mm. */
const [LENGTH, BETWEEN] = [16, 2];
/** Drawn until a weight can be read. */
const EXAMPLE = '4-5 oz';

function rangeOf(text: string): readonly number[] | null {
  const reading = readField('leather.outside', text, 'mm');
  return reading.ok ? reading.value.map(({ value }) => Number(value)) : null;
}

/** The thin and the thick end of a leather, cut across, to one scale. */
export function LeatherPicture({ text, lengths }: LeatherPictureProps) {
  const typed = rangeOf(text);
  const [min = 0, max = 0] = typed ?? rangeOf(EXAMPLE) ?? [];
  return (
    <figure className="measure-picture">
      <svg
        viewBox={`-1 -1 ${LENGTH + 2} ${min + BETWEEN + max + 2}`}
        role="img"
        aria-label="The thin and the thick end of the leather, cut across"
      >
        <rect className="body" width={LENGTH} height={min} />
        <rect className="body" y={min + BETWEEN} width={LENGTH} height={max} />
      </svg>
      <figcaption>
        {typed !== null && (min === max ? lengths.fine(min) : `${lengths.fine(min)} to ${lengths.fine(max)}`)}
      </figcaption>
    </figure>
  );
}
