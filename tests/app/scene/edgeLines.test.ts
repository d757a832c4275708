import { PerspectiveCamera, Vector3 } from 'three';
import { describe, expect, test } from 'vitest';
import { viewDirection } from '../../../src/app/scene/camera/framing.ts';
import { benchMatrix } from '../../../src/app/scene/geometry/assembly.ts';
import { occlusion } from '../../../src/app/scene/geometry/occlusion.ts';
import { edgeLines, edgePixel, nearestOnEdges } from '../../../src/app/scene/marks/edgeLines.ts';
import { viewOf } from '../../../src/app/scene/marks/view.ts';
import type { Viewpoint } from '../../../src/app/scene/viewpoints.ts';
import { coverDesign, EDGES, EXAMPLE_JOBS, foldedCover } from '../../../src/core/index.ts';
import { defined } from '../../defined.ts';
import { soundJob } from '../../jobArbitrary.ts';

const SIZE = { width: 800, height: 600 };
const design = coverDesign(soundJob(EXAMPLE_JOBS[0].document));

/** The example from a viewpoint, 900 mm away. */
function seen(viewpoint: Viewpoint, angle = 0) {
  const cover = foldedCover(design, { kind: 'opening', angle }, 'thick');
  const camera = new PerspectiveCamera(24, SIZE.width / SIZE.height, 10, 8000);
  const target = new Vector3(90, 10, 0);
  camera.position.copy(target).addScaledVector(viewDirection(viewpoint, angle), 900);
  camera.lookAt(target);
  return {
    lines: edgeLines(cover.marks),
    view: viewOf(camera, SIZE, benchMatrix(cover.benchTurn)),
    isHidden: occlusion(cover, angle > 1, null),
  };
}

describe('the edges of the boards in the picture', () => {
  test('are both fore-edges, and head and tail of either board', () => {
    const { lines } = seen('front');
    expect(lines.map(({ edge }) => edge).sort()).toEqual(
      ['backForeEdge', 'frontForeEdge', 'head', 'head', 'tail', 'tail'].sort(),
    );
  });

  test('a place of an edge is found again under the pointer, up to the reach away from it', () => {
    const { lines, view, isHidden } = seen('front');
    for (const [edge, at] of [
      ['frontForeEdge', 0.25],
      ['frontForeEdge', 0.9],
      ['head', 0.8],
      ['tail', 0.7],
    ] as const) {
      const { x, y, isHidden: isAway } = defined(edgePixel(lines, { edge, at }, view, isHidden));
      expect(isAway).toBe(false);
      const [dx, dy] = edge === 'frontForeEdge' ? [20, 0] : [0, 20];
      const hit = defined(nearestOnEdges(lines, [x + dx, y + dy], 28, view, isHidden));
      expect(hit.edge).toBe(edge);
      expect(hit.at).toBeCloseTo(at, 2);
      expect(nearestOnEdges(lines, [x + 2 * dx, y + 2 * dy], 28, view, isHidden)).toBeNull();
    }
  });

  test('run from the tail up, and from the spine out', () => {
    const { lines, view, isHidden } = seen('front');
    const at = (edge: 'frontForeEdge' | 'head', share: number) =>
      defined(edgePixel(lines, { edge, at: share }, view, isHidden));
    // From the front the head is at the top and the fore-edge on the right.
    expect(at('frontForeEdge', 0).y).toBeGreaterThan(at('frontForeEdge', 1).y + 200);
    expect(at('head', 1).x).toBeGreaterThan(at('head', 0.6).x + 40);
    expect(at('head', 1).x).toBeCloseTo(at('frontForeEdge', 1).x, 5);
  });

  test('behind the book are not found, though they lie nearest', () => {
    const { lines, view, isHidden } = seen('front');
    const back = defined(edgePixel(lines, { edge: 'backForeEdge', at: 0.5 }, view, isHidden));
    expect(back.isHidden).toBe(true);
    expect(nearestOnEdges(lines, [back.x, back.y], 28, view, isHidden)?.edge).not.toBe('backForeEdge');
  });

  test('of a closed book show on the side that faces the eye only', () => {
    const { lines, view, isHidden } = seen('three-quarter');
    const shown = EDGES.filter((edge) => edgePixel(lines, { edge, at: 0.9 }, view, isHidden)?.isHidden === false);
    expect(shown).toEqual(['frontForeEdge', 'head', 'tail']);
  });

  test('of a book that lies open flat all but the covered parts can be found from above', () => {
    const { lines, view, isHidden } = seen('inside', Math.PI);
    const shown = EDGES.filter((edge) => edgePixel(lines, { edge, at: 0.95 }, view, isHidden)?.isHidden === false);
    expect(shown).toContain('tail');
  });
});
