// Writes dist-lib/REFERENCE.md: what the library exports, and every type of its own that these mention, with signature and
// docstring, room by room. Reads the types that `npm run build:lib` has written.
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join, relative } from 'node:path';

const lib = join(import.meta.dirname, '..', 'dist-lib');
const core = join(lib, 'types', 'src', 'core');

/** Longer signatures are those of the two schemas, which `fit --schema` prints in a form that can be read. */
const MOST_LINES = 80;

const NAMES = /^(im|ex)port (?:type )?\{([^}]*)\} from '(\.[^']+)\.ts';/gm;

/**
 * A declaration as the compiler writes it: its docstring if it has one, the first line at the left edge, and then lines that
 * are indented, empty, or begin with a closing bracket.
 */
const DECLARATION =
  /^(?:\/\*\*((?:(?!\*\/)[\s\S])*)\*\/\n)?(?:export )?(?:declare )?((?:function|const|class|interface|type) (\w+)[^\n]*(?:\n(?:[ })\]>][^\n]*|(?=\n)))*)/gm;

/**
 * @typedef {{ name: string, path: string, doc: string, signature: string }} Declaration
 * @typedef {{ declared: Map<string, Declaration>, origin: Map<string, string>, exported: string[] }} TypesFile
 */

/** @type {Map<string, TypesFile>} */
const files = new Map();

/**
 * What a file of types declares, and the file from which it has each other name.
 * @type {(path: string) => TypesFile}
 */
function read(path) {
  const known = files.get(path);
  if (known !== undefined) return known;
  const text = readFileSync(`${path}.d.ts`, 'utf8');
  /** @type {TypesFile['declared']} */
  const declared = new Map(
    Array.from(text.matchAll(DECLARATION), ([, comment = '', signature, name]) => [
      name,
      { name, path, doc: comment.replace(/^\s*\* ?/gm, '').trim(), signature: signature.trim() },
    ]),
  );
  /** @type {TypesFile['origin']} */
  const origin = new Map();
  /** @type {string[]} */
  const exported = [];
  for (const [, way, list, from] of text.matchAll(NAMES)) {
    for (const name of list.split(',').map((each) => each.replace(/^\s*type /, '').trim())) {
      origin.set(name, join(dirname(path), from));
      if (way === 'ex' && name !== '') exported.push(name);
    }
  }
  const found = { declared, origin, exported };
  files.set(path, found);
  return found;
}

/**
 * The declaration of a name that a file uses; undefined where it is none of the library's.
 * @type {(path: string, name: string) => Declaration | undefined}
 */
function declarationOf(path, name) {
  const { declared, origin } = read(path);
  const from = origin.get(name);
  return declared.get(name) ?? (from === undefined ? undefined : declarationOf(from, name));
}

/**
 * All that an index exports, each followed by the types that it mentions and that have not been listed yet.
 * @type {(index: string) => Declaration[]}
 */
function listed(index) {
  /** @type {Set<Declaration>} */
  const entries = new Set();
  /** @type {(entry: Declaration | undefined) => void} */
  const add = (entry) => {
    if (entry === undefined || entries.has(entry)) return;
    entries.add(entry);
    for (const [name] of entry.signature.matchAll(/\b[A-Z]\w+/g)) add(declarationOf(entry.path, name));
  };
  for (const name of read(index).exported) add(declarationOf(index, name));
  return [...entries];
}

/** @type {(signature: string) => string} */
const shortened = (signature) => {
  const lines = signature.split('\n');
  return lines.length > MOST_LINES ? `${lines[0]} …` : signature;
};

/**
 * A docstring as Markdown, its tags as a list.
 * @type {(doc: string) => string}
 */
const prose = (doc) =>
  doc
    .replace(/^@param (\w+)/gm, '- `$1`:')
    .replace(/^@(returns|throws)/gm, '- $1:')
    .replace(/^(?!- )(.+)\n(?=- )/gm, '$1\n\n');

/** @type {(title: string, index: string) => string} */
function section(title, index) {
  const entries = listed(index);
  /** @type {(entry: Declaration) => string} */
  const roomOf = ({ path }) => relative(core, dirname(path));
  return [
    `## ${title}`,
    ...[...new Set(entries.map(roomOf))]
      .sort()
      .flatMap((room) => [
        `### ${room || 'the whole way'}`,
        ...entries
          .filter((entry) => roomOf(entry) === room)
          .flatMap(({ name, signature, doc }) => [
            `#### ${name}`,
            `\`\`\`ts\n${shortened(signature)}\n\`\`\``,
            ...(doc === '' ? [] : [prose(doc)]),
          ]),
      ]),
  ].join('\n\n');
}

if (!existsSync(core)) {
  console.error('There is no dist-lib; run npm run build:lib first.');
  process.exit(2);
}
writeFileSync(
  join(lib, 'REFERENCE.md'),
  `# Reference

Every export of the library and every type that one mentions. Lengths are in mm and angles in radians unless a name or a text
says otherwise; how the parts work together is in DEVELOPERS.md.

${section('coverwright', join(core, 'index'))}

${section('coverwright/strip', join(core, 'strip', 'index'))}
`,
);
