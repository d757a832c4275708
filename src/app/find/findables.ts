import { JOB_PATHS } from '../../core/index.ts';
import { fieldPlace, goToField } from '../fields/goToField.ts';
import { labelAt } from '../fields/issueWords.ts';
import { addressOf, PLACES, type PlaceId } from '../state/place.ts';

/** Something that can be gone to, by its plain name. */
export interface Findable {
  readonly name: string;
  /** Where it is, in the words of the page. */
  readonly where: string;
  readonly go: () => void;
}

const PLACE_TITLES = Object.fromEntries(PLACES.map(({ id, title }) => [id, title])) as Record<PlaceId, string>;

/** Every place of the page and every field of the job. */
export function findables(): readonly Findable[] {
  const places = PLACES.map(({ id, title }) => ({
    name: title,
    where: 'a place',
    go: () => {
      window.location.hash = addressOf(id);
    },
  }));
  const fields = JOB_PATHS.flatMap((path) => {
    const at = fieldPlace(path);
    return at === undefined
      ? []
      : [
          {
            name: labelAt(path),
            where: `${PLACE_TITLES[at.place]}${at.part ? `, ${at.part}` : ''}`,
            go: () => goToField(path),
          },
        ];
  });
  return [...places, ...fields];
}

/** Those whose name holds every word of a text, names that begin with it first. */
export function found(all: readonly Findable[], text: string): readonly Findable[] {
  const words = text.toLowerCase().split(/\s+/).filter(Boolean);
  const holds = ({ name }: Findable): boolean => words.every((word) => name.toLowerCase().includes(word));
  const begins = ({ name }: Findable): boolean => name.toLowerCase().startsWith(text.trim().toLowerCase());
  const hits = all.filter(holds);
  return [...hits.filter(begins), ...hits.filter((hit) => !begins(hit))];
}
