import { createStore } from 'zustand/vanilla';
import type { PlainPaper, Vec2 } from '../../core/index.ts';
import { freshId } from '../state/freshId.ts';
import { WorkerGaveUp } from '../worker/AskedWorker.ts';
import { WorkerQueue } from '../worker/WorkerQueue.ts';
import {
  type Advice,
  type CloseUp,
  isPhotographAnswer,
  type OpenedPicture,
  type PhotographAnswer,
  type PhotographAnswers,
  type PhotographQuestion,
  type PictureFile,
  type PlacedCorner,
} from './photographQuestions.ts';

/** How the book lies in a photograph. */
export type Position = 'lying' | 'standing';

/** A point of the book as it is placed in a photograph. */
interface PlacedPoint extends PlacedCorner {
  /** Whether the maker had a hand in it; then it is not sought anew unasked. */
  readonly isByHand: boolean;
  /** Whether the maker has seen that it stands on the book: when it was put there by hand, or said so. */
  readonly isLookedAt: boolean;
}

export interface Shot extends PictureFile {
  readonly position: Position;
  /** As it was opened; null while it is being opened. */
  readonly picture: OpenedPicture | null;
  /** Why it could not be opened. */
  readonly failure: string | null;
  /** Points of the book by their places in the list of its position; null for one that is not placed. */
  readonly points: readonly (PlacedPoint | null)[];
  /** Where corners that are not placed begin, and whether a face seems to be there; if not, it is only the middle of the picture. */
  readonly begin: readonly Vec2[];
  readonly isGuessed: boolean;
}

/** What of the first photographs is being done. */
export type Seeking = 'idle' | 'seeking' | 'found' | 'partly' | 'unclear' | { readonly failure: string };

export interface Photographs {
  readonly shots: readonly Shot[];
  /** The plain paper that is used in place of the printed sheet; null for the sheet. */
  readonly paper: PlainPaper | null;
  readonly seeking: Readonly<Record<Position, Seeking>>;
  /** What is wrong with where the photographs of a position were taken from. */
  readonly advice: Readonly<Record<Position, readonly Advice[]>>;
  /** Points as they stood before each move by hand, the last at the end. */
  readonly moves: readonly { readonly shot: string; readonly points: Shot['points'] }[];
  /** What was typed, as it was typed. */
  readonly typed: Readonly<Record<TypedEntry, string>>;
  /** Whether the book is equally thick at spine and fore-edge. */
  readonly isParallel: boolean;
  /** Files that were not taken. */
  readonly leftOut: string | null;
}

export type TypedEntry = 'across' | 'along' | 'ruler' | 'thickness';

/** Photographs of the book in each position at most. */
export const MOST_SHOTS = 8;
/** Standard uncertainty of a corner placed by hand, pixels of a picture 4,000 wide: a loupe shows one of them. An assumption of this project. */
const BY_HAND = { u: 1.5, wide: 4000 } as const;
/** Moves by hand that can be undone. */
const MOST_MOVES = 200;

const FRESH: Photographs = {
  shots: [],
  paper: null,
  seeking: { lying: 'idle', standing: 'idle' },
  advice: { lying: [], standing: [] },
  moves: [],
  typed: { across: '', along: '', ruler: '', thickness: '' },
  isParallel: true,
  leftOut: null,
};

/** Photographs of this visit. They stay while the maker is elsewhere and end with the page; nothing of them is kept. */
export const photographs = createStore<Photographs>()(() => FRESH);

const { getState, setState } = photographs;

const queue = new WorkerQueue<PhotographQuestion, PhotographAnswer>(
  () => new Worker(new URL('./photograph.worker.ts', import.meta.url), { type: 'module' }),
  isPhotographAnswer,
);

/** Puts a question to the worker; of each kind only the newest waits. */
export const askWorker = <Q extends PhotographQuestion>(
  question: Q,
  kind: string,
): Promise<PhotographAnswers[Q['ask']]> => queue.ask(question, kind) as Promise<PhotographAnswers[Q['ask']]>;

const changeShot = (id: string, change: Partial<Shot>): void =>
  setState(({ shots }) => ({ shots: shots.map((shot) => (shot.id === id ? { ...shot, ...change } : shot)) }));

/** Takes pictures that were chosen, dropped or pasted, as far as there is room. */
export function addPhotographs(files: readonly File[], position: Position): void {
  const { shots, paper } = getState();
  const room = MOST_SHOTS - shots.filter((shot) => shot.position === position).length;
  const taken = files.slice(0, Math.max(0, room)).map(
    (file): Shot => ({
      id: freshId(),
      file,
      paper,
      position,
      picture: null,
      failure: null,
      points: [],
      begin: [],
      isGuessed: false,
    }),
  );
  const rest = files.length - taken.length;
  setState({
    shots: [...shots, ...taken],
    leftOut:
      rest > 0
        ? `${rest === 1 ? 'One photograph was' : `${rest} photographs were`} not taken: ${MOST_SHOTS} are enough. Take one out to add another.`
        : null,
  });
  for (const shot of taken) void open(shot);
}

async function open({ id, file, paper, position }: Shot): Promise<void> {
  try {
    const picture = await askWorker({ ask: 'open', of: { id, file, paper } }, `open ${id}`);
    changeShot(id, { picture, failure: null });
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    changeShot(id, {
      failure: error instanceof WorkerGaveUp ? `It could not be looked at: ${why}. Add it again.` : why,
    });
  }
  const own = getState().shots.filter((shot) => shot.position === position);
  if (own.every((shot) => shot.picture !== null || shot.failure !== null)) setNew(position);
}

/** Corners that nobody has placed yet are sought anew when all photographs of a position are there. */
function setNew(position: Position): void {
  const { shots } = getState();
  if (shots.some((shot) => shot.position === position && shot.points.some((point) => point?.isByHand))) return;
  setState(({ seeking }) => ({ seeking: { ...seeking, [position]: 'idle' } }));
}

export function removePhotograph(id: string): void {
  setState(({ shots, moves }) => ({
    shots: shots.filter((shot) => shot.id !== id),
    moves: moves.filter(({ shot }) => shot !== id),
    leftOut: null,
  }));
  void askWorker({ ask: 'close', id }, `close ${id}`).catch(() => {});
}

/** Uses a plain paper in place of the sheet, or the sheet: every picture is looked at again. */
export function choosePaper(paper: PlainPaper | null): void {
  setState(({ shots }) => ({
    paper,
    seeking: FRESH.seeking,
    shots: shots.map((shot) => ({ ...shot, paper, picture: null, failure: null })),
  }));
  for (const shot of getState().shots) void open(shot);
}

export const typeEntry = (entry: TypedEntry, text: string): void =>
  setState(({ typed }) => ({ typed: { ...typed, [entry]: text } }));

export const setSeeking = (position: Position, state: Seeking, said: readonly Advice[] = []): void =>
  setState(({ seeking, advice }) => ({
    seeking: { ...seeking, [position]: state },
    advice: { ...advice, [position]: said },
  }));

/** Puts the points of a photograph where they were found, or only begin there; no move by hand. */
export const placePoints = (id: string, places: Pick<Shot, 'points' | 'begin' | 'isGuessed'>): void =>
  changeShot(id, places);

/** Standard uncertainty of a corner that is placed by hand, pixels. */
export const handDoubt = ({ width, height }: Pick<OpenedPicture, 'width' | 'height'>): number =>
  Math.max(1, (BY_HAND.u * Math.max(width, height)) / BY_HAND.wide);

/** Moves a point by hand, which can be undone. */
export function movePoint(id: string, point: number, at: Vec2): void {
  const shot = getState().shots.find((each) => each.id === id);
  if (shot?.picture == null) return;
  const points = [...shot.points];
  points[point] = { at, u: handDoubt(shot.picture), isByHand: true, isLookedAt: true };
  change(shot, points);
}

/** Changes several points at once, as one move. */
export function changePoints(id: string, points: Shot['points']): void {
  const shot = getState().shots.find((each) => each.id === id);
  if (shot !== undefined) change(shot, points);
}

/** Whether points of a photograph that the program placed were not looked at yet. */
export const waitsForLook = ({ points }: Pick<Shot, 'points'>): boolean =>
  points.some((point) => point?.isLookedAt === false);

/** Says of all points that are placed in a photograph that they were looked at, or not; undone as a move is. */
export function setLookedAt(id: string, isLookedAt: boolean): void {
  const shot = getState().shots.find((each) => each.id === id);
  if (shot !== undefined)
    change(
      shot,
      shot.points.map((point) => point && { ...point, isLookedAt }),
    );
}

function change(shot: Shot, points: Shot['points']): void {
  setState(({ moves }) => ({ moves: [...moves, { shot: shot.id, points: shot.points }].slice(-MOST_MOVES) }));
  changeShot(shot.id, { points });
}

export function undoMove(): void {
  const last = getState().moves.at(-1);
  if (last === undefined) return;
  setState(({ moves }) => ({ moves: moves.slice(0, -1) }));
  changeShot(last.shot, { points: last.points });
}

/** Gives the points of all photographs of a position other names, as when spine and fore-edge were taken for each other. */
export const renamePoints = (position: Position, order: readonly number[]): void =>
  setState(({ shots }) => ({
    shots: shots.map((shot) =>
      shot.position === position
        ? {
            ...shot,
            points: reordered(shot.points, order),
            begin: reordered(shot.begin, order),
          }
        : shot,
    ),
    // Moves of before would bring the old names back.
    moves: [],
  }));

const reordered = <T>(list: readonly T[], order: readonly number[]): T[] =>
  list.map((each, i) => (order[i] === undefined ? each : (list[order[i]] ?? each)));

/** A part of a picture as large as the file has it: round what is under the loupe, or round a corner, each asked for by itself. */
export const closeUpOf = ({ id, file, paper }: PictureFile, at: Vec2, corner?: number): Promise<CloseUp> =>
  askWorker(
    { ask: 'closeUp', of: { id, file, paper }, at },
    corner === undefined ? 'closeUp' : `closeUp ${id} ${corner}`,
  );
