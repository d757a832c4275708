import { describe, expect, test } from 'vitest';
import { coverColours } from '../../src/core/finish/coverColours.ts';
import { coverDesign } from '../../src/core/fold/coverDesign.ts';
import { FASTENINGS } from '../../src/core/job/constructionSchema.ts';
import { EXAMPLE_JOBS } from '../../src/core/job/examples.ts';
import { parseJob } from '../../src/core/job/parseJob.ts';
import { coverSupplies } from '../../src/core/materials/coverSupplies.ts';
import { quote } from '../../src/core/materials/quote.ts';
import { designReport } from '../../src/core/report/designReport.ts';
import { printer } from '../../src/core/units/printer.ts';
import { benchSheetContent } from '../../src/output/benchSheet/benchSheetContent.ts';
import { supplySection } from '../../src/output/benchSheet/supplySection.ts';
import { customerSheet } from '../../src/output/customerSheet/customerSheet.ts';
import { foldedGlb } from '../../src/output/glb/foldedGlb.ts';
import { modelParts } from '../../src/output/model/modelParts.ts';
import { soundJob } from '../jobArbitrary.ts';
import { nth } from '../nth.ts';
import { readGlb } from './glb/readGlb.ts';

const { document: ledger } = nth(EXAMPLE_JOBS, 0);
const LINING = { leather: { ...(ledger.leather as object), lining: { min_mm: 0.6, max_mm: 0.8 } } };

/** What the papers of a job say, paper by paper. */
function papersOf(change: object) {
  const design = coverDesign(soundJob({ ...ledger, ...change }));
  const supplies = coverSupplies(design);
  const lines = (blocks: ReturnType<typeof supplySection>): string =>
    blocks
      .map((block) => `${block.text}${'aside' in block && block.aside !== '' ? `: ${block.aside}` : ''}`)
      .join('\n');
  const sheet = benchSheetContent(design);
  const at = sheet.blocks.findIndex(({ text }) => text === 'Order of work');
  return {
    supplies: lines(supplySection(supplies, design.job, printer('mm'))),
    areas: supplies.outlines.map(({ name, leather, count }) => `${count} ${name} of ${leather}`).join('\n'),
    quote: quote(design, supplies)
      .lines.map(({ name, quantity, unit }) => `${name} ${quantity.toFixed(3)} ${unit}`)
      .join('\n'),
    work: lines(sheet.blocks.slice(at)),
    customer: customerSheet(design, designReport(design))
      .madeOf.facts.map(({ name, value }) => `${name}: ${value}`)
      .join('\n'),
  };
}

type Papers = Partial<Readonly<Record<keyof ReturnType<typeof papersOf>, RegExp>>>;
interface Row {
  readonly option: string;
  readonly change: object;
  readonly says: Papers;
}

/** What each fastening comes in, and how it is set; written down from the trade's own words. Common practice, no source. */
const SOLD = {
  stud: { parts: /1 stud head, 1 screw/, set: /Screw the stud on/ },
  snap: { parts: /1 cap, 1 socket, 1 stud, 1 post/, set: /cap and socket in the (strap|flap)/ },
  buckle: { parts: /1 buckle, 1 keeper/, set: /Fold the tab over the bar[\s\S]*Sew both its ends to the front/ },
  magnet: { parts: /2 disc magnets/, set: /Mark which faces of the magnets attract/ },
} as const;

const METALS = ['brass', 'nickel', 'black'];

const closures: Row[] = ['strap', 'flap'].flatMap((shape) =>
  FASTENINGS.filter((fastening) => shape === 'strap' || fastening !== 'buckle').flatMap((fastening) =>
    (fastening === 'stud' ? METALS : ['nickel']).map((metal): Row => {
      const name = fastening === 'magnet' ? 'magnet' : `${metal} ${fastening}`;
      const { parts, set } = SOLD[fastening];
      return {
        option: `${shape}, ${metal} ${fastening}`,
        change: { construction: { strap: { shape, fastening } }, finish: { metal } },
        says: {
          supplies: new RegExp(
            `Fastening: ${name}\nFor the closure ${shape}: ${parts.source}[\\s\\S]*closure ${shape} 0\\.${fastening === 'buckle' ? '[\\s\\S]*buckle tab 0\\.' : ''}`,
          ),
          areas:
            fastening === 'buckle' ? /1 Closure \w+ of outside\n1 Buckle tab of outside/ : /1 Closure \w+ of outside/,
          quote: new RegExp(`^${name} 1\\.000 piece$`, 'im'),
          work: new RegExp(`Fit ${shape}[\\s\\S]*sew the ${shape} to the back[\\s\\S]*${set.source}`),
          customer: new RegExp(
            `closure ${shape} with a ${fastening === 'magnet' ? 'hidden magnet' : name}${fastening === 'buckle' ? ' on a leather tab' : ''}`,
          ),
        },
      };
    }),
  ),
);

const ribbons: Row[] = [1, 2, 3, 4].map((count) => ({
  option: `${count} ribbons`,
  change: { construction: { ribbon: { count } }, finish: { ribbon: '#204a87' } },
  says: {
    supplies: new RegExp(`Ribbon: \\d\\.\\d\\d m\nCut ${count} of [\\d.]+ mm\\. Pictured dark blue, #204a87`),
    quote: /^Ribbon \d\.\d+ m$/m,
    work: count === 1 ? /Fasten the ribbon at the head/ : /Fasten the ribbons at the head/,
    customer: new RegExp(`${['one', 'two', 'three', 'four'][count - 1]} dark blue ribbon${count === 1 ? '' : 's'}`),
  },
}));

const EDGES = {
  raw: { supplies: /left raw/, work: /^\d+\. Skive(: |$)/m, quote: /^Dress and load/m, customer: /edges left raw/ },
  burnished: {
    supplies: /bevelled and burnished/,
    work: /Burnish edges and dress[\s\S]*Burnish the cut edges/,
    quote: /^Burnish edges, dress and load/m,
    customer: /edges burnished/,
  },
  painted: {
    supplies: /Edge paint: \d+\.\d ml[\s\S]*Pictured black, #101010[\s\S]*safety data sheet/,
    work: /Paint edges and dress[\s\S]*Paint the cut edges[\s\S]*edge paint: follow the safety data sheet/,
    quote: /^Edge paint \d+\.\d+ ml$[\s\S]*^Paint edges, dress and load/m,
    customer: /edges painted black/,
  },
} as const;
const edges: Row[] = Object.entries(EDGES).map(([edge, says]) => ({
  option: `${edge} edges`,
  change: { finish: { edge, edgeColour: '#101010' } },
  says,
}));

const seams: Row[] = [
  {
    option: 'thread',
    change: { seam: { method: 'stitching' }, finish: { thread: '#ffffff', thread_mm: 0.6 } },
    says: {
      supplies: /^Thread: [\s\S]*0\.6 mm thick\. Pictured white, #ffffff/m,
      quote: /^Thread \d/m,
      work: /Stitch the seam/,
      customer: /white thread/,
    },
  },
  {
    option: 'lace',
    change: { seam: { method: 'lacing' }, finish: { lace: '#204a87' } },
    says: {
      supplies: /^Lace: [\s\S]*Pictured dark blue, #204a87/m,
      quote: /^Lace \d/m,
      work: /Lace the seam/,
      customer: /dark blue lace/,
    },
  },
];

const leathers: Row[] = [
  {
    option: 'pen loop',
    change: { construction: { penLoop: {} } },
    says: {
      supplies: /pen loop 0\.\d\d m/,
      areas: /1 Pen loop of outside/,
      work: /Fit pen loop[\s\S]*Fold the pen loop/,
      customer: /a loop for a pen of 10 mm/,
    },
  },
  ...(['centre', 'full'] as const).map(
    (lining): Row => ({
      option: `${lining} lining`,
      change: { ...LINING, construction: { lining }, finish: { lining: { colour: '#101010', surface: 'matt' } } },
      says: {
        supplies: /Lining leather: [\s\S]*Pictured black, #101010\. Matt\./,
        areas: lining === 'full' ? /1 Full lining of lining/ : /1 Centre lining of lining/,
        quote: /^Lining leather \d/m,
        work: /Lay the lining in/,
        customer: /matt black lining/,
      },
    }),
  ),
  ...(['square', 'rounded', 'clipped'] as const).map(
    (corners): Row => ({
      option: `${corners} corners`,
      change: { seam: { cornerRadius_mm: 10 }, construction: { corners } },
      says: { supplies: /Round the cover \d\.\d\d m/, quote: /^Outside leather/m },
    }),
  ),
  {
    option: 'curved mouth',
    change: { construction: { mouth: 'curved' } },
    says: { supplies: /pocket mouths \d\.\d\d m/, work: /pocket mouths now/ },
  },
  {
    option: 'pockets of another colour',
    change: { finish: { pocket: { colour: '#101010', surface: 'glossy' } } },
    says: {
      supplies: /Pocket leather: [\s\S]*Pictured black, #101010\. Glossy\./,
      areas: /2 Pocket of pocket/,
      quote: /^Pocket leather/m,
      customer: /glossy black pockets/,
    },
  },
];

const ROWS = [...closures, ...ribbons, ...edges, ...seams, ...leathers];

describe('every fitting and finish stands in supplies, areas, quote, order of work and on the customer’s sheet', () => {
  test.each(ROWS)('$option', ({ change, says }) => {
    const papers = papersOf(change);
    for (const [paper, words] of Object.entries(says)) expect(papers[paper as keyof typeof papers]).toMatch(words);
  });

  test('and what a cover does not have stands nowhere', () => {
    const { supplies, areas, quote, work, customer } = papersOf({});
    const fittings = /strap|flap|\bstud\b|\bsnap\b|buckle|magnet|ribbon|pen loop/i;
    for (const paper of [supplies, areas, quote, work, customer]) expect(paper).not.toMatch(fittings);
    for (const paper of [supplies, quote, customer]) expect(paper).not.toMatch(/paint|lining|thread/i);
  });

  test('where it is of leather it makes the areas larger by its own', () => {
    const gross = (change: object): number =>
      coverSupplies(coverDesign(soundJob({ ...ledger, ...change }))).areas.reduce((sum, area) => sum + area.net, 0);
    const plain = gross({});
    for (const construction of [{ strap: {} }, { strap: { shape: 'flap', width_mm: 60 } }, { penLoop: {} }]) {
      const design = coverDesign(soundJob({ ...ledger, construction }));
      const added = coverSupplies(design).outlines.slice(-1)[0]!;
      const xs = added.polygon.map(([x]) => x);
      const ys = added.polygon.map(([, y]) => y);
      const box = (Math.max(...xs) - Math.min(...xs)) * (Math.max(...ys) - Math.min(...ys));
      expect(gross({ construction }) - plain).toBeGreaterThan(0.75 * box);
      expect(gross({ construction }) - plain).toBeLessThanOrEqual(box + 1e-6);
    }
    expect(gross({ ...LINING, construction: { lining: 'full' } })).toBeGreaterThan(gross({ ...LINING }));
    expect(gross({ construction: { mouth: 'curved' } })).toBeLessThan(plain);
    expect(gross({ seam: { cornerRadius_mm: 10 }, construction: { corners: 'clipped' } })).toBeLessThan(
      gross({ seam: { cornerRadius_mm: 10 }, construction: { corners: 'rounded' } }),
    );
  });

  test('and a flap with a buckle, which does not go round its frame, is refused with what to do', () => {
    const parsed = parseJob({ ...ledger, construction: { strap: { shape: 'flap', fastening: 'buckle' } } });
    expect(parsed.ok).toBe(false);
    expect(parsed.ok ? '' : parsed.issues[0]?.remedy).toMatch(/choose another fastening/);
  });

  test('and raw edges of leather that is dressed before are not worked at the end', () => {
    const { work, quote } = papersOf({ finish: { edge: 'raw' }, order: { dress: true } });
    expect(work).not.toMatch(/[Bb]urnish|[Pp]aint the/);
    expect(quote).toMatch(/^Load 0\.333 h$/m);
    expect(work).toMatch(/Load the book: 20 min to the end/);
  });
});

/** Parts of the closed cover in 3D, and the names of what its 3D model shows. */
async function shownOf(construction: object) {
  const design = coverDesign(soundJob({ ...ledger, construction }));
  // Leaves and the cover's own seam are no fittings, and take long to pack.
  const all = modelParts(design, 'nominal')({ kind: 'opening', angle: 0 });
  const parts = all.filter(({ part }) => part !== 'leaves' && part !== 'seam');
  const { bytes } = await foldedGlb([{ at: 1, parts }], { name: 'Cover', colours: coverColours(design.job) });
  const model = await readGlb(bytes);
  return {
    parts: new Map(parts.map((mesh) => [String(mesh.part), mesh.indices.length / 3])),
    nodes: model
      .getRoot()
      .listNodes()
      .map((node) => node.getName()),
  };
}

describe('every fitting is a part in 3D and a node of the 3D model', () => {
  const fitted = ['strap', 'flap'].flatMap((shape) =>
    FASTENINGS.filter((fastening) => shape === 'strap' || fastening !== 'buckle').map(
      (fastening) =>
        [
          `${shape} with ${fastening}`,
          { strap: { shape, fastening } },
          ['strap', 'fastening', 'strapSeam', ...(fastening === 'buckle' ? ['buckleTab'] : [])],
        ] as const,
    ),
  );
  test.each([
    ...fitted,
    ['pen loop', { penLoop: {} }, ['penLoop']] as const,
    ['four ribbons', { ribbon: { count: 4 } }, ['ribbons']] as const,
  ])('%s', async (_name, construction, names) => {
    const { parts, nodes } = await shownOf(construction);
    for (const name of names) {
      expect(parts.get(name)).toBeGreaterThan(0);
      expect(nodes).toContain(name);
    }
  });

  test('and a plain cover has none of them', async () => {
    const { parts, nodes } = await shownOf({});
    for (const name of ['strap', 'fastening', 'buckleTab', 'strapSeam', 'penLoop', 'ribbons']) {
      expect(parts.has(name)).toBe(false);
      expect(nodes).not.toContain(name);
    }
  });
});
