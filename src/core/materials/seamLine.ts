import type { CoverDesign } from '../fold/coverDesign.ts';
import { distance } from '../math/vec2.ts';
import { penLoopOf } from '../pattern/penLoop.ts';
import type { SeamLayer } from '../pattern/seam.ts';
import { seamHoles } from '../pattern/seamHoles.ts';
import { type Strap, sewingOrder, strapOf } from '../pattern/strap.ts';
import { strideGroups } from '../pattern/strideGroups.ts';
import { type Mm, mm } from '../units/mm.ts';

/** A stretch of whole pitches through the same layers. */
export interface SeamRun {
  readonly pitches: number;
  readonly pitch: Mm;
  readonly layers: number;
  /** S: thickness of the layers together, at the thick end of their ranges. */
  readonly stack: Mm;
}

/** A seam sewn or laced in one go. A closed one ends where it starts and has four corners. */
export interface SeamLine {
  readonly closed: boolean;
  readonly runs: readonly SeamRun[];
}

/**
 * Seam lines of a cover, with the holes and layers of its pattern: one all round, or a row at head and one at tail. A pen
 * loop adds both its ends to the layers where it is caught.
 */
export function seamLines(design: CoverDesign): SeamLine[] {
  const { outside, pocket, lining } = design.needs.thick.leathers;
  const thickness = (layer: SeamLayer): number => {
    if (layer === 'outside' || layer.endsWith('TurnedEnd')) return outside.thickness;
    return layer === 'lining' ? (lining?.thickness ?? 0) : pocket.thickness;
  };
  const seam = seamHoles(design);
  const caught = new Set(penLoopOf(design, seam)?.holes);
  const rows = seam.rows.map((row): SeamRun[] => {
    const { intervals, holes } = row;
    const pitchOf = strideGroups(row, 0, intervals).flatMap(({ count, pitch }) => new Array<number>(count).fill(pitch));
    // A pitch belongs to the hole where it starts; none starts at the last hole of an open row.
    const pitches = holes.slice(0, intervals).map((hole, k) => {
      const ends = caught.has(hole) ? 2 : 0;
      const stack = hole.layers.reduce((sum, layer) => sum + thickness(layer), ends * outside.thickness);
      return { pitches: 1, pitch: mm(pitchOf[k]!), layers: hole.layers.length + ends, stack: mm(stack) };
    });
    return joined(pitches);
  });
  if (!seam.isClosed) return rows.map((runs) => ({ closed: false, runs }));
  return [{ closed: true, runs: rows.flat() }];
}

/**
 * The lines that sew a closure strap to the back, through strap and outside, and the tab of its buckle to the front, through
 * both its ends and the outside: hole by hole along the leather, there and back.
 * @returns none where the job has no strap
 */
export function closureLines(design: CoverDesign): SeamLine[] {
  const strap = strapOf(design);
  const { thickness } = design.needs.thick.leathers.outside;
  const lineOf = (piece: Pick<Strap, 'holes'>, layers: number): SeamLine => {
    const sewn = sewingOrder(piece).map((hole) => piece.holes[hole]!.at);
    const stack = mm(layers * thickness);
    const pitches = sewn
      .slice(1)
      .map((to, i): SeamRun => ({ pitches: 1, pitch: mm(distance(sewn[i]!, to)), layers, stack }));
    return { closed: false, runs: joined(pitches) };
  };
  return [...(strap === null ? [] : [lineOf(strap, 2)]), ...(strap?.tab ? [lineOf(strap.tab, 3)] : [])];
}

/** Joins neighbouring runs through the same layers. */
function joined(runs: readonly SeamRun[]): SeamRun[] {
  const longer: SeamRun[] = [];
  for (const run of runs) {
    const last = longer.at(-1);
    const isAlike =
      last !== undefined && last.layers === run.layers && last.stack === run.stack && last.pitch === run.pitch;
    if (isAlike) longer[longer.length - 1] = { ...last, pitches: last.pitches + run.pitches };
    else longer.push(run);
  }
  return longer;
}

/** Holes of a seam: as many as pitches when it is closed, one more when it is open. */
export const holesIn = ({ closed, runs }: SeamLine): number =>
  runs.reduce((sum, { pitches }) => sum + pitches, closed ? 0 : 1);

export const runLength = ({ pitches, pitch }: SeamRun): Mm => mm(pitches * pitch);

/** Length of one or several seams on the seam line. */
export const seamLength = (seams: readonly SeamLine[]): Mm =>
  mm(seams.flatMap(({ runs }) => runs).reduce((sum, run) => sum + runLength(run), 0));
