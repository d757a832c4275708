import type {
  ExploreField,
  FitTarget,
  JobDocument,
  MustChange,
  ReportTrials,
  SweepPoint,
  SweepRange,
} from '../../core/index.ts';

/** A field without its functions, which cannot be sent to a worker. */
export type FieldFacts = Pick<ExploreField, 'id' | 'note' | 'present' | 'step'>;

/** Questions to the worker. Every document parses. */
export interface Questions {
  readonly curve: {
    readonly kind: 'curve';
    readonly document: JobDocument;
    /** A second job to lay over the first. */
    readonly overlay: JobDocument | null;
    readonly fieldId: string;
    readonly resultId: string;
    readonly range: SweepRange;
  };
  readonly changes: {
    readonly kind: 'changes';
    readonly document: JobDocument;
    readonly target: FitTarget;
  };
  readonly trials: { readonly kind: 'trials'; readonly document: JobDocument };
}

export interface Curve {
  readonly field: FieldFacts;
  readonly points: readonly SweepPoint[];
}

export interface Answers {
  readonly curve: {
    readonly curve: Curve;
    /** Null where nothing is laid over, or where the second job lacks the field. */
    readonly overlay: Curve | null;
  };
  readonly changes: readonly { readonly field: FieldFacts; readonly outcome: MustChange }[];
  readonly trials: ReportTrials;
}

export type QuestionKind = keyof Questions;
export type Question = Questions[QuestionKind];
export type Answer = Answers[QuestionKind];
