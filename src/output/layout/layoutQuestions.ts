import {
  type Clearance,
  type CoverDesign,
  clearanceOf,
  coverSupplies,
  extent,
  type Hide,
  hideOf,
  type LeatherName,
  type PieceOutline,
} from '../../core/index.ts';
import { fileName } from '../fileName.ts';
import { usualPiece } from './usualPiece.ts';

/** Which pieces are to be laid on which leather, and how close. */
export interface LayoutQuestion {
  readonly outlines: readonly PieceOutline[];
  readonly hide: Hide;
  readonly clearance: Clearance;
}

/** One leather of a cover, with what is to be laid on it. */
export interface LeatherToLay {
  readonly leather: LeatherName;
  readonly question: LayoutQuestion;
  /** Whether the leather is the maker's own; else a square of this side is assumed, mm. */
  readonly isOwned: boolean;
  readonly usualSide: number;
  /** Area of the pieces, and with waste, mm2. */
  readonly net: number;
  readonly gross: number;
}

/** What is to be laid out for a cover: the pieces of each leather on the leather owned, or on a usual piece until one is entered. */
export function leathersToLay(design: CoverDesign): readonly LeatherToLay[] {
  const { hides } = design.job;
  const { outlines, areas } = coverSupplies(design);
  return areas.map(({ leather, net, gross }) => {
    const pieces = outlines.filter((outline) => outline.leather === leather);
    const longest = Math.max(...pieces.flatMap(({ polygon }) => [extent(polygon, 0), extent(polygon, 1)]));
    const owned = hides[leather];
    const usual = usualPiece(gross, longest, hides);
    const hide = owned === null ? usual.hide : hideOf(owned);
    const question = { outlines: pieces, hide, clearance: clearanceOf(hides) };
    return { leather, question, isOwned: owned !== null, usualSide: usual.side, net, gross };
  });
}

interface NamedLayout {
  readonly leather: LeatherName;
  readonly isMirrored: boolean;
  readonly paper?: string;
  /** Tells jobs of one name apart. */
  readonly nth?: string;
}

/** Name of a file of a layout. */
export const layoutName = (job: string, ending: string, { leather, isMirrored, paper = '', nth = '' }: NamedLayout) =>
  fileName(job, ending, [nth, 'leather layout', leather, isMirrored ? 'mirrored' : '', paper]);
