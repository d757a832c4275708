import { lazy, useMemo, useState } from 'react';
import { KNIFE } from '../../../core/index.ts';
import { fitToPage, type Paper } from '../../../output/pdf/paper.ts';
import { BAR_LENGTH, percent } from '../../../output/pdf/printerScale.ts';
import type { SheetOptions } from '../../../output/pdf/sheetFile.ts';
import { templateName } from '../../../output/template/templateName.ts';
import { Choice } from '../../fields/Choice.tsx';
import { optionsOf } from '../../fields/optionsOf.ts';
import { PlainField } from '../../fields/PlainField.tsx';
import { LatePart } from '../../loading/LatePart.tsx';
import { useBench, useBenchStore } from '../../state/BenchContext.tsx';
import { saveFile } from '../../state/saveFile.ts';
import { sheetBlock } from '../../state/sheetBlock.ts';
import { MakingNote } from '../MakingNote.tsx';
import { useMaking } from '../useMaking.ts';

import type { TemplateChoice } from './templateChoice.ts';
import { templatePages } from './templatePages.ts';
import type { TemplateParts } from './templateParts.ts';

const PrinterPhotograph = lazy(() => import('./PrinterPhotograph.tsx'));

const PAPERS = optionsOf(['A4', 'Letter', 'A3', 'Tabloid', 'A2', 'A1', 'A0', 'roll']);

const STRIPS = [
  { value: 'none', label: 'none' },
  { value: 'printed', label: 'printed' },
];

/** The template on the printer at hand, in true size. */
export function PaperTemplate({
  choice,
  choose,
  settings,
  source,
  onPaper,
  mirrored,
  isTracing,
  isLoading,
  paperVariants,
}: TemplateParts) {
  const design = useBench(({ design }) => design);
  const store = useBenchStore();
  const [isByPhotograph, setByPhotograph] = useState(false);
  const [making, make] = useMaking();
  const { paper, bars, issues, suspicion } = settings;
  const isRefused = paper === null || issues.barX !== undefined || issues.barY !== undefined;
  const plan = useMemo(
    () => (isRefused ? null : templatePages(onPaper, paper!, { bars, mirrored })),
    [isRefused, onPaper, paper, bars, mirrored],
  );
  const save = async (onLacking: SheetOptions['onLacking']): Promise<void> => {
    const { patternPdf } = await import('../../../output/pdf/patternPdf.ts');
    const block = await sheetBlock(store, isTracing ? 'Tracings' : 'Template', { source });
    const file = await patternPdf(onPaper, { paper: paper!, mirrored, bars, block, onLacking });
    const name = templateName({ job: design.job.name, isTracing, variants: paperVariants }, paper!, bars);
    saveFile(name, file, 'application/pdf');
  };
  return (
    <section aria-labelledby="template-paper">
      <h3 id="template-paper">On paper, in true size</h3>
      <Choice
        title="Sheet"
        options={PAPERS}
        chosen={choice.paper}
        choose={(value) => choose({ paper: value as TemplateChoice['paper'] })}
        notes={
          plan === null
            ? []
            : [
                `${plan.pages === 1 ? 'One page, with check bars' : `${plan.pages} pages, the first with check bars`}.${isTracing ? '' : ' A piece cut twice is printed once.'}`,
                ...plan.notes,
              ]
        }
      />
      {choice.paper === 'roll' && (
        <PlainField
          title="Roll width"
          help="Across the roll. All pieces that it is wide enough for come on one page. Without a unit: mm."
          text={choice.roll}
          change={(roll) => choose({ roll })}
          issues={listed(issues.roll)}
        />
      )}
      {!isTracing && (
        <Choice
          title="Hole strips"
          options={STRIPS}
          chosen={choice.strips ? 'printed' : 'none'}
          choose={(value) => choose({ strips: value === 'printed' })}
          notes={
            choice.strips
              ? ['Each straight run of holes as a strip to lay along the cut edge. Sides that are alike share one.']
              : []
          }
        />
      )}
      {paper !== null && <FitToPage paper={paper} />}
      <PlainField
        title="Check bar across (x), as printed"
        help={`From end to end; should be ${BAR_LENGTH} mm. Enter both bars and the next print is corrected. Without a unit: mm.`}
        placeholder="not measured"
        text={choice.barX}
        change={(barX) => choose({ barX })}
        issues={listed(issues.barX)}
      />
      <PlainField
        title="Check bar upright (y), as printed"
        help="Empty both for another printer."
        placeholder="not measured"
        text={choice.barY}
        change={(barY) => choose({ barY })}
        issues={listed(issues.barY)}
      />
      <details className="assumptions" onToggle={(event) => setByPhotograph(event.currentTarget.open)}>
        <summary>Read both bars off a photograph</summary>
        {isByPhotograph && (
          <LatePart name="photograph">
            <PrinterPhotograph
              take={({ x_mm, y_mm }) => choose({ barX: `${x_mm.toFixed(2)} mm`, barY: `${y_mm.toFixed(2)} mm` })}
            />
          </LatePart>
        )}
      </details>
      {!isTracing && <p className="caution">Caution. {KNIFE}</p>}
      {suspicion !== null && <p className="caution">Caution. {suspicion}</p>}
      <button
        type="button"
        className="main"
        disabled={isRefused || isLoading || making.status === 'making'}
        onClick={() => make('PDF', save)}
      >
        Save the {isTracing ? 'tracings' : 'template'} as PDF
      </button>
      <MakingNote making={making} />
    </section>
  );
}

const listed = (issue: string | undefined): readonly string[] => (issue === undefined ? [] : [issue]);

/** How much too small a print becomes that is fitted to the page. */
function FitToPage({ paper }: { readonly paper: Paper }) {
  const fitted = fitToPage(paper);
  return (
    <p className="caution">
      Caution. Print at actual size, 100 %
      {fitted !== null &&
        `: “fit to page” onto ${fitted.onto} paper gives ${percent(fitted.share)}, a cover too small by ${percent(1 - fitted.share)}`}
      . Measure both check bars before anything is cut.
    </p>
  );
}
