import { useState } from 'react';
import { isPicture } from '../../../artwork/picture/pictureHeader.ts';
import { type ArtworkFile, type PictureUse, type ReadArtwork, sizeIssue } from '../../../artwork/readArtwork.ts';
import type { Artwork, ToolingArea } from '../../../core/index.ts';
import type { ArtworkQuestion } from '../../worker/artwork.worker.ts';
import { isReadArtwork, startArtworkWorker } from '../../worker/openArtwork.ts';
import { useWorkerQueue } from '../../worker/useWorkerQueue.ts';
import { noRoomFor, useToolingEdits } from './useTooling.ts';

/** A file as it was opened: the job keeps only what was made of it. */
interface OpenedFile {
  readonly file: ArtworkFile;
  readonly isPicture: boolean;
  readonly use: PictureUse;
  /** What of the file is not in the drawing. */
  readonly leftOut: readonly string[];
}

/** Files opened since the page was loaded, by the ids of the drawings that were made of them. */
const opened = new Map<string, OpenedFile>();

/** Files kept at once, so that a session of many pictures does not fill the memory. */
const KEPT = 24;

/** The file that a drawing was made of, while the page still has it. */
export const openedFile = (artwork: string): OpenedFile | undefined => opened.get(artwork);

type Reading = { readonly status: 'idle' | 'reading' } | { readonly status: 'refused'; readonly why: string };

/** Share of the clear part that a drawing fills at most when it is added. */
const FILLS = 0.6;

/** Opens drawings and pictures of the maker's own. A file that is refused leaves the job as it was. */
export function useArtworkFiles() {
  const [reading, setReading] = useState<Reading>({ status: 'idle' });
  const queue = useWorkerQueue<ArtworkQuestion, ReadArtwork>(startArtworkWorker, isReadArtwork);
  const { add, exchange, artworks } = useToolingEdits();

  const refuse = (why: string): void => setReading({ status: 'refused', why });
  const read = async (file: ArtworkFile, use: PictureUse, then: (read: Extract<ReadArtwork, { ok: true }>) => void) => {
    setReading({ status: 'reading' });
    try {
      const answer = await queue.ask({ file, use });
      if (!answer.ok) return refuse(answer.issue.words ?? answer.issue.message);
      const { artwork, leftOut } = answer;
      const full = noRoomFor(artwork, artworks());
      if (full !== null) return refuse(full);
      if (opened.size >= KEPT) opened.delete(opened.keys().next().value!);
      opened.set(artwork.id, { file, isPicture: isPicture(file.bytes), use, leftOut });
      setReading({ status: 'idle' });
      then(answer);
    } catch (error) {
      refuse(`The drawing was not read: ${(error as Error).message}.`);
    }
  };

  return {
    reading,
    /** Reads a file and puts its drawing in the middle of a face. */
    open: async (chosen: File, area: ToolingArea, added: (index: number) => void): Promise<void> => {
      const issue = sizeIssue(chosen.size);
      if (issue !== null) return refuse(issue.words ?? issue.message);
      const buffer = await chosen.arrayBuffer().catch(() => null);
      if (buffer === null) return refuse('The drawing cannot be read. Choose the file again: it may have been moved.');
      const file = { name: chosen.name, bytes: new Uint8Array(buffer) };
      await read(file, { as: 'lines' }, ({ artwork, width_mm }) =>
        added(
          add(
            { kind: 'drawing', area: area.face, artwork: artwork.id, width_mm: widthOn(area, artwork, width_mm) },
            artwork,
          ),
        ),
      );
    },
    /** Makes the drawing of a picture in another way. */
    retake: (artwork: Artwork, use: PictureUse): void => {
      const file = openedFile(artwork.id)?.file;
      if (file !== undefined) void read(file, use, (answer) => exchange(artwork.id, answer.artwork));
    },
  };
}

/** The width that a drawing begins with: its own where that fits, else what fills a good part of the clear part. */
function widthOn({ clear, flat }: ToolingArea, { width, height }: Artwork, own: number | null): number {
  const { x, y } = clear ?? flat;
  const [wide, high] = [x[1] - x[0], y[1] - y[0]];
  const fits = Math.min(wide, (high * width) / height);
  return Math.max(1, own !== null && own <= fits ? own : Math.round(FILLS * fits));
}
