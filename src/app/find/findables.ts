import {
  EXAMPLE_JOBS,
  EXPLORE_RESULTS,
  findFieldNote,
  JOB_PATHS,
  patternDrawing,
  titled,
  type Verdict,
  WORDS,
} from '../../core/index.ts';
import { exploreChoice } from '../explore/exploreChoice.ts';
import { fieldPlace, goToField } from '../fields/goToField.ts';
import { labelAt } from '../fields/issueWords.ts';
import { reach, type Whereabouts } from '../fields/reach.ts';
import { WORKBENCH_PARTS } from '../making/workbenchParts.ts';
import { shownChecks } from '../panel/shownChecks.ts';
import { writtenOut } from '../panel/writtenOut.ts';
import { VIEWPOINTS } from '../scene/viewpoints.ts';
import type { BenchStore } from '../state/bench.ts';
import { saveJobFile } from '../state/jobFile.ts';
import { goTo, PLACES } from '../state/place.ts';
import type { Findable } from './findable.ts';

/** The first element of a kind that says something, heard or seen. */
const saying = (selector: string, words: string) => (): HTMLElement | undefined =>
  [...document.querySelectorAll<HTMLElement>(selector)].find((each) => each.textContent.trim().startsWith(words));

const press = (button: HTMLElement): void => button.click();

const CARD_TITLES = {
  book: 'Book',
  leather: 'Leather',
  seam: 'Seam and pockets',
  cut: 'Cut',
  checks: 'Checks',
  sure: 'How sure',
} as const;

/** Where something is in the words of the page: `Cover, Book`. */
function whereWords({ place, part, card }: Whereabouts): string {
  const title = PLACES.find(({ id }) => id === place)!.title;
  const within = card ? CARD_TITLES[card] : WORKBENCH_PARTS.find(({ id }) => id === part)?.title;
  return within === undefined ? title : `${title}, ${within}`;
}

/** Something to press or to read that stands on the page by its own words. */
function standing(
  at: Whereabouts,
  name: string,
  also = '',
  selector = 'button, summary, h2, h3',
  words = name,
): Findable {
  return { name, where: whereWords(at), also, go: () => reach(at, saying(`#bench :is(${selector})`, words)) };
}

const PLACE_ALSO: Readonly<Partial<Record<(typeof PLACES)[number]['id'], string>>> = {
  cover: 'picture 3d view home verdict fit',
  strips: 'tune stretch ruler wrap height laid out flat',
  explore: 'chart graph curve what if sensitivity',
  workbench: 'make making print cut sew',
  customer: 'client sheet offer price show',
  words: 'terms meaning glossary vocabulary help',
  shelf: 'jobs covers kept saved library versions import export backup removed',
  photograph: 'measure camera telephone picture sheet marks print customer remote',
  leathers: 'hides skins stock store material kept bought tests left price',
};

const PART_ALSO: Readonly<Partial<Record<(typeof WORKBENCH_PARTS)[number]['id'], string>>> = {
  construction:
    'corners holes slits lining strap flap closure fastening stud snap buckle magnet ribbon pen loop pattern',
  tooling: 'border title initials letters drawing svg stamp emboss carve decorate monogram',
  template:
    'print pdf paper printer svg dxf laser kerf cutter machine file pages tiles one half card folded pattern tracings transfer',
  machine: 'laser cutter plotter bed kerf passes power speed hpgl coupon',
  drafting: 'draw by hand ruler compasses no printer diagonals words figures',
  trial: 'test gaps read learn correct',
  leather: 'hide sheet layout nesting defects yield',
  supplies: 'thread lace cement glue needles materials shopping',
  work: 'steps instructions cautions bench sheet',
  quote: 'price cost money hours rates bill',
};

const [COVER, STRIPS, EXPLORE, CUSTOMER, SHELF] = (['cover', 'strips', 'explore', 'customer', 'shelf'] as const).map(
  (place): Whereabouts => ({ place }),
) as [Whereabouts, Whereabouts, Whereabouts, Whereabouts, Whereabouts];
const WORDS_PLACE: Whereabouts = { place: 'words' };
const LEATHER: Whereabouts = { place: 'cover', card: 'leather' };
const CUT: Whereabouts = { place: 'cover', card: 'cut' };
const SURE: Whereabouts = { place: 'cover', card: 'sure' };
const partOf = (part: (typeof WORKBENCH_PARTS)[number]['id']): Whereabouts => ({ place: 'workbench', part });

/** Places, and the parts of the workbench. */
const places = (): readonly Findable[] => [
  ...PLACES.map(({ id, title }) => ({
    name: title,
    where: 'a place',
    also: PLACE_ALSO[id] ?? '',
    isUsual: true,
    go: () => goTo(id),
  })),
  ...WORKBENCH_PARTS.map(({ id, title }) => ({
    name: title,
    where: 'Workbench',
    also: PART_ALSO[id] ?? '',
    isUsual: true,
    go: () => goTo('workbench', id),
  })),
  {
    name: 'Work step by step',
    where: 'Workbench',
    also: 'making mode one step a screen hands tick done date',
    go: () => goTo('workbench', 'steps'),
  },
];

/** What can be done: at once, or by a button that is gone to. */
function actions({ getState }: BenchStore): readonly Findable[] {
  const { dispatch, history } = getState();
  const inMenu = (name: string, also: string, then?: (found: HTMLElement) => void): Findable => ({
    name,
    where: 'Job menu',
    also,
    isUsual: then === press,
    go: () => reach(null, saying('.job-menu :is(button, label)', name), then),
  });
  const setting = (name: string, also: string): Findable => ({
    ...inMenu(name, also),
    go: () =>
      reach(null, () => {
        const label = saying('.display label', name)();
        return label instanceof HTMLLabelElement ? label.control : null;
      }),
  });
  const onStage = (name: string, button: string, also: string): Findable => ({
    name,
    where: whereWords(COVER),
    also,
    go: () => reach(COVER, saying('.stage-controls button', button), press),
  });
  return [
    inMenu('New cover', 'start begin book', press),
    inMenu('Open file', 'load import json', press),
    {
      name: 'Save file',
      where: 'Job menu',
      also: 'export download json keep',
      go: () => saveJobFile(history.good.document),
    },
    inMenu('Share link', 'send address url copy', press),
    inMenu('Print', 'paper a4 letter', press),
    {
      name: 'New leather',
      where: 'Leathers',
      also: 'bought hide skin add',
      go: () => reach({ place: 'leathers' }, saying('.leathers-place button', 'New leather'), press),
    },
    ...(history.past.length === 0
      ? []
      : [{ name: 'Undo', where: 'the last change', also: 'back', go: () => dispatch({ type: 'undo' }) }]),
    ...(history.future.length === 0
      ? []
      : [{ name: 'Redo', where: 'the change undone last', also: 'again', go: () => dispatch({ type: 'redo' }) }]),
    ...EXAMPLE_JOBS.map(({ document }) => ({
      name: `Example: ${String(document.name).toLowerCase()}`,
      where: 'opens it; undo brings this job back',
      also: 'sample demo',
      go: () => {
        dispatch({ type: 'open', document });
        goTo('cover');
      },
    })),
    setting('Units', 'mm millimetres inches metric imperial'),
    setting('Page', 'light dark theme colour scheme night'),
    setting('Picture', 'look plain full slow quality 3d'),
    ...VIEWPOINTS.map((name) => onStage(`Look from: ${name}`, name, 'view camera turn side')),
    onStage('Play the film of the making', 'Play the film of the making', 'steps order animation video'),
    onStage('Save a 3D model', 'Take away', 'glb gltf usdz'),
    onStage('Save a picture', 'Take away', 'png image photograph 4k 8k'),
    onStage('Save a film', 'Take away', 'video mp4 webm turntable'),
    standing(partOf('template'), 'Save the template as PDF', 'print pattern paper a4 letter true size'),
    standing(partOf('template'), 'Save as SVG', 'laser cutter machine file drawing'),
    standing(partOf('template'), 'Save as DXF', 'laser cutter cad machine file drawing'),
    standing(partOf('drafting'), 'Save the drafting sheet as PDF', 'draw by hand ruler print'),
    standing(
      partOf('work'),
      'Your order',
      'punch prick holes slits after cementing before joining steps case trace tool dye dress',
      'summary',
    ),
    standing(partOf('work'), 'Save the bench sheet as PDF', 'print instructions order of work'),
    { ...standing(CUSTOMER, 'Save as PDF', 'customer sheet', 'button'), name: 'Save the customer sheet as PDF' },
    {
      ...standing(CUSTOMER, 'Measuring sheet', 'ruler printed measure pdf', 'button', 'Save a measuring sheet'),
      name: 'Measuring sheet',
    },
    standing(SHELF, 'Export all', 'backup save every job'),
    standing(SHELF, 'Import', 'restore backup jobs'),
  ];
}

/** What is worked out. */
function results({ getState }: BenchStore): readonly Findable[] {
  const { design, report, settled } = getState();
  const verdicts: Readonly<Record<Verdict, string>> = {
    fits: 'good',
    tight: 'close',
    loose: 'too loose',
    fails: 'fails',
    unknown: 'not known',
    none: '',
  };
  return [
    ...shownChecks(report, settled).map(({ title, verdict }) => ({
      name: `Check: ${title}`,
      where: 'Cover, Checks',
      also: verdicts[verdict],
      go: () => reach(COVER, saying('.check h3', title)),
    })),
    standing(CUT, 'Cut sizes', 'pieces table width height'),
    ...writtenOut(patternDrawing(design)).map(({ name }) => ({
      ...standing(CUT, name, 'sum parts adds up cut size why', 'summary'),
      name: `${name}, written out`,
    })),
    ...['Fore-edges, both together', 'Head', 'Lying flat'].map((edge) => ({
      ...standing(SURE, edge, 'budget error doubt share tail', '.how-sure summary'),
      name: `What makes it unsure: ${edge.toLowerCase()}`,
    })),
    standing(SURE, 'What the ease pays for', 'budget cost', 'summary'),
    standing(SURE, 'Measure next', 'what to measure saves', '.how-sure h3'),
    standing(EXPLORE, 'By trials', 'chance 2,000'),
    standing(EXPLORE, 'What must change', 'remedy fix repair fails'),
    standing(EXPLORE, 'The same in figures', 'table curve numbers', 'summary'),
    standing(STRIPS, 'The wrap laid out', 'strip tune width'),
    standing(STRIPS, 'Head to tail', 'strip tune height upright'),
    standing(STRIPS, 'Flat pattern', 'pieces drawing'),
    ...EXPLORE_RESULTS.map(({ id, title }) => ({
      name: `Curve: ${title}`,
      where: whereWords(EXPLORE),
      also: 'chart graph result',
      go: () => {
        exploreChoice.setState({ resultId: id });
        reach(EXPLORE, () => document.querySelector<HTMLElement>('.explore [data-pick="result"]'));
      },
    })),
    standing(LEATHER, 'Colour and finish', 'color shade dye look thread lace edge paint brass ribbon metal'),
    standing(partOf('construction'), 'The pattern', 'pieces drawing holes flat'),
    standing(partOf('supplies'), 'What one cover takes', 'thread lace length cement'),
  ];
}

/** Every field of the job that a maker can write; the units are a setting. */
const fields = (): readonly Findable[] =>
  JOB_PATHS.filter((path) => path !== 'work.units').flatMap((path) => {
    const at = fieldPlace(path);
    const name = labelAt(path);
    if (at === undefined || name === path) return [];
    return [{ name, where: whereWords(at), also: findFieldNote(path)?.description ?? '', go: () => goToField(path) }];
  });

/** What the words of the page mean. */
const words = (): readonly Findable[] =>
  WORDS.map((word) => ({
    name: titled(word),
    where: 'Words',
    also: 'meaning',
    go: () => reach(WORDS_PLACE, () => document.getElementById(`word-${word.replaceAll(' ', '-')}`)),
  }));

/** Every place, action, result, field and word, each name at each place once. */
export function findables(store: BenchStore): readonly Findable[] {
  const all = [...places(), ...actions(store), ...results(store), ...fields(), ...words()];
  return all.filter(
    ({ name, where }, i) => all.findIndex((other) => other.name === name && other.where === where) === i,
  );
}
