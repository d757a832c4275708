import { type CoverDesign, coverSection } from '../../../../core/index.ts';
import { SectionPicture } from '../../../sheet/SectionPicture.tsx';

interface WrapPictureProps {
  readonly design: CoverDesign;
  /** What it shows, in words. */
  readonly label: string;
  /** Whether it lies between a board and a weight. */
  readonly isPressed?: boolean;
}

/** Thickness of the board and the weight, mm; for the drawing only. */
const BOARD = 6;
/** Clear of the leather, mm. */
const CLEAR = 0.5;

/** The cover closed on its book as far as it goes, cut across the spine. */
export function WrapPicture({ design, label, isPressed = false }: WrapPictureProps) {
  const section = coverSection(design, 'thick', 0);
  const [xs, ys] = [0, 1].map((i) => section.outside.map((point) => point[i]!)) as [number[], number[]];
  const [left, right] = [Math.min(...xs), Math.max(...xs)];
  const [low, high] = [Math.min(...ys) - CLEAR, Math.max(...ys) + CLEAR];
  const isFlat = isPressed && section.opening === 0;
  return (
    <div className="section-drawing">
      <SectionPicture
        section={section}
        label={label}
        frame={
          isFlat
            ? [
                [left, low - BOARD],
                [right, high + 2 * BOARD],
              ]
            : undefined
        }
      >
        {isFlat && (
          <>
            <rect className="press" x={left} y={-low} width={right - left} height={BOARD} />
            <rect className="press" x={left} y={-high - 2 * BOARD} width={right - left} height={2 * BOARD} />
          </>
        )}
      </SectionPicture>
    </div>
  );
}
