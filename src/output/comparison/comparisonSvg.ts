import { escaped } from '../svg/escaped.ts';
import type { ComparisonPicture, PictureMark } from './comparisonPicture.ts';

const LINES: Readonly<Record<'axis' | 'agreed' | 'stated', string>> = {
  axis: 'stroke="#555"',
  agreed: 'stroke="#555" stroke-dasharray="5 4"',
  stated: 'stroke="#000"',
};

function markOf(mark: PictureMark): string {
  if (mark.kind === 'line')
    return `<line x1="${mark.x1}" y1="${mark.y1}" x2="${mark.x2}" y2="${mark.y2}" ${LINES[mark.of]}/>`;
  if (mark.kind === 'text')
    return `<text x="${mark.x}" y="${mark.y}" text-anchor="${mark.anchor}">${escaped(mark.text)}</text>`;
  const { x, y, isFilled, title } = mark;
  const look = `stroke="#000" fill="${isFilled ? '#000' : '#fff'}"`;
  const named = title === '' ? '' : `<title>${escaped(title)}</title>`;
  return mark.kind === 'circle'
    ? `<circle cx="${x}" cy="${y}" r="4" ${look}>${named}</circle>`
    : `<rect x="${x - 4}" y="${y - 4}" width="8" height="8" ${look}>${named}</rect>`;
}

/** The picture of measured over predicted lengths as a file, in black on white. */
export const comparisonSvg = ({ width, height, marks, title }: ComparisonPicture): string =>
  [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${width} ${height}" width="${width}" height="${height}" font-family="sans-serif" font-size="12">`,
    `<title>${escaped(title)}</title>`,
    `<rect width="${width}" height="${height}" fill="#fff"/>`,
    ...marks.map(markOf),
    '</svg>\n',
  ].join('\n');
