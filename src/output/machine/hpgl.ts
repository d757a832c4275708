import type { Vec2 } from '../../core/index.ts';
import type { PlannedBed } from './machinePlan.ts';
import { strokeStart } from './stroke.ts';

/** Plotter units to a millimetre: one is 0.025 mm (HP-GL reference, chapter on units). */
const UNITS = 40;

/** Most that a chord of the plotter strays from an arc, mm. */
const TOLERANCE = 0.005;

const DEGREES = 180 / Math.PI;

/**
 * One bed in HP-GL: IN, then for each pass SP with its pen, PU to each stroke, PD along its lines and AA along its arcs, all absolute
 * in units of 0.025 mm from the lower left of the bed; at the end the pen is up, at the origin and put away.
 *
 * Coordinates are whole units, so a point is off by 0.018 mm at most; after each arc the pen is led to its exact end, so that
 * nothing adds up. HP-GL has no comments that every machine skips: it carries no cautions and no title.
 */
export function hpgl({ passes }: Pick<PlannedBed, 'passes'>): string {
  const commands = ['IN', 'PA'];
  for (const { marks, strokes } of passes) {
    commands.push('PU', `SP${marks.pen}`);
    for (const stroke of strokes) {
      commands.push(`PU${at(strokeStart(stroke))}`, 'PD');
      for (const segment of stroke.path) {
        if (segment.kind === 'line') commands.push(`PD${at(segment.to)}`);
        else {
          const { centre, radius, start, sweep } = segment;
          const end: Vec2 = [
            centre[0] + radius * Math.cos(start + sweep),
            centre[1] + radius * Math.sin(start + sweep),
          ];
          const chord = Math.max(0.5, Math.min(45, 2 * Math.acos(Math.max(0, 1 - TOLERANCE / radius)) * DEGREES));
          commands.push(`AA${at(centre)},${(sweep * DEGREES).toFixed(4)},${chord.toFixed(2)}`, `PD${at(end)}`);
        }
      }
    }
  }
  return [...commands, 'PU', 'PU0,0', 'SP0', 'IN']
    .map((command) => `${command};`)
    .join('\n')
    .concat('\n');
}

const at = ([x, y]: Vec2): string => `${Math.round(x * UNITS)},${Math.round(y * UNITS)}`;
