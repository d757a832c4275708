import type { LengthUnit, Vec2 } from '../../../core/index.ts';
import type { HideDraft } from './hideDraft.ts';
import type { HidePicture } from './pictureScale.ts';
import { gridStep, onScreen, type SurfaceSize, type SurfaceView } from './surfaceView.ts';
import type { Chosen, HandShape } from './useHideHand.ts';

interface HideSurfaceProps {
  readonly view: SurfaceView;
  readonly size: SurfaceSize;
  readonly units: LengthUnit;
  readonly picture: HidePicture | null;
  readonly shapes: readonly HandShape[];
  readonly chosen: Chosen | null;
  /** Corner of the chosen shape that is in hand. */
  readonly corner: number | null;
  readonly drawing: HideDraft | null;
  /** A line on its way. */
  readonly line: readonly Vec2[] | null;
  /** Sides of the shape that is not in the job which cross or touch. */
  readonly meeting: { readonly corners: readonly Vec2[]; readonly sides: readonly number[] } | null;
}

/** What stands on a drawing surface: grid, picture, outline, defects, the chosen shape with its corners, and what is being drawn. */
export function HideSurface(props: HideSurfaceProps) {
  const { view, size, units, picture, shapes, chosen, corner, drawing, line, meeting } = props;
  const at = (point: Vec2): Vec2 => onScreen(view, size, point);
  const list = (corners: readonly Vec2[]): string => corners.map((each) => at(each).join(',')).join(' ');
  const inHand = shapes.find(({ name }) => name === chosen?.name);
  const points = inHand?.name === 'scale' ? inHand.corners : null;
  return (
    <>
      {picture !== null && <Under picture={picture} at={at} />}
      <path className="hide-grid" d={gridLines(view, size, units)} />
      <path className="hide-zero" d={zeroLines(at, size)} />
      {shapes.map(({ name, corners }) =>
        name === 'scale' ? null : (
          <polygon
            key={name}
            className={name === 'outline' ? 'hide' : 'defect'}
            data-chosen={name === chosen?.name || undefined}
            data-over={picture !== null || undefined}
            points={list(corners)}
          />
        ),
      )}
      {meeting?.sides.map((side) => (
        <path
          key={side}
          className="hide-meeting"
          d={`M${at(meeting.corners[side]!).join(' ')}L${at(meeting.corners[(side + 1) % meeting.corners.length]!).join(' ')}`}
        />
      ))}
      {points !== null && <path className="scale-line" d={`M${points.map((each) => at(each).join(' ')).join('L')}`} />}
      {inHand?.corners.map((each, i) => (
        <Handle
          // biome-ignore lint/suspicious/noArrayIndexKey: a corner has no name but its number
          key={i}
          at={at(each)}
          isInHand={i === corner}
          isSmall={inHand.corners.length > 60}
          word={points === null ? null : 'AB'[i]!}
        />
      ))}
      {drawing !== null && (
        <>
          <polyline className="hide-line" points={list(drawing.corners)} />
          {drawing.corners.map((each, i) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: a corner has no name but its number
            <Handle key={i} at={at(each)} isInHand={i === 0} isSmall={drawing.corners.length > 60} word={null} />
          ))}
        </>
      )}
      {line !== null && (
        <polyline className="hide-line" points={list([...(drawing?.corners.slice(-1) ?? []), ...line])} />
      )}
    </>
  );
}

interface HandleProps {
  readonly at: Vec2;
  readonly isInHand: boolean;
  readonly isSmall: boolean;
  readonly word: string | null;
}

const Handle = ({ at: [x, y], isInHand, isSmall, word }: HandleProps) => (
  <>
    <circle
      className="hide-corner"
      data-in-hand={isInHand || undefined}
      cx={x}
      cy={y}
      r={isInHand ? 7 : isSmall ? 2.5 : 4.5}
    />
    {word !== null && (
      <text className="scale-word" x={x} y={y - 12}>
        {word}
      </text>
    )}
  </>
);

/** The picture, its lower left corner at the origin. */
function Under({ picture, at }: { readonly picture: HidePicture; readonly at: (point: Vec2) => Vec2 }) {
  const [x, y] = at([0, picture.height * picture.mm]);
  const [right, foot] = at([picture.width * picture.mm, 0]);
  return <image href={picture.address} x={x} y={y} width={right - x} height={foot - y} preserveAspectRatio="none" />;
}

function gridLines(view: SurfaceView, { width, height }: SurfaceSize, units: LengthUnit): string {
  const side = gridStep(view.scale, units);
  const along = (from: number, room: number): number[] => {
    const first = Math.ceil(from / side);
    return Array.from(
      { length: Math.floor((from + room / view.scale) / side) - first + 1 },
      (_, i) => (first + i) * side,
    );
  };
  const across = along(view.left, width).map((x) => `M${((x - view.left) * view.scale).toFixed(1)} 0V${height}`);
  const upright = along(view.low, height).map(
    (y) => `M0 ${(height - (y - view.low) * view.scale).toFixed(1)}H${width}`,
  );
  return [...across, ...upright].join('');
}

/** The lines from which corners are measured: from the left, and from below. */
function zeroLines(at: (point: Vec2) => Vec2, { width, height }: SurfaceSize): string {
  const [x, y] = at([0, 0]);
  return `M${x} 0V${height}M0 ${y}H${width}`;
}
