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

const files = new Map();

/** What a file of types declares, and the file from which it has each other name. */
function read(path) {
  if (files.has(path)) return files.get(path);
  const text = readFileSync(`${path}.d.ts`, 'utf8');
  const declared = new Map(
    Array.from(text.matchAll(DECLARATION), ([, comment = '', signature, name]) => [
      name,
      { name, path, doc: comment.replace(/^\s*\* ?/gm, '').trim(), signature: signature.trim() },
    ]),
  );
  const origin = new Map();
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

/** The declaration of a name that a file uses; undefined where it is none of the library's. */
function declarationOf(path, name) {
  const { declared, origin } = read(path);
  return declared.get(name) ?? (origin.has(name) ? declarationOf(origin.get(name), name) : undefined);
}

/** All that an index exports, each followed by the types that it mentions and that have not been listed yet. */
function listed(index) {
  const entries = new Set();
  const add = (entry) => {
    if (entry === undefined || entries.has(entry)) return;
    entries.add(entry);
    for (const [name] of entry.signature.matchAll(/\b[A-Z]\w+/g)) add(declarationOf(entry.path, name));
  };
  for (const name of read(index).exported) add(declarationOf(index, name));
  return [...entries];
}

const shortened = (signature) => {
  const lines = signature.split('\n');
  return lines.length > MOST_LINES ? `${lines[0]} …` : signature;
};

/** A docstring as Markdown, its tags as a list. */
const prose = (doc) =>
  doc
    .replace(/^@param (\w+)/gm, '- `$1`:')
    .replace(/^@(returns|throws)/gm, '- $1:')
    .replace(/^(?!- )(.+)\n(?=- )/gm, '$1\n\n');

function section(title, index) {
  const entries = listed(index);
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
