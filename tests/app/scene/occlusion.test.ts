import { BufferAttribute, BufferGeometry, Mesh, MeshBasicMaterial, Plane, Raycaster, Vector3 } from 'three';
import { expect, test } from 'vitest';
import { benchMatrix, boundsOnBench } from '../../../src/app/scene/geometry/assembly.ts';
import { occlusion } from '../../../src/app/scene/geometry/occlusion.ts';
import { coverDesign } from '../../../src/core/fold/coverDesign.ts';
import { EXAMPLE_JOBS } from '../../../src/core/job/examples.ts';
import { foldedCover } from '../../../src/core/solid/foldedCover.ts';
import { defined } from '../../defined.ts';
import { soundJob } from '../../jobArbitrary.ts';
import { nth } from '../../nth.ts';

const design = coverDesign(soundJob(nth(EXAMPLE_JOBS, 0).document));
const cover = foldedCover(design, { kind: 'opening', angle: 1.5 });
const SOLID = ['frontBoard', 'backBoard', 'spine', 'frontPages', 'backPages', 'leaves'];

const block = defined(cover.parts.find(({ part }) => part === 'backPages')).positions;
const vertex = (i: number): Vector3 => new Vector3().fromArray(block, 3 * ((i * 37) % (block.length / 3)));

/** Places about the book and, every third, within its block; eyes round them, by the golden angle. */
const cases = Array.from({ length: 60 }, (_, i) => {
  const [turn, height] = [2.399963 * i, 1 - (2 * (i + 0.5)) / 60];
  const way = new Vector3(
    Math.cos(turn) * Math.sqrt(1 - height * height),
    Math.sin(turn) * Math.sqrt(1 - height * height),
    height,
  );
  const beside = new Vector3(20 + 2 * i, 60 - 2 * i, 100 - 3.3 * i);
  const place = i % 3 === 0 ? vertex(i).lerp(vertex(2 * i + 11), 0.5) : beside;
  return { place, eye: way.multiplyScalar(600).add(place) };
});

test.each([null, new Plane(new Vector3(0, 0, 1), 20)])(
  'what is hidden behind the book is what a ray of three meets, cut %s',
  (cut) => {
    const meshes = cover.parts
      .filter(({ part }) => SOLID.includes(part))
      .map(({ positions, indices }) => {
        const geometry = new BufferGeometry();
        geometry.setAttribute('position', new BufferAttribute(positions, 3)).setIndex(new BufferAttribute(indices, 1));
        return new Mesh(geometry, new MeshBasicMaterial({ side: cut === null ? 0 : 2 }));
      });
    const isHidden = occlusion(cover, true, cut);
    const found = cases.map(({ place, eye }) => {
      const ray = new Raycaster(eye, place.clone().sub(eye).normalize(), 0, eye.distanceTo(place) - 0.5);
      const met = ray.intersectObjects(meshes).some(({ point }) => cut === null || cut.distanceToPoint(point) >= 0);
      expect(isHidden(place, new Vector3(0, 0, 1), eye)).toBe(met);
      return met;
    });
    expect(new Set(found).size).toBe(2);
  },
);

test('the extent on the bench is that of every vertex moved there', () => {
  const matrix = benchMatrix(cover.benchTurn);
  const { min, max } = boundsOnBench(cover);
  const [low, high] = [new Vector3().setScalar(Infinity), new Vector3().setScalar(-Infinity)];
  for (const { positions } of cover.parts)
    for (let i = 0; i < positions.length; i += 3) {
      const at = new Vector3().fromArray(positions, i).applyMatrix4(matrix);
      low.min(at);
      high.max(at);
    }
  expect(min.distanceTo(low)).toBeLessThan(1e-9);
  expect(max.distanceTo(high)).toBeLessThan(1e-9);
});
