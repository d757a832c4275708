import { useDeferredValue, useMemo, useState } from 'react';
import {
  type Artwork,
  type CoverDesign,
  type DesignWarning,
  designName,
  designWarnings,
  FACE_TITLES,
  homelessDesigns,
  type LetterFaces,
  type PlacedDesign,
  patternDrawing,
  placedDesign,
  placeWords,
  TOOLING_FACES,
  type ToolingArea,
  type ToolingDesign,
  type ToolingFace,
  toolingAreas,
  warningWords,
} from '../../../core/index.ts';
import { Choice } from '../../fields/Choice.tsx';
import { FigureField } from '../../fields/FigureField.tsx';
import { useWidth } from '../../sheet/useExtent.ts';
import { useLengths } from '../../state/BenchContext.tsx';
import type { Bench } from '../../state/bench.ts';
import { lagging } from '../../state/lagging.tsx';
import { useLetterFaces } from '../../state/useLetterFaces.ts';
import { Panel } from '../PanelParts.tsx';
import { AddDesign } from './AddDesign.tsx';
import { DesignList } from './DesignList.tsx';
import { FaceDesigns } from './FaceDesigns.tsx';
import { FaceSheet, sheetView, useFaceAt } from './FaceSheet.tsx';
import './tooling.css';
import { useDesignDrag } from './useDesignDrag.ts';
import { useTooling, useToolingEdits } from './useTooling.ts';

/** What is tooled on the finished cover: one face at a time, its designs moved by hand, and their fields. */
function ToolingPanel({ design }: Pick<Bench, 'design'>) {
  const areas = useMemo(() => toolingAreas(design), [design]);
  const tooling = useTooling();
  const [face, setFace] = useState<ToolingFace>('front');
  const [chosen, choose] = useState<number | null>(null);
  const area = areas.find((each) => each.face === face) ?? areas[0];
  const { faces, note } = useLetterFaces(tooling.designs);
  const here = useMemo(
    () => tooling.designs.flatMap((each, index) => (each.area === area?.face ? [{ index, design: each }] : [])),
    [tooling.designs, area?.face],
  );
  if (area === undefined)
    return <p>This cover lies flat nowhere, so nothing can be tooled on it. Check the measures of the book.</p>;
  return (
    <FacePanel
      design={design}
      area={area}
      areas={areas}
      designs={here}
      tooling={tooling}
      faces={faces}
      lettersNote={note}
      chosen={here.some(({ index }) => index === chosen) ? chosen : null}
      choose={choose}
      showFace={(next) => {
        setFace(next);
        choose(null);
      }}
    />
  );
}

interface FacePanelProps {
  readonly design: CoverDesign;
  readonly area: ToolingArea;
  readonly areas: readonly ToolingArea[];
  readonly designs: readonly { readonly index: number; readonly design: ToolingDesign }[];
  readonly tooling: ReturnType<typeof useTooling>;
  readonly faces: LetterFaces;
  readonly lettersNote: string | null;
  readonly chosen: number | null;
  readonly choose: (index: number | null) => void;
  readonly showFace: (face: ToolingFace) => void;
}

/** Highest and lowest that a sheet is drawn, and what stands over it at its place, px. */
const [HIGHEST, LOWEST, OVER_IT] = [680, 320, 290];

/** The sheet is in sight as a whole, so that a design is dragged without scrolling. */
const highest = (): number => Math.max(LOWEST, Math.min(HIGHEST, window.innerHeight - OVER_IT));

function FacePanel(props: FacePanelProps) {
  const { design, area, areas, tooling, faces, lettersNote, chosen, choose, showFace } = props;
  const { artworks, line_mm: line } = tooling;
  const lengths = useLengths();
  const [room, wide] = useWidth<HTMLDivElement>();
  const drawing = useMemo(() => patternDrawing(design), [design]);
  const view = sheetView(area, Math.max(200, wide), highest());
  const [sheet, faceAt] = useFaceAt(area, view);
  const hand = useDesignDrag({ area, units: lengths.units, scale: view.scale, faceAt });
  const { held } = hand;
  const isPocket = area.face === 'frontPocket' || area.face === 'backPocket';
  const designs = useMemo(
    () => props.designs.map((each) => (each.index === held?.index ? { ...each, design: held.design } : each)),
    [props.designs, held],
  );
  const known = useKnown(useDeferredValue(designs), area, artworks, faces);
  const inHand = designs.find(({ index }) => index === (held?.index ?? chosen));
  const notesOf = (index: number): readonly string[] => {
    const { placed, warnings } = known.get(index) ?? { placed: null, warnings: [] };
    if (placed === null) return [];
    const lacking = lettersNote === null || placed.design.kind !== 'title' ? placed.lacking : [];
    return [
      ...lacking.map((what) => `Not all of it is there: ${what}.`),
      ...warnings.map((warning) => warningWords(placed.design, warning, lengths)),
    ];
  };
  return (
    <Panel
      name="Tooling"
      fields={
        <>
          <section aria-labelledby="face-designs">
            <h3 id="face-designs">On the {FACE_TITLES[area.face].toLowerCase()}</h3>
            {designs.length === 0 && (
              <p className="help">
                Nothing yet. A border runs along the edges. A title or initials are typed. A drawing of your own comes
                from an SVG, PNG or JPEG file.
              </p>
            )}
            <DesignList
              designs={props.designs.map((each) => ({ ...each, notes: notesOf(each.index) }))}
              artworks={artworks}
              chosen={chosen}
              choose={(index) => choose(index === chosen ? null : index)}
            />
            <AddDesign area={area} count={tooling.designs.length} added={choose} />
          </section>
          <HomelessDesigns design={design} artworks={artworks} />
          <MarginFields />
        </>
      }
    >
      <Choice
        title="Face of the finished cover"
        options={TOOLING_FACES.filter((face) => areas.some((each) => each.face === face)).map((face) => ({
          value: face,
          label: FACE_TITLES[face].toLowerCase(),
        }))}
        chosen={area.face}
        choose={(value) => showFace(value as ToolingFace)}
      />
      <div ref={room} className="face-room">
        <div ref={sheet}>
          <FaceSheet
            area={area}
            drawing={drawing}
            view={view}
            label={`${FACE_TITLES[area.face]} in true proportion, as it is seen on the finished cover`}
            lit={held?.lines ?? [null, null]}
            warnings={inHand === undefined ? [] : (known.get(inHand.index)?.warnings ?? [])}
          >
            <FaceDesigns
              area={area}
              designs={designs}
              artworks={artworks}
              faces={faces}
              line={line}
              px={1 / view.scale}
              chosen={chosen}
              choose={choose}
              isWarned={(index) => (known.get(index)?.warnings.length ?? 0) > 0}
              hand={hand}
            />
          </FaceSheet>
        </div>
      </div>
      <p className="place-line" role="status">
        {inHand !== undefined && `${designName(inHand.design, artworks)}: ${placeWords(inHand.design, lengths)}.`}
      </p>
      {lettersNote !== null && <p className="help">{lettersNote}</p>}
      <p className="help">
        {area.clear === null
          ? 'The margins leave no clear part here: make them smaller.'
          : `Clear part: ${lengths.length(area.clear.x[1] - area.clear.x[0])} wide, ${lengths.length(area.clear.y[1] - area.clear.y[0])} high. Chain lines: the middle of the face as it is seen on the ${isPocket ? 'open' : 'closed'} book.${area.piece === 'outside' && !isPocket ? ' Short dashes: the boards.' : ''}`}
      </p>
    </Panel>
  );
}

interface Known {
  readonly placed: PlacedDesign;
  readonly warnings: readonly DesignWarning[];
}

/** Each design as it is placed, with its warnings, by its place in the list. */
function useKnown(
  designs: FacePanelProps['designs'],
  area: ToolingArea,
  artworks: readonly Artwork[],
  faces: LetterFaces,
): ReadonlyMap<number, Known> {
  return useMemo(
    () =>
      new Map(
        designs.map(({ index, design }) => {
          const placed = placedDesign(design, area, artworks, faces);
          return [index, { placed, warnings: designWarnings(placed, area) }];
        }),
      ),
    [designs, area, artworks, faces],
  );
}

/** Designs on faces that the cover no longer has, as a strap taken off. */
function HomelessDesigns({
  design,
  artworks,
}: {
  readonly design: CoverDesign;
  readonly artworks: readonly Artwork[];
}) {
  const { change } = useToolingEdits();
  const homeless = homelessDesigns(design);
  if (homeless.length === 0) return null;
  return (
    <section aria-labelledby="homeless-designs">
      <h3 id="homeless-designs">On faces that this cover does not have</h3>
      <ul className="design-list">
        {homeless.map((each) => {
          const index = design.job.tooling.designs.indexOf(each);
          return (
            <li key={index}>
              <p>
                {designName(each, artworks)}, on the {FACE_TITLES[each.area].toLowerCase()}: not tooled.
              </p>
              <p className="design-acts">
                <button type="button" className="quiet" onClick={() => change(index, { area: 'front' })}>
                  Move to the front
                </button>
                <button type="button" className="quiet" onClick={() => change(index, null)}>
                  Take out
                </button>
              </p>
            </li>
          );
        })}
      </ul>
    </section>
  );
}

/** How far designs keep off, and the lines of the tool. */
const MarginFields = () => (
  <>
    <section aria-labelledby="tooling-margins">
      <h3 id="tooling-margins">Margins</h3>
      <FigureField path="tooling.margins.head_mm" empty="default" title="At the head" />
      <FigureField path="tooling.margins.tail_mm" empty="default" title="At the tail" />
      <FigureField path="tooling.margins.foreEdge_mm" empty="default" title="At the fore-edge" />
      <FigureField path="tooling.margins.spine_mm" empty="default" title="At the spine" />
      <FigureField path="tooling.margins.narrow_mm" empty="default" title="Across spine and strap" />
    </section>
    <section aria-labelledby="tooling-lines">
      <h3 id="tooling-lines">Lines</h3>
      <FigureField path="tooling.line_mm" empty="default" />
      <FigureField path="tooling.depth_mm" empty="default" />
    </section>
  </>
);

export default lagging(({ design }) => ({ design }), ToolingPanel);
