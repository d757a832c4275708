import type { Vec2 } from '../../core/index.ts';
import { LASER_CAUTION } from '../laserCaution.ts';
import { escaped } from '../svg/escaped.ts';
import { pathData, svgNumber } from '../svg/pathData.ts';
import type { MachinePlan, PlannedBed } from './machinePlan.ts';
import { isCircle, type Stroke } from './stroke.ts';

/** Width of every line, mm: the machine follows its middle. */
const PEN = 0.1;

/**
 * One bed as an SVG in true size: the page is the bed, one unit a millimetre. Each pass is a group with the maker's name and colour,
 * in order; the cautions for a laser are its description, which no machine follows.
 */
export function machineSvg({ title, bed: { width, height } }: MachinePlan, { passes, number }: PlannedBed): string {
  const place = ([x, y]: Vec2): Vec2 => [x, height - y];
  const shape = (stroke: Stroke): string => {
    const [first] = stroke.path;
    if (isCircle(stroke) && first?.kind === 'arc') {
      const [x, y] = place(first.centre);
      return `<circle cx="${svgNumber(x)}" cy="${svgNumber(y)}" r="${svgNumber(first.radius)}"/>`;
    }
    return `<path d="${pathData(stroke.path, place)}${stroke.isClosed ? 'Z' : ''}"/>`;
  };
  const groups = passes.map(
    ({ pass, marks, strokes }) =>
      `<g id="${escaped(marks.layer)}" fill="none" stroke="${marks.colour}" stroke-width="${PEN}">\n<title>${escaped(pass.name)}</title>\n${strokes.map(shape).join('\n')}\n</g>`,
  );
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${svgNumber(width)}mm" height="${svgNumber(height)}mm" viewBox="0 0 ${svgNumber(width)} ${svgNumber(height)}">`,
    `<title>${escaped(title)}, bed ${number}</title>`,
    `<desc>${escaped(LASER_CAUTION.join(' '))}</desc>`,
    ...groups,
    '</svg>\n',
  ].join('\n');
}
