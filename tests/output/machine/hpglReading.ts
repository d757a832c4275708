import type { Vec2 } from '../../../src/core/math/vec2.ts';
import { nth } from '../../nth.ts';

/** One line that a plotter draws with its pen down. */
interface Drawn {
  readonly pen: number;
  readonly points: readonly Vec2[];
  /** How many arcs it has. */
  readonly arcs: number;
}

export interface Plot {
  readonly drawn: readonly Drawn[];
  /** Whether the pen is up at the end, where, and which pen is held. */
  readonly end: { readonly isDown: boolean; readonly at: Vec2; readonly pen: number };
}

/** Plotter units to a millimetre (HP-GL reference: a unit is 0.025 mm). */
const UNITS = 40;

/**
 * Follows HP-GL by its published command reference: IN, PA, SP n, PU and PD with pairs, AA x,y,angle,chord with the arc drawn as chords of
 * that many degrees. Anything else is an error.
 */
export function followHpgl(text: string): Plot {
  const drawn: { pen: number; points: Vec2[]; arcs: number }[] = [];
  let [at, isDown, pen]: [Vec2, boolean, number] = [[0, 0], false, 0];
  const lower = (): void => {
    if (!isDown) drawn.push({ pen, points: [at], arcs: 0 });
    isDown = true;
  };
  const go = (to: Vec2): void => {
    at = to;
    if (isDown) nth(drawn, -1).points.push(at);
  };
  for (const command of text.split(';').map((each) => each.trim())) {
    const name = command.slice(0, 2);
    const numbers = command.length > 2 ? command.slice(2).split(',').map(Number) : [];
    if (numbers.some(Number.isNaN)) throw new Error(`not a number in ${command}`);
    const pairs = Array.from(
      { length: numbers.length / 2 },
      (_, i): Vec2 => [numbers[2 * i]! / UNITS, numbers[2 * i + 1]! / UNITS],
    );
    switch (name) {
      case '':
        break;
      case 'IN':
        [isDown] = [false];
        break;
      case 'PA':
        break;
      case 'SP':
        if (isDown) throw new Error('a pen is changed while it is down');
        pen = numbers[0] ?? 0;
        break;
      case 'PU':
        isDown = false;
        pairs.forEach(go);
        break;
      case 'PD':
        lower();
        pairs.forEach(go);
        break;
      case 'AA': {
        const [x = 0, y = 0, sweep = 0, chord = 5] = numbers;
        const centre: Vec2 = [x / UNITS, y / UNITS];
        const [dx, dy] = [at[0] - centre[0], at[1] - centre[1]];
        const steps = Math.max(1, Math.ceil(Math.abs(sweep) / chord));
        nth(drawn, -1).arcs++;
        for (let i = 1; i <= steps; i++) {
          const turn = (((sweep * i) / steps) * Math.PI) / 180;
          go([
            centre[0] + dx * Math.cos(turn) - dy * Math.sin(turn),
            centre[1] + dx * Math.sin(turn) + dy * Math.cos(turn),
          ]);
        }
        break;
      }
      default:
        throw new Error(`an unknown command ${command}`);
    }
  }
  return { drawn, end: { isDown, at, pen } };
}
