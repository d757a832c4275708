import {
  type CoverDesign,
  type CoverSupplies,
  cardDesign,
  type Job,
  type Printer,
  RANGE_POINTS,
  type StepId,
} from '../../core/index.ts';

/** Instructions for one step with the job's figures. What is not computed is common practice, no source. */
export function stepDetail(id: StepId, design: CoverDesign, supplies: CoverSupplies, say: Printer): string[] {
  const { job, pieces, fits, needs } = design;
  const isTurned = job.pockets.construction === 'turned';
  const isLined = job.leather.lining !== null;
  switch (id) {
    case 'measure':
      return ['Print the template at 100 % and measure both check bars before anything is cut.'];
    case 'mockup': {
      const { outside } = cardDesign(job, job.mockup.card).pieces;
      return [
        `In card of ${say.size(job.mockup.card.thickness_mm)} the outside is ${say.size(outside.width)} x ${say.size(outside.height)}. ` +
          'Tape it at the seam line, load the book, read the gap at each edge and type it in.',
      ];
    }
    case 'cut':
      return [
        `${supplies.outlines.map(({ name, count }) => `${name} ${count}`).join(', ')}. Lay each piece with its head toward one end of the hide's backbone. Keep off scars and loose places.`,
        ...changeInMaking(design, say),
      ];
    case 'edges':
      return [
        ...skivedFolds(job, say),
        isTurned
          ? 'Skive the folds of the turned ends; bevel and burnish the ends that lie over the boards, which are out of reach later.'
          : 'Bevel and burnish the pocket mouths now: they are out of reach later. Skive what lies under them.',
      ];
    case 'punch':
      return [
        `${supplies.holes} in the outside's seam, ${supplies.punched} in all pieces together. Punch all layers from the same template.`,
      ];
    case 'assemble':
      return [
        ...fittings(job),
        `${isLined ? 'Lay the lining in with the outside bent round the book. ' : ''}` +
          `${isTurned ? 'Fold the ends in' : 'Lay the pockets on'}, edges flush and holes in line; cement ${say.size(job.supplies.cementBand_mm)} along the edge.`,
      ];
    case 'stitch': {
      const { thread } = supplies;
      if (thread === null) return [];
      return [
        `${say.count(thread.threads, 'thread', 'threads')} of ${say.reel(thread.longest)}, a needle at each end; ${job.supplies.backStitches} back stitches at start and finish. ` +
          (isTurned ? 'Start at a fold.' : 'Start in the back pocket at the tail.'),
      ];
    }
    case 'lace': {
      const { lace } = supplies;
      if (lace === null) return [];
      return [
        `${say.count(lace.laces, 'lace', 'laces')} of ${say.reel(lace.each)}${lace.laces === 1 ? '' : `, spliced ${say.size(job.supplies.spliceOverlap_mm)}`}. ` +
          (isTurned
            ? 'Start at a fold.'
            : 'Start in the back pocket at the tail, and go twice more through each corner.'),
      ];
    }
    case 'finish': {
      const gaps = RANGE_POINTS.map((point) => fits[point].closedSlack / 2);
      const ends = RANGE_POINTS.flatMap((point) => [fits[point].head, fits[point].tail]);
      const { loadingAngle, loads } = fits.thick.pocket;
      const load = loads
        ? `bend the boards back ${say.angle(loadingAngle)}`
        : `the boards would have to bend back ${say.angle(loadingAngle)}, more than the ${say.angle(needs.thick.book.foldBack)} they can`;
      return [
        `Load one board, then the other: ${load}. Expect ${say.range(gaps)} at each fore-edge, ${say.range(ends)} at head and tail, ` +
          `pockets ${say.size(pieces.pocketDepth)} deep.`,
      ];
    }
  }
}

/** How far the outside is cut larger or smaller than it is once made; nothing where that would not be seen on a ruler. */
function changeInMaking({ pieces, made }: CoverDesign, say: Printer): string[] {
  const along = (name: 'width' | 'height'): string[] => {
    const by = pieces.outside[name] - made.outside[name];
    const size = say.length(Math.abs(by));
    return size === say.length(0) ? [] : [`${size} ${by > 0 ? 'larger' : 'smaller'} in ${name}`];
  };
  const parts = [...along('width'), ...along('height')];
  return parts.length === 0 ? [] : [`The outside is cut ${parts.join(', ')}: it changes by that until it is made.`];
}

function skivedFolds({ leather }: Job, say: Printer): string[] {
  const { foldThickness_mm: skived, max_mm: full } = leather.outside;
  if (skived === null || skived >= full) return [];
  return [`Skive the outside to ${say.size(skived)} in the hatched zones at the spine folds, from the flesh side.`];
}

/** What is sewn on or laid in before the layers are joined, in its order. */
function fittings({ construction, leather }: Job): string[] {
  const { strap, ribbon, penLoop } = construction;
  const under = leather.lining === null ? 'inside the spine' : 'under the lining';
  return [
    ...(strap === null
      ? []
      : [
          'First sew the strap to the back, through the outside alone, and set the fastening at its mark on the front.',
        ]),
    ...(ribbon === null ? [] : [`Fasten ${ribbon.count === 1 ? 'the ribbon' : 'the ribbons'} at the head, ${under}.`]),
    ...(penLoop === null
      ? []
      : [
          'Fold the pen loop and lay both its ends between outside and pocket at its marks on the front fore-edge, holes in line.',
        ]),
  ];
}
