import bidiFactory from 'bidi-js';

const bidi = bidiFactory();

/** Hebrew, Arabic and related scripts. */
const RIGHT_TO_LEFT = /[\u0590-\u08ff\ufb1d-\ufdff\ufe70-\ufefc]/;

/**
 * Cuts a left-to-right line into runs of one direction, in their order on paper from the left (Unicode Standard Annex
 * 9). Each run keeps its reading order: the font engine lays it out from the right.
 */
export function visualRuns(text: string): readonly string[] {
  if (!RIGHT_TO_LEFT.test(text)) return [text];
  const embedding = bidi.getEmbeddingLevels(text, 'ltr');
  const runs: { level: number; from: number; to: number }[] = [];
  for (const index of bidi.getReorderedIndices(text, embedding)) {
    const level = embedding.levels[index]!;
    const last = runs.at(-1);
    if (last !== undefined && last.level === level) {
      last.from = Math.min(last.from, index);
      last.to = Math.max(last.to, index + 1);
    } else runs.push({ level, from: index, to: index + 1 });
  }
  return runs.map(({ level, from, to }) => {
    const run = text.slice(from, to);
    // The font engine lays out a run of signs alone from the left.
    return level % 2 === 1 && !RIGHT_TO_LEFT.test(run) ? [...run].reverse().join('') : run;
  });
}
