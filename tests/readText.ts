import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { type ESTree, parseSync, Visitor } from 'vite';

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

/**
 * Lists the texts of one source that a person may read: words in literals and templates, in sums of them and in JSX.
 * Names of modules, types and properties, ids and class names are no texts.
 */
export function readTextsOf(path: string, source: string): ReadText[] {
  const { program, errors } = parseSync(path, source);
  if (errors.length > 0) throw new Error(`${path} does not parse: ${errors[0]?.message}`);
  const found: ReadText[] = [];
  const names = new Set<ESTree.Node>();
  const keep = (node: ESTree.Node, text: string): void => {
    const line = source.slice(0, node.start).split('\n').length;
    found.push({ at: `${path}:${line}`, text: text.replace(/\s+/g, ' ').trim() });
  };
  const name = (node: ESTree.Node | null | undefined): void => {
    if (node) names.add(node);
  };
  const read = (node: ESTree.Node): void => {
    const text = names.has(node) ? null : wordsOf(node);
    if (text !== null && isWords(text)) keep(node, text);
  };
  const visitor = new Visitor({
    ImportDeclaration: ({ source: from }) => name(from),
    ExportNamedDeclaration: ({ source: from }) => name(from),
    ImportExpression: ({ source: from }) => name(from),
    TSLiteralType: ({ literal }) => name(literal),
    MemberExpression: ({ property }) => name(property),
    Property: ({ key }) => name(key),
    JSXAttribute: ({ name: attribute, value }) => {
      if (value?.type !== 'Literal') return;
      name(value);
      const isRead = attribute.type === 'JSXIdentifier' && READ_ATTRIBUTES.has(attribute.name);
      if (isRead && typeof value.value === 'string') keep(value, value.value);
    },
    JSXText: (node) => {
      if (/\p{L}/u.test(node.value)) keep(node, node.value);
    },
    BinaryExpression: (node) => {
      if (wordsOf(node) === null) return;
      read(node);
      name(node.left);
      name(node.right);
    },
    Literal: read,
    TemplateLiteral: read,
  });
  visitor.visit(program);
  return found;
}

/** Lists the texts that a person may read in every source under a folder. */
export const readTextsUnder = (folder: string): ReadText[] =>
  readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((file) => /\.tsx?$/.test(file))
    .map((file) => join(folder, file))
    .flatMap((path) => readTextsOf(path, readFileSync(path, 'utf8')));
