import {
  type BookPhotographs,
  measuredBook,
  type PlainPaper,
  type Scene,
  type SceneTrouble,
  solveScene,
  type Vec2,
} from '../../core/index.ts';
import { faceOfUnknownHeight } from '../../sight/faceOfUnknownHeight.ts';
import type { GreyPicture } from '../../sight/greyPicture.ts';
import { type OpenedPhotograph, openPhotograph } from '../../sight/openPhotograph.ts';
import { photographTroubles, viewTroubles } from '../../sight/photographQuality.ts';
import { proposedFace } from '../../sight/proposedFace.ts';
import { refinedQuad } from '../../sight/refinedQuad.ts';
import { seenMarks } from '../../sight/seenMarks.ts';
import { seenPaper } from '../../sight/seenPaper.ts';
import { serveQuestions } from '../worker/serveQuestions.ts';
import type {
  CloseUp,
  FoundBook,
  PhotographAnswer,
  PhotographQuestion,
  PictureFile,
  Proposed,
  SolvedScene,
} from './photographQuestions.ts';

/** Sides of a close-up, pixels: what a loupe shows, and room to move it. */
const CLOSE_UP = 384;

/** Greys of the pictures, by their numbers; a worker that was started again opens them again. */
const pictures = new Map<string, Promise<GreyPicture>>();

function open({ id, file }: PictureFile): Promise<OpenedPhotograph> {
  const opened = openPhotograph(file);
  const grey = opened.then((photograph) => photograph.grey);
  pictures.set(id, grey);
  grey.catch(() => pictures.delete(id));
  return opened;
}

const greyOf = (of: PictureFile): Promise<GreyPicture> => pictures.get(of.id) ?? open(of).then(({ grey }) => grey);

async function answerTo(question: PhotographQuestion): Promise<PhotographAnswer> {
  switch (question.ask) {
    case 'open':
      return lookedAt(question.of);
    case 'close':
      pictures.delete(question.id);
      return null;
    case 'closeUp':
      return closeUp(await greyOf(question.of), question.at);
    case 'refine': {
      const { corners, u, found } = refinedQuad(await greyOf(question.of), question.corners, question.reach);
      return { corners: found ? corners.map((at, i) => ({ at, u: u[i]! })) : null };
    }
    case 'propose':
      return propose(question);
    case 'measure':
      return measure(question.book);
  }
}

function closeUp({ width, height, values }: GreyPicture, at: Vec2): CloseUp {
  const wide = Math.min(CLOSE_UP, width);
  const high = Math.min(CLOSE_UP, height);
  const start = (place: number, size: number, whole: number): number =>
    Math.round(Math.max(0, Math.min(whole - size, place - size / 2)));
  const [left, top] = [start(at[0], wide, width), start(at[1], high, height)];
  const part = new Uint8Array(wide * high);
  for (let row = 0; row < high; row++) {
    const from = (top + row) * width + left;
    part.set(values.subarray(from, from + wide), row * wide);
  }
  return { left, top, width: wide, height: high, values: part };
}

async function lookedAt(of: PictureFile): Promise<PhotographAnswer> {
  const { grey, preview, camera, focal } = await open(of);
  const { width, height } = grey;
  const seen = { width, height, camera, focal, preview };
  if (of.paper !== null) {
    const paper = seenPaper(grey, of.paper);
    return { ...seen, marks: paper === null ? [] : [paper], advice: paper === null ? [noPaper(of.paper)] : [] };
  }
  const found = seenMarks(grey);
  return { ...seen, marks: found.marks, advice: photographTroubles(grey, found).map(({ words }) => words) };
}

const noPaper = (paper: PlainPaper): string =>
  `No sheet of ${paper} was found. The whole sheet must show, on a darker ground, with all four corners. Take the picture again.`;

/**
 * The face of the book as its edges show it, and what is wrong with where the photographs were taken from. At a height that is not
 * the book's, other lines agree just as well: then the corners only begin there.
 */
async function propose(question: Extract<PhotographQuestion, { ask: 'propose' }>): Promise<Proposed> {
  const { of, photographs, print, height } = question;
  const none = { corners: photographs.map(() => null), found: [] };
  const scene = solveScene(photographs, print);
  if (!scene.ok) return { ...none, advice: [] };
  const { each, all } = viewTroubles(scene.views);
  const pictures = await Promise.all(of.map(greyOf));
  const face =
    height === null
      ? faceOfUnknownHeight(pictures, photographs, scene.views, print)
      : proposedFace(pictures, photographs, scene.views, [height, height]);
  return {
    ...(face === null ? none : { corners: face.corners, found: face.found }),
    advice: [
      ...each.flatMap((own, i) => own.map(({ words }) => `${of[i]!.file.name}: ${words}`)),
      ...all.map(({ words }) => words),
    ],
  };
}

function measure(book: BookPhotographs): FoundBook {
  const { lying, standing, ...rest } = measuredBook(book);
  return { ...rest, lying: solved(lying), standing: solved(standing) };
}

const solved = (scene: Scene | SceneTrouble | null): SolvedScene | SceneTrouble['code'] | null =>
  scene === null
    ? null
    : scene.ok
      ? { views: scene.views, misfit: scene.misfit, doubtful: scene.doubtful.length }
      : scene.code;

function buffersOf(answer: PhotographAnswer): Transferable[] {
  if (answer === null) return [];
  if ('preview' in answer) return [answer.preview.rgba.buffer];
  return 'values' in answer ? [answer.values.buffer as ArrayBuffer] : [];
}

serveQuestions<PhotographQuestion, PhotographAnswer>(answerTo, buffersOf);
