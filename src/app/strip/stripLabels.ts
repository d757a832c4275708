import type { LengthText } from '../state/lengthText.ts';
import type { Segment } from './segments.ts';
import { segmentWords, sideOf } from './segmentWords.ts';
import type { StripLabel } from './stripLayout.ts';

/** An overrun of 1.23 mm is told as 1.3 mm: rounded as a gap is, then without its sign. */
export const gapText = (length: number, lengths: LengthText): string => lengths.gap(length).replace('-', '');

/** Stretches shorter than this, mm, are told to 0.01 mm: there tenths would hide what a change of leather does. */
const FINE = 20;

/**
 * Label of each stretch of the thick end; gaps also tell the thin end's.
 * @param thin the same stretches at the thin end, or null where the leather has one thickness
 */
export function stripLabels(
  thick: readonly Segment[],
  thin: readonly Segment[] | null,
  lengths: LengthText,
): readonly StripLabel[] {
  const say = ({ length }: Segment): string => gapText(length, lengths) + (length < 0 ? ' over' : '');
  return thick.map((segment) => {
    const { id, kind } = segment;
    const { name } = segmentWords(segment);
    const side = sideOf(id);
    if (kind !== 'gap') {
      const length = segment.length < FINE ? lengths.fine(segment.length) : lengths.size(segment.length);
      return { id, side, lines: [name, length] };
    }
    const other = thin?.find((stretch) => stretch.id === id);
    return {
      id,
      side,
      lines: other === undefined ? [name, say(segment)] : [name, `thick ${say(segment)}`, `thin ${say(other)}`],
    };
  });
}
