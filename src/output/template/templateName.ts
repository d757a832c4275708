import type { Layer } from '../../core/index.ts';
import { usualLayers } from '../cuttingFile.ts';
import { fileName } from '../fileName.ts';
import type { Paper } from '../pdf/paper.ts';
import type { MeasuredBars } from '../pdf/printerScale.ts';
import type { DrawnTemplate } from './drawnTemplate.ts';

/** What a file of a template is named by. */
interface Named extends Pick<DrawnTemplate, 'isTracing' | 'variants'> {
  /** Name of the job. */
  readonly job: string;
}

/** Thousandths of a millimetre at most, as the names of files have them. */
const tidy = (value: number): string => String(Math.round(value * 1000) / 1000);

/** Name of the PDF of a template or of tracings on a paper; a print corrected for its printer is another file. */
export function templateName({ job, isTracing, variants }: Named, paper: Paper, bars?: MeasuredBars): string {
  const sheet = typeof paper === 'string' ? paper : `roll ${tidy(paper.roll_mm)} mm`;
  const corrected = bars === undefined ? '' : `bars ${tidy(bars.x_mm)} ${tidy(bars.y_mm)}`;
  return fileName(job, isTracing ? 'pdf' : 'template.pdf', [...variants, sheet, corrected]);
}

/** Name of a cutting file by layers; one with fewer or more of them than usual says which. */
export function layerFileName(
  { job, isTracing, variants }: Named,
  ending: 'svg' | 'dxf',
  { kerf_mm, layers }: { readonly kerf_mm?: number; readonly layers: readonly Layer[] },
): string {
  const usual = usualLayers(isTracing);
  const out = usual.filter((layer) => !layers.includes(layer));
  const more = layers.filter((layer) => !usual.includes(layer));
  const only = layers.length < out.length;
  return fileName(job, ending, [
    ...variants,
    kerf_mm === undefined ? '' : `kerf ${tidy(kerf_mm)} mm`,
    only ? `only ${layers.join(' ')}` : [...more.map((layer) => `with ${layer}`)].join(' '),
    only || out.length === 0 ? '' : `without ${out.join(' ')}`,
  ]);
}

/** Name of the file of one bed of a machine. */
export const bedFileName = (
  { job, variants }: Named,
  ending: string,
  {
    machine,
    kerf_mm,
    bed,
    beds,
  }: { readonly machine: string; readonly kerf_mm: number; readonly bed: number; readonly beds: number },
): string => fileName(job, ending, [...variants, machine, `kerf ${tidy(kerf_mm)} mm`, beds > 1 ? `bed ${bed}` : '']);
