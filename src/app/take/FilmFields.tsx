import { useId, useState } from 'react';
import type { PictureSize } from '../scene/pictureTiles.ts';
import { FILM_SIZES, FILMS, type FilmId } from './filmChoices.ts';
import { filmRefusal } from './filmFile.ts';

interface FilmFieldsProps {
  readonly isBusy: boolean;
  readonly onTake: (film: {
    readonly id: FilmId;
    readonly seconds: number;
    readonly size: PictureSize;
  }) => Promise<void>;
}

/** Every film in every length. */
const CHOICES = FILMS.flatMap(({ id, title, seconds }) =>
  seconds.map((length) => ({ id, seconds: length, title: `${title}, ${length} s` })),
);

/** A film of the cover, where the browser can make one; why not, where it cannot. */
export function FilmFields({ isBusy, onTake }: FilmFieldsProps) {
  const [chosen, setChosen] = useState(0);
  const [chosenSize, setChosenSize] = useState(0);
  const [refusal] = useState(filmRefusal);
  const id = useId();
  const { id: film, seconds } = CHOICES[chosen]!;
  if (refusal !== null)
    return (
      <fieldset>
        <legend>Film</legend>
        <p className="help">{refusal}</p>
      </fieldset>
    );
  return (
    <fieldset>
      <legend>Film</legend>
      <div className="row take-row">
        <label htmlFor={`${id}-film`}>Shows</label>
        <select
          id={`${id}-film`}
          value={chosen}
          disabled={isBusy}
          onChange={(event) => setChosen(Number(event.target.value))}
        >
          {CHOICES.map(({ title }, i) => (
            <option key={title} value={i}>
              {title}
            </option>
          ))}
        </select>
        <label className="only-heard" htmlFor={`${id}-size`}>
          Size of the film
        </label>
        <select
          id={`${id}-size`}
          value={chosenSize}
          disabled={isBusy}
          onChange={(event) => setChosenSize(Number(event.target.value))}
        >
          {FILM_SIZES.map(({ width, height }, i) => (
            <option key={width} value={i}>{`${width} × ${height}`}</option>
          ))}
        </select>
        <button
          type="button"
          disabled={isBusy}
          onClick={() => void onTake({ id: film, seconds, size: FILM_SIZES[chosenSize]! })}
        >
          Save film
        </button>
      </div>
      <p className="help">
        {film === 'turn'
          ? 'The cover as it now stands, seen from all sides.'
          : 'All steps, up to where one does not go.'}{' '}
        It is drawn frame by frame: a slow machine takes minutes.
      </p>
    </fieldset>
  );
}
