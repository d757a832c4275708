import {
  type CoverDesign,
  type CoverSupplies,
  cardDesign,
  holeNoun,
  inOneName,
  isChangeTested,
  isPunchedTogether,
  isStepTaken,
  type Job,
  outsideOnceDry,
  type Printer,
  RANGE_POINTS,
  RANGE_WORDS,
  type RangePoint,
  seamHoles,
  TEST_FIRST,
  type WorkId,
} from '../../core/index.ts';
import { ironWords, strokeWords } from '../ironWords.ts';
import { pitchWords } from './seamSection.ts';
import { amountWords } from './toolingSection.ts';
import type { WorkSource } from './workSource.ts';

/** One figure of a step, printed. */
interface Figure {
  readonly name: string;
  readonly text: string;
}

type Strap = NonNullable<Job['construction']['strap']>;

/** What a step says. Instructions are common practice, no source; figures are the job's. */
export interface Detail {
  readonly figures: readonly Figure[];
  readonly words: readonly string[];
  /** Why the step cannot be done as the job stands, with the figure that says so. */
  readonly troubles: readonly string[];
  /** What the maker must know first; the bench sheet lists them all at its end. */
  readonly notes: readonly string[];
}

/** What is done to the cut edges at the end. */
const EDGE_WORK: Readonly<Record<Job['finish']['edge'], readonly string[]>> = {
  raw: [],
  burnished: ['burnish the cut edges'],
  painted: ['paint the cut edges'],
};

const LINING = 'Lay the lining in with the outside bent round the book.';

const figure = (name: string, text: string): Figure => ({ name, text });

/** Smallest and largest gap at an edge; an overrun is named as such, or has a minus where the other end is a gap. */
function gapFigure(where: string, gaps: readonly number[], say: Printer): Figure {
  const [least, most] = [Math.min(...gaps), Math.max(...gaps)];
  if (least >= 0) return figure(`Gap at ${where}`, say.range(gaps));
  if (most >= 0) return figure(`Gap at ${where}`, `${say.signedGap(least)} to ${say.gap(most)}`);
  return figure(`Overrun at ${where}`, `${say.gap(most)} to ${say.gap(least)}`);
}

/** Figures, instructions and troubles of one step. */
export function stepDetail(id: WorkId, source: WorkSource, say: Printer): Detail {
  return { figures: [], words: [], troubles: [], notes: [], ...detailOf(id, source, say) };
}

function detailOf(id: WorkId, { design, supplies, drawing }: WorkSource, say: Printer): Partial<Detail> {
  const { job, pieces, fits, needs } = design;
  const { book, leather } = job;
  const { edge } = job.finish;
  const isTurned = job.pockets.construction === 'turned';
  const area = ({ width, height }: { width: number; height: number }): string =>
    `${say.size(width)} × ${say.size(height)}`;
  const holes = holeNoun(job);
  const iron = job.seam.iron === null ? [] : [figure('Made with', ironWords(job.seam.iron, say))];
  const gaps = gapFigure(
    'each fore-edge',
    RANGE_POINTS.map((point) => fits[point].closedSlack / 2),
    say,
  );
  const ends = gapFigure(
    'head and tail',
    RANGE_POINTS.flatMap((point) => [fits[point].head, fits[point].tail]),
    say,
  );
  switch (id) {
    case 'measure':
      return {
        figures: [
          figure('Book', area({ width: book.width_mm, height: book.height_mm })),
          figure('Thickness', say.size(book.thickness_mm)),
          figure('Boards', say.size(book.boardThickness_mm)),
        ],
        words: [
          'Print the template at 100 % and measure both check bars before anything is cut.',
          'Without a printer, draw it by the drafting sheet.',
        ],
      };
    case 'mockup': {
      const { card } = job.mockup;
      return {
        figures: [
          figure('Card', say.size(card.thickness_mm)),
          figure('Outside in card', area(cardDesign(job, card).pieces.outside)),
        ],
        words: ['Tape it at the seam line, load the book, read the gap at each edge and type it in.'],
      };
    }
    case 'cut':
      return {
        figures: drawing.pieces.map((piece) =>
          figure(piece.count === 1 ? piece.name : `${piece.name}, cut ${piece.count}`, area(piece)),
        ),
        words: [
          job.making.backbone === 'upright'
            ? "Lay each piece with its head toward one end of the hide's backbone. Keep off scars and loose places."
            : 'Lay each piece across the hide: its head toward a side, the spine folds across the hide’s backbone. Keep off scars and loose places.',
          ...changeInMaking(design, say),
        ],
        notes: drawing.notes,
      };
    case 'edges': {
      const skived = leather.outside.foldThickness_mm;
      const isSkived = skived !== null && skived < leather.outside.max_mm;
      return {
        figures: isSkived ? [figure('Folds, skived to', say.size(skived))] : [],
        words: [
          ...(isSkived ? ['Skive the outside in the hatched zones at the spine folds, from the flesh side.'] : []),
          isTurned ? 'Skive the folds of the turned ends.' : 'Skive what lies under the pocket mouths.',
          ...(edge === 'raw'
            ? []
            : [
                `Bevel and ${edge === 'painted' ? 'paint' : 'burnish'} ${isTurned ? 'the ends that lie over the boards' : 'the pocket mouths'} now: they are out of reach later.`,
              ]),
        ],
      };
    }
    case 'case':
      return {
        words: [
          'Wet the leather evenly from the flesh side. Work it when its colour comes back but it is still cool to the touch.',
          'Keep it off bare iron and steel: damp leather turns blue-black there.',
          ...changeInMaking(design, say),
        ],
      };
    case 'trace':
      return {
        figures: tooling(job, supplies, say),
        words: ['Lay the tracing on by its marks, and draw it through with a blunt point. Mark lightly.'],
      };
    case 'tool':
      return {
        figures: tooling(job, supplies, say),
        words: ['Cut in the outlines, then stamp. Wet it again where it dries out.'],
      };
    case 'dry':
      return {
        words: [
          'Lay the pieces flat to dry through, away from heat and sun.',
          'Measure the outside again before it is joined.',
        ],
        figures: [figure('Outside once dry', area(outsideOnceDry(design)))],
      };
    case 'dye':
      return {
        words: [
          'Try the dye on an offcut. Lay it on thin and even, more than once; let it dry, and rub it until the cloth stays clean.',
        ],
      };
    case 'dress':
      return {
        words: [
          `Rub the dressing in thin and even, and let it dry.${supplies.cement > 0 ? ` Keep ${say.size(job.supplies.cementBand_mm)} along the edges free of it: cement does not hold there.` : ''}`,
        ],
      };
    case 'line':
      return { words: [LINING] };
    case 'cement':
      return {
        figures: [
          figure('Cement band', say.size(job.supplies.cementBand_mm)),
          figure('In all', say.area(supplies.cement)),
        ],
        words: ['Coat a band along the edge on both faces of each joint. Join them when its data sheet says.'],
      };
    case 'punch':
      return isPunchedTogether(job)
        ? {
            figures: [
              figure(`Seam ${holes}, through all layers`, String(supplies.holes)),
              figure('Seam line from the edge', say.size(job.seam.edgeMargin_mm)),
              ...iron,
            ],
            words: [
              `Scribe the seam line ${say.size(job.seam.edgeMargin_mm)} from the edge. Step the pitches off along it: ${pitchWords(design, say)}. Punch all layers together, straight down.`,
              ...strokeWords(design),
            ],
          }
        : {
            figures: [
              figure(`Seam ${holes} in the outside`, String(supplies.holes)),
              figure('In all pieces together', String(supplies.punched)),
              figure('From the cut edge', say.size(job.seam.edgeMargin_mm)),
              ...iron,
            ],
            words: ['Punch all layers from the same template.', ...strokeWords(design)],
          };
    case 'fittings':
      return {
        figures: [
          ...drawing.pieces
            .filter(({ id }) => id === 'strap' || id === 'buckleTab' || id === 'penLoop')
            .map((piece) => figure(piece.name, area(piece))),
          ...drawing.lengths.map(({ name, count, sum }) =>
            figure(count === 1 ? name : `${name}, cut ${count}`, say.size(sum.total)),
          ),
        ],
        words: fittings(job),
      };
    case 'assemble':
      return {
        figures: [
          figure('Pocket depth', say.size(pieces.pocketDepth)),
          ...(supplies.cement > 0 && !isStepTaken(job, 'cement')
            ? [figure('Cement band', say.size(job.supplies.cementBand_mm))]
            : []),
        ],
        words: [
          `${leather.lining === null || isStepTaken(job, 'line') ? '' : `${LINING} `}` +
            `${isTurned ? 'Fold the ends in' : 'Lay the pockets on'}, edges flush` +
            `${isPunchedTogether(job) ? '' : ` and ${holes} in line`}` +
            `${supplies.cement === 0 ? '' : isStepTaken(job, 'cement') ? '; press the bands together' : '; cement a band along the edge'}.`,
        ],
      };
    case 'stitch': {
      const { thread } = supplies;
      return {
        figures:
          thread === null
            ? []
            : [
                figure(
                  say.count(thread.threads, 'thread', 'threads'),
                  eachOf(thread.threads, say.reel(thread.longest)),
                ),
              ],
        words:
          thread === null
            ? []
            : [
                ...clipped(job, say),
                ...underStrap(job),
                `A needle at each end; ${job.supplies.backStitches} back stitches at start and finish. ` +
                  (isTurned ? 'Start at a fold.' : 'Start in the back pocket at the tail.'),
              ],
        ...seamTroubles(design, thread === null, say),
        notes: supplies.notes,
      };
    }
    case 'lace': {
      const { lace } = supplies;
      return {
        figures:
          lace === null
            ? []
            : [
                figure(say.count(lace.laces, 'lace', 'laces'), eachOf(lace.laces, say.reel(lace.each))),
                ...(lace.laces === 1 ? [] : [figure('Splice', say.size(job.supplies.spliceOverlap_mm))]),
              ],
        words:
          lace === null
            ? []
            : [
                ...clipped(job, say),
                ...underStrap(job),
                isTurned
                  ? 'Start at a fold.'
                  : 'Start in the back pocket at the tail, and go twice more through each corner.',
              ],
        ...seamTroubles(design, lace === null, say),
        notes: supplies.notes,
      };
    }
    case 'finish':
      return {
        figures: [
          ...(edge === 'raw' ? [] : [figure('Cut edges', say.reel(supplies.edges.length))]),
          ...(edge === 'painted' ? [figure('Edge paint, about', say.volume(supplies.edges.paint))] : []),
        ],
        words: [
          `${inOneName([...EDGE_WORK[edge], ...(isStepTaken(job, 'dress') ? [] : ['dress the leather'])])} before the book goes in.`,
          ...(edge === 'painted' ? ['Lay the paint on thin, let it dry and sand it between coats.'] : []),
        ],
      };
    case 'load': {
      const { loadingAngle, loads } = fits.thick.pocket;
      const { foldBack } = needs.thick.book;
      const tooTall = Math.max(...RANGE_POINTS.map((point) => -(fits[point].head + fits[point].tail)));
      return {
        figures: [
          figure('Bend the boards back', say.angle(loadingAngle)),
          figure('They can bend back', say.angle(foldBack, 'down')),
          figure('Pocket depth', say.size(pieces.pocketDepth)),
        ],
        words: ['Load one board, then bend the other back past flat and load it.'],
        troubles: [
          ...(loads
            ? []
            : [
                `The boards do not go in: they would have to bend back ${say.angle(loadingAngle)}, more than the ${say.angle(foldBack, 'down')} they can.`,
              ]),
          ...(tooTall > 0 && !fits.thick.seats
            ? [`The boards do not go in: they are ${say.gap(-tooTall)} too tall between head and tail.`]
            : []),
        ],
      };
    }
    case 'close':
      return {
        figures: [gaps, ends],
        words: [
          'Close the book and read the gaps.',
          'Leave it closed under an even weight for a day. Keep damp leather off the pages.',
        ],
        troubles: RANGE_POINTS.flatMap((point) => stillOpen(design, point, say)).slice(-1),
      };
  }
}

/** How far the cover is from closing at one end of the leather; the last one of the list is the thick end. */
function stillOpen({ fits }: CoverDesign, point: RangePoint, say: Printer): string[] {
  const { closes, closedSlack, staysOpen } = fits[point];
  if (closes) return [];
  const open = staysOpen === null ? 'it does not go round the book at all' : `it stays open by ${say.angle(staysOpen)}`;
  return [
    `It does not close: ${RANGE_WORDS[point]} of the leather it is ${say.gap(closedSlack)} too short, and ${open}.`,
  ];
}

/** Why the seam cannot be made. */
function seamTroubles(design: CoverDesign, isLacking: boolean, say: Printer): Pick<Detail, 'troubles'> {
  const { rows, notes } = seamHoles(design);
  if (rows.length === 0) return { troubles: notes };
  const { seam, supplies } = design.job;
  const what = seam.method === 'lacing' ? 'lace' : 'thread';
  const inHand = seam.method === 'lacing' ? supplies.laceWorking_mm : supplies.threadWorking_mm;
  return { troubles: isLacking ? [`No ${what} of ${say.reel(inHand)} in hand is long enough for its ends.`] : [] };
}

/** How far the outside is cut larger or smaller than it is once made; nothing where that would not be seen on a ruler. */
function changeInMaking(design: CoverDesign, say: Printer): string[] {
  const dry = outsideOnceDry(design);
  const along = (name: 'width' | 'height'): string[] => {
    const by = design.pieces.outside[name] - dry[name];
    const size = say.length(Math.abs(by));
    return size === say.length(0) ? [] : [`${size} ${by > 0 ? 'larger' : 'smaller'} in ${name}`];
  };
  const parts = [...along('width'), ...along('height')];
  return parts.length === 0
    ? []
    : [
        `The outside is cut ${parts.join(', ')}: it changes by that much in making.${
          isChangeTested(design.job) ? '' : ` ${TEST_FIRST}`
        }`,
      ];
}

/** The length of several alike, or of one. */
const eachOf = (count: number, length: string): string => (count === 1 ? length : `${length} each`);

/** How many designs there are, how much line, and how deep; nothing where the job has none. */
const tooling = ({ tooling: { designs, depth_mm } }: Job, { tooling }: CoverSupplies, say: Printer): Figure[] =>
  designs.length === 0
    ? []
    : [
        figure('Designs', String(designs.length)),
        ...(tooling.line > 0 ? [figure('In all', amountWords(tooling, say).toLowerCase())] : []),
        figure('Depth of the lines', say.fine(depth_mm)),
      ];

/** The clip of each corner before the seam. Common practice, no source. */
const clipped = ({ order, seam }: Job, say: Printer): string[] =>
  order.clip_mm === null
    ? []
    : [
        `Clip each corner: mark ${say.size(order.clip_mm)} along both edges and cut straight across${seam.method === 'lacing' ? ', so that the lace turns without bunching' : ''}.`,
      ];

/** The closure is sewn on before the seam along the edge under it. Common practice, no source. */
const underStrap = ({ construction: { strap }, pockets }: Job): string[] =>
  strap === null || pockets.construction === 'turned'
    ? []
    : [`Turn the ${strap.shape} back while you work the seam along the edge under it.`];

/** How a fastening is set, after the manner of the trade. Common practice, no source. */
const SET: Readonly<Record<Strap['fastening'], (part: Strap['shape']) => string>> = {
  stud: (part) => `Screw the stud on at its mark on the front. Punch its hole in the ${part}, with a short slit.`,
  snap: (part) =>
    `Set stud and post at the mark on the front, cap and socket in the ${part}. Try the setter on an offcut.`,
  buckle: (part) =>
    `Fold the tab over the bar, the prong through its slot. Sew both its ends to the front at its mark, through the outside alone. Slip the keeper on, and punch holes for the prong in the ${part}.`,
  magnet: (part) =>
    `Mark which faces of the magnets attract. Glue one in under its cover at the mark on the front, the other on the ${part}.`,
};

/** What is sewn on or laid in before the layers are joined, in its order. */
function fittings(job: Job): string[] {
  const { construction, leather } = job;
  const { strap, ribbon, penLoop } = construction;
  const isPunchedLater = isPunchedTogether(job);
  const under = leather.lining === null ? 'inside the spine' : 'under the lining';
  return [
    ...(strap === null
      ? []
      : [
          `First ${isPunchedLater ? `punch the holes of the ${strap.shape}, in it and in the outside, and ` : ''}sew the ${strap.shape} to the back of the cover, through the outside alone.`,
          SET[strap.fastening](strap.shape),
        ]),
    ...(ribbon === null ? [] : [`Fasten ${ribbon.count === 1 ? 'the ribbon' : 'the ribbons'} at the head, ${under}.`]),
    ...(penLoop === null
      ? []
      : [
          `Fold the pen loop. Lay both its ends between outside and pocket at its marks on the front fore-edge${isPunchedLater ? '' : ', holes in line'}.`,
        ]),
  ];
}
