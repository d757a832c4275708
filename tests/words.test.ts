import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';

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
const VOCABULARY_FILE = join('src', 'core', 'words', 'vocabulary.ts');

const sources = [...files('src'), 'README.md']
  .filter((path) => path !== VOCABULARY_FILE)
  .map((path) => ({ path, text: inOneLine(path) }));

test.each(OUTWORN)('“%s” is said nowhere: %s', (old) => {
  const where = sources.filter(({ text }) => text.includes(old)).map(({ path }) => path);
  expect(where).toEqual([]);
});
