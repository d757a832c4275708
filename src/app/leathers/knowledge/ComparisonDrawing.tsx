import type { ComparisonPicture, PictureMark } from '../../../output/comparison/comparisonPicture.ts';
import './knowledge.css';

/** The picture of measured over predicted lengths, on the page. */
export function ComparisonDrawing({
  picture: { width, height, marks, title },
}: {
  readonly picture: ComparisonPicture;
}) {
  return (
    <svg className="comparison" viewBox={`0 0 ${width} ${height}`} role="img" aria-label={title}>
      {marks.map((mark) => (
        <Mark key={JSON.stringify(mark)} mark={mark} />
      ))}
    </svg>
  );
}

function Mark({ mark }: { readonly mark: PictureMark }) {
  if (mark.kind === 'line') {
    const { x1, y1, x2, y2 } = mark;
    return <line x1={x1} y1={y1} x2={x2} y2={y2} data-of={mark.of} />;
  }
  if (mark.kind === 'text')
    return (
      <text x={mark.x} y={mark.y} textAnchor={mark.anchor}>
        {mark.text}
      </text>
    );
  const { x, y, isFilled, title } = mark;
  return mark.kind === 'circle' ? (
    <circle cx={x} cy={y} r={4} data-filled={isFilled}>
      <title>{title}</title>
    </circle>
  ) : (
    <rect x={x - 4} y={y - 4} width={8} height={8} data-filled={isFilled}>
      <title>{title}</title>
    </rect>
  );
}
