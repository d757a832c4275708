import { ARTWORK_LIMITS, type Artwork, type Job, type JobDocument, type Patch } from '../../../core/index.ts';
import { useBench, useBenchStore } from '../../state/BenchContext.tsx';

/** A change to one design: further fields, or null to take it out. */
type Change = Readonly<Record<string, unknown>> | null;

interface ToolingEdits {
  /** Changes fields of a design; edits in a row with the same key are one step of undo. */
  change(index: number, change: Change, key?: string): void;
  /** Adds a design at the end, with the drawing that it is made from where that is new. @returns its place in the list */
  add(design: Readonly<Record<string, unknown>>, artwork?: Artwork): number;
  /** Lets two designs of the list change places. */
  shift(index: number, other: number): void;
  /** Puts a drawing in the place of another, wherever that is used; several in a row are one step of undo. */
  exchange(id: string, artwork: Artwork): void;
  /** The drawings of the job as it stands. */
  artworks(): readonly Artwork[];
}

/** Why a job cannot keep a further drawing; null where it can. */
export function noRoomFor(artwork: Artwork, others: readonly Artwork[]): string | null {
  const { artworks: most, allCharacters } = ARTWORK_LIMITS;
  if (others.some(({ id }) => id === artwork.id)) return null;
  if (others.length >= most) return `A job keeps ${most} drawings at most. Take one out first.`;
  const size = [...others, artwork].reduce((sum, each) => sum + sizeOf(each), 0);
  if (size <= allCharacters) return null;
  return `With this drawing the job would be too large: ${Math.ceil(size / 1000)} kB; ${allCharacters / 1000} kB is allowed. Take a drawing out first, or draw it with fewer points.`;
}

const sizeOf = (artwork: Artwork): number => (artwork.kind === 'lines' ? artwork.lines : artwork.pixels).length;

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
      const isKnown = artwork === undefined || artworks.some(({ id }) => id === artwork.id);
      put([...designs, design], isKnown ? artworks : [...artworks, artwork]);
      return designs.length;
    },
    exchange: (id, artwork) => {
      const { designs, artworks } = written();
      const others = artworks.filter((each) => each.id !== id && each.id !== artwork.id);
      put(
        designs.map((design) => (design.artwork === id ? { ...design, artwork: artwork.id } : design)),
        [...others, artwork],
        'tooling.artworks exchanged',
      );
    },
    artworks: () => written().artworks,
    shift: (index, at) => {
      const { designs, artworks } = written();
      const [design, other] = [designs[index], designs[at]];
      if (design !== undefined && other !== undefined) put(designs.with(index, other).with(at, design), artworks);
    },
  };
}
