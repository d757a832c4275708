import { useEffect, useState, useSyncExternalStore } from 'react';
import { type LetterFace, type LetterFaces, letterIds, type ToolingDesign } from '../../core/index.ts';

/** Faces that this page has loaded, by the id that a title names. */
let loaded: LetterFaces = new Map<string, LetterFace>();
const listeners = new Set<() => void>();

async function load(id: string): Promise<void> {
  const { loadFace } = await import('../../artwork/faces/loadFace.ts');
  const face = await loadFace(id);
  if (loaded.has(id)) return;
  loaded = new Map(loaded).set(id, face);
  for (const listener of listeners) listener();
}

function subscribe(listener: () => void): () => void {
  listeners.add(listener);
  return () => listeners.delete(listener);
}

interface Letters {
  /** The same map until another face is loaded. */
  readonly faces: LetterFaces;
  readonly isLoading: boolean;
  /** That faces are on their way, or why one could not be loaded and what to do. */
  readonly note: string | null;
}

/** The faces of the titles among designs, loaded when they are first wanted. */
export function useLetterFaces(designs: readonly ToolingDesign[]): Letters {
  const faces = useSyncExternalStore(subscribe, () => loaded);
  const [failure, setFailure] = useState<string | null>(null);
  const wanted = letterIds(designs);
  const key = JSON.stringify(wanted);
  useEffect(() => {
    let isWanted = true;
    setFailure(null);
    for (const id of JSON.parse(key) as string[])
      load(id).catch((error: Error) => isWanted && setFailure(error.message));
    return () => {
      isWanted = false;
    };
  }, [key]);
  const isLoading = failure === null && wanted.some((id) => !faces.has(id));
  return { faces, isLoading, note: isLoading ? 'The letters are being fetched.' : failure };
}
