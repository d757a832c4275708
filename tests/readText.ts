import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { type ESTree, parseSync } from 'vite';

/** One text of a source that a person may read; each value put into a template stands as `…`. */
export interface ReadText {
  /** File and line, such as `src/app/App.tsx:12`. */
  readonly at: string;
  readonly text: string;
}

/** JSX attributes whose value is read or heard; the others are classes, ids and paths. */
const READ_ATTRIBUTES = new Set(['title', 'label', 'aria-label', 'alt', 'placeholder', 'note', 'heading', 'summary']);

/** Words rather than an id: several words, or one with a capital. */
const isWords = (text: string): boolean =>
  /\p{L}[\p{P}\p{S}]*\s|\s[\p{P}\p{S}]*\p{L}/u.test(text) || /^\p{Lu}\p{Ll}/u.test(text);

const templateText = ({ quasis }: ESTree.TemplateLiteral): string =>
  quasis.map(({ value }) => value.cooked ?? value.raw).join('…');

/** The text of a literal, a template or a sum of them; null where a part is something else. */
function wordsOf(node: ESTree.Node): string | null {
  if (node.type === 'Literal') return typeof node.value === 'string' ? node.value : null;
  if (node.type === 'TemplateLiteral') return templateText(node);
  if (node.type !== 'BinaryExpression' || node.operator !== '+') return null;
  const [left, right] = [wordsOf(node.left), wordsOf(node.right)];
  return left === null || right === null ? null : left + right;
}

const isNode = (value: unknown): value is ESTree.Node =>
  typeof value === 'object' && value !== null && 'type' in value && typeof value.type === 'string';

const childrenOf = (node: ESTree.Node): ESTree.Node[] => Object.values(node).flat().filter(isNode);

/** Children that are names of modules, types, properties or classes rather than words. */
function namesIn(node: ESTree.Node): readonly unknown[] {
  switch (node.type) {
    case 'ImportDeclaration':
    case 'ImportExpression':
    case 'ExportNamedDeclaration':
    case 'ExportAllDeclaration':
      return [node.source];
    case 'TSLiteralType':
      return [node.literal];
    case 'MemberExpression':
      return [node.property];
    case 'Property':
      return [node.key];
    case 'JSXAttribute':
      return node.value?.type !== 'Literal' || READ_ATTRIBUTES.has(String(node.name.name)) ? [] : [node.value];
    default:
      return [];
  }
}

/** What a node itself gives to read; null where only nodes inside it may. */
function readAt(node: ESTree.Node, parent: ESTree.Node | null): string | null {
  if (node.type === 'JSXText') return /\p{L}/u.test(node.value) ? node.value : null;
  const text = wordsOf(node);
  return text !== null && (isWords(text) || parent?.type === 'JSXAttribute') ? text : null;
}

/**
 * Lists the texts of one source that a person may read: words in literals and templates, in sums of them and in JSX.
 * Names of modules, types and properties, ids and class names are no texts.
 */
export function readTextsOf(path: string, source: string): ReadText[] {
  const { program, errors } = parseSync(path, source);
  if (errors[0]) throw new Error(`${path} does not parse: ${errors[0].message}`);
  const found: ReadText[] = [];
  const visit = (node: ESTree.Node, parent: ESTree.Node | null, isPart: boolean): void => {
    const text = isPart ? null : readAt(node, parent);
    if (text !== null) {
      const line = source.slice(0, node.start).split('\n').length;
      found.push({ at: `${path}:${line}`, text: text.replace(/\s+/g, ' ').trim() });
    }
    const names = namesIn(node);
    const isSum = node.type === 'BinaryExpression' && wordsOf(node) !== null;
    for (const child of childrenOf(node)) if (!names.includes(child)) visit(child, node, isSum);
  };
  visit(program, null, false);
  return found;
}

/** Lists the texts that a person may read in every source under a folder. */
export const readTextsUnder = (folder: string): ReadText[] =>
  readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((file) => /\.tsx?$/.test(file))
    .map((file) => join(folder, file))
    .flatMap((path) => readTextsOf(path, readFileSync(path, 'utf8')));
