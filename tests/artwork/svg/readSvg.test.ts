import fc from 'fast-check';
import { svgPathProperties } from 'svg-path-properties';
import { describe, expect, test } from 'vitest';
import { Refusal } from '../../../src/artwork/refusal.ts';
import { readSvg } from '../../../src/artwork/svg/readSvg.ts';
import { readArtworkLines, type Vec2 } from '../../../src/core/index.ts';
import { checkLaw } from '../../laws.ts';

const svg = (body: string, attributes = 'viewBox="0 0 100 100"') =>
  `<svg xmlns="http://www.w3.org/2000/svg" ${attributes}>${body}</svg>`;

/** What a drawing becomes, each line as its points in shares of the larger side. */
function shown(body: string, attributes?: string) {
  const { lines, width, height, ...rest } = readSvg(svg(body, attributes));
  const read = readArtworkLines(lines);
  if ('fault' in read) throw new Error(`unreadable lines: ${JSON.stringify(read.fault)}`);
  const polylines = read.polylines.map((line) => line.map(([x, y]): Vec2 => [x / 10_000, y / 10_000]));
  return { polylines, width: width / 10_000, height: height / 10_000, ...rest };
}

const lengthOf = (polylines: readonly (readonly Vec2[])[]) =>
  polylines.reduce(
    (sum, line) =>
      sum + line.slice(1).reduce((part, [x, y], i) => part + Math.hypot(x - line[i]![0], y - line[i]![1]), 0),
    0,
  );

function refusal(text: string): Refusal {
  try {
    readSvg(text);
  } catch (error) {
    if (error instanceof Refusal) return error;
    throw error;
  }
  throw new Error('it was taken');
}

describe('shapes', () => {
  test('a rectangle by hand: its box is the drawing, its larger side 10,000', () => {
    const { polylines, width, height } = shown('<rect x="10" y="20" width="40" height="30"/>');
    expect([width, height]).toEqual([1, 0.75]);
    expect(polylines).toEqual([
      [
        [0, 0],
        [1, 0],
        [1, 0.75],
        [0, 0.75],
        [0, 0],
      ],
    ]);
  });

  test.each([
    ['circle', '<circle cx="50" cy="50" r="40"/>', Math.PI],
    ['ellipse of radii 40 and 20', '<ellipse cx="50" cy="50" rx="40" ry="20"/>', 9.68844822 / 4],
    ['rounded rectangle', '<rect x="10" y="10" width="80" height="40" rx="10"/>', (2 * (60 + 20) + 20 * Math.PI) / 80],
    ['rounded rectangle whose radius is too large', '<rect x="10" y="10" width="80" height="80" rx="90"/>', Math.PI],
    ['polygon', '<polygon points="10,10 90,10 90,90"/>', 2 + Math.SQRT2],
    ['polyline', '<polyline points="10,10 90,10 90,90" fill="none" stroke="red"/>', 2],
    ['line', '<line x1="10" y1="10" x2="90%" y2="90" stroke="#000"/>', Math.SQRT2],
    ['path of arcs', '<path fill="none" stroke="red" d="M10 50a40 40 0 1 0 80 0"/>', Math.PI / 2],
    ['filled shape that is left open, closed as its area is', '<path d="M10 10h80v80"/>', 2 + Math.SQRT2],
    ['filled curve that is left open', '<path d="M10 50a40 40 0 0 1 80 0"/>', Math.PI / 2 + 1],
    ['filled shape with a stroke that is left open', '<path d="M10 10h80v80" stroke="red"/>', 2],
  ])('a %s keeps its length', (_, body, length) => {
    // 9.68844822 is the perimeter of an ellipse of axes 2 and 1: 8 E(3/4), Abramowitz and Stegun 17.3.3, table 17.1.
    expect(lengthOf(shown(body).polylines)).toBeCloseTo(length, 3);
  });

  test('curves are as long as an independent reader of path data finds them', () => {
    const number = fc.integer({ min: 0, max: 1000 });
    const pair = fc.tuple(number, number).map(([x, y]) => `${x} ${y}`);
    const step = fc.oneof(
      pair.map((to) => `L${to}`),
      // The independent reader loses the handle of a second T after a curve that is not quadratic.
      fc.tuple(pair, pair, pair).map(([by, to, end]) => `Q${by} ${to}T${end}`),
      fc.tuple(pair, pair).map(([by, to]) => `S${by} ${to}`),
      fc.tuple(pair, pair).map(([by, to]) => `Q${by} ${to}`),
      fc.tuple(pair, pair, pair).map(([a, b, to]) => `C${a} ${b} ${to}`),
    );
    checkLaw(
      fc.property(pair, fc.array(step, { minLength: 2, maxLength: 8 }), (start, steps) => {
        const d = `M${start}${steps.join('')}`;
        const { from, to } = boxOf(d);
        const side = Math.max(to[0] - from[0], to[1] - from[1]);
        fc.pre(side > 10);
        const { polylines } = shown(`<path fill="none" stroke="red" d="${d}"/>`, '');
        expect((lengthOf(polylines) * side) / new svgPathProperties(d).getTotalLength()).toBeCloseTo(1, 2);
      }),
      { cost: 4 },
    );
  });
});

function boxOf(d: string): { from: Vec2; to: Vec2 } {
  const path = new svgPathProperties(d);
  const points = Array.from({ length: 2001 }, (_, i) => path.getPointAtLength((path.getTotalLength() * i) / 2000));
  const [xs, ys] = [points.map(({ x }) => x), points.map(({ y }) => y)];
  return { from: [Math.min(...xs), Math.min(...ys)], to: [Math.max(...xs), Math.max(...ys)] };
}

describe('transforms', () => {
  const square = '<rect width="10" height="20"/>';

  test.each([
    ['translate(30)', 0.5, 1],
    ['scale(2 1)', 1, 1],
    ['rotate(90 20 20)', 1, 0.5],
    ['matrix(0 1 -1 0 50 0)', 1, 0.5],
    ['translate(20,20) rotate(-90)', 1, 0.5],
    ['skewX(45)', 1, 20 / 30],
    ['skewY(45)', 1 / 3, 1],
    ['scale(1e0,.5)', 1, 1],
    ['nonsense(3)', 0.5, 1],
  ])('%s on a box of 10 x 20', (transform, width, height) => {
    const drawn = shown(`<g transform="translate(20 20)"><g transform="${transform}">${square}</g></g>`);
    expect(drawn.width).toBeCloseTo(width, 3);
    expect(drawn.height).toBeCloseTo(height, 3);
  });

  test('the last transform of a list acts first', () => {
    // A unit at x = 1 scaled first goes to 2, moved to 12; moved first it would go to 22.
    const drawn = shown('<path d="M0 0V1" transform="translate(10) scale(2)"/><path d="M0 0V1"/><path d="M0 0h20"/>');
    expect(drawn.polylines[0]![0]![0]).toBeCloseTo(10 / 20, 4);
  });

  test('a use moves what it refers to, and a symbol is fitted into its place', () => {
    const moved = shown(
      '<defs><rect id="a" width="10" height="10"/></defs><use href="#a" x="40" y="20"/><use xlink:href="#a"/>',
    );
    expect(moved.polylines).toHaveLength(2);
    expect([moved.width, moved.height]).toEqual([1, 0.6]);
    const fitted = shown(
      '<symbol id="s" viewBox="0 0 10 20"><rect width="10" height="20"/></symbol><use href="#s" x="5" y="5" width="40" height="40"/><path d="M5 5h40"/>',
    );
    expect(fitted.height).toBe(1);
    expect(fitted.polylines[0]!.map(([x]) => x)).toEqual([0.25, 0.75, 0.75, 0.25, 0.25]);
  });

  test('an inner svg is fitted into its place', () => {
    const drawn = shown(
      '<svg x="10" y="10" width="50" height="50" viewBox="0 0 5 5"><path d="M0 0h5v1"/></svg><path d="M10 10h80"/>',
    );
    expect(drawn.polylines[0]![1]).toEqual([0.625, 0]);
  });

  test('a page stretched by its aspect stretches the drawing', () => {
    const drawn = shown(
      '<rect width="10" height="10"/>',
      'viewBox="0 0 10 10" width="20" height="10" preserveAspectRatio="none"',
    );
    expect([drawn.width, drawn.height]).toEqual([1, 0.5]);
  });
});

describe('what shows', () => {
  const seen = '<path d="M0 0h50v50z"/>';

  test.each([
    ['display of none', '<g display="none"><rect width="90" height="90"/></g>'],
    ['display in style', '<rect style="fill:red; DISPLAY : none !important" width="90" height="90"/>'],
    ['opacity 0', '<rect opacity="0.0" width="90" height="90"/>'],
    ['neither fill nor stroke', '<rect fill="none" width="90" height="90"/>'],
    ['transparent fill', '<rect fill="transparent" width="90" height="90"/>'],
    ['fill of opacity 0', '<rect fill-opacity="0" width="90" height="90"/>'],
    ['hidden', '<g visibility="hidden"><rect width="90" height="90"/></g>'],
    ['a line without a stroke', '<line x2="90" y2="90"/>'],
    ['off the page', '<rect x="200" width="90" height="90"/>'],
    [
      'defined and not used',
      '<defs><rect width="90" height="90"/></defs><symbol><rect width="90" height="90"/></symbol>',
    ],
    ['no fill, from the group', '<g fill="none" stroke="none"><rect width="90" height="90"/></g>'],
    ['radius 0', '<circle r="0"/><rect width="-5" height="5"/>'],
  ])('%s does not', (_, hidden) => {
    expect(shown(hidden + seen)).toEqual(shown(seen));
    expect(refusal(svg(hidden)).issue.code).toBe('empty');
  });

  test.each([
    [
      'an element that is visible in a hidden group',
      '<g visibility="hidden"><path visibility="visible" d="M0 0h50v50z"/></g>',
    ],
    ['a stroke where nothing is filled', '<g fill="none"><path stroke="blue" d="M0 0h50v50z"/></g>'],
    ['a fill by a gradient', '<path fill="url(#g)" d="M0 0h50v50z"/>'],
    ['opacity of a half', '<path opacity=".5" d="M0 0h50v50z"/>'],
  ])('%s does', (_, drawn) => {
    expect(shown(drawn).polylines).toEqual(shown(seen).polylines);
  });

  test('strokes of an outer element hold for all', () => {
    expect(shown('<line x2="9" y2="9"/>', 'viewBox="0 0 10 10" fill="none" stroke="black"').polylines).toHaveLength(1);
  });

  test('a line that leaves the page ends at its edge', () => {
    const { polylines } = shown('<path d="M50 10H150V90H50" fill="none" stroke="red"/>');
    expect(polylines).toEqual([
      [
        [0, 0],
        [0.625, 0],
      ],
      [
        [0.625, 1],
        [0, 1],
      ],
    ]);
  });
});

describe('size', () => {
  test.each([
    ['width="50mm" viewBox="0 0 100 100"', 20],
    ['width="2in" viewBox="0 0 100 100"', 20.32],
    ['height="5cm" viewBox="0 0 100 100"', 20],
    ['width="72pt" viewBox="0 0 100 100"', 10.16],
    ['width="100mm" height="100mm"', (40 * 25.4) / 96],
  ])('%s gives the width of the lines in mm', (attributes, width) => {
    expect(shown('<rect x="5" y="5" width="40" height="10"/>', attributes).width_mm).toBeCloseTo(width, 6);
  });

  test.each(['width="200" viewBox="0 0 100 100"', 'width="100%"', ''])('%j gives none', (attributes) => {
    expect(shown('<rect x="5" y="5" width="40" height="10"/>', attributes).width_mm).toBeNull();
  });
});

describe('what is left out is said', () => {
  const seen = '<path d="M0 0h50v50z"/>';

  test.each([
    ['<text>a<tspan>b</tspan></text><text>c</text>', '2 texts (turn text into paths first)'],
    ['<image href="https://example.org/a.png"/>', '1 picture'],
    ['<script>alert(1)</script><svg:script/>', '2 scripts'],
    ['<style>path{display:none}</style>', '1 style sheet'],
    ['<foreignObject><div xmlns="http://www.w3.org/1999/xhtml"><script/></div></foreignObject>', '1 foreign content'],
    ['<path d="" onclick="alert(1)" onLoad="x"/>', '2 event handlers'],
    ['<set attributeName="href" to="javascript:alert(1)"/>', '1 animation'],
    ['<a href="javascript:alert(1)"></a>', '1 link'],
    ['<use href="other.svg#a"/><use href="#none"/>', '2 references to something that is not in the file'],
    ['<path id="p" d="M0 0h9"/><use href="xp"/>', '1 reference to something that is not in the file'],
    ['<path d="M0 0A1e200 1e300 0 0 1 9 9"/>', '1 line with numbers that are too large'],
    ['<g id="loop"><use href="#loop"/></g>', '1 reference to itself'],
    ['<g id="x"><use href="#y"/></g><g id="y"><use href="#x"/></g>', '2 references to themselves'],
    ['<g clip-path="url(#c)"/>', '1 clip or mask (what it hides is drawn)'],
    ['<path d="M0 0L10 10 L#"/>', '1 rest of a path that breaks off'],
    ['<path d="M0 0L1e300 5"/>', '1 line with numbers that are too large'],
    ['<path d="M0 0L1e999 5"/>', '1 line with numbers that are too large'],
    ['<wobble><path d="M0 0h90"/></wobble>', '1 unknown element'],
    ['&unknown;', '1 entity'],
  ])('%s', (body, words) => {
    const drawn = shown(body + seen);
    expect(drawn.leftOut).toEqual([words]);
  });

  test('titles, descriptions and what belongs to an editor draw nothing and are not mentioned', () => {
    const drawn = shown(`<title>A</title><desc>B</desc><metadata><x:y xmlns:x="z"/></metadata><x:view/>${seen}`);
    expect(drawn).toEqual(shown(seen));
  });

  test('the part of a path before its first mistake is drawn', () => {
    expect(shown('<path stroke="red" d="M0 0L10 10 20 0 L30"/>').polylines).toEqual([
      [
        [0, 0],
        [0.5, 0.5],
        [1, 0],
      ],
    ]);
  });

  test('the style sheet named before the drawing counts too', () => {
    expect(
      readSvg(`<?xml version="1.0"?><?xml-stylesheet href="https://example.org/a.css"?>${svg(seen)}`).leftOut,
    ).toEqual(['1 style sheet']);
  });
});

describe('refusals', () => {
  const nested = (levels: number) => `${'<g>'.repeat(levels)}<path d="M0 0h9"/>${'</g>'.repeat(levels)}`;
  /** Each group draws the one before ten times: 10^9 squares. */
  const laughs = Array.from({ length: 10 }, (_, i) =>
    i === 0
      ? '<g id="l0"><rect width="9" height="9"/></g>'
      : `<g id="l${i}">${`<use href="#l${i - 1}"/>`.repeat(10)}</g>`,
  ).join('');
  const detailed = Array.from({ length: 60_000 }, (_, i) => `${(i * 7919) % 1009} ${(i * 104_729) % 997}`).join(' ');

  test.each([
    ['text that is not XML', 'hello', 'unreadable', 'cannot be read'],
    ['nothing', '', 'unreadable', 'cannot be read'],
    ['HTML', '<html><svg/></html>', 'type', 'the element "html"'],
    ['a cut file', '<svg viewBox="0 0 9 9"><path d="M0 0h', 'unreadable', 'cannot be read'],
    ['a page without lines', svg(''), 'empty', 'no line'],
    ['groups too deep', svg(nested(65)), 'too_large', '64'],
    ['too many elements', svg('<g/>'.repeat(50_000)), 'too_large', '50,000 elements'],
    ['references that multiply', svg(laughs), 'too_large', '100,000 elements'],
    [
      'entities that multiply',
      `<!DOCTYPE svg [<!ENTITY a "b">]>${svg('&a;'.repeat(1001))}`,
      'too_large',
      '1,000 entities',
    ],
    ['too many points', svg(`<path d="M${detailed}"/>`, 'viewBox="0 0 1010 1010"'), 'too_large', '30,000'],
    ['far too many points', svg(`<path d="M0 0${'h1v1'.repeat(210_000)}"/>`, ''), 'too_large', '400,000'],
  ])('%s', (_, text, code, words) => {
    const { issue } = refusal(text);
    expect(issue).toMatchObject({ code, path: 'tooling.artworks' });
    expect(issue.words).toContain(words);
    expect(issue.words).toMatch(/^The drawing .+; allowed: .+\. [A-Z].+\.$/);
  });

  test('at the limit of depth it is taken', () => {
    expect(shown(nested(62)).polylines).toHaveLength(1);
  });

  test('a chain of references that is too long', () => {
    const chain = Array.from({ length: 20 }, (_, i) => `<g id="c${i}"><use href="#c${i + 1}"/></g>`).join('');
    expect(refusal(svg(`${chain}<use href="#c0"/>`)).issue.words).toContain('16 references within references');
  });
});

test('a drawing with detail between the finest and the coarsest is simplified until it fits', () => {
  // 45,000 points on a circle with a ripple of 1/6000 of its size: finer than 1/2000, coarser than 1/8000.
  const points = Array.from({ length: 45_000 }, (_, i) => {
    const [angle, radius] = [(i / 45_000) * 2 * Math.PI, i % 2 === 0 ? 500 : 499.667];
    return `${(500 + radius * Math.cos(angle)).toFixed(3)} ${(500 + radius * Math.sin(angle)).toFixed(3)}`;
  });
  const { finest, lines } = readSvg(svg(`<polygon points="${points.join(' ')}"/>`, 'viewBox="0 0 1000 1000"'));
  expect(finest).toBe(1 / 2000);
  expect(lines.length).toBeLessThan(200_000);
});
