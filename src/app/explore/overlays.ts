import { CARD, EXAMPLE_JOBS, type JobDocument, patched, TEMPERS, temperPatches, valueAt } from '../../core/index.ts';

/** A job that can be laid over the open one. */
export interface Overlay {
  readonly id: string;
  readonly name: string;
  readonly document: JobDocument;
}

/** The jobs that can be laid over: the pinned job, the open one in another temper or in card, and the examples. */
export function overlaysFor(open: JobDocument, pinned: JobDocument | null): readonly Overlay[] {
  const nameOf = (document: JobDocument): string => String(valueAt(document, 'name') ?? 'Untitled cover');
  return [
    ...(pinned === null ? [] : [{ id: 'pinned', name: `${nameOf(pinned)}, pinned`, document: pinned }]),
    ...[...TEMPERS, CARD].map((temper) => ({
      id: temper.name,
      name: temper.name === CARD.name ? 'this job in card' : `this job in ${temper.name} leather`,
      document: patched(open, temperPatches('outside', temper, null)),
    })),
    ...EXAMPLE_JOBS.map(({ id, document }) => ({ id, name: nameOf(document), document })),
  ];
}
