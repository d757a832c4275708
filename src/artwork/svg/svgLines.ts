import { count, Refusal } from '../refusal.ts';
import type { LeftOut } from './leftOut.ts';
import { composed, IDENTITY, type Matrix, translation } from './matrix.ts';
import { closedSubpath, isDrawable, mappedSubpath, type Subpath } from './subpaths.ts';
import { placed, type SvgNode, type SvgTree, type SvgUse } from './svgTree.ts';
import { UNSAID_PORT } from './viewBox.ts';

/** What a drawing may draw, its references followed. */
const DRAWN_LIMITS = { elements: 100_000, steps: 400_000, references: 16 } as const;

/** What an element takes from the groups that it is in. */
interface Inherited {
  readonly matrix: Matrix;
  readonly isHidden: boolean;
  readonly hasFill: boolean;
  readonly hasStroke: boolean;
}

const OUTER: Inherited = { matrix: IDENTITY, isHidden: false, hasFill: true, hasStroke: false };

/**
 * The lines and curves that a drawing shows, in the units of its view box: the edges of filled shapes and the middles of
 * strokes alike, whatever their colour and width. What is filled without a stroke is closed, as its area is.
 *
 * @throws Refusal where references make it over `DRAWN_LIMITS`
 */
export function svgLines(tree: SvgTree, leftOut: LeftOut): Subpath[] {
  const drawn: Subpath[] = [];
  const port = tree.port ?? UNSAID_PORT;
  const following = new Set<string>();
  let [elements, steps] = [0, 0];

  const draw = (node: SvgNode, above: Inherited): void => {
    if (++elements > DRAWN_LIMITS.elements) throw tooMany('elements', DRAWN_LIMITS.elements);
    const { isGone, ...own } = node.paint;
    if (isGone) return;
    const here: Inherited = {
      matrix: composed(above.matrix, node.matrix),
      isHidden: own.isHidden ?? above.isHidden,
      hasFill: own.hasFill ?? above.hasFill,
      hasStroke: own.hasStroke ?? above.hasStroke,
    };
    if (node.kind === 'group') for (const child of node.children) draw(child, here);
    else if (node.kind === 'use') follow(node, here);
    else if (!here.isHidden && (here.hasStroke || (here.hasFill && !node.isLine))) {
      for (const subpath of node.path.subpaths) {
        steps += subpath.steps.length;
        if (steps > DRAWN_LIMITS.steps) throw tooMany('lines and curves', DRAWN_LIMITS.steps);
        const placedPath = mappedSubpath(here.hasStroke ? subpath : closedSubpath(subpath), here.matrix);
        if (isDrawable(placedPath)) drawn.push(placedPath);
        else leftOut.add('huge');
      }
    }
  };

  const follow = ({ target, place }: SvgUse, here: Inherited): void => {
    const node = tree.byId.get(target);
    if (node === undefined) leftOut.add('reference');
    else if (following.has(target)) leftOut.add('loop');
    else if (following.size >= DRAWN_LIMITS.references)
      throw tooMany('references within references', DRAWN_LIMITS.references);
    else {
      following.add(target);
      const box = node.kind === 'group' ? node.box : undefined;
      const moved = translation(place.x ?? 0, place.y ?? 0);
      const into = box === undefined ? moved : placed(box, place, port, node.kind === 'group' ? node.aspect : '');
      draw(node, { ...here, matrix: composed(here.matrix, into) });
      following.delete(target);
    }
  };

  draw(tree.root, OUTER);
  return drawn;
}

const tooMany = (what: string, most: number): Refusal =>
  new Refusal(
    'too_large',
    `draws over ${count(most)} ${what}, its references followed`,
    `at most ${count(most)}`,
    'take out copies and patterns, or simplify its paths, then open it again',
  );
