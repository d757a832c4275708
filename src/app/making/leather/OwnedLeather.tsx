import {
  hideOf,
  type JobDocument,
  type JobPath,
  type LeatherName,
  polygonArea,
  type Vec2,
} from '../../../core/index.ts';
import { Choice } from '../../fields/Choice.tsx';
import { FigureField } from '../../fields/FigureField.tsx';
import { useWritten } from '../../fields/fieldState.ts';
import { useBench, useDispatch, useLengths } from '../../state/BenchContext.tsx';
import { DefectFields } from './DefectFields.tsx';
import { LEATHER_TITLES } from './leatherTitles.ts';
import { PolygonField } from './PolygonField.tsx';

const OWNED = [
  { value: 'none', label: 'none entered' },
  { value: 'sheet', label: 'a rectangle' },
  { value: 'hide', label: 'an outlined hide' },
];

/** The piece of one leather that the maker owns: a rectangle by its size, or a hide by its outline, with its defects. */
export function OwnedLeather({ leather }: { readonly leather: LeatherName }) {
  const dispatch = useDispatch();
  const lengths = useLengths();
  const path = `hides.${leather}` as const;
  const owned = (useWritten(path) ?? null) as JobDocument | null;
  const sheet = useBench(({ history }) => history.good.job.hides[leather]);
  const outline = (owned?.outline ?? null) as readonly Vec2[] | null;
  const kind = owned === null ? 'none' : outline === null ? 'sheet' : 'hide';
  const choose = (value: string): void => {
    const put = (to: JobPath, what: unknown) => ({ path: to, value: what });
    const asSheet: Vec2[] = [
      [0, 0],
      [sheet?.width_mm ?? 600, 0],
      [sheet?.width_mm ?? 600, sheet?.height_mm ?? 600],
      [0, sheet?.height_mm ?? 600],
    ];
    const patches =
      value === 'none'
        ? [put(path, undefined)]
        : [...(owned === null ? [put(path, {})] : []), put(`${path}.outline`, value === 'hide' ? asSheet : undefined)];
    dispatch({ type: 'edit', patches });
  };
  const title = LEATHER_TITLES[leather];
  return (
    <section aria-labelledby={`owned-${leather}`}>
      <h3 id={`owned-${leather}`}>{title}</h3>
      <Choice path={path} title="Leather owned" options={OWNED} chosen={kind} choose={choose} />
      {kind === 'sheet' && (
        <>
          <FigureField path={`${path}.width_mm`} empty="default" />
          <FigureField path={`${path}.height_mm`} empty="default" />
        </>
      )}
      {outline !== null && (
        <PolygonField
          title="Outline"
          help={`Corners round the edge in order, flesh side up: x; y in ${lengths.units === 'in' ? 'inches' : 'mm'}, one a line. Two lines: opposite corners of a rectangle.`}
          path={`${path}.outline`}
          polygon={outline}
          put={(polygon) =>
            dispatch({ type: 'edit', key: `${path}.outline`, patches: [{ path: `${path}.outline`, value: polygon }] })
          }
        />
      )}
      {owned !== null && (
        <>
          {sheet !== null && (
            <p className="help">Area: {lengths.area(polygonArea(hideOf(sheet).outline))} in all, defects included.</p>
          )}
          <FigureField path={`${path}.backbone_deg`} empty="default" />
          <DefectFields path={`${path}.defects`} />
        </>
      )}
    </section>
  );
}
