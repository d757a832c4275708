import {
  type CoverDesign,
  outsideOnceDry,
  type Printer,
  type SegmentKind,
  type StripSegment,
} from '../../core/index.ts';
import { segmentWords, sideOf } from './segmentWords.ts';
import type { StripLabel } from './stripLayout.ts';

/** Stretches shorter than this, mm, are printed to 0.01 mm: tenths would hide the effect of a change of leather. */
const FINE = 20;

/** Stretches that are a measure or a setting of the job; the others are computed. */
const GIVEN: readonly SegmentKind[] = ['edgeMargin', 'turnedEnd', 'board'];

const lengthOf = ({ kind, length }: StripSegment, lengths: Printer): string =>
  GIVEN.includes(kind) ? lengths.size(length) : length < FINE ? lengths.fine(length) : lengths.length(length);

/**
 * Label of each stretch of the thick end; gaps also have the thin end's.
 * @param thin the same stretches at the thin end, or null where the leather has one thickness
 */
export function stripLabels(
  thick: readonly StripSegment[],
  thin: readonly StripSegment[] | null,
  lengths: Printer,
): readonly StripLabel[] {
  const say = ({ length }: StripSegment): string => lengths.gap(length) + (length < 0 ? ' over' : '');
  return thick.map((segment) => {
    const { id, kind } = segment;
    const { name } = segmentWords(segment);
    const side = sideOf(id);
    if (kind !== 'gap') {
      return { id, side, lines: [name, lengthOf(segment, lengths)] };
    }
    const other = thin?.find((stretch) => stretch.id === id);
    return {
      id,
      side,
      lines: other === undefined ? [name, say(segment)] : [name, `thick ${say(segment)}`, `thin ${say(other)}`],
    };
  });
}

/** The size of the outside, as cut; and as it is drawn, once made, where the leather changes its size by then. */
export function outsideWords(design: CoverDesign, axis: 'width' | 'height', lengths: Printer): string {
  const [cut, then] = [design.pieces.outside[axis], outsideOnceDry(design)[axis]];
  return cut === then
    ? `outside ${lengths.size(cut)}`
    : `outside ${lengths.size(cut)}, once made ${lengths.length(then)}`;
}
