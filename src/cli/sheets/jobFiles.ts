import { lettersOf } from '../../artwork/faces/lettersOf.ts';
import { loadFace } from '../../artwork/faces/loadFace.ts';
import { type CoverDesign, coverDesign, type Job, type JobRecord, layOut, testStripDrawing } from '../../core/index.ts';
import { benchSheetPdf } from '../../output/benchSheet/benchSheetPdf.ts';
import { coversSheetPdf } from '../../output/comparison/coversSheetPdf.ts';
import { usualLayers } from '../../output/cuttingFile.ts';
import { draftingSheet } from '../../output/draftingSheet/draftingSheet.ts';
import { draftingSheetPdf } from '../../output/draftingSheet/draftingSheetPdf.ts';
import { patternDxf } from '../../output/dxf/patternDxf.ts';
import { fileName } from '../../output/fileName.ts';
import { kerfNotes } from '../../output/kerf.ts';
import { layoutDxf } from '../../output/layout/layoutDxf.ts';
import { layoutPdf } from '../../output/layout/layoutPdf.ts';
import { layoutName, leathersToLay } from '../../output/layout/layoutQuestions.ts';
import { layoutSheet } from '../../output/layout/layoutSheet.ts';
import { layoutSvg } from '../../output/layout/layoutSvg.ts';
import { kerfFor } from '../../output/machine/kerfFor.ts';
import { bedFile, type MachineFormat } from '../../output/machine/machineFile.ts';
import { machinePlan } from '../../output/machine/machinePlan.ts';
import type { MachineProfile } from '../../output/machine/machineProfile.ts';
import { coverModel } from '../../output/model/coverModel.ts';
import { patternPdf } from '../../output/pdf/patternPdf.ts';
import { photographSheetPdf } from '../../output/photographSheet/photographSheetPdf.ts';
import { sheetLink } from '../../output/photographSheet/sheetLink.ts';
import { usualPages } from '../../output/photographSheet/sheetPages.ts';
import { patternSvg } from '../../output/svg/patternSvg.ts';
import { cardWords, type DrawnTemplate, drawnCards, drawnTemplate } from '../../output/template/drawnTemplate.ts';
import { bedFileName, layerFileName, templateName } from '../../output/template/templateName.ts';
import { type TitleBlock, type TitleSource, titleBlock } from '../../output/titleBlock.ts';
import type { SheetsRequest } from './sheetsRequest.ts';

/** One file of a job: its name, and what makes it. */
export interface JobFile {
  readonly name: string;
  readonly make: (say: (note: string) => void) => Promise<string | Uint8Array>;
}

interface Opened {
  readonly job: Job;
  readonly document: JobRecord;
}

/**
 * Every file that is asked for of a job, as the page saves it.
 *
 * Throws RangeError where a machine cannot make it, as for a piece larger than its bed.
 * @param nth tells jobs of one name apart, 1 for the first
 */
export async function jobFiles({ job, document }: Opened, request: SheetsRequest, nth: number): Promise<JobFile[]> {
  const design = coverDesign(job);
  const faces = await lettersOf(job.tooling.designs);
  const drawn = drawnTemplate(design, request.drawn, faces);
  const { date, address, paper, bars, machine } = request;
  const own = nth === 1 ? [] : [String(nth)];
  const named = { job: job.name, isTracing: drawn.isTracing, variants: [...own, ...drawn.variants] };
  const block = (sheet: string, source: TitleSource['design']) =>
    titleBlock({ sheet, job, design: source, document, date, address });
  const flat = paper === 'Letter' ? 'Letter' : 'A4';

  const template = async (format: TemplateFormat): Promise<JobFile[]> => {
    if (format === 'pdf')
      return [
        {
          name: templateName({ ...named, variants: [...own, ...drawn.paperVariants] }, paper, bars),
          make: (say) =>
            patternPdf(drawn.onPaper, {
              paper,
              mirrored: drawn.mirrored,
              bars,
              block: block(drawn.isTracing ? 'Tracings' : 'Template', drawn.source),
              onLacking: lacking(say),
            }),
        },
      ];
    return machine === null || drawn.isTracing
      ? layerFiles(named, drawn, request, format)
      : bedFiles(named, drawn, { ...request, machine }, format);
  };
  const bench: JobFile = {
    name: fileName(job.name, 'bench-sheet.pdf', [...own, flat]),
    make: (say) => benchSheetPdf(design, { paper: flat, block: block('Bench sheet', design), onLacking: lacking(say) }),
  };
  const drafting: JobFile = {
    name: fileName(job.name, 'drafting-sheet.pdf', [...own, ...cardWords(request.drawn), flat]),
    make: (say) => {
      const { source, drawing } = drawnCards(design, request.drawn);
      const sheet = draftingSheet(source, drawing);
      return draftingSheetPdf(sheet, { paper: flat, block: block('Drafting sheet', source), onLacking: lacking(say) });
    },
  };
  const tests: JobFile = {
    name: fileName(job.name, 'test-strips.pdf', [...own, flat]),
    make: (say) =>
      patternPdf(testStripDrawing(job.work.units, ''), {
        paper: flat,
        bars,
        block: block('Strips for testing the leather', design),
        onLacking: lacking(say),
      }),
  };
  const covers: JobFile = {
    name: fileName('finished-covers', 'pdf', [flat]),
    make: () => coversSheetPdf({ paper: flat }),
  };
  const photograph: JobFile = {
    name: fileName(job.name, 'photograph-sheet.pdf', [...own, flat]),
    make: (say) =>
      photographSheetPdf({
        units: job.work.units,
        paper: flat,
        pages: usualPages(job.book, flat),
        job: job.name,
        date,
        link: sheetLink(document, address),
        onLacking: lacking(say),
      }),
  };
  const model = (kind: 'packed' | 'usdz', ending: string): JobFile => ({
    name: fileName(job.name, ending, own),
    make: async () => coverModel(job, kind, faces),
  });

  const files: JobFile[] = [];
  for (const format of request.formats) {
    if (format === 'glb') files.push(model('packed', 'glb'));
    else if (format === 'usdz') files.push(model('usdz', 'usdz'));
    else {
      if (request.sheets.includes('template')) files.push(...(await template(format)));
      if (request.sheets.includes('layout') && format !== 'hpgl')
        files.push(...layoutFiles(design, request, format, block('Leather layout', design), own));
      if (request.sheets.includes('bench') && format === 'pdf') files.push(bench);
      if (request.sheets.includes('drafting') && format === 'pdf') files.push(drafting);
      if (request.sheets.includes('tests') && format === 'pdf') files.push(tests);
      if (request.sheets.includes('covers') && format === 'pdf') files.push(covers);
      if (request.sheets.includes('photograph') && format === 'pdf') files.push(photograph);
    }
  }
  return files;
}

type TemplateFormat = 'pdf' | MachineFormat;

type Named = Parameters<typeof layerFileName>[0];

const lacking = (say: (note: string) => void) => (characters: readonly string[]) =>
  say(`its letters lack ${characters.join(' ')}: a box stands for each`);

function layerFiles(
  named: Named,
  { drawing, mirrored, isTracing }: DrawnTemplate,
  request: SheetsRequest,
  format: MachineFormat,
): JobFile[] {
  // A machine language has no layers.
  if (format === 'hpgl') return [];
  const kerf_mm = isTracing ? undefined : request.kerf_mm;
  const layers = request.layers ?? usualLayers(isTracing);
  const options = { layers, mirrored, kerf_mm };
  const make = async (say: (note: string) => void): Promise<string> => {
    for (const note of kerfNotes(drawing, kerf_mm ?? 0)) say(note);
    return format === 'svg' ? patternSvg(drawing, options) : patternDxf(drawing, options);
  };
  return [{ name: layerFileName(named, format, { kerf_mm, layers }), make }];
}

async function bedFiles(
  named: Named,
  { source, drawing, mirrored }: DrawnTemplate,
  request: SheetsRequest & { readonly machine: MachineProfile },
  format: MachineFormat,
): Promise<JobFile[]> {
  const { machine, thickness_mm } = request;
  const { min_mm, max_mm } = source.job.leather.outside;
  const found =
    request.leather === null ? null : kerfFor(machine, request.leather, thickness_mm ?? (min_mm + max_mm) / 2);
  if (request.leather !== null && found === null)
    throw new RangeError(`${machine.name} has no kerf of the leather “${request.leather}”. Name one of its table.`);
  const kerf_mm = request.kerf_mm ?? found?.kerf_mm ?? 0;
  const face = machine.words === 'strokes' ? await loadFace('singleLine') : null;
  const plan = machinePlan(drawing, machine, { mirrored, kerf_mm, face });
  return plan.beds.map((bed) => ({
    name: bedFileName(named, format, { machine: machine.name, kerf_mm, bed: bed.number, beds: plan.beds.length }),
    make: async (say) => {
      if (bed.number === 1) for (const note of plan.notes) say(note);
      if (bed.number === 1 && plan.lacking.length > 0) say(`single lines cannot draw ${plan.lacking.join(' ')}`);
      return bedFile(plan, bed, format, machine.dxf);
    },
  }));
}

/** The layout of every leather, as the page lays it out. */
function layoutFiles(
  design: CoverDesign,
  { drawn, paper }: SheetsRequest,
  format: 'pdf' | 'svg' | 'dxf',
  block: TitleBlock,
  own: readonly string[],
): JobFile[] {
  const { name, work } = design.job;
  const isMirrored = drawn.mirrored;
  const sheetName = typeof paper === 'string' ? paper : 'A4';
  return leathersToLay(design).map(({ leather, question: { outlines, hide, clearance }, isOwned }) => ({
    name: layoutName(name, format, {
      leather,
      isMirrored,
      nth: own[0],
      paper: format === 'pdf' ? sheetName : '',
    }),
    make: async (say) => {
      const layout = layOut(outlines, hide, clearance);
      if (layout.unplaced.length > 0) say(`no place was found for ${layout.unplaced.join(', ').toLowerCase()}`);
      const source = { name, leather, units: work.units, hide, layout, isAssumed: !isOwned, isMirrored };
      const sheet = layoutSheet(source);
      if (format === 'svg') return layoutSvg(sheet);
      if (format === 'dxf') return layoutDxf(sheet);
      return layoutPdf(sheet, { paper: sheetName, block, onLacking: lacking(say) });
    },
  }));
}
