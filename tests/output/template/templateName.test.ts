import { expect, test } from 'vitest';
import { LAYERS } from '../../../src/core/pattern/drawing.ts';
import { usualLayers } from '../../../src/output/cuttingFile.ts';
import { bedFileName, layerFileName, templateName } from '../../../src/output/template/templateName.ts';

const sides = [[], ['mirrored']];
const patterns = [
  ['card'],
  ['leather'],
  ['card', 'one card'],
  ['card', 'half card'],
  ['card', 'with tooling'],
  ['card', 'strips'],
];
const drawings = sides.flatMap((side) => [
  ...patterns.map((variants) => ({ job: 'Tide ledger', isTracing: false, variants: [...variants, ...side] })),
  { job: 'Tide ledger', isTracing: true, variants: ['tracings', ...side] },
]);

test('no two variants of a job have a name in common', () => {
  const papers = ['A4', 'Letter', { roll_mm: 610 }, { roll_mm: 609.6 }] as const;
  const bars = [undefined, { x_mm: 149.5, y_mm: 150 }, { x_mm: 150, y_mm: 149.5 }];
  const kerfs = [undefined, 0, 0.2, 0.25];
  const names = drawings.flatMap((drawing) => {
    const usual = usualLayers(drawing.isTracing);
    const layers = [usual, LAYERS, usual.slice(1), usual.slice(0, 1), ['cut', 'hole'], ['cut', 'area']] as const;
    return [
      ...papers.flatMap((paper) => bars.map((measured) => templateName(drawing, paper, measured))),
      ...(['svg', 'dxf'] as const).flatMap((ending) =>
        kerfs.flatMap((kerf_mm) =>
          [...new Map(layers.map((each) => [each.join(), each])).values()].map((each) =>
            layerFileName(drawing, ending, { kerf_mm, layers: each }),
          ),
        ),
      ),
      ...[1, 2].map((bed) => bedFileName(drawing, 'svg', { machine: 'Quay laser', kerf_mm: 0.2, bed, beds: 2 })),
    ];
  });
  expect(new Set(names).size).toBe(names.length);
});

test('a file with the usual layers says nothing of them', () => {
  const drawing = { job: 'Tide ledger', isTracing: false, variants: ['card'] };
  expect(layerFileName(drawing, 'svg', { layers: usualLayers(false) })).toBe('tide-ledger-card.svg');
  expect(layerFileName(drawing, 'dxf', { layers: ['cut'], kerf_mm: 0.2 })).toBe(
    'tide-ledger-card-kerf-0.2-mm-only-cut.dxf',
  );
});
