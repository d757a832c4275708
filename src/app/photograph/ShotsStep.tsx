import { type DragEvent, useRef, useState } from 'react';
import { useStore } from 'zustand/react';
import { PhotographPreview } from './PhotographDrawing.tsx';
import { addPhotographs, MOST_SHOTS, type Position, photographs, removePhotograph, type Shot } from './photographs.ts';
import { SHOT_WORDS } from './photographWords.ts';

/** Pictures as the file dialog asks for them; some browsers do not count those of telephones among images. */
const PICTURES = 'image/*,.heic,.heif';

/** The photographs of the book in one position: chosen, taken, dropped or pasted; each with what was found in it. */
export function ShotsStep({ position }: { readonly position: Position }) {
  const shots = useStore(photographs, (state) => state.shots).filter((shot) => shot.position === position);
  const leftOut = useStore(photographs, (state) => state.leftOut);
  const input = useRef<HTMLInputElement>(null);
  const [isOver, setOver] = useState(false);
  const { title, asks } = SHOT_WORDS[position];
  const drop = (event: DragEvent): void => {
    event.preventDefault();
    setOver(false);
    addPhotographs([...event.dataTransfer.files], position);
  };
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: what is dropped here can be chosen by the button too
    <div
      className="shots"
      data-over={isOver ? '' : undefined}
      onDragOver={(event) => {
        event.preventDefault();
        setOver(true);
      }}
      onDragLeave={() => setOver(false)}
      onDrop={drop}
    >
      <p>{asks}</p>
      <div className="row">
        <button
          type="button"
          className={position === 'lying' && shots.length === 0 ? 'main' : undefined}
          disabled={shots.length >= MOST_SHOTS}
          onClick={() => input.current?.click()}
        >
          {shots.length === 0 ? 'Choose or take photographs' : 'Add a photograph'}
        </button>
        <span className="help">Or drop them here{position === 'lying' ? ', or paste one' : ''}.</span>
        <input
          ref={input}
          type="file"
          hidden
          multiple
          accept={PICTURES}
          aria-label={title}
          onChange={(event) => {
            addPhotographs([...(event.target.files ?? [])], position);
            event.target.value = '';
          }}
        />
      </div>
      {leftOut !== null && <p role="status">{leftOut}</p>}
      {shots.length > 0 && (
        <ul className="shot-list" aria-label={title}>
          {shots.map((shot, i) => (
            <ShotRow key={shot.id} shot={shot} number={i + 1} />
          ))}
        </ul>
      )}
    </div>
  );
}

function ShotRow({ shot, number }: { readonly shot: Shot; readonly number: number }) {
  const { picture, failure, file } = shot;
  return (
    <li className="shot">
      <div className="shot-picture">
        {picture !== null && <PhotographPreview preview={picture.preview} label={`Photograph ${number}`} />}
      </div>
      <div>
        <p>
          <b>
            {number}. {file.name}
          </b>
        </p>
        <div role="status">
          {failure !== null ? (
            <p className="issue">{failure}</p>
          ) : picture === null ? (
            <p className="help">Being looked at: this takes a few seconds.</p>
          ) : (
            <>
              <p className="help">{foundWords(shot)}</p>
              {picture.advice.map((words) => (
                <p key={words} className="issue">
                  {words}
                </p>
              ))}
            </>
          )}
        </div>
        <button
          type="button"
          className="quiet"
          aria-label={`Take out photograph ${number}`}
          onClick={() => removePhotograph(shot.id)}
        >
          Take out
        </button>
      </div>
    </li>
  );
}

/** What was found in a photograph. */
function foundWords({ picture, paper }: Shot): string {
  const { width, height, marks, focal } = picture!;
  const size = `${width} x ${height} pixels`;
  if (marks.length === 0) return size;
  const pages = new Set(marks.map(({ page }) => page)).size;
  const seen =
    paper === null
      ? `${marks.length} marks on ${pages === 1 ? 'one page' : `${pages} pages`}`
      : `the sheet of ${paper} with its four corners`;
  return `${size}, ${seen}${focal === null ? '; the camera wrote no focal length' : ''}`;
}
