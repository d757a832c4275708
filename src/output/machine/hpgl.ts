import { arcPoint, distance, type Segment, type Vec2 } from '../../core/index.ts';
import type { PlannedBed } from './machinePlan.ts';
import { segmentInChords, strokeStart } from './stroke.ts';

/** Plotter units to a millimetre: one is 0.025 mm (HP-GL reference, chapter on units). */
const UNITS = 40;

/** Most that a chord strays from an arc, mm. */
const TOLERANCE = 0.001;

/** Most that an arc may stray because its start and its centre are whole units, mm: less than a corner does, half the diagonal of a unit. */
const STRAY = 0.016;

/** Places along an arc at which its stray is measured. */
const SAMPLES = 24;

const DEGREES = 180 / Math.PI;

/**
 * One bed in HP-GL: IN, then for each pass SP with its pen, PU to each stroke, PD along its lines and AA along its arcs, all absolute
 * in units of 0.025 mm from the lower left of the bed; at the end the pen is up, at the origin and put away.
 *
 * Coordinates are whole units, so a point is off by 0.018 mm at most, chords apart. An arc is given the centre that takes it nearest to
 * the true one, and where none of those keeps it as near it is followed in chords; after each arc the pen is led to its exact end, so
 * that nothing adds up. HP-GL has no comments that every machine skips: it carries no cautions and no title.
 */
export function hpgl({ passes }: Pick<PlannedBed, 'passes'>): string {
  const commands = ['IN', 'PA'];
  for (const { marks, strokes } of passes) {
    commands.push('PU', `SP${marks.pen}`);
    for (const stroke of strokes) {
      commands.push(`PU${at(strokeStart(stroke))}`, 'PD');
      for (const segment of stroke.path) {
        if (segment.kind === 'line') commands.push(`PD${at(segment.to)}`);
        else commands.push(...arc(segment));
      }
    }
  }
  return [...commands, 'PU', 'PU0,0', 'SP0', 'IN']
    .map((command) => `${command};`)
    .join('\n')
    .concat('\n');
}

type Arc = Extract<Segment, { kind: 'arc' }>;

function arc(segment: Arc): string[] {
  const { centre, stray } = nearestCentre(segment);
  if (stray > STRAY) return segmentInChords(segment, TOLERANCE).map(({ to }) => `PD${at(to)}`);
  const chord = Math.max(0.5, Math.min(45, 2 * Math.acos(Math.max(0, 1 - TOLERANCE / segment.radius)) * DEGREES));
  return [
    `AA${at(centre)},${(sweepAbout(centre, segment) * DEGREES).toFixed(4)},${chord.toFixed(2)}`,
    `PD${at(arcPoint(segment, 1))}`,
  ];
}

/** The centre in whole units about which an arc from its start in whole units strays least from the true one. */
function nearestCentre(segment: Arc): { readonly centre: Vec2; readonly stray: number } {
  const start = rounded(arcPoint(segment, 0));
  const middle = rounded(segment.centre);
  const points = Array.from({ length: SAMPLES + 1 }, (_, i) => arcPoint(segment, i / SAMPLES));
  const around = [-1, 0, 1];
  return around
    .flatMap((dx) => around.map((dy): Vec2 => [middle[0] + dx / UNITS, middle[1] + dy / UNITS]))
    .map((centre) => {
      const radius = distance(centre, start);
      return { centre, stray: Math.max(...points.map((point) => Math.abs(distance(centre, point) - radius))) };
    })
    .reduce((best, each) => (each.stray < best.stray ? each : best));
}

/** The sweep that ends an arc about another centre where it should end: the same sweep would carry a large one past its corner. */
function sweepAbout(centre: Vec2, segment: Arc): number {
  const isCircle = Math.abs(segment.sweep) >= 2 * Math.PI - 1e-9;
  if (isCircle) return segment.sweep;
  const [from, to] = [rounded(arcPoint(segment, 0)), rounded(arcPoint(segment, 1))].map(([x, y]) =>
    Math.atan2(y - centre[1], x - centre[0]),
  ) as [number, number];
  const turn = to - from - segment.sweep;
  return segment.sweep + Math.atan2(Math.sin(turn), Math.cos(turn));
}

const rounded = ([x, y]: Vec2): Vec2 => [Math.round(x * UNITS) / UNITS, Math.round(y * UNITS) / UNITS];

const at = ([x, y]: Vec2): string => `${Math.round(x * UNITS)},${Math.round(y * UNITS)}`;
