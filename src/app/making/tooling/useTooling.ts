import type { Artwork, Job, JobDocument, Patch } from '../../../core/index.ts';
import { useBench, useBenchStore } from '../../state/BenchContext.tsx';

/** A change to one design: further fields, or null to take it out. */
type Change = Readonly<Record<string, unknown>> | null;

interface ToolingEdits {
  /** Changes fields of a design; edits in a row with the same key are one step of undo. */
  change(index: number, change: Change, key?: string): void;
  /** Adds a design at the end, with the drawing that it is made from where that is new. @returns its place in the list */
  add(design: Readonly<Record<string, unknown>>, artwork?: Artwork): number;
  /** Exchanges two designs of the list. */
  shift(index: number, other: number): void;
}

/** What is tooled in the job as it last stood right. */
export const useTooling = (): Job['tooling'] => useBench(({ history }) => history.good.job.tooling);

/** Edits of the list of designs, which the job keeps as one field. */
export function useToolingEdits(): ToolingEdits {
  const { getState } = useBenchStore();
  const written = (): { designs: readonly JobDocument[]; artworks: readonly Artwork[] } => {
    const { tooling } = getState().history.document as { tooling?: { designs?: JobDocument[]; artworks?: Artwork[] } };
    return { designs: tooling?.designs ?? [], artworks: tooling?.artworks ?? [] };
  };
  const put = (designs: readonly JobDocument[], artworks: readonly Artwork[], key?: string): void => {
    // A drawing that nothing shows any more leaves the job; undo brings both back.
    const kept = artworks.filter(({ id }) => designs.some(({ artwork }) => artwork === id));
    const patches: Patch[] = [{ path: 'tooling.designs', value: designs.length === 0 ? undefined : designs }];
    if (kept.length !== written().artworks.length || kept.some((each, i) => each !== written().artworks[i]))
      patches.push({ path: 'tooling.artworks', value: kept.length === 0 ? undefined : kept });
    getState().dispatch({ type: 'edit', key, patches });
  };
  return {
    change: (index, change, key) => {
      const { designs, artworks } = written();
      const design = designs[index];
      if (design === undefined) return;
      put(change === null ? designs.toSpliced(index, 1) : designs.with(index, { ...design, ...change }), artworks, key);
    },
    add: (design, artwork) => {
      const { designs, artworks } = written();
      put([...designs, design], artwork === undefined ? artworks : [...artworks, artwork]);
      return designs.length;
    },
    shift: (index, at) => {
      const { designs, artworks } = written();
      const [design, other] = [designs[index], designs[at]];
      if (design !== undefined && other !== undefined) put(designs.with(index, other).with(at, design), artworks);
    },
  };
}
