import { lettersOf } from '../../artwork/faces/lettersOf.ts';
import { loadFace } from '../../artwork/faces/loadFace.ts';
import { coverDesign, type Job, type JobRecord } from '../../core/index.ts';
import { benchSheetPdf } from '../../output/benchSheet/benchSheetPdf.ts';
import { draftingSheet } from '../../output/draftingSheet/draftingSheet.ts';
import { draftingSheetPdf } from '../../output/draftingSheet/draftingSheetPdf.ts';
import { patternDxf } from '../../output/dxf/patternDxf.ts';
import { fileName } from '../../output/fileName.ts';
import { kerfNotes } from '../../output/kerf.ts';
import { kerfFor } from '../../output/machine/kerfFor.ts';
import { bedFile, type MachineFormat } from '../../output/machine/machineFile.ts';
import { machinePlan } from '../../output/machine/machinePlan.ts';
import type { MachineProfile } from '../../output/machine/machineProfile.ts';
import { coverModel } from '../../output/model/coverModel.ts';
import { patternPdf } from '../../output/pdf/patternPdf.ts';
import { patternSvg } from '../../output/svg/patternSvg.ts';
import { cardWords, type DrawnTemplate, drawnCards, drawnTemplate } from '../../output/template/drawnTemplate.ts';
import { bedFileName, layerFileName, templateName, usualLayers } from '../../output/template/templateName.ts';
import { type TitleSource, titleBlock } from '../../output/titleBlock.ts';
import type { PaperKind, SheetsRequest } from './sheetsRequest.ts';

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
  const template = drawnTemplate(design, request.drawn, faces);
  const { date, address, paper, bars, machine } = request;
  const own = nth === 1 ? [] : [String(nth)];
  const named = { job: job.name, isTracing: template.isTracing, variants: [...own, ...template.variants] };
  const block = (sheet: string, source: TitleSource['design']) =>
    titleBlock({ sheet, job, design: source, document, date, address });
  const flat = typeof paper === 'string' && (paper === 'A4' || paper === 'Letter') ? paper : 'A4';

  const papers: Record<PaperKind, () => JobFile> = {
    template: () => ({
      name: templateName(named, paper, bars),
      make: (say) =>
        patternPdf(template.drawing, {
          paper,
          mirrored: template.mirrored,
          bars,
          block: block(template.isTracing ? 'Tracings' : 'Template', template.source),
          onLacking: lacking(say),
        }),
    }),
    bench: () => ({
      name: fileName(job.name, 'bench-sheet.pdf', [...own, flat]),
      make: (say) =>
        benchSheetPdf(design, { paper: flat, block: block('Bench sheet', design), onLacking: lacking(say) }),
    }),
    drafting: () => ({
      name: fileName(job.name, 'drafting-sheet.pdf', [...own, ...cardWords(request.drawn), flat]),
      make: (say) => {
        const { source, drawing } = drawnCards(design, request.drawn);
        const sheet = draftingSheet(source, drawing);
        return draftingSheetPdf(sheet, {
          paper: flat,
          block: block('Drafting sheet', source),
          onLacking: lacking(say),
        });
      },
    }),
  };
  const model = (kind: 'packed' | 'usdz', ending: string): JobFile => ({
    name: fileName(job.name, ending, own),
    make: async () => coverModel(job, kind, faces),
  });

  const files: JobFile[] = [];
  for (const format of request.formats)
    switch (format) {
      case 'pdf':
        files.push(...request.papers.map((each) => papers[each]()));
        break;
      case 'glb':
        files.push(model('packed', 'glb'));
        break;
      case 'usdz':
        files.push(model('usdz', 'usdz'));
        break;
      default:
        files.push(
          ...(machine === null || template.isTracing
            ? layerFiles(named, template, request, format)
            : await bedFiles(named, template, { ...request, machine }, job, format)),
        );
    }
  return files;
}

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
  { drawing, mirrored }: DrawnTemplate,
  request: SheetsRequest & { readonly machine: MachineProfile },
  { leather }: Job,
  format: MachineFormat,
): Promise<JobFile[]> {
  const { machine, thickness_mm } = request;
  const { min_mm, max_mm } = leather.outside;
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
