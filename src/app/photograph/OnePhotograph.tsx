import { type ReactNode, useEffect, useRef, useState } from 'react';
import type { Photograph, Vec2 } from '../../core/index.ts';
import { FileButton } from '../fields/FileButton.tsx';
import { freshId } from '../state/freshId.ts';
import { PhotographDrawing } from './PhotographDrawing.tsx';
import type { OpenedPicture, PictureFile } from './photographQuestions.ts';
import { askWorker, closeUpOf } from './photographs.ts';
import { PICTURE_KINDS } from './pictureKinds.ts';

/** A photograph with the sheet in it, and the points that the maker has put on it. */
export interface PointedPhotograph {
  readonly photograph: Photograph;
  readonly points: readonly Vec2[];
}

interface OnePhotographProps {
  /** What it is of, as "Photograph of the printed page". */
  readonly title: string;
  /** Points to drag, by where they begin: shares of the picture's width and height. */
  readonly points: readonly { readonly name: string; readonly at: Vec2 }[];
  readonly lines: readonly (readonly [number, number])[];
  /** What follows from it. */
  readonly children: (pointed: PointedPhotograph) => ReactNode;
}

type Opened =
  | { readonly status: 'none' | 'opening' }
  | { readonly status: 'failed'; readonly why: string }
  | { readonly status: 'open'; readonly of: PictureFile; readonly picture: OpenedPicture };

/** One photograph that is measured in by points put on it by hand, each under the loupe. It ends with the part. */
export function OnePhotograph({ title, points, lines, children }: OnePhotographProps) {
  const [opened, setOpened] = useState<Opened>({ status: 'none' });
  /** Points before and after each move. */
  const [moves, setMoves] = useState<readonly (readonly Vec2[])[]>([]);
  const id = useRef<string | null>(null);
  useEffect(() => () => letGo(id.current), []);

  const open = async (file: File): Promise<void> => {
    letGo(id.current);
    const of: PictureFile = { id: freshId(), file, paper: null };
    id.current = of.id;
    setOpened({ status: 'opening' });
    try {
      const picture = await askWorker({ ask: 'open', of }, `open ${of.id}`);
      if (id.current !== of.id) return;
      setMoves([points.map(({ at: [x, y] }): Vec2 => [x * picture.width, y * picture.height])]);
      setOpened({ status: 'open', of, picture });
    } catch (error) {
      if (id.current === of.id)
        setOpened({ status: 'failed', why: error instanceof Error ? error.message : String(error) });
    }
  };
  const placed = moves.at(-1) ?? [];
  return (
    <>
      <div className="row">
        <FileButton
          title={opened.status === 'open' ? 'Another photograph' : 'Choose or take a photograph'}
          asks={title}
          accept={PICTURE_KINDS}
          onFile={(file) => void open(file)}
        />
      </div>
      <p role="status" className="help">
        {opened.status === 'opening' && 'The photograph is being looked at.'}
        {opened.status === 'open' && opened.picture.advice.join(' ')}
      </p>
      {opened.status === 'failed' && (
        <p className="issue" role="alert">
          {opened.why}
        </p>
      )}
      {opened.status === 'open' && opened.picture.marks.length > 0 && (
        <>
          <PhotographDrawing
            label={title}
            picture={opened.picture}
            points={points.map(({ name }, i) => ({ name, at: placed[i]! }))}
            lines={lines}
            outlines={opened.picture.marks.map(({ seen }) => seen)}
            move={(point, at) => setMoves([...moves, placed.with(point, at)])}
            undo={() => setMoves(moves.length > 1 ? moves.slice(0, -1) : moves)}
            closeUp={(at) => closeUpOf(opened.of, at)}
          />
          {children({ photograph: { ...opened.picture, points: [] }, points: placed })}
        </>
      )}
    </>
  );
}

/** The worker need not keep the picture any more. */
function letGo(id: string | null): void {
  if (id !== null) void askWorker({ ask: 'close', id }, `close ${id}`).catch(() => {});
}
