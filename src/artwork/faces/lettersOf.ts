import { type LetterFaces, letterIds, type ToolingDesign } from '../../core/index.ts';
import { loadFace } from './loadFace.ts';

/**
 * The faces of all titles by the ids that they name; '' for the usual one.
 * @returns resolves at once where there are no titles; rejects with an Error that says what to do where a font cannot be
 * fetched
 */
export async function lettersOf(designs: readonly ToolingDesign[]): Promise<LetterFaces> {
  return new Map(await Promise.all(letterIds(designs).map(async (id) => [id, await loadFace(id)] as const)));
}
