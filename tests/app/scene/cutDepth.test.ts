import { expect, test } from 'vitest';
import { cutDepth } from '../../../src/app/scene/geometry/cutDepth.ts';
import { coverDesign, EXAMPLE_JOBS, foldedCover, type MeshData, parseJob } from '../../../src/core/index.ts';
import { defined } from '../../defined.ts';

/** Places of the vertices of a face, as text. */
const places = ({ positions, indices, faces }: MeshData, of: string): Set<string> =>
  new Set(
    faces
      .filter(({ face }) => face === of)
      .flatMap(({ start, count }) => [...indices.subarray(start, start + count)])
      .map((k) => positions.subarray(3 * k, 3 * k + 3).join()),
  );

test.each(EXAMPLE_JOBS)(
  '$document.name: a cut edge has depth 0 where it meets the grain and 1 where it meets the flesh',
  ({ document }) => {
    const parsed = parseJob(document);
    if (!parsed.ok) throw new Error('An example is no job.');
    const { parts } = foldedCover(coverDesign(parsed.job), { kind: 'opening', angle: 1 });
    const sheets = parts.filter(({ faces }) => faces.some(({ face }) => face === 'cutEdge'));
    expect(sheets.length).toBeGreaterThan(2);
    for (const mesh of sheets) {
      const depth = cutDepth(mesh);
      const [grain, flesh] = [places(mesh, 'grain'), places(mesh, 'flesh')];
      const { start, count } = defined(mesh.faces.find(({ face }) => face === 'cutEdge'));
      for (const k of mesh.indices.subarray(start, start + count)) {
        const place = mesh.positions.subarray(3 * k, 3 * k + 3).join();
        expect((depth[k] === 0 ? grain : flesh).has(place), `${mesh.part} ${k}`).toBe(true);
      }
    }
  },
);
