import {
  contourLength,
  type Drawing,
  distance,
  type Entity,
  hatchLines,
  LAYERS,
  type LetterFace,
  mirroredDrawing,
  type Segment,
  type Vec2,
} from '../../core/index.ts';
import { CUTTING_LAYERS, inOrder } from '../cuttingFile.ts';
import { kerfed, kerfNotes } from '../kerf.ts';
import { bedLayout, type LaidPiece, type Quarters, quarterTurned } from './bedLayout.ts';
import { depthOf, type MachinePass, type MachineProfile, type PassMarks, passMarks } from './machineProfile.ts';
import { inChords, type Stroke, strokeEnd, strokeStart } from './stroke.ts';
import { strokeOrder, travelOf } from './strokeOrder.ts';
import { strokeWords } from './strokeWords.ts';

/** One pass of a bed, its strokes in the order in which they are followed. */
interface PlannedPass {
  readonly pass: MachinePass;
  readonly marks: PassMarks;
  readonly strokes: readonly Stroke[];
  /** Way of the head between strokes, from the end of the pass before, mm. */
  readonly travel: number;
  /** The same in the order of the pattern, piece by piece. */
  readonly travelBefore: number;
  /** Length that is burnt or drawn, mm. */
  readonly burnt: number;
}

/** What a machine does on one sheet that lies on its bed. */
export interface PlannedBed {
  /** From 1. */
  readonly number: number;
  /** In the maker's order; passes without a stroke are left out. */
  readonly passes: readonly PlannedPass[];
  /** Which pieces lie on it, by name. */
  readonly pieces: readonly string[];
  /** Middles of the crosses; empty without. */
  readonly crosses: readonly Vec2[];
}

export interface MachinePlan {
  readonly title: string;
  readonly bed: { readonly width: number; readonly height: number };
  readonly beds: readonly PlannedBed[];
  /** Layers of the pattern that no pass takes, each with how many of its marks are left out. */
  readonly leftOut: readonly { readonly layer: string; readonly count: number }[];
  /** Letters that single strokes cannot draw. */
  readonly lacking: readonly string[];
  /** What the maker must know before the machine runs. */
  readonly notes: readonly string[];
}

export interface MachineOptions {
  /** Seen from the flesh side: the very bed turned over about its upright middle, so that its crosses match. */
  readonly mirrored?: boolean;
  /** What the beam burns away of this leather, mm, 0 to 2. */
  readonly kerf_mm?: number;
  /** Letters of single strokes; without them words are left out. */
  readonly face?: LetterFace | null;
}

/** Half a cross, and its middle off the pieces' box, mm. */
const CROSS = { arm: 3, off: 5 } as const;

/**
 * What a machine does for a pattern: the pieces laid on its beds, the beam's path with half the kerf outside the edge and inside every
 * hole, and in each of the maker's passes the strokes inside out with a short way between them.
 *
 * Throws RangeError for a kerf out of range, for a machine without a pass, and for a piece that no bed holds.
 */
export function machinePlan(drawing: Drawing, profile: MachineProfile, options: MachineOptions = {}): MachinePlan {
  const { mirrored = false, kerf_mm = 0, face = null } = options;
  if (profile.passes.length === 0)
    throw new RangeError(`${profile.name} has no pass yet. Add one, and choose what it cuts or draws.`);
  const bed = { width: profile.bed.width_mm, height: profile.bed.height_mm };
  const margin = profile.margin_mm + (profile.crosses ? CROSS.off + CROSS.arm : 0);
  const layout = bedLayout(drawing, { ...bed, margin: margin + kerf_mm / 2, gap: profile.gap_mm + kerf_mm });
  const seen = mirrored ? mirroredDrawing(drawing) : drawing;
  const beams = new Map(seen.pieces.map((piece) => [piece.id, kerfed(piece, kerf_mm)]));
  const lacking = new Set<string>();
  const hasWords = profile.words === 'strokes' && face !== null;
  const toStrokes = (entity: Entity): Segment[][] | null => {
    if (entity.kind !== 'text') return lines(entity);
    if (!hasWords) return null;
    for (const letter of face.lacks(entity.text)) lacking.add(letter);
    return strokeWords(entity, face).map(joined);
  };
  const left = new Map<string, number>();
  const leave = (layer: string): void => void left.set(layer, (left.get(layer) ?? 0) + 1);
  const taken = new Set(profile.passes.flatMap(({ layers }) => layers));
  const chosen = LAYERS.filter((layer) =>
    CUTTING_LAYERS.some(
      ({ name, takes }) => taken.has(name) && (['line', 'path', 'text'] as const).some((kind) => takes(layer, kind)),
    ),
  );
  const beds = layout.beds.map((laid, i): PlannedBed => {
    const strokes = laid.flatMap((each) => {
      const place = placing(each, mirrored ? bed.width : null);
      const beam = beams.get(each.piece.id)!;
      for (const { layer, entities } of inOrder(beam, LAYERS))
        if (!taken.has(layer.name)) for (const _ of entities) leave(layer.name);
      return inOrder(beam, chosen).flatMap(({ layer: { name }, entities }) =>
        taken.has(name)
          ? entities.flatMap((entity, k) => {
              const paths = toStrokes(entity);
              if (paths === null) leave(entity.kind === 'text' ? 'TEXT' : 'PICTURE');
              const depth = name === 'CUT' && k > 0 ? 2 : depthOf(name);
              return (paths ?? []).map(
                (path): Stroke => ({ layer: name, depth, path: path.map(place), isClosed: isRing(path) }),
              );
            })
          : [],
      );
    });
    const corners = laid.flatMap((each) => cornersOf(each, mirrored ? bed.width : null));
    const crosses = profile.crosses && taken.has('MARK') ? crossesRound(corners) : [];
    return {
      number: i + 1,
      passes: planned([...crosses.flatMap(crossStrokes), ...strokes], profile),
      pieces: laid.map(({ piece }) => piece.name),
      crosses,
    };
  });
  return {
    title: [drawing.title, mirrored ? 'seen from the flesh side' : ''].filter(Boolean).join(', '),
    bed,
    beds,
    leftOut: [...left].map(([layer, count]) => ({ layer, count })),
    lacking: [...lacking],
    notes: [
      ...kerfNotes(drawing, kerf_mm),
      ...(layout.isAcross
        ? ['The pieces lie with their heads toward a side of the bed. Turn the leather with them, as their arrows say.']
        : []),
      ...(profile.crosses && !taken.has('MARK')
        ? ['No pass takes the layer MARK, so no crosses are drawn. Add it to a pass that is only drawn.']
        : []),
    ],
  };
}

/** The passes of strokes that lie on a bed, each in a short order. */
export function planned(strokes: readonly Stroke[], { passes, curves }: MachineProfile): PlannedPass[] {
  let [at, atBefore]: [Vec2, Vec2] = [HOME, HOME];
  return passes.flatMap((pass, i): PlannedPass[] => {
    const own = strokes.filter(({ layer }) => pass.layers.includes(layer));
    if (own.length === 0) return [];
    const order = strokeOrder(own, at);
    const result = {
      pass,
      marks: passMarks(pass, i),
      strokes: curves.as === 'arcs' ? order : order.map((stroke) => inChords(stroke, curves.tolerance_mm)),
      travel: travelOf(order, at),
      travelBefore: travelOf(own, atBefore),
      burnt: own.reduce((sum, { path }) => sum + contourLength(path), 0),
    };
    [at, atBefore] = [strokeEnd(order.at(-1)!), strokeEnd(own.at(-1)!)];
    return [result];
  });
}

/** Where the head starts: the lower left corner of the bed. */
const HOME: Vec2 = [0, 0];

/** An entity as lines and arcs; null for a picture, which no machine follows. */
function lines(entity: Exclude<Entity, { kind: 'text' }>): Segment[][] | null {
  switch (entity.kind) {
    case 'line':
    case 'arc':
      return [[entity]];
    case 'path':
      return entity.segments.length === 0 ? [] : [[...entity.segments]];
    case 'hatch':
      return hatchLines(entity).map((line) => [line]);
    case 'picture':
      return null;
  }
}

const joined = (points: readonly Vec2[]): Segment[] =>
  points.slice(1).map((to, i) => ({ kind: 'line', from: points[i]!, to }));

const isRing = (path: readonly Segment[]): boolean => distance(strokeStart({ path }), strokeEnd({ path })) < 1e-6;

/** Crosses below both ends of the pieces and over their middle: the same on both faces, and never the same upside down. */
function crossesRound(corners: readonly Vec2[]): Vec2[] {
  const [xs, ys] = [corners.map(([x]) => x), corners.map(([, y]) => y)];
  const [left, right] = [Math.min(...xs) - CROSS.off, Math.max(...xs) + CROSS.off];
  const [low, high] = [Math.min(...ys) - CROSS.off, Math.max(...ys) + CROSS.off];
  return [
    [left, low],
    [right, low],
    [(left + right) / 2, high],
  ];
}

const crossStrokes = ([x, y]: Vec2): Stroke[] =>
  (
    [
      [CROSS.arm, 0],
      [0, CROSS.arm],
    ] as const
  ).map(([dx, dy]) => ({
    layer: 'MARK',
    depth: 0,
    path: [{ kind: 'line', from: [x - dx, y - dy], to: [x + dx, y + dy] }],
    isClosed: false,
  }));

/** A point of a piece's drawing on the bed; with a width, on the bed that is turned over, where the drawing is the mirrored one. */
function toBed({ piece, quarters, shift }: LaidPiece, turnedOver: number | null) {
  const moved = (point: Vec2, turn: Quarters, [dx, dy]: Vec2): Vec2 => {
    const [x, y] = quarterTurned(point, turn);
    return [x + dx, y + dy];
  };
  if (turnedOver === null) return { turn: quarters, at: (point: Vec2) => moved(point, quarters, shift) };
  const turn = ((4 - quarters) % 4) as Quarters;
  const [x, y] = moved([piece.width, 0], quarters, shift);
  return { turn, at: (point: Vec2) => moved(point, turn, [turnedOver - x, y]) };
}

function cornersOf(laid: LaidPiece, turnedOver: number | null): Vec2[] {
  const { at } = toBed(laid, turnedOver);
  return [at([0, 0]), at([laid.piece.width, laid.piece.height])];
}

/** How segments of a piece's drawing are moved to the bed. */
function placing(laid: LaidPiece, turnedOver: number | null): (segment: Segment) => Segment {
  const { at, turn } = toBed(laid, turnedOver);
  return (segment) =>
    segment.kind === 'line'
      ? { kind: 'line', from: at(segment.from), to: at(segment.to) }
      : { ...segment, centre: at(segment.centre), start: segment.start + (turn * Math.PI) / 2 };
}
