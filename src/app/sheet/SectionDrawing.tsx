import type { RangePoint } from '../../core/leather/leatherModel.ts';
import type { Vec2 } from '../../core/math/vec2.ts';
import { useBench } from '../state/BenchContext.tsx';
import { coverSection } from './sectionPath.ts';

interface SectionDrawingProps {
  readonly point: RangePoint;
  /** Radians, 0 closed to pi flat. */
  readonly opening: number;
  /** Why it stands where the three-dimensional view should be. */
  readonly reason: string;
}

const degrees = (angle: number): string => ((angle * 180) / Math.PI).toFixed(0);

const outline = (points: readonly Vec2[]): string =>
  `M${points.map(([x, y]) => `${x.toFixed(2)} ${(-y).toFixed(2)}`).join('L')}Z`;

/** Book and cover cut across the spine, to scale. Stands in wherever the three-dimensional view cannot. */
export function SectionDrawing({ point, opening, reason }: SectionDrawingProps) {
  const { design, report } = useBench();
  const section = coverSection(design, point, opening);
  const { outside } = section;
  const xs = outside.map(([x]) => x);
  const ys = outside.map(([, y]) => -y);
  const pad = 8;
  const [left, top] = [Math.min(...xs) - pad, Math.min(...ys) - pad];
  const [width, height] = [Math.max(...xs) + pad - left, Math.max(...ys) + pad - top];
  return (
    <figure className="section-drawing">
      <svg
        viewBox={`${left} ${top} ${width} ${height}`}
        role="img"
        aria-label={`Section across the spine. ${report.headline}`}
      >
        {section.pages.map((pages) => (
          <path key={outline(pages)} className="pages" d={outline(pages)} />
        ))}
        {section.boards.map((board) => (
          <path key={outline(board)} className="board" d={outline(board)} />
        ))}
        {section.lining !== null && <path className="lining" d={outline(section.lining)} />}
        {section.pockets.map((pocket) => (
          <path key={outline(pocket)} className="pocket" d={outline(pocket)} />
        ))}
        <path className="outside" d={outline(outside)} />
        {section.seams.map(([from, to]) => (
          <path key={outline([from, to])} className="seam" d={`M${from[0]} ${-from[1]}L${to[0]} ${-to[1]}`} />
        ))}
      </svg>
      <figcaption>
        Section across the spine, to scale, {point} leather
        {section.opening > opening + 1e-6 && `, open ${degrees(section.opening)} degrees: it closes no further`}.{' '}
        {reason}
      </figcaption>
    </figure>
  );
}
