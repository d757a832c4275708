import { bookSection, type CoverDesign } from '../../../../core/index.ts';
import { Dimension } from '../../../sheet/PieceMarks.tsx';
import { SectionPicture } from '../../../sheet/SectionPicture.tsx';
import { useLengths } from '../../../state/BenchContext.tsx';

/** Height of the lettering as a share of the width of the book; it is the same on every step, whatever its scale. */
const TEXT = 0.055;

/** The closed book alone, cut across the spine, with the two measures that can be seen there. */
export function BookPicture({ design }: { readonly design: CoverDesign }) {
  const lengths = useLengths();
  const { width_mm: width, thickness_mm: thick } = design.job.book;
  const closed = bookSection(design.needs.nominal.book, 0);
  const text = TEXT * width;
  const [left, right] = [closed.boards, closed.pages]
    .flat(2)
    .reduce(([low, high], [x]) => [Math.min(low, x), Math.max(high, x)] as const, [0, 0] as readonly [number, number]);
  const half = thick / 2;
  return (
    <div className="section-drawing">
      <SectionPicture
        section={{ ...closed, outside: [], lining: null, pockets: [], seams: [], opening: 0 }}
        label={`The closed book, cut across the spine: ${lengths.size(width)} wide and ${lengths.size(thick)} thick`}
        frame={[
          [left - 3 * text, -half],
          [right, half + 2.5 * text],
        ]}
      >
        <g fontSize={text}>
          <Dimension from={right - width} to={right} at={-half - text} text={lengths.size(width)} size={text} />
          <g transform={`translate(${left - text} ${half}) rotate(-90)`}>
            <Dimension from={0} to={thick} at={0} text={lengths.size(thick)} size={text} />
          </g>
        </g>
      </SectionPicture>
    </div>
  );
}
