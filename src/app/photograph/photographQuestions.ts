import * as z from 'zod/mini';
import type {
  BookMeasure,
  BookPhotographs,
  Photograph,
  PlaceDoubt,
  PlainPaper,
  PrintScale,
  SceneFigure,
  SceneTrouble,
  Vec2,
  View,
} from '../../core/index.ts';
import { accepting } from '../worker/accepting.ts';

/** A picture as its file, which the worker opens again where it does not have it any more. */
export interface PictureFile {
  readonly id: string;
  readonly file: File;
  /** The plain paper that lies in the picture; null for the printed sheet. */
  readonly paper: PlainPaper | null;
}

/** A part of a picture as large as the file has it, greys. */
export interface CloseUp {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
  readonly values: Uint8Array;
}

/** Colours of a picture brought down, red, green, blue and opacity. */
export interface Preview {
  readonly width: number;
  readonly height: number;
  readonly rgba: Uint8ClampedArray<ArrayBuffer>;
}

/** A picture as it is drawn: places are in pixels of its file. */
export interface DrawnPicture {
  readonly width: number;
  readonly height: number;
  readonly preview: Preview;
}

/** What is wrong with a photograph, and what to do, in words. */
export type Advice = string;

export interface OpenedPicture extends Omit<Photograph, 'points'> {
  readonly preview: Preview;
  readonly advice: readonly Advice[];
}

export interface PlacedCorner {
  readonly at: Vec2;
  readonly u: PlaceDoubt;
}

/** A scene as it was solved, without what only the worker needs. */
export interface SolvedScene {
  readonly views: readonly (View | null)[];
  readonly misfit: number;
  readonly doubtful: number;
}

export interface FoundBook {
  readonly measures: readonly BookMeasure[];
  readonly correlation: readonly (readonly number[])[];
  readonly outOfSquare: SceneFigure | null;
  readonly swell: SceneFigure | null;
  readonly lying: SolvedScene | SceneTrouble['code'] | null;
  readonly standing: SolvedScene | SceneTrouble['code'] | null;
}

export interface Proposed {
  /** By photograph; null for one of which nothing is known. */
  readonly corners: readonly (readonly PlacedCorner[] | null)[];
  /** For each corner whether the edges there are clear; if not, it is only where to begin. Empty where none is. */
  readonly found: readonly boolean[];
  /** On where the photographs were taken from. */
  readonly advice: readonly Advice[];
}

export interface PhotographAnswers {
  readonly open: OpenedPicture;
  readonly close: null;
  readonly closeUp: CloseUp;
  readonly refine: { readonly corners: readonly PlacedCorner[] | null };
  readonly propose: Proposed;
  readonly measure: FoundBook;
}

export type PhotographQuestion =
  | { readonly ask: 'open'; readonly of: PictureFile }
  | { readonly ask: 'close'; readonly id: string }
  | { readonly ask: 'closeUp'; readonly of: PictureFile; readonly at: Vec2 }
  | { readonly ask: 'refine'; readonly of: PictureFile; readonly corners: readonly Vec2[]; readonly reach: number }
  | {
      readonly ask: 'propose';
      readonly of: readonly PictureFile[];
      readonly photographs: readonly Photograph[];
      readonly print: PrintScale;
      /** Height of the face over the sheet, mm; null to seek it too. */
      readonly height: number | null;
    }
  | { readonly ask: 'measure'; readonly book: BookPhotographs };

export type PhotographAnswer = PhotographAnswers[keyof PhotographAnswers];

const SHAPES: Readonly<Record<PhotographQuestion['ask'], z.ZodMiniType>> = {
  open: z.looseObject({
    width: z.number(),
    height: z.number(),
    marks: z.array(z.looseObject({ u: z.number() })),
    preview: z.looseObject({ width: z.number(), height: z.number() }),
    advice: z.array(z.string()),
  }),
  close: z.null(),
  closeUp: z.looseObject({ left: z.number(), top: z.number(), width: z.number() }),
  refine: z.looseObject({ corners: z.nullable(z.array(z.unknown())) }),
  propose: z.looseObject({ corners: z.array(z.nullable(z.array(z.unknown()))), advice: z.array(z.string()) }),
  measure: z.looseObject({ measures: z.array(z.looseObject({ path: z.string(), value: z.number(), u: z.number() })) }),
};

/** Whether an answer is one to that question. */
export const isPhotographAnswer = (answer: unknown, question: PhotographQuestion): answer is PhotographAnswer =>
  accepting<PhotographAnswer>(SHAPES[question.ask])(answer);
