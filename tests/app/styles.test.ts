import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, relative } from 'node:path/posix';
import postcss, { type AtRule, type Declaration, type Node, type Rule } from 'postcss';
import { describe, expect, test } from 'vitest';
import { defined } from '../defined.ts';
import { wrongImport } from '../importRule.ts';
import { nth } from '../nth.ts';

const src = join(import.meta.dirname, '../../src');
const browser = join(import.meta.dirname, '../browser');
const files = readdirSync(join(src, 'app'), { recursive: true, encoding: 'utf8' }).map((file) => `app/${file}`);
const read = (file: string): string => readFileSync(join(src, file), 'utf8');

const scripts = files.filter((file) => /\.tsx?$/.test(file));
const sheets = files
  .filter((file) => file.endsWith('.css'))
  .map((file) => ({ file, root: postcss.parse(read(file), { from: file }) }));

/** The page itself, where it is drawn before any script runs, and every part of it. */
const markup = [...scripts.filter((file) => file.endsWith('.tsx')), 'index.html'];

const CLASS = /\.([a-z][\w-]*)/gi;
const classesIn = (selector: string): string[] => [...selector.matchAll(CLASS)].map(([, name]) => name!);

/** Words in the quotes of a `class`, `className` or `room` attribute, but for those that a value is compared with. */
function classesUsed(source: string): string[] {
  const values = [...source.matchAll(/\b(?:class(?:Name)?|room)=("[^"]*"|\{(?:[^{}]|\{[^{}]*\})*\})/g)];
  return values.flatMap(([, value]) =>
    [...value!.replace(/[!=]==\s*'[^']*'/g, '').matchAll(/["'`]([^"'`]*)["'`]/g)].flatMap(([, words]) =>
      words!.split(/\s+/),
    ),
  );
}

const used = new Map(markup.map((file) => [file, new Set(classesUsed(read(file)))]));

/** The classes that a selector styles: those of its last compound, without what `:not` and `:has` only ask about. */
const styledBy = (selector: string): string[] =>
  classesIn(
    nth(
      selector
        .replace(/:(?:not|has)\((?:[^()]|\([^()]*\))*\)/g, '')
        .replace(/\([^()]*\)/g, (inner) => inner.replace(/\s/g, ''))
        .split(/[\s>+~]+/),
      -1,
    ),
  );

function ancestors(node: Node): Node[] {
  return node.parent === undefined ? [] : [node.parent, ...ancestors(node.parent)];
}

const isLayer = (node: Node): node is AtRule => node.type === 'atrule' && (node as AtRule).name === 'layer';

function everyRule<Found>(find: (rule: Rule, file: string) => readonly Found[]): Found[] {
  const found: Found[] = [];
  for (const { file, root } of sheets) root.walkRules((rule) => void found.push(...find(rule, file)));
  return found;
}

function everyDeclaration<Found>(find: (declaration: Declaration, file: string) => readonly Found[]): Found[] {
  const found: Found[] = [];
  for (const { file, root } of sheets) root.walkDecls((declaration) => void found.push(...find(declaration, file)));
  return found;
}

describe('the style sheets', () => {
  test('the order of the layers is given once, by the sheet that the page loads first', () => {
    const orders = sheets.flatMap(({ file, root }) =>
      root.nodes.filter((node) => isLayer(node) && node.nodes === undefined).map(() => file),
    );
    expect(orders).toEqual(['app/styles/tokens.css']);
    expect(read('app/main.tsx')).toMatch(/^import '\.\/styles\/tokens\.css';/);
  });

  test('every rule stands in a layer that the order names', () => {
    const order = defined(
      defined(sheets.find(({ file }) => file === 'app/styles/tokens.css')).root.nodes.find(isLayer),
    );
    const named = new Set(order.params.split(/,\s*/));
    const wrong = everyRule((rule, file) => {
      const layers = ancestors(rule).filter(isLayer);
      return layers.length === 1 && named.has(nth(layers, 0).params) ? [] : [`${file}: ${rule.selector}`];
    });
    expect(wrong).toEqual([]);
  });

  test('a class is styled by one sheet only', () => {
    const owners = new Map<string, Set<string>>();
    everyRule((rule, file) => {
      for (const name of rule.selectors.flatMap(styledBy))
        owners.set(name, (owners.get(name) ?? new Set<string>()).add(file));
      return [];
    });
    expect(owners.size).toBeGreaterThan(100);
    const shared = [...owners].flatMap(([name, by]) => (by.size > 1 ? [`${name}: ${[...by].join(', ')}`] : []));
    expect(shared).toEqual([]);
  });

  test('every class of a sheet is given by a file that may import the sheet', () => {
    const mayUse = (file: string, sheet: string): boolean =>
      file === 'index.html' ||
      sheet.startsWith('app/styles/') ||
      wrongImport(file, relative(dirname(file), sheet)) === null;
    const dead = everyRule((rule, sheet) =>
      classesIn(rule.selector)
        .filter(
          (name) =>
            !markup.some(
              (file) => defined(used.get(file)).has(name) && (mayUse(file, sheet) || sheet.split('/').length === 2),
            ),
        )
        .map((name) => `${sheet}: .${name}`),
    );
    expect([...new Set(dead)]).toEqual([]);
  });

  test('every class that a part gives is styled by a sheet or looked for by a browser test', () => {
    const browserTests = readdirSync(browser).filter((file) => file.endsWith('.ts'));
    const known = new Set([
      ...everyRule((rule) => classesIn(rule.selector)),
      ...browserTests.flatMap((file) => classesIn(readFileSync(join(browser, file), 'utf8'))),
    ]);
    const bare = [...used].flatMap(([file, names]) =>
      [...names].filter((name) => /^[a-z][\w-]*$/.test(name) && !known.has(name)).map((name) => `${file}: ${name}`),
    );
    expect(bare).toEqual([]);
  });

  test('a sheet is imported where its part stands', () => {
    const away = sheets.filter(({ file }) => {
      const importers = scripts.filter((script) =>
        read(script).includes(`import './${relative(dirname(script), file)}';`),
      );
      return !importers.some((script) => dirname(script) === dirname(file) || script === 'app/main.tsx');
    });
    expect(away.map(({ file }) => file)).toEqual([]);
  });

  test('margins, paddings and gaps are taken from the tokens', () => {
    const SPACING = /^(margin|padding|scroll-margin|scroll-padding|gap$|row-gap$|column-gap$)/;
    const wrong = everyDeclaration(({ prop, value }, file) =>
      SPACING.test(prop) && /\d(px|r?em|ex|ch|pt|pc|mm|cm|in|Q)\b/.test(value) ? [`${file}: ${prop}: ${value}`] : [],
    );
    expect(wrong).toEqual([]);
  });

  test('every custom property that is read is set, and every one that is set is read', () => {
    const source = scripts.map(read).join('\n');
    const set = new Set(everyDeclaration(({ prop }) => (prop.startsWith('--') ? [prop] : [])));
    for (const [, name] of source.matchAll(/'(--[\w-]+)':/g)) set.add(name!);
    const seen = new Set(
      everyDeclaration(({ value }) => [...value.matchAll(/var\((--[\w-]+)/g)].map(([, name]) => name!)),
    );
    expect([...seen].filter((name) => !set.has(name))).toEqual([]);
    expect([...set].filter((name) => !seen.has(name) && !source.includes(name))).toEqual([]);
  });
});
