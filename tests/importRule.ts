import { posix } from 'node:path';
import { defined } from './defined.ts';
import { nth } from './nth.ts';

/**
 * The import rule: a file may import its own layer and any layer of a lower rank. Layers of one rank stand side by side
 * and do not know each other.
 */
const RANKS: Readonly<Record<string, number>> = {
  'core/units': 0,
  'core/math': 0,
  'core/strip': 0,
  'core/words': 0,
  'core/job': 1,
  'core/book': 2,
  'core/leather': 2,
  'core/photograph': 2,
  'core/leatherTest': 3,
  'core/stock': 5,
  'core/allowance': 3,
  'core/doubt': 4,
  'core/pattern': 5,
  'core/fold': 6,
  'core/film': 7,
  'core/mockup': 7,
  'core/solid': 8,
  'core/finish': 9,
  'core/tooling': 9,
  'core/materials': 10,
  'core/report': 11,
  'core/fitReport.ts': 12,
  'core/explore': 12,
  'core/learning': 12,
  'core/index.ts': 13,
  artwork: 14,
  sight: 14.5,
  output: 15,
  cli: 16,
  'app/worker': 16,
  'app/loading': 16,
  'app/offline': 16,
  'app/state': 17,
  'app/sheet': 18,
  'app/scene': 18,
  'app/loupe': 19,
  'app/fields': 19,
  'app/take': 19,
  'app/panel': 20,
  'app/shelf': 20,
  'app/strip': 20,
  'app/stage': 20,
  'app/explore': 20,
  'app/form': 21,
  'app/making': 21,
  'app/leathers': 21,
  'app/photograph': 21,
  'app/customer': 22,
  'app/find': 22,
  'app/print': 22,
  'app/header': 23,
  'app/cover': 23,
  app: 24,
};

const ORDER =
  'units, math, strip, words -> job -> book, leather, photograph -> allowance, leatherTest -> doubt -> pattern, stock -> fold -> film, mockup -> solid -> ' +
  'finish, tooling -> materials -> report -> fitReport, explore, learning; core -> artwork -> sight -> output -> cli, app; in app: worker, loading, offline -> state -> ' +
  'sheet, scene -> fields, loupe, take -> panel, shelf, strip, stage, explore -> form, making, leathers, photograph -> customer, find, print -> header, ' +
  'cover -> the files of app itself';

/** Packages that need neither a browser nor Node, so that core may use them. */
const CORE_PACKAGES = new Set(['zod/mini', 'clipper2-ts', 'fflate']);

const RUNTIME_FREE = /^(node:|react($|-dom|\/)|@react-three\/)/;

const STATEMENTS = [
  /^[ \t]*import\s+[\w\s{},*$]+?\s+from\s*['"]([^'"]+)['"]/gm,
  /^[ \t]*import\s*['"]([^'"]+)['"]/gm,
  /^[ \t]*export\s+(?:type\s+)?(?:\*(?:\s+as\s+[\w$]+)?|\{[^}]*\})\s*from\s*['"]([^'"]+)['"]/gm,
  /\bimport\(\s*['"`]([^'"`]+)['"`]\s*\)/g,
  /\bnew URL\(\s*['"]([^'"]+\.tsx?)['"]/g,
];

/** Lists what a module's source imports: static, side-effect, re-exported, dynamic, and workers named by URL. */
export function importsOf(source: string): string[] {
  const found = STATEMENTS.flatMap((statement) => Array.from(source.matchAll(statement), (match) => nth(match, 1)));
  return [...new Set(found.map((specifier) => specifier.replace(/\?.*$/, '')))];
}

const isRelative = (specifier: string): boolean => specifier.startsWith('.');

/** Gives the path under src a relative import points to, such as `core/units/mm.ts`; `../...` when it leaves src. */
export const resolveImport = (file: string, specifier: string): string => posix.join(posix.dirname(file), specifier);

/** Gives the layer of a path under src, or undefined when it belongs to none. A room of core or of app is a layer. */
function layerOf(path: string): string | undefined {
  const [top = '', second = '', ...rest] = path.split('/');
  const isRoom = top === 'core' || (top === 'app' && rest.length > 0);
  const layer = isRoom ? `${top}/${second}` : top;
  return layer in RANKS ? layer : undefined;
}

/** Style sheets stand under every room: a part imports its own. */
const isStyles = (path: string): boolean => path.startsWith('app/styles/');

/** Says why `file` (a path under src) may not import `specifier`; null when it may. */
export function wrongImport(file: string, specifier: string): string | null {
  const from = layerOf(file);
  if (from === undefined) return `${file} is in no layer; the layers are ${ORDER}. Move it into one.`;
  return isRelative(specifier) ? wrongLayer(file, from, resolveImport(file, specifier)) : wrongPackage(from, specifier);
}

function wrongLayer(file: string, from: string, target: string): string | null {
  if (!/\.\w+$/.test(target)) return `write the extension: a relative import names its file in full.`;
  if (target.startsWith('..')) {
    const isData = /^\.\.\/(public\/.+|package)\.json$/.test(target);
    return isData ? null : 'only JSON under public and package.json may be imported from outside src.';
  }
  if (isStyles(target)) return null;
  const to = layerOf(target);
  if (to === undefined) return `${target} is in no layer; the layers are ${ORDER}.`;
  if (to.startsWith('core/') && !from.startsWith('core/') && to !== 'core/index.ts') {
    return `core has one door: take it from core/index.ts, and list it there if it is not.`;
  }
  if (from === 'cli' && to.startsWith('app'))
    return 'the command line runs without the screen and needs no part of it.';
  if (from === to || defined(RANKS[to]) < defined(RANKS[from])) return null;
  if (RANKS[to] === RANKS[from]) {
    return `${from} and ${to} stand side by side and must not know each other: put what they share in a lower layer.`;
  }
  return `${from} comes before ${to} in ${ORDER}: pass ${file} what it needs as an argument, or move it.`;
}

function wrongPackage(from: string, specifier: string): string | null {
  if (from.startsWith('core/')) {
    if (CORE_PACKAGES.has(specifier)) return null;
    return 'core runs anywhere, also in a worker: plain TypeScript, zod and clipper2-ts only.';
  }
  if (from === 'output' && RUNTIME_FREE.test(specifier)) {
    return 'output serves both the screen and the command line: neither React nor Node may be needed to write a file.';
  }
  if (from === 'cli' && RUNTIME_FREE.test(specifier) && !specifier.startsWith('node:')) {
    return 'the command line draws nothing: React lives in app only.';
  }
  if (from.startsWith('app') && specifier.startsWith('node:'))
    return 'app runs in a browser, which has no Node modules.';
  return null;
}

/** Finds one cycle in a graph of files as the list of files on it, first = last; null when there is none. */
export function findCycle(graph: ReadonlyMap<string, readonly string[]>): string[] | null {
  const done = new Set<string>();
  const path: string[] = [];
  const visit = (file: string): string[] | null => {
    if (path.includes(file)) return [...path.slice(path.indexOf(file)), file];
    if (done.has(file)) return null;
    path.push(file);
    for (const next of graph.get(file) ?? []) {
      const cycle = visit(next);
      if (cycle) return cycle;
    }
    path.pop();
    done.add(file);
    return null;
  };
  for (const file of graph.keys()) {
    const cycle = visit(file);
    if (cycle) return cycle;
  }
  return null;
}
