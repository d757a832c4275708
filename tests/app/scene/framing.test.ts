import fc from 'fast-check';
import { Box3, PerspectiveCamera, Vector3 } from 'three';
import { describe, expect, test } from 'vitest';
import { frame, freeView, viewDirection } from '../../../src/app/scene/camera/framing.ts';
import { VIEWPOINTS } from '../../../src/app/scene/viewpoints.ts';
import { checkLaw } from '../../laws.ts';

describe('framing', () => {
  test('from every viewpoint, at every opening, every corner of the work is in the picture', () => {
    const length = fc.double({ min: 1, max: 500, noNaN: true });
    checkLaw(
      fc.property(
        fc.tuple(length, length, length),
        fc.constantFrom(...VIEWPOINTS),
        fc.double({ min: 0, max: Math.PI, noNaN: true }),
        fc.double({ min: 0.4, max: 3, noNaN: true }),
        (size, viewpoint, opening, aspect) => {
          const box = new Box3(new Vector3(-10, -5, -20), new Vector3(...size));
          const { position, target } = frame(box, viewDirection(viewpoint, opening), { fov: 0.42, aspect });
          const camera = new PerspectiveCamera((0.42 * 180) / Math.PI, aspect);
          camera.position.copy(position);
          camera.lookAt(target);
          camera.updateMatrixWorld();
          for (let i = 0; i < 8; i++) {
            const corner = new Vector3(
              i & 1 ? box.max.x : box.min.x,
              i & 2 ? box.max.y : box.min.y,
              i & 4 ? box.max.z : box.min.z,
            ).project(camera);
            expect(Math.max(Math.abs(corner.x), Math.abs(corner.y))).toBeLessThan(1);
          }
        },
      ),
    );
  });

  test('with a sentence and a timeline over the picture, every corner is in what they leave free', () => {
    const side = fc.double({ min: 0, max: 120, noNaN: true });
    checkLaw(
      fc.property(
        fc.record({ top: side, right: side, bottom: side, left: side }),
        fc.constantFrom(...VIEWPOINTS),
        fc.integer({ min: 320, max: 1500 }),
        (insets, viewpoint, width) => {
          const height = 700;
          const box = new Box3(new Vector3(-10, -5, -20), new Vector3(170, 40, 220));
          const { lens, shift } = freeView(0.42, { width, height }, insets);
          const { position, target } = frame(box, viewDirection(viewpoint, 0), lens);
          const camera = new PerspectiveCamera((0.42 * 180) / Math.PI, width / height);
          camera.position.copy(position);
          camera.lookAt(target);
          camera.setViewOffset(width, height, -shift[0], -shift[1], width, height);
          camera.updateMatrixWorld();
          for (let i = 0; i < 8; i++) {
            const corner = new Vector3(
              i & 1 ? box.max.x : box.min.x,
              i & 2 ? box.max.y : box.min.y,
              i & 4 ? box.max.z : box.min.z,
            ).project(camera);
            const [x, y] = [((corner.x + 1) / 2) * width, ((1 - corner.y) / 2) * height];
            expect(x).toBeGreaterThan(insets.left);
            expect(x).toBeLessThan(width - insets.right);
            expect(y).toBeGreaterThan(insets.top);
            expect(y).toBeLessThan(height - insets.bottom);
          }
        },
      ),
    );
  });
});
