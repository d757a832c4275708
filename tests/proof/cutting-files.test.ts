import { differenceD, EndType, FillRule, inflatePathsD, JoinType } from 'clipper2-ts';
import { describe, expect, test } from 'vitest';
import { loadFace } from '../../src/artwork/faces/loadFace.ts';
import { flattened, type Segment } from '../../src/core/math/contour.ts';
import { isInside } from '../../src/core/math/polygonDistance.ts';
import type { Vec2 } from '../../src/core/math/vec2.ts';
import { type ArrangedPiece, arrangePieces } from '../../src/core/pattern/arrangePieces.ts';
import { LAYERS } from '../../src/core/pattern/drawing.ts';
import { mirroredDrawing } from '../../src/core/pattern/mirrorDrawing.ts';
import { patternDxf } from '../../src/output/dxf/patternDxf.ts';
import { fileName } from '../../src/output/fileName.ts';
import { machineFile } from '../../src/output/machine/machineFile.ts';
import { patternSvg } from '../../src/output/svg/patternSvg.ts';
import { LAW_SEED } from '../laws.ts';
import { nth } from '../nth.ts';
import { type CuttingFile, type Found, readDxf, readSvg } from '../output/cuttingFileReading.ts';
import { cuttingJobs } from '../output/cuttingJobs.ts';
import { type Laid, middleOf, readMachineFile, waysToLie } from '../output/machine/machineCases.ts';
import { soundMachine } from '../output/machine/machines.ts';
import { apart, boundsOf } from '../output/outlineDistance.ts';
import { CAPITAL, meets, wordsBox } from '../output/wordsBox.ts';
import { proofSize } from './proofSize.ts';

const GAP = 10;
const KERFS = [0, 0.1, 0.25, 0.6];

/** Passes that a machine burns through the leather. */
const BURNT = ['CUT', 'HOLE', 'SLIT'];

const jobs = cuttingJobs();
const cases = jobs.flatMap(({ name, drawing }) =>
  KERFS.flatMap((kerf) =>
    [false, true].flatMap((mirrored) =>
      (['SVG', 'DXF'] as const).map((format) => ({ name, drawing, kerf, mirrored, format })),
    ),
  ),
);
type Case = (typeof cases)[number];

/** Every nth case from a seeded start; all of them in the whole proof. */
function sampled(): Case[] {
  const count = proofSize(cases.length, 12);
  // A step prime to the number of cases (192) walks through all of them, formats, kerfs and jobs mixed.
  return Array.from({ length: count }, (_, i) => nth(cases, (LAW_SEED + i * 53) % cases.length));
}

const write = ({ drawing, kerf, mirrored, format }: Case, rest: object = {}): string =>
  (format === 'SVG' ? patternSvg : patternDxf)(drawing, { kerf_mm: kerf, mirrored, gap_mm: GAP, ...rest });
const read = ({ format }: Case, text: string): CuttingFile => (format === 'SVG' ? readSvg : readDxf)(text);

interface Read {
  readonly file: CuttingFile;
  /** What belongs to each piece, in its own frame and in the order of the file. */
  readonly pieces: readonly { readonly arranged: ArrangedPiece; readonly found: readonly Found[] }[];
}

function readCase(each: Case): Read {
  const file = read(each, write(each));
  const seen = each.mirrored ? mirroredDrawing(each.drawing) : each.drawing;
  const { pieces, height } = arrangePieces(seen, GAP);
  const inFrame = ({ at }: ArrangedPiece, entity: Found): Found => {
    const [x, y] = each.format === 'DXF' ? at : [at[0] + GAP, at[1] - GAP - height];
    return { ...entity, points: entity.points.map((point): Vec2 => [point[0] - x, point[1] - y]) };
  };
  const own = pieces.map((arranged) => ({
    arranged,
    found: file.found
      .filter(({ layer }) => layer !== 'CAUTION')
      .map((entity) => inFrame(arranged, entity))
      .filter(({ points: [[x, y] = [0, 0]] }) => {
        const { width, height } = arranged.piece;
        return x > -GAP / 2 && x < width + GAP / 2 && y > -GAP / 2 && y < height + GAP / 2;
      }),
  }));
  return { file, pieces: own };
}

const lengthOf = ({ points: [a, b] }: Found): number => Math.hypot(a![0] - b![0], a![1] - b![1]);

const mm = (value: number): string => value.toFixed(4);

/** What is left of a leather from which a beam as wide as the kerf burns along a closed path. */
function leftAfter(ring: readonly Vec2[], kerf: number): Vec2[] {
  const path = ring.slice(0, -1).map(([x, y]) => ({ x, y }));
  if (kerf === 0) return [...ring];
  const burnt = inflatePathsD([path], kerf / 2, JoinType.Round, EndType.Joined, 2, 6, 1e-3);
  const parts = differenceD([path], burnt, FillRule.NonZero, 6);
  const box = (part: (typeof parts)[number]): number =>
    Math.max(...part.map(({ x }) => x)) - Math.min(...part.map(({ x }) => x));
  const part = parts.sort((a, b) => box(b) - box(a))[0] ?? [];
  return [...part, nth(part, 0)].map(({ x, y }): Vec2 => [x, y]);
}

/** The box that words of a file take; letters of DXF are given by the height of a capital. */
const boxOf = ({ points, text, height, rotation, width }: Found, format: Case['format'], pad = 0): Vec2[] =>
  wordsBox(
    { at: nth(points, 0), text: text!, height: format === 'DXF' ? height / CAPITAL : height, rotation, width },
    pad,
  );

const table: string[] = [];

describe(`cutting files of ${jobs.length} jobs (${sampled().length} of ${cases.length} files)`, () => {
  test.each(sampled())('$format of $name, kerf $kerf, mirrored $mirrored', (each) => {
    const { file, pieces } = readCase(each);
    const { found, colours } = file;
    const radius = (drawn: Segment): number[] => (drawn.kind === 'arc' ? [drawn] : []).map((arc) => arc.radius);

    // A colour of its own for every layer, so that a machine may tell its passes by colour.
    const used = [...new Set(found.map(({ layer }) => layer))];
    for (const layer of used) expect([layer, colours.has(layer)]).toEqual([layer, true]);
    expect(new Set(colours.values()).size).toBe(colours.size);

    // Words in the passes for words only; what is burnt through has none.
    for (const { layer, text } of found)
      if (text !== null) expect([text, layer]).toEqual([text, expect.stringMatching(/^(TEXT|CAUTION)$/)]);
    expect(found.filter(({ layer, text }) => BURNT.includes(layer) && text !== null)).toEqual([]);
    const silent = read(each, write(each, { layers: LAYERS.filter((layer) => layer !== 'text') }));
    expect(silent.found.filter(({ text }) => text !== null)).toEqual([]);
    expect(silent.found.length).toBe(found.filter(({ text }) => text === null).length);

    let worst = 0;
    for (const { arranged, found } of pieces) {
      const { piece } = arranged;
      // Each piece is freed last; before that its holes, and before these whatever is only drawn.
      const order = found.map(({ layer }) => (layer === 'CUT' ? 2 : layer === 'HOLE' || layer === 'SLIT' ? 1 : 0));
      expect(order).toEqual([...order].sort((a, b) => a - b));
      const cuts = found.filter(({ layer }) => layer === 'CUT');
      expect(cuts.length).toBe(1);

      // Arcs stay arcs, each moved by half a kerf.
      const arcs = piece.outline.filter((segment) => segment.kind === 'arc');
      const radii = nth(cuts, 0).radii.filter((each) => each > 0.31);
      expect(radii.length).toBe(arcs.length);
      const drawn = arcs.map((arc) => arc.radius + (Math.sign(arc.sweep) * each.kerf) / 2).sort((a, b) => a - b);
      [...radii]
        .sort((a, b) => a - b)
        .forEach((got, i) => {
          expect(got).toBeCloseTo(nth(drawn, i), 3);
        });

      // What the beam leaves has the size that is drawn.
      const off = apart(leftAfter(nth(cuts, 0).points, each.kerf), flattened(piece.outline, 1e-3));
      worst = Math.max(worst, off);
      expect(off).toBeLessThan(0.02);

      // What it burns out of the piece, too.
      const burnt = found.filter(({ layer }) => layer === 'HOLE' || layer === 'SLIT');
      expect(burnt.length).toBe(piece.holes);
      piece.layers.hole.forEach((hole, i) => {
        const got = nth(burnt, i);
        if (hole.kind === 'arc') {
          expect(got.layer).toBe('HOLE');
          expect(nth(got.radii, 0) + each.kerf / 2).toBeCloseTo(nth(radius(hole), 0), 5);
        } else if (hole.kind === 'line') {
          expect(got.layer).toBe('SLIT');
          const long = Math.hypot(hole.to[0] - hole.from[0], hole.to[1] - hole.from[1]);
          expect(lengthOf(got) + each.kerf).toBeCloseTo(long, 4);
        }
      });

      // Words stand inside their piece, off every line that is drawn, and off one another.
      const words = found.filter(({ text }) => text !== null);
      const edge = flattened(piece.outline, 0.01).slice(0, -1);
      for (const word of words) {
        for (const corner of boxOf(word, each.format))
          expect([word.text, isInside(corner, edge)]).toEqual([word.text, true]);
        const box = boxOf(word, each.format, 0.05);
        for (const other of found)
          if (other !== word) {
            const outline = other.text === null ? other.points : boxOf(other, each.format, 0.05);
            const isOver = meets(other.text === null ? outline : [...outline, nth(outline, 0)], box);
            expect([word.text, other.text ?? other.layer, isOver]).toEqual([
              word.text,
              other.text ?? other.layer,
              false,
            ]);
          }
      }
    }

    // What a beam frees is said on the page.
    const cautions = found.filter(({ layer }) => layer === 'CAUTION');
    expect(cautions.map(({ text }) => text).join(' ')).toMatch(/never.*PVC.*hydrogen chloride.*chromium.*local rules/);
    if (file.size !== null)
      for (const caution of cautions)
        for (const [x, y] of boxOf(caution, each.format))
          expect(x >= 0 && x <= file.size[0] && -y >= 0 && -y <= file.size[1]).toBe(true);
    table.push(
      `${each.format}  kerf ${each.kerf.toFixed(2)}  ${each.mirrored ? 'mirrored' : 'plain   '}  ${pieces.length} pieces  ${colours.size} colours  part off by ${mm(worst)} mm  ${each.name}`,
    );
  });

  test('is listed', () => {
    console.info(table.join('\n'));
    expect(table.length).toBe(sampled().length);
  });
});

const FORMATS = [
  ['svg', '2000'],
  ['dxf', 'R12'],
  ['dxf', '2000'],
  ['hpgl', '2000'],
] as const;
const machineCases = jobs.flatMap((job) =>
  FORMATS.flatMap(([format, edition]) =>
    (['arcs', 'points'] as const).flatMap((curves) =>
      [0, 0.25, 0.6].flatMap((kerf) =>
        [false, true].map((mirrored) => ({ ...job, format, edition, curves, kerf, mirrored })),
      ),
    ),
  ),
);
/** Most that a part may be off, mm: HP-GL has no finer place than its unit, 0.025 mm. */
const giveOf = (format: string): number => (format === 'hpgl' ? 0.025 : 0.02);
const machineSample = Array.from({ length: proofSize(machineCases.length, 4) }, (_, i) =>
  // Prime to the number of cases (576).
  nth(machineCases, (LAW_SEED + i * 131) % machineCases.length),
);
const machineTable: string[] = [];

describe(`files for a machine (${machineSample.length} of ${machineCases.length})`, () => {
  test.each(machineSample)('$format $edition of $name, kerf $kerf, mirrored $mirrored, $curves', async (each) => {
    const { drawing, format, edition, curves, kerf, mirrored, name } = each;
    const profile = soundMachine({
      dxf: edition,
      crosses: true,
      bed: { width_mm: 1400, height_mm: 1000 },
      curves: { as: curves, tolerance_mm: 0.002 },
    });
    const face = await loadFace('singleLine');
    const beds = machineFile(drawing, profile, format, { face, kerf_mm: kerf, mirrored }).map((text) =>
      readMachineFile(text, format, 1000),
    );
    // Where the parts lie is taken from the SVG of the same plan: the box of a part in whole units is itself off.
    const exact =
      format === 'hpgl'
        ? machineFile(drawing, profile, 'svg', { face, kerf_mm: kerf, mirrored }).map((text) =>
            readMachineFile(text, 'svg', 1000),
          )
        : beds;
    const left = new Map(drawing.pieces.map(({ id, count }) => [id, count]));
    let worst = 0;
    for (const [i, found] of beds.entries()) {
      const lying = nth(exact, i).filter(({ layer }) => layer === 'CUT');
      // Inside out over the whole bed: marks and words, what is burnt inside, the edges.
      const depths = found.map(({ layer }) => (layer === 'CUT' ? 2 : layer === 'INSIDE' ? 1 : 0));
      expect(depths).toEqual([...depths].sort((a, b) => a - b));
      expect(new Set(found.map(({ layer }) => layer))).toEqual(new Set(['TEXT', 'LINES', 'INSIDE', 'CUT']));
      expect(found.every(({ text }) => text === null)).toBe(true);
      const inside = found.filter(({ layer }) => layer === 'INSIDE').map(({ points }) => points);
      let holes = 0;
      for (const [k, cut] of found.filter(({ layer }) => layer === 'CUT').entries()) {
        const part = leftAfter(cut.points, kerf);
        // Where two ways of lying look alike, as a square seen from two sides, the holes tell.
        const fits = ({ piece, toBed }: Laid) =>
          (left.get(piece.id) ?? 0) > 0 && apart(part, flattened(piece.outline, 1e-3).map(toBed)) < giveOf(format);
        const lies = waysToLie(drawing, leftAfter(nth(lying, k).points, kerf), mirrored, 0.1).filter(fits);
        const middles = inside.map((points) => {
          const { low, high } = boundsOf(points);
          return [(low[0] + high[0]) / 2, (low[1] + high[1]) / 2] as const;
        });
        const at = lies.find(({ piece, toBed }) =>
          piece.layers.hole.every((hole) => {
            const [x, y] = toBed(middleOf(hole));
            return middles.filter((middle) => Math.hypot(middle[0] - x, middle[1] - y) < 0.05).length === 1;
          }),
        );
        expect([name, lies.length > 0, at !== undefined]).toEqual([name, true, true]);
        const { piece, toBed } = at!;
        left.set(piece.id, left.get(piece.id)! - 1);
        holes += piece.layers.hole.length;
        worst = Math.max(worst, apart(part, flattened(piece.outline, 1e-3).map(toBed)));
        // Arcs are kept where they are asked for; a beam turns about a corner on one more.
        const arcs = piece.outline.filter(({ kind }) => kind === 'arc').length;
        // Of whole units HPGL keeps those that stay as near as a corner.
        if (curves === 'arcs' && format !== 'hpgl') expect(cut.radii.length).toBeGreaterThanOrEqual(arcs);
        else if (curves === 'points') expect(cut.radii).toEqual([]);
      }
      expect(inside.length).toBe(holes);
    }
    expect([...left.values()].every((count) => count === 0)).toBe(true);
    machineTable.push(
      `${format.padEnd(4)} ${edition.padEnd(4)} ${curves.padEnd(6)} kerf ${kerf.toFixed(2)}  ${mirrored ? 'mirrored' : 'plain   '}  ${beds.length} bed  part off by ${mm(worst)} mm  ${name}`,
    );
  });

  test('have names of their own', () => {
    const names = machineCases.map(({ name, format, edition, curves, kerf, mirrored }) =>
      fileName(name, format, [mirrored ? 'mirrored' : '', `${edition} ${curves}`, `kerf ${kerf} mm`]),
    );
    expect(new Set(names).size).toBe(names.length);
    console.info(machineTable.join('\n'));
    expect(machineTable.length).toBe(machineSample.length);
  });
});
