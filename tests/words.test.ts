import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { termIn } from '../src/core/words/termIn.ts';
import { termOf } from '../src/core/words/vocabulary.ts';
import { WORDS } from '../src/core/words/words.ts';
import { readTextsOf, readTextsUnder } from './readText.ts';
import { hyphenMinus, wordsAgainst } from './wordsAgainst.ts';

/**
 * Words that a reading of every text found to mislead, or that a maker would not understand, each with what is said in
 * their place. Written from that reading, not from the code.
 */
const OUTWORN: readonly (readonly [old: string, said: string])[] = [
  ['a length from 0 to', 'is not a length'],
  ['Write one number, then its unit', 'Write one number and its unit, as 216 mm or 8 1/2 in'],
  ['Lengths here are in mm', 'the unit beside each figure'],
  ["replaceAll('.', ' › ')", 'the label of the field'],
  ['cannot be used yet', 'Width is missing'],
  ['as it last stood right', 'the last complete job'],
  ['Choose a stretch', 'Press a part of the strip to change it here'],
  // biome-ignore lint/suspicious/noTemplateCurlyInString: the source is searched
  ['${stand} decided', 'worked out'],
  ['when the maker decides it', 'Leave empty: the tool works it out'],
  ['Gap wished', 'Room to leave here in the thickest leather'],
  ['Leather taken by the bend', 'Extra length that the bend at the spine takes up'],
  ["note: 'How near a board edge", 'Where the board edge stops'],
  ['Default by kind', 'Usual for a hardback'],
  ['Back to the default', 'Back to the usual'],
  ['title="Make it"', 'Making'],
  ['taut, as it is cut', 'pulled tight'],
  ['as it settles', 'as it will lie'],
  ['Cut open, leather, look', 'Cross-section and display'],
  ['Measures stray', 'Errors'],
  ['mostly near', 'mostly small'],
  ['anywhere alike', 'any size equally likely'],
  ['strays on its own', 'each off at random'],
  ['as with a caliper', 'the board by 0.10 mm'],
  [' such books', 'In all 2,000 trials it closes'],
  ['is the change of the gap for one of the measure', 'a book 1 mm larger changes the gap by 0.50 mm'],
  ['has no say in it', 'makes no difference'],
  ['no value does it', 'No value is enough'],
  ['this is wanting', 'these still fail'],
  ['What the card teaches', 'What the mock-up shows'],
  ['Nothing read yet', 'No gaps entered yet'],
  ['No reading to learn from', 'Enter the gaps at both fore-edges'],
  ['Such a reading cannot tell', 'The card cannot say whether width or thickness was off'],
  ['the same however it is shared', 'The cut size is the same either way'],
  ['>off, in errors<', 'misfit'],
  ['Off, in errors:', 'Misfit'],
  ['>left over<', 'unexplained'],
  ['Left over:', 'Unexplained'],
  ['Head along the backbone', "head toward one end of the hide's backbone"],
  ['an outline takes its place', 'Not used when its outline is given'],
  ['off edges and defects as asked', 'Checked: pieces keep their spacing'],
  ['from its x axis', '90 = upright, 0 = across'],
  ['check bar measured', 'Bar across, as printed'],
  ['makes up for the printer', 'the next print is corrected'],
  ['has not promised it', 'This browser may delete the shelf when the disk is full'],
  ['present edition', 'Close the other Coverwright windows'],
  ['newer edition', 'newer version'],
  ['this edition', 'this version'],
  ['older edition', 'older version'],
  ['pieces of their own', 'two leather pockets'],
  ['It is altered', 'We will change it before cutting'],
  ['Keep the open job', 'Cancel'],
  ['Let the tool decide', 'Let the tool work it out'],
  ["? 'the tool decides'", 'worked out'],
  ['Take the tuning back', 'Undo all tuning'],
  ["label: 'not said'", 'none entered'],
  ['Sign printed with amounts', 'Currency sign'],
  ['one hole map', 'from the same template'],
  ['> Closer <', 'Narrower range'],
  ['> Wider <', 'Wider range'],
  ['Its back is', 'The spine is'],
  ['back edge of the board', 'spine edge of the front board'],
  ['chlorine', 'toxic, corrosive fumes (hydrogen chloride)'],
  ['disputed', 'its fumes may carry chromium'],
  ['local codes', 'local rules'],
];

const files = (folder: string): string[] =>
  readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((name) => /\.tsx?$/.test(name))
    .map((name) => join(folder, name));

/** What a source says, in one line: without comments, words that are broken over lines or joined by `+` put together. */
const inOneLine = (path: string): string =>
  readFileSync(path, 'utf8')
    .replace(/\/\*[\s\S]*?\*\/|(?<=^|\s)\/\/ .*$/gm, '')
    .replace(/['"`]\s*\+\s*['"`]/g, '')
    .replace(/\s+/g, ' ');

/** The vocabulary itself lists what is said nowhere. */
const VOCABULARY_FILES = ['vocabulary.ts', 'fieldTerms.ts'].map((file) => join('src', 'core', 'words', file));

const sources = [...files('src'), 'README.md']
  .filter((path) => !VOCABULARY_FILES.includes(path))
  .map((path) => ({ path, text: inOneLine(path) }));

test.each(OUTWORN)('“%s” is said nowhere: %s', (old) => {
  const where = sources.filter(({ text }) => text.includes(old)).map(({ path }) => path);
  expect(where).toEqual([]);
});

/** Texts that no maker reads: the words of links already sent, programs of the graphics card, and the vocabulary's own lists. */
const UNREAD = [
  join('src', 'output', 'shareLink', 'linkDictionary.ts'),
  join('src', 'app', 'scene', 'material'),
  join('src', 'app', 'scene', 'room'),
  ...VOCABULARY_FILES,
];

const readme = readFileSync('README.md', 'utf8')
  .split('\n\n')
  .map((text) => ({ at: 'README.md', text: text.replace(/\s+/g, ' ') }));
const inSources = readTextsUnder('src').filter(({ at }) => !UNREAD.some((path) => at.startsWith(path)));
const meanings = WORDS.map((word) => ({ at: `meaning of ${word}`, text: termOf(word).meaning }));
const read = [...inSources, ...readme, ...meanings];

const said = (find: (text: string) => readonly string[]): string[] =>
  read.flatMap(({ at, text }) => find(text).map((found) => `${at} ${found}`));

describe('in everything that a maker reads', () => {
  test('texts are found in sources: in literals, sums, templates and JSX', () => {
    const source = [
      "import { a } from './an unread module.ts';",
      "const id = 'seat'; type Kind = 'an unread kind';",
      // biome-ignore lint/suspicious/noTemplateCurlyInString: the source is searched
      "const all = ['A word', 'two ' + 'words', `${id} is left`];",
      'const drawn = <p className="not this" title="heard">Over the{" "}\n back</p>;',
    ].join('\n');
    expect(readTextsOf('a.tsx', source).map(({ at, text }) => `${at} ${text}`)).toEqual([
      'a.tsx:3 A word',
      'a.tsx:3 two words',
      'a.tsx:3 … is left',
      'a.tsx:4 heard',
      'a.tsx:4 Over the',
      'a.tsx:4 back',
    ]);
    expect(read.length).toBeGreaterThan(1500);
  });

  test('a synonym is found in any case and at a line break, but not inside a longer term', () => {
    expect(wordsAgainst('Slack at the fore-edge')).toEqual(['Slack: say gap']);
    expect(wordsAgainst('the rolled\n half')).toEqual(['rolled\n half: say half round']);
    expect(wordsAgainst('A paper strip round the closed book')).toEqual([]);
    expect(wordsAgainst('A strip round the closed book')).toEqual(['strip round: say paper strip']);
  });

  test('every term goes by its one name', () => {
    expect(said(wordsAgainst)).toEqual([]);
  });

  test('no sentence on screen, on paper or in a message has more than 20 words', () => {
    const isHelp = (at: string): boolean => /^(README|src\/cli)/.test(at);
    const long = read.flatMap(({ at, text }) =>
      isHelp(at)
        ? []
        : text.split(/(?<=[.!?])\s+/).flatMap((one) => (one.split(' ').length > 20 ? [`${at} ${one}`] : [])),
    );
    expect(long).toEqual([]);
  });

  test('a minus sign is U+2212, never a hyphen', () => {
    expect(hyphenMinus('it is -0.03 mm')).toEqual(['-0.03']);
    expect(hyphenMinus('4-5 oz, −0.03 mm')).toEqual([]);
    expect(said(hyphenMinus)).toEqual([]);
  });
});

describe('the vocabulary', () => {
  test.each(WORDS)('%s has a meaning under 20 words that is a sentence', (word) => {
    const { meaning } = termOf(word);
    expect(meaning).toMatch(/^[\p{Lu}\d].*\.$/u);
    expect(meaning.split(' ').length).toBeLessThan(20);
  });

  test('no term is a synonym of another', () => {
    const names = WORDS.flatMap((word) => [word, termOf(word).plural ?? word]);
    const synonyms = WORDS.flatMap((word) => termOf(word).not);
    expect(synonyms.filter((synonym) => names.some((name) => name.toLowerCase() === synonym.toLowerCase()))).toEqual(
      [],
    );
  });

  test('the first term in a text is the longest that stands there', () => {
    expect(termIn('Spare wrap, closed')).toEqual({
      before: '',
      word: 'spare wrap',
      said: 'Spare wrap',
      after: ', closed',
    });
    expect(termIn('Hold of the pockets')?.word).toBe('hold');
    expect(termIn('both Pockets')).toEqual({ before: 'both ', word: 'pocket', said: 'Pockets', after: '' });
    expect(termIn('Headband')).toBeNull();
  });
});
