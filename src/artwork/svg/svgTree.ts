import { SaxesParser, type SaxesTagPlain } from 'saxes';
import { count, Refusal } from '../refusal.ts';
import type { LeftOut, LeftOutKind } from './leftOut.ts';
import { composed, IDENTITY, type Matrix, transformOf, translation } from './matrix.ts';
import { isShape, shapePath } from './shapePath.ts';
import { type Path, readPath } from './subpaths.ts';
import { fitted, lengthOf, UNSAID_PORT, type ViewBox, viewBoxOf } from './viewBox.ts';

/** What an SVG may have, so that reading one is bounded. */
const SVG_LIMITS = { elements: 50_000, depth: 64, entities: 1000 } as const;

/** What an element says of its own visibility; undefined where it says nothing and takes that of its parent. */
interface Paint {
  /** Neither the element nor anything in it is drawn. */
  readonly isGone: boolean;
  readonly isHidden: boolean | undefined;
  readonly hasFill: boolean | undefined;
  readonly hasStroke: boolean | undefined;
}

interface Common {
  readonly matrix: Matrix;
  readonly paint: Paint;
}

interface SvgGroup extends Common {
  readonly kind: 'group';
  readonly children: SvgNode[];
  /** Of a symbol, which is fitted in where it is used. */
  readonly box: ViewBox | undefined;
  readonly aspect: string;
}

interface SvgShape extends Common {
  readonly kind: 'shape';
  readonly path: Path;
  /** Whether it has no inside that could be filled. */
  readonly isLine: boolean;
}

export interface SvgUse extends Common {
  readonly kind: 'use';
  readonly target: string;
  readonly place: Partial<ViewBox>;
}

/** An element of a drawing, of which only numbers and the names it is referred to by are kept. */
export type SvgNode = SvgGroup | SvgShape | SvgUse;

export interface SvgTree {
  readonly root: SvgNode;
  readonly byId: ReadonlyMap<string, SvgNode>;
  /** The part of the drawing that shows; undefined where the file does not say it. */
  readonly port: ViewBox | undefined;
  /** Attributes of the outer element that say its size. */
  readonly size: { readonly width: string | undefined; readonly height: string | undefined; readonly aspect: string };
}

/** Groups that show what is in them. A symbol and what is in `defs` show only where they are used. */
const GROUPS = new Set(['g', 'a', 'switch', 'svg']);
const UNSHOWN = new Set(['defs', 'symbol', 'clipPath', 'mask', 'marker', 'pattern']);

/** Left out without a word: they draw nothing. */
const SILENT = new Set(['title', 'desc', 'metadata', 'linearGradient', 'radialGradient', 'filter', 'view', 'cursor']);

const LEFT_OUT: Readonly<Record<string, LeftOutKind>> = {
  text: 'text',
  image: 'picture',
  script: 'script',
  style: 'styles',
  foreignObject: 'foreign',
  animate: 'animation',
  animateMotion: 'animation',
  animateTransform: 'animation',
  animateColor: 'animation',
  set: 'animation',
};

/**
 * Reads the elements of an SVG that draw lines, by an allow list. The parser is one of events: it neither runs nor loads
 * anything, does not read the rules of a DOCTYPE, and expands only the five entities of XML itself.
 *
 * @throws Refusal where the text is no well-formed SVG or goes over `SVG_LIMITS`
 */
export function svgTree(text: string, leftOut: LeftOut): SvgTree {
  let root: SvgGroup | undefined;
  const byId = new Map<string, SvgNode>();
  /** The groups that are open; null within an element that is left out. */
  const open: (SvgNode[] | null)[] = [];
  let outer: Readonly<Record<string, string>> | undefined;
  let port = UNSAID_PORT;
  let [elements, entities] = [0, 0];

  const parser = new SaxesParser();
  parser.on('error', (error) => {
    if (!/undefined entity/.test(error.message)) throw unreadable(error.message);
    leftOut.add('entity');
    if (++entities > SVG_LIMITS.entities)
      throw new Refusal('too_large', `uses over ${count(SVG_LIMITS.entities)} entities of its own`, 'plain SVG', PLAIN);
  });
  parser.on('processinginstruction', ({ target }) => {
    if (target === 'xml-stylesheet') leftOut.add('styles');
  });
  parser.on('opentag', (tag) => {
    if (++elements > SVG_LIMITS.elements)
      throw new Refusal(
        'too_large',
        `has over ${count(SVG_LIMITS.elements)} elements`,
        `at most ${count(SVG_LIMITS.elements)}`,
        SIMPLER,
      );
    if (open.length >= SVG_LIMITS.depth)
      throw new Refusal(
        'too_large',
        `is nested over ${SVG_LIMITS.depth} groups deep`,
        `at most ${SVG_LIMITS.depth}`,
        'take its groups apart, then open it again',
      );
    const name = localName(tag.name);
    if (outer === undefined) {
      if (name !== 'svg')
        throw new Refusal('type', `begins with the element "${tag.name.slice(0, 20)}"`, 'the element "svg"', PLAIN);
      outer = tag.attributes;
      port = viewBoxOf(outer.viewBox) ?? sizedPort(outer) ?? UNSAID_PORT;
      countHandlers(tag, leftOut);
      root = { kind: 'group', matrix: IDENTITY, paint: paintOf(outer), children: [], box: undefined, aspect: '' };
      open.push(root.children);
      return;
    }
    const siblings = open.at(-1)!;
    const node = siblings === null ? undefined : nodeOf(name, tag, port, leftOut);
    if (node === undefined) {
      open.push(null);
      return;
    }
    if (!UNSHOWN.has(name ?? '')) siblings!.push(node);
    if (tag.attributes.id !== undefined && !byId.has(tag.attributes.id)) byId.set(tag.attributes.id, node);
    open.push(node.kind === 'group' ? node.children : null);
  });
  parser.on('closetag', () => {
    open.pop();
  });
  parser.write(text).close();
  const { viewBox, width, height, preserveAspectRatio: aspect = '' } = outer ?? {};
  if (root === undefined) throw unreadable('it has no element');
  return { root, byId, port: viewBoxOf(viewBox) ?? sizedPort(outer ?? {}), size: { width, height, aspect } };
}

const PLAIN = 'save it again as plain SVG';
const SIMPLER = 'join or simplify its paths in the drawing program, then open it again';

const unreadable = (why: string): Refusal =>
  new Refusal('unreadable', `cannot be read as SVG (${why.slice(0, 80)})`, 'well-formed SVG', PLAIN);

/** The name of an element of SVG, without the prefix that some programs write; undefined for one of another kind. */
function localName(name: string): string | undefined {
  const [prefix, local] = name.includes(':') ? (name.split(':') as [string, string]) : ['svg', name];
  return prefix === 'svg' ? local : undefined;
}

function sizedPort({ width, height }: Readonly<Record<string, string>>): ViewBox | undefined {
  const [across, down] = [lengthOf(width, 0) ?? 0, lengthOf(height, 0) ?? 0];
  return across > 0 && down > 0 ? { x: 0, y: 0, width: across, height: down } : undefined;
}

function countHandlers({ attributes }: SaxesTagPlain, leftOut: LeftOut): void {
  for (const name in attributes) if (/^on/i.test(name)) leftOut.add('handler');
}

/** An element as a node; undefined where it is left out with all that is in it. */
function nodeOf(name: string | undefined, tag: SaxesTagPlain, port: ViewBox, leftOut: LeftOut): SvgNode | undefined {
  const { attributes } = tag;
  if (name === undefined || SILENT.has(name)) return undefined;
  countHandlers(tag, leftOut);
  const common = { matrix: transformOf(attributes.transform ?? ''), paint: paintOf(attributes) };
  if (isShape(name)) {
    const path = readPath(shapePath(name, attributes, port));
    if (path.isBroken) leftOut.add('broken');
    if (path.isHuge) leftOut.add('huge');
    return { ...common, kind: 'shape', path, isLine: name === 'line' };
  }
  const across = (key: string) => lengthOf(attributes[key], port.width);
  const down = (key: string) => lengthOf(attributes[key], port.height);
  const own = { x: across('x'), y: down('y'), width: across('width'), height: down('height') };
  if (name === 'use') {
    const target = attributes.href ?? attributes['xlink:href'] ?? '';
    if (!target.startsWith('#')) {
      leftOut.add('reference');
      return undefined;
    }
    return { ...common, kind: 'use', target: target.slice(1), place: own };
  }
  if (GROUPS.has(name) || UNSHOWN.has(name)) {
    if (name === 'a') leftOut.add('link');
    if (attributes['clip-path'] !== undefined || attributes.mask !== undefined) leftOut.add('clip');
    const box = viewBoxOf(attributes.viewBox);
    const aspect = attributes.preserveAspectRatio ?? '';
    const matrix = name === 'svg' ? composed(common.matrix, placed(box, own, port, aspect)) : common.matrix;
    return { ...common, matrix, kind: 'group', children: [], box: name === 'symbol' ? box : undefined, aspect };
  }
  leftOut.add(LEFT_OUT[name] ?? 'other');
  return undefined;
}

/** The map of a view box, or of none, into the place that an inner `svg` or a `use` gives it. */
export function placed(box: ViewBox | undefined, place: Partial<ViewBox>, port: ViewBox, aspect: string): Matrix {
  const { x = 0, y = 0, width = port.width, height = port.height } = place;
  if (box === undefined) return x === 0 && y === 0 ? IDENTITY : translation(x, y);
  return fitted(box, { x, y, width, height }, aspect);
}

/** What attributes and the `style` attribute say of visibility; `style` wins. */
function paintOf(attributes: Readonly<Record<string, string>>): Paint {
  const styled = new Map<string, string>();
  for (const rule of (attributes.style ?? '').split(';')) {
    const colon = rule.indexOf(':');
    if (colon > 0) styled.set(rule.slice(0, colon).trim().toLowerCase(), rule.slice(colon + 1).trim());
  }
  const value = (name: string) => (styled.get(name) ?? attributes[name])?.replace(/\s*!important$/, '').toLowerCase();
  const isZero = (name: string) => /^[-+]?0*\.?0*%?$/.test(value(name) || '1');
  const shows = (name: string) => {
    if (isZero(`${name}-opacity`)) return false;
    const paint = value(name);
    return paint === undefined || paint === 'inherit' ? undefined : paint !== 'none' && paint !== 'transparent';
  };
  const visibility = value('visibility');
  return {
    isGone: value('display') === 'none' || isZero('opacity'),
    isHidden: visibility === undefined || visibility === 'inherit' ? undefined : visibility !== 'visible',
    hasFill: shows('fill'),
    hasStroke: shows('stroke'),
  };
}
