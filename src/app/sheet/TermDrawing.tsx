import type { TermPart } from '../../core/index.ts';
import { useBench } from '../state/BenchContext.tsx';
import { termPicture } from './termPicture.ts';
import './sheet.css';
import './term.css';

/** A small drawing of this book's own cover, to scale, with what a term means lit. */
export default function TermDrawing({ part }: { readonly part: TermPart }) {
  const design = useBench(({ design }) => design);
  const picture = termPicture(design, part);
  if (picture === null) return <span className="help"> This cover has none.</span>;
  return (
    <span className="section-drawing term-drawing">
      <svg className="section-layers" viewBox={picture.box.join(' ')} role="img" aria-label={picture.label}>
        {picture.marks.map(({ kind, d }, i) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: the marks of a picture keep their order
          <path key={i} className={kind} data-mark={kind} d={d} />
        ))}
      </svg>
    </span>
  );
}
