import { type Entity, pictureFrame, textBox, type Vec2 } from '../../core/index.ts';
import type { Tile } from './tiling.ts';

/** Whether an entity may show in a window, erring toward yes. Keeps what lies on other pages out of a page. */
export function touches(entity: Entity, window: Pick<Tile, 'x' | 'y' | 'width' | 'height'>): boolean {
  const { x, y, width, height } = window;
  const meets = (points: readonly Vec2[], reach: number): boolean => {
    const [xs, ys] = [points.map((point) => point[0]), points.map((point) => point[1])];
    return (
      Math.min(...xs) - reach <= x + width &&
      Math.max(...xs) + reach >= x &&
      Math.min(...ys) - reach <= y + height &&
      Math.max(...ys) + reach >= y
    );
  };
  switch (entity.kind) {
    case 'line':
      return meets([entity.from, entity.to], 1);
    case 'arc':
      return meets([entity.centre], entity.radius + 1);
    case 'text': {
      const box = textBox(entity);
      return meets(
        [
          [box.x, box.y],
          [box.x + box.width, box.y + box.height],
        ],
        1,
      );
    }
    case 'picture':
      return meets(pictureFrame(entity), 1);
    case 'hatch':
      return meets(entity.boundary, 1);
    case 'path':
      return entity.segments.some((segment) => touches(segment, window));
  }
}
