import type { ReactNode } from 'react';
import type { CoverSection, Vec2 } from '../../core/index.ts';
import './sheet.css';

interface SectionPictureProps {
  readonly section: CoverSection;
  /** Middle of the leather as it lies by itself, to compare; null or left out for none. */
  readonly lies?: readonly Vec2[] | null;
  /** What it shows, in words. */
  readonly label: string;
  /** Points that the picture is drawn round; the whole cover where left out. */
  readonly frame?: readonly Vec2[] | undefined;
  /** Drawn over it, mm, y down. */
  readonly children?: ReactNode;
}

/** Room round the drawing, mm. */
const PAD = 8;

const line = (points: readonly Vec2[]): string =>
  `M${points.map(([x, y]) => `${x.toFixed(2)} ${(-y).toFixed(2)}`).join('L')}`;

const outline = (points: readonly Vec2[]): string => `${line(points)}Z`;

/** Book and cover cut across the spine, to scale. Dressed by `.section-drawing` around it. */
export function SectionPicture({ section, lies, label, frame, children }: SectionPictureProps) {
  const { outside } = section;
  const points = frame ?? [...outside, ...(lies ?? [])];
  const xs = points.map(([x]) => x);
  const ys = points.map(([, y]) => -y);
  const [left, top] = [Math.min(...xs) - PAD, Math.min(...ys) - PAD];
  const [width, height] = [Math.max(...xs) + PAD - left, Math.max(...ys) + PAD - top];
  return (
    <svg className="section-layers" viewBox={`${left} ${top} ${width} ${height}`} role="img" aria-label={label}>
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
      {outside.length > 0 && <path className="outside" d={outline(outside)} />}
      {lies && <path className="lies" d={line(lies)} />}
      {section.seams.map(([from, to]) => (
        <path key={outline([from, to])} className="seam" d={`M${from[0]} ${-from[1]}L${to[0]} ${-to[1]}`} />
      ))}
      {children}
    </svg>
  );
}
