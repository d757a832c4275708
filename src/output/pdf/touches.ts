import { addScaled, type Box, boxOf, type Entity, pictureFrame, textBox, type Vec2 } from '../../core/index.ts';

/** Half the widest line, and some; mm. */
const REACH = 1;

/** Whether an entity may show in a window, erring toward yes. Keeps what lies on other pages out of a page. */
export function touches(entity: Entity, window: Box, reach = REACH): boolean {
  // Piece by piece: the box of an outline holds the whole window.
  if (entity.kind === 'path') return entity.segments.some((segment) => touches(segment, window, reach));
  const box = entityBox(entity);
  return (
    box.x - reach <= window.x + window.width &&
    box.x + box.width + reach >= window.x &&
    box.y - reach <= window.y + window.height &&
    box.y + box.height + reach >= window.y
  );
}

/** A box round an entity without the width of its line; that of an arc is round its whole circle. */
export function entityBox(entity: Entity): Box {
  switch (entity.kind) {
    case 'line':
      return boxOf([entity.from, entity.to]);
    case 'arc':
      return boxOf([-1, 1].map((side): Vec2 => addScaled(entity.centre, [entity.radius, entity.radius], side)));
    case 'text':
      return textBox(entity);
    case 'picture':
      return boxOf(pictureFrame(entity));
    case 'hatch':
      return boxOf(entity.boundary);
    case 'path':
      return boxOf(
        entity.segments.map(entityBox).flatMap(({ x, y, width, height }): Vec2[] => [
          [x, y],
          [x + width, y + height],
        ]),
      );
  }
}
