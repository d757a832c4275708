import type { CustomerSheet } from '../../../src/output/customerSheet/customerSheet.ts';

/** Every text of a sheet in the order of reading: page, print and PDF say all of these and nothing else. Empty ones are left out. */
export function sheetTexts(sheet: CustomerSheet): readonly string[] {
  const { title, lead, date, fit, covers, passages, weights, madeOf, caution, agreement } = sheet;
  return [
    title,
    lead,
    date,
    covers.closed,
    covers.open,
    fit,
    ...passages.flatMap(({ heading, sentences, picture }) => [
      heading,
      ...sentences,
      ...(picture === null ? [] : [picture.words, ...picture.key.map(({ words }) => words)]),
    ]),
    madeOf.heading,
    ...madeOf.facts.flatMap(({ name, value }) => [name, value]),
    weights.heading,
    ...weights.columns.map(({ name }) => name),
    ...weights.rows.flatMap((row, k) => [row, ...weights.columns.map(({ values }) => values[k] ?? '')]),
    ...weights.sentences,
    caution,
    agreement.heading,
    agreement.sentence,
    ...agreement.blanks,
  ].filter((text) => text !== '');
}
