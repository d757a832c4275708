import { expect } from '@playwright/test';
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { fitReport } from '../../../src/core/fitReport.ts';
import { coverDesign } from '../../../src/core/fold/coverDesign.ts';
import { createElasticSolvers } from '../../../src/core/fold/elastic/elasticFit.ts';
import type { Job } from '../../../src/core/job/jobSchema.ts';
import { parseJobText } from '../../../src/core/job/parseJob.ts';
import { STRIP_ROWS } from '../../../src/core/report/stripRows.ts';
import { printer } from '../../../src/core/units/printer.ts';
import { patternDxf } from '../../../src/output/dxf/patternDxf.ts';
import { patternSvg } from '../../../src/output/svg/patternSvg.ts';
import { drawnCards } from '../../../src/output/template/drawnTemplate.ts';
import { defined } from '../../defined.ts';
import { nth } from '../../nth.ts';
import { readGlb } from '../../output/glb/readGlb.ts';
import type { Site } from '../site.ts';
import type { PageWork } from './engineWindow.ts';
import { type Hand, type SavedFile, soon } from './Hand.ts';

/** What the steps know of the way so far. */
export interface Walk {
  readonly hand: Hand;
  readonly site: Site;
  /** The job as the page saved it. */
  file: string;
  link: string;
}

type Step = readonly [name: string, take: (walk: Walk) => Promise<void>];

const HEADLINE = '.headline';
const JOB_NAME = 'button.job-name';
const NAME = 'Hymns';

const textOf = ({ bytes }: SavedFile): string => new TextDecoder().decode(bytes);

const field = (path: string): string => `input[data-path="${path}"]`;
const onCover = (path: string): string => `.card ${field(path)}`;

/** Opens the menu of the job, unless it is open. */
async function openMenu({ hand }: Walk): Promise<void> {
  if ((await hand.said('.job-menu')) === '') await hand.press(JOB_NAME);
  await hand.sees('.job-menu', 'Share link');
}

async function closeMenu({ hand }: Walk): Promise<void> {
  await hand.window.keys(['Escape']);
  await hand.isGone('.job-menu');
}

async function inMenu(walk: Walk, entry: string): Promise<void> {
  await openMenu(walk);
  await walk.hand.press('.job-menu button', entry);
}

async function inDisplay(walk: Walk, list: string, value: string): Promise<void> {
  await openMenu(walk);
  await walk.hand.choose(value, '.job-menu select', list);
  await closeMenu(walk);
}

/** A step of the path begins at a place whatever became of the one before. */
async function at({ hand, site }: Walk, place: string): Promise<void> {
  await hand.window.ask((_, hash) => {
    location.hash = hash;
  }, place);
  await soon(() => hand.window.ask(() => location.href)).toBe(`${site.address}#${place}`);
}

async function openCard(walk: Walk, id: string): Promise<void> {
  await at(walk, 'cover');
  if ((await walk.hand.attribute('open', `#card-${id}`)) === null) await walk.hand.press(`#card-${id} > summary`);
  await walk.hand.hasAttribute('open', /^/, `#card-${id}[open]`);
}

const openPart = (walk: Walk, part: string): Promise<void> => at(walk, `workbench/${part}`);

/** In the page: from now on the scene does all that it does, but its triangles are not filled, which takes the processor seconds. */
const fillNothing: PageWork<[], void> = () => {
  for (const draw of ['drawArrays', 'drawElements', 'drawArraysInstanced', 'drawElementsInstanced'] as const)
    WebGL2RenderingContext.prototype[draw] = () => {};
};

/** Leaves the page and comes back, as on the next day. */
async function startAnew({ hand, site }: Walk): Promise<void> {
  await hand.window.goTo('about:blank');
  await hand.window.goTo(`${site.address}#cover`);
  await hand.window.ask(fillNothing);
}

/** What is worked out outside the page, by another engine, of the job that the page saved. */
function jobOf({ file }: Walk): Job {
  const parsed = parseJobText(file);
  if (!parsed.ok) throw new Error(parsed.issues[0]?.message);
  return parsed.job;
}

const cards = (walk: Walk) => drawnCards(coverDesign(jobOf(walk)), { madeIn: 'card', cards: 'pieces' }).drawing;

async function saveJob(walk: Walk): Promise<string> {
  const saved = await walk.hand.saved(() => inMenu(walk, 'Save file'));
  expect(saved.name).toMatch(/\.job\.json$/);
  return textOf(saved);
}

/** All that a sheet says. */
async function sheetWords({ bytes }: SavedFile): Promise<string> {
  const file = await getDocument({ data: bytes, verbosity: 0 }).promise;
  const pages = Array.from({ length: file.numPages }, async (_, i) => (await file.getPage(i + 1)).getTextContent());
  const words = (await Promise.all(pages)).flatMap(({ items }) => items.map((item) => ('str' in item ? item.str : '')));
  await file.destroy();
  return words.join(' ');
}

/** In the page: what the print rules make of it, shown on the screen. No engine but one prints for a test. */
const showPrinted: PageWork<[], void> = () => {
  window.dispatchEvent(new Event('beforeprint'));
  const visit = (rules: CSSRuleList): void => {
    for (const rule of rules) {
      if (rule instanceof CSSMediaRule) {
        const { media } = rule;
        if (media.mediaText === 'print') media.mediaText = 'all';
        else if (/^(not print|screen)/.test(media.mediaText)) media.mediaText = 'not all';
      }
      if (rule instanceof CSSGroupingRule) visit(rule.cssRules);
    }
  };
  for (const sheet of document.styleSheets) visit(sheet.cssRules);
};

/** The main path of a maker, in the order of a visit. */
export const MAIN_PATH: readonly Step[] = [
  [
    'the page opens with an example and its verdict',
    async ({ hand, site }) => {
      await hand.window.resize(1280, 800);
      // The look is chosen before the page starts: without a graphics card the full one takes 15 s.
      await hand.window.goTo(`${site.address}favicon.svg`);
      await hand.window.ask(() => localStorage.setItem('coverwright.view.v1', JSON.stringify({ look: 'light' })));
      await hand.window.goTo(site.address);
      await hand.sees(JOB_NAME, 'Tide ledger');
      await hand.hasAttribute('data-verdict', /^fits$/, HEADLINE);
    },
  ],
  [
    'the cover is drawn in 3D, or its section where there is no WebGL 2',
    async (walk) => {
      await at(walk, 'cover');
      const isKnown = await walk.hand.window.ask(() => document.createElement('canvas').getContext('webgl2') !== null);
      if (!isKnown) return walk.hand.sees('.stage .section-drawing', /./);
      await walk.hand.hasAttribute('aria-busy', /^false$/, '.stage .cover-scene');
      await soon(() =>
        walk.hand.window.ask((seek) => {
          const canvas = seek('.stage-scene canvas') as HTMLCanvasElement | null;
          return canvas === null ? 0 : canvas.width * canvas.height;
        }),
      ).toBeGreaterThan(10_000);
    },
  ],
  [
    'the book opens by its slider',
    async ({ hand }) => {
      const slider = 'input[type="range"]';
      await hand.keysOn(['End'], slider, 'Open the book');
      await hand.hasAttribute('aria-valuetext', /^open flat$/, slider, 'Open the book');
      await hand.keysOn(['Home'], slider, 'Open the book');
      await hand.hasAttribute('aria-valuetext', /closed/, slider, 'Open the book');
    },
  ],
  [
    'another viewpoint is chosen',
    async ({ hand }) => {
      await hand.press('.viewpoints button', 'spine');
      await hand.hasAttribute('aria-pressed', /^true$/, '.viewpoints button', 'spine');
      await hand.window.ask(fillNothing);
    },
  ],
  [
    'a new cover asks for its measures',
    async (walk) => {
      await inMenu(walk, 'New cover');
      await walk.hand.sees('dialog h2', 'New cover');
    },
  ],
  [
    'measures are typed in inches, millimetres and ounces',
    async ({ hand }) => {
      await hand.type('5 1/2 in', `dialog ${field('book.width_mm')}`);
      await hand.type('8.25 in', `dialog ${field('book.height_mm')}`);
      await hand.type('32', `dialog ${field('book.thickness_mm')}`);
      await hand.type('4-5 oz', `dialog ${field('leather.outside')}`);
      await hand.sees(`dialog ${field('leather.outside')}`, '4-5 oz');
    },
  ],
  [
    'the new cover has its verdict',
    async ({ hand }) => {
      await hand.press('dialog button', 'Start this cover');
      await hand.isGone('dialog');
      await hand.sees('#card-book > summary', '139.7 × 209.55 × 32 mm');
      await hand.hasAttribute('data-verdict', /^(fits|tight)$/, HEADLINE);
    },
  ],
  [
    'the cover gets a name',
    async (walk) => {
      await openMenu(walk);
      await walk.hand.type(NAME, `.job-menu ${field('name')}`);
      await closeMenu(walk);
      await walk.hand.sees(JOB_NAME, NAME);
    },
  ],
  [
    'an entry that is no length is refused in words',
    async (walk) => {
      await openCard(walk, 'book');
      await walk.hand.type('tall', onCover('book.height_mm'));
      await walk.hand.sees('.issue-list', 'tall');
      await walk.hand.hasAttribute('aria-invalid', /^true$/, onCover('book.height_mm'));
    },
  ],
  [
    'the entry mended, its note goes',
    async ({ hand }) => {
      await hand.type('210', onCover('book.height_mm'));
      await hand.isGone('.issue-list button');
      await hand.hasAttribute('aria-invalid', /^false$/, onCover('book.height_mm'));
      await hand.sees('#card-book > summary', '210');
    },
  ],
  [
    'the job is saved as a file with what was typed',
    async (walk) => {
      walk.file = await saveJob(walk);
      expect(JSON.parse(walk.file)).toMatchObject({
        name: NAME,
        book: { width_mm: 139.7, height_mm: 210, thickness_mm: 32 },
      });
    },
  ],
  [
    'the cut sizes are those computed outside the page',
    async (walk) => {
      const { width, height } = coverDesign(jobOf(walk)).pieces.outside;
      const { size } = printer('mm');
      await openCard(walk, 'cut');
      await walk.hand.sees('#card-cut', `${size(width)} × ${size(height)}`);
    },
  ],
  [
    'the verdict is the one computed outside the page',
    async (walk) => {
      const { verdict, headline } = fitReport(jobOf(walk));
      await walk.hand.hasAttribute('data-verdict', new RegExp(`^${verdict}$`), HEADLINE);
      const [main] = headline.replace(/\.$/, '').split('; ');
      await walk.hand.sees(HEADLINE, defined(main));
    },
  ],
  [
    'the worker solves the elastic strip, with the figures computed outside the page',
    async (walk) => {
      const { checks } = fitReport(jobOf(walk), { solvers: createElasticSolvers() });
      const rows = checks.filter(({ id }) => STRIP_ROWS.some((row) => row.id === id));
      expect(rows.length).toBeGreaterThan(1);
      await at(walk, 'cover');
      await walk.hand.sees('section[data-strip="solved"]', /./);
      for (const { message } of rows) await walk.hand.sees('section[data-strip]', message);
    },
  ],
  [
    'inches are shown, and the job stays what it was',
    async (walk) => {
      await inDisplay(walk, 'Units', 'in');
      const job = jobOf(walk);
      // Sizes that the tool decides go by the steps of the maker's rule.
      const { width, height } = coverDesign({ ...job, work: { ...job.work, units: 'in' } }).pieces.outside;
      const { size } = printer('in');
      await walk.hand.sees('#card-cut', `${size(width)} × ${size(height)}`);
    },
  ],
  [
    'millimetres are shown again',
    async (walk) => {
      await inDisplay(walk, 'Units', 'mm');
      await walk.hand.sees('#card-cut', /\d mm/);
      await walk.hand.sees('#card-book > summary', '139.7 × 210 × 32 mm');
    },
  ],
  [
    'leather and seam are chosen',
    async (walk) => {
      await openCard(walk, 'leather');
      await walk.hand.press('#card-leather label', 'soft');
      await openCard(walk, 'seam');
      await walk.hand.press('#card-seam label', 'laced');
      const job = await saveJob(walk);
      expect(JSON.parse(job)).toMatchObject({ seam: { method: 'lacing' } });
      expect(job).toContain('"bendRatio"');
    },
  ],
  [
    'a cover cut too small fails',
    async (walk) => {
      await openCard(walk, 'cut');
      await walk.hand.type('300', onCover('pattern.outsideWidth_mm'));
      await walk.hand.hasAttribute('data-verdict', /^fails$/, HEADLINE);
    },
  ],
  [
    'its remedy is one press',
    async ({ hand }) => {
      await hand.press('.next-thing button', 'Make this change');
      await hand.hasAttribute('data-verdict', /^(fits|tight|loose)$/, HEADLINE);
    },
  ],
  [
    'undo takes both back, step by step',
    async ({ hand }) => {
      await hand.press('.page-tools button', 'Undo');
      await hand.hasAttribute('data-verdict', /^fails$/, HEADLINE);
      await hand.press('.page-tools button', 'Undo');
      await hand.hasAttribute('data-verdict', /^(fits|tight)$/, HEADLINE);
      await hand.sees(onCover('pattern.outsideWidth_mm'), /^$/);
    },
  ],
  [
    'redo brings them again by keys, undo takes them back',
    async ({ hand }) => {
      await hand.press('.page-header h1');
      await hand.window.keys(['y'], 'Control');
      await hand.hasAttribute('data-verdict', /^fails$/, HEADLINE);
      await hand.window.keys(['z'], 'Control');
      await hand.hasAttribute('data-verdict', /^(fits|tight)$/, HEADLINE);
    },
  ],
  [
    'a tab is dragged on the strip',
    async (walk) => {
      await at(walk, 'strips');
      const width = await walk.hand.said('.strip > header');
      await walk.hand.drag('.strip-drawing [role="slider"][aria-label="outside width"] .handle-tab', [60, 0]);
      await soon(() => walk.hand.said('.strip > header')).not.toBe(width);
    },
  ],
  [
    'a tab is moved by keys',
    async ({ hand }) => {
      const tab = '.upright [role="slider"]';
      const before = Number(await hand.attribute('aria-valuenow', tab, 'head ease'));
      await hand.keysOn(['PageUp'], tab, 'head ease');
      await soon(async () => Number(await hand.attribute('aria-valuenow', tab, 'head ease'))).toBeGreaterThan(before);
      await hand.press('button', 'Undo all tuning');
      await soon(async () => Number(await hand.attribute('aria-valuenow', tab, 'head ease'))).toBe(before);
    },
  ],
  [
    'workers draw the curve of Explore and count its trials',
    async (walk) => {
      await at(walk, 'explore');
      await walk.hand.isThere('.explore-plot svg');
      await walk.hand.sees('.explore .chance', /\d/);
      await walk.hand.isGone('.explore [aria-busy="true"]');
    },
  ],
  [
    'the search leads to a field by keys alone',
    async (walk) => {
      await at(walk, 'cover');
      await walk.hand.press('.page-header h1');
      await walk.hand.window.keys(['/']);
      await walk.hand.sees('dialog.find', 'What are you looking for?');
      await walk.hand.window.keys([...'tail ease']);
      await walk.hand.sees('dialog.find [role="option"][aria-selected="true"]', /tail ease/i);
      await walk.hand.window.keys(['Enter']);
      await soon(() => walk.hand.window.ask(() => document.activeElement?.getAttribute('data-path') ?? '')).toMatch(
        /tail/i,
      );
    },
  ],
  [
    'Tab goes from field to field, and what has the focus is seen',
    async (walk) => {
      await openCard(walk, 'book');
      await walk.hand.keysOn(['Tab'], onCover('book.width_mm'));
      const focused = () =>
        walk.hand.window.ask(() => {
          const { top, bottom } = document.activeElement!.getBoundingClientRect();
          return [document.activeElement!.getAttribute('data-path') ?? '', top >= 0 && bottom <= innerHeight] as const;
        });
      await soon(async () => nth(await focused(), 0)).not.toBe('book.width_mm');
      await walk.hand.keysOn([], onCover('book.thickness_mm'));
      await walk.hand.window.keys(['Tab'], 'Shift');
      await soon(async () => nth(await focused(), 0)).not.toBe('book.thickness_mm');
      await soon(async () => nth(await focused(), 1)).toBe(true);
    },
  ],
  [
    'the SVG is the file that is made outside the page',
    async (walk) => {
      walk.file = await saveJob(walk);
      await openPart(walk, 'template');
      const saved = await walk.hand.saved(() => walk.hand.press('button', 'Save as SVG'));
      expect(saved.name).toMatch(/\.svg$/);
      expect(textOf(saved)).toBe(patternSvg(cards(walk)));
    },
  ],
  [
    'the DXF is the file that is made outside the page',
    async (walk) => {
      const saved = await walk.hand.saved(() => walk.hand.press('button', 'Save as DXF'));
      expect(saved.name).toMatch(/\.dxf$/);
      expect(textOf(saved)).toBe(patternDxf(cards(walk)));
    },
  ],
  [
    'the template is a PDF with its words',
    async (walk) => {
      const saved = await walk.hand.saved(() => walk.hand.press('button', 'Save the template as PDF'));
      expect(await sheetWords(saved)).toContain(NAME);
    },
  ],
  [
    'the bench sheet is a PDF with its words',
    async (walk) => {
      await openPart(walk, 'work');
      const saved = await walk.hand.saved(() => walk.hand.press('button', 'Save the bench sheet as PDF'));
      expect(await sheetWords(saved)).toContain(NAME);
    },
  ],
  [
    'the model is a GLB that its format’s library reads',
    async (walk) => {
      await at(walk, 'cover');
      await walk.hand.press('button', 'Take away');
      try {
        const saved = await walk.hand.saved(() => walk.hand.press('dialog button', 'Save model'));
        expect(saved.name).toMatch(/\.glb$/);
        expect((await readGlb(saved.bytes)).getRoot().listMeshes().length).toBeGreaterThan(3);
      } finally {
        await walk.hand.press('dialog button', 'Close');
      }
      await walk.hand.isGone('dialog');
    },
  ],
  [
    'the job stands on the shelf',
    async (walk) => {
      await at(walk, 'shelf');
      await walk.hand.sees('.job-card[aria-current]', NAME);
    },
  ],
  [
    'a job comes in from a file, and both stand on the shelf',
    async (walk) => {
      const other = { ...JSON.parse(walk.file), name: 'From a file' };
      await walk.hand.give('other.job.json', JSON.stringify(other), 'input[type="file"][aria-label="Job file"]');
      await walk.hand.sees(JOB_NAME, 'From a file');
      await openCard(walk, 'book');
      await walk.hand.type('141', onCover('book.width_mm'));
      await at(walk, 'shelf');
      await walk.hand.sees('.shelf-place', NAME);
      await walk.hand.sees('.shelf-place', 'From a file');
      await walk.hand.sees('.shelf-place [role="status"]', '2 jobs');
    },
  ],
  [
    'a kept job opens again, and tells of its versions',
    async (walk) => {
      await walk.hand.press('.job-card summary', `More ${NAME}`);
      await walk.hand.press('.job-card button', `Versions ${NAME}`);
      await walk.hand.sees('.noted', `Earlier versions of ${NAME}`);
      await walk.hand.press('.noted button', 'Close the versions');
      await walk.hand.press('.job-card button', `Open ${NAME}`);
      await walk.hand.sees(JOB_NAME, NAME);
      expect(JSON.parse(await saveJob(walk))).toEqual(JSON.parse(walk.file));
    },
  ],
  [
    'the page loaded again shows the job as it was left',
    async (walk) => {
      await openCard(walk, 'book');
      await walk.hand.type('33', onCover('book.thickness_mm'));
      await walk.hand.sees('#card-book > summary', '33 mm');
      await startAnew(walk);
      await walk.hand.sees(JOB_NAME, NAME);
      await walk.hand.sees('#card-book > summary', '139.7 × 210 × 33 mm');
    },
  ],
  [
    'on paper there is the sheet of the job alone',
    async (walk) => {
      await at(walk, 'cover');
      await soon(async () => {
        await walk.hand.window.ask(showPrinted);
        return walk.hand.said('.bench-page');
      }).toContain('Cut sizes');
      await walk.hand.isGone('.page-header');
      await startAnew(walk);
    },
  ],
  [
    'the dark page has light words on a dark ground',
    async (walk) => {
      const shades = () =>
        walk.hand.window.ask(() => {
          const light = (colour: string): number => {
            const canvas = new OffscreenCanvas(1, 1).getContext('2d')!;
            canvas.fillStyle = colour;
            canvas.fillRect(0, 0, 1, 1);
            const [r = 0, g = 0, b = 0] = canvas.getImageData(0, 0, 1, 1).data;
            return r + g + b;
          };
          const [words, ground] = [document.body, document.documentElement].map((each) => getComputedStyle(each));
          return light(words!.color) - light(ground!.backgroundColor);
        });
      await inDisplay(walk, 'Page', 'light');
      await soon(shades).toBeLessThan(-300);
      await inDisplay(walk, 'Page', 'dark');
      await soon(shades).toBeGreaterThan(300);
    },
  ],
  [
    'a link opens the same job in a fresh window',
    async (walk) => {
      walk.file = await saveJob(walk);
      await inMenu(walk, 'Share link');
      await walk.hand.sees('.share-note input', /#job=/);
      walk.link = await walk.hand.said('.share-note input');
      await walk.hand.press('.share-note button', 'Close this note');
      await walk.hand.window.elsewhere(async () => {
        await walk.hand.window.goTo(walk.link);
        await walk.hand.sees(JOB_NAME, NAME);
        expect(JSON.parse(await saveJob(walk))).toEqual(JSON.parse(walk.file));
      });
    },
  ],
  [
    'the customer’s page says the fit, and saves its sheet',
    async (walk) => {
      await at(walk, 'customer');
      await walk.hand.sees('main', NAME);
      const saved = await walk.hand.saved(() => walk.hand.press('button', 'Save as PDF'));
      expect(await sheetWords(saved)).toContain(NAME);
    },
  ],
  [
    'with the server gone the page starts, solves and saves',
    async (walk) => {
      await soon(() => walk.hand.window.ask(() => navigator.serviceWorker.controller !== null)).toBe(true);
      await walk.site.close();
      await startAnew(walk);
      await walk.hand.sees(JOB_NAME, NAME);
      await openCard(walk, 'book');
      await walk.hand.type('34', onCover('book.thickness_mm'));
      await walk.hand.sees('#card-book > summary', '34 mm');
      await walk.hand.sees('section[data-strip="solved"]', /./);
      await openPart(walk, 'template');
      const saved = await walk.hand.saved(() => walk.hand.press('button', 'Save the template as PDF'));
      expect(await sheetWords(saved)).toContain(NAME);
    },
  ],
];
