import { titled } from '../words/titled.ts';
import type { Answer, CheckContext, Question } from './check.ts';
import { foldStrain, seamMargin } from './checks/leatherChecks.ts';
import { measures } from './checks/measures.ts';
import { pocketHolds, pocketLoads } from './checks/pocketChecks.ts';
import { together } from './checks/together.ts';
import { closes, edgeGap, ifBoardsGoIn, opens } from './checks/wrapChecks.ts';

/** A question that counts for the verdict, with the check that answers it. */
interface CheckRow extends Question {
  /** What the headline says where the cover closes and this fails; rows without it show in its figures. */
  readonly headline?: string;
  readonly ask: (context: CheckContext) => Answer;
}

/** The checks, which decide the verdict, in the order in which a maker meets the questions. To add one, write it and list it here. */
export const CHECKS = [
  { id: 'closes', title: 'Closing', unit: 'mm', failing: 'too small', ask: closes },
  {
    id: 'opens',
    title: 'Opening flat',
    unit: 'mm',
    failing: 'too small',
    headline: 'it does not open flat',
    ask: opens,
  },
  { id: 'foreEdge', title: 'Fore-edges', unit: 'mm', failing: 'too small', ask: edgeGap('foreEdge') },
  { id: 'head', title: titled('head'), unit: 'mm', failing: 'too small', ask: edgeGap('head') },
  { id: 'tail', title: titled('tail'), unit: 'mm', failing: 'too small', ask: edgeGap('tail') },
  { id: 'together', title: 'All edges at once', unit: '', failing: 'too small', ask: together },
  {
    id: 'pocketHolds',
    title: 'Hold of the pockets',
    unit: 'mm',
    failing: 'too shallow',
    headline: 'the pockets are too shallow',
    ask: ifBoardsGoIn(pocketHolds),
  },
  {
    id: 'pocketLoads',
    title: 'Slipping the boards in',
    unit: 'deg',
    failing: 'too deep to load',
    headline: 'the pockets are too deep to load',
    ask: ifBoardsGoIn(pocketLoads),
  },
  { id: 'foldStrain', title: 'Grain at the folds', unit: '', failing: '', ask: foldStrain },
  {
    id: 'seamMargin',
    title: titled('edge margin'),
    unit: 'mm',
    failing: 'too narrow',
    headline: 'the edge margin is too narrow',
    ask: seamMargin,
  },
  {
    id: 'measures',
    title: 'Agreement of the measures',
    unit: 'mm',
    failing: 'contradict each other',
    headline: 'the measures contradict each other: measure again',
    ask: measures,
  },
] as const satisfies readonly CheckRow[];
