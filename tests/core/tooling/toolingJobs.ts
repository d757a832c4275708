import fc from 'fast-check';
import { type CoverDesign, coverDesign } from '../../../src/core/fold/coverDesign.ts';
import type { ToolingFace } from '../../../src/core/job/toolingSchema.ts';
import { toolingAreas } from '../../../src/core/tooling/toolingAreas.ts';
import { jobDocument, soundJob } from '../../jobArbitrary.ts';
import { LAW_SEED } from '../../laws.ts';
import { nth } from '../../nth.ts';

/** A cover with one drawing placed at random on one of its faces. */
export interface Placement {
  readonly design: CoverDesign;
  readonly face: ToolingFace;
}

/** A letter F with a hook: neither mirrored nor turned is it the same. */
const LETTER = {
  id: 'f',
  name: 'letter',
  kind: 'lines' as const,
  width: 6000,
  height: 10_000,
  lines: 'm0,10000 0,-10000 6000,0 m0,4500 4000,0 0,600 -200,300 -300,200',
};

/** Without a bias toward 0 and 1, so that every face and place has its turn. */
const share = fc.noBias(fc.integer({ min: 0, max: 999_999 })).map((whole) => whole / 1_000_000);

/** What is drawn of a job besides its book and leathers, and where its drawing stands as shares of its face. */
const placing = fc.record({
  face: share,
  x: share,
  y: share,
  width: share,
  turn_deg: fc.integer({ min: -180, max: 180 }),
  mirrored: fc.boolean(),
  units: fc.constantFrom('mm' as const, 'in' as const),
  corner_mm: fc.constantFrom(0, 0, 6, 10),
  corners: fc.constantFrom('rounded' as const, 'clipped' as const),
  mouth: fc.constantFrom('straight' as const, 'curved' as const),
  strap: fc.constantFrom(null, {}),
  state: fc.constantFrom('dry' as const, 'cased' as const, 'dyed' as const),
  changeAlong: fc.constantFrom(null, -0.02, 0.01),
  changeAcross: fc.constantFrom(null, -0.03, 0.005),
});

/** Seeded covers of every construction, each with one drawing on one of its faces; the same ones in every run of a seed. */
export function placements(count: number): Placement[] {
  // Some covers are flat on no face.
  const drawn = fc.sample(fc.tuple(jobDocument, placing), { seed: LAW_SEED, numRuns: 2 * count });
  const all: Placement[] = [];
  for (const [document, place] of drawn) {
    if (all.length === count) break;
    const { units, corner_mm, corners, mouth, strap, state, changeAlong, changeAcross } = place;
    const untooled = {
      ...document,
      work: { units },
      seam: { ...document.seam, cornerRadius_mm: corner_mm },
      construction: { ...(corner_mm > 0 && { corners }), mouth, strap },
      making: { state, changeAlong, changeAcross },
    };
    const areas = toolingAreas(coverDesign(soundJob(untooled)));
    if (areas.length === 0) continue;
    const { face, flat, centre } = nth(areas, Math.floor(place.face * areas.length));
    const size = Math.min(flat.x[1] - flat.x[0], flat.y[1] - flat.y[0]);
    const at = (axis: 'x' | 'y', centreAt: number): number =>
      flat[axis][0] + (0.2 + 0.6 * place[axis]) * (flat[axis][1] - flat[axis][0]) - centreAt;
    const drawing = {
      kind: 'drawing',
      area: face,
      artwork: LETTER.id,
      width_mm: Math.max(1, (0.1 + 0.2 * place.width) * size),
      x_mm: at('x', centre[0]),
      y_mm: at('y', centre[1]),
      turn_deg: place.turn_deg,
      mirrored: place.mirrored,
    };
    const job = soundJob({ ...untooled, tooling: { designs: [drawing], artworks: [LETTER] } });
    all.push({ design: coverDesign(job), face });
  }
  return all;
}
