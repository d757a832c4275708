import { Bench } from 'tinybench';
import { coverDesign, EXAMPLE_JOBS, parseJob } from '../src/core/index.ts';
import { patternDrawing } from '../src/core/pattern/patternDrawing.ts';
import { patternDxf } from '../src/output/dxf/patternDxf.ts';
import { patternPdf } from '../src/output/pdf/patternPdf.ts';
import { patternSvg } from '../src/output/svg/patternSvg.ts';
import { printTable } from './table.ts';

const parsed = (document: unknown) => {
  const result = parseJob(document);
  if (!result.ok) throw new Error(result.issues[0]?.message);
  return result.job;
};

const bench = new Bench({ time: 500 });
const tide = parsed(EXAMPLE_JOBS[0].document);
const largest = parsed({
  ...(EXAMPLE_JOBS[0].document as object),
  book: { width_mm: 1000, height_mm: 1500, thickness_mm: 300 },
  seam: { pitch_mm: 1 },
});
for (const [name, job] of [
  ['tide ledger', tide],
  ['largest book, pitch 1 mm', largest],
] as const) {
  const design = coverDesign(job);
  const drawing = patternDrawing(design);
  bench.add(`drawing, ${name}, ${drawing.holes} holes`, () => patternDrawing(design));
  bench.add(`SVG, ${name}`, () => patternSvg(drawing));
  bench.add(`DXF, ${name}`, () => patternDxf(drawing));
  bench.add(`PDF on A4, ${name}`, () => patternPdf(patternDrawing(design)));
}
await bench.run();
printTable(bench);
