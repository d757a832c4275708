import type { LetterFace, LetterFaces, ToolingDesign } from '../../core/index.ts';
import { FACE_CHOICES, loadFace } from './loadFace.ts';

/**
 * The faces of all titles, the usual one first: a title that names none is set in it.
 * @returns resolves at once where there are no titles; rejects with an Error that says what to do where a font cannot be
 * fetched
 */
export async function lettersOf(designs: readonly ToolingDesign[]): Promise<LetterFaces> {
  const wanted = new Set(designs.flatMap((design) => (design.kind === 'title' ? [design.face] : [])));
  const ids = FACE_CHOICES.filter(({ id }, i) => wanted.has(id) || (i === 0 && wanted.has('')));
  const faces = await Promise.all(ids.map(({ id }) => loadFace(id)));
  return new Map<string, LetterFace>(faces.map((face) => [face.id, face]));
}
