import { type JobDocument, type Patch, SEAM_DEFAULTS, SEAM_STYLES, valueAt } from '../../core/index.ts';
import { ChoiceField } from '../fields/ChoiceField.tsx';
import { FigureField } from '../fields/FigureField.tsx';
import { goToField } from '../fields/goToField.ts';
import { optionsOf } from '../fields/optionsOf.ts';
import { useBench, useBenchStore } from '../state/BenchContext.tsx';
import { PocketShare } from './PocketShare.tsx';
import { PocketTable } from './PocketTable.tsx';

const METHODS = [
  { value: 'stitching', label: 'stitched' },
  { value: 'lacing', label: 'laced' },
];

const CONSTRUCTIONS = [
  { value: 'separate', label: 'separate pieces' },
  { value: 'turned', label: 'turned ends' },
];

const SEATINGS = optionsOf(['centred', 'front', 'back', 'spine']);

type Method = keyof typeof SEAM_STYLES;

/** The style goes with the seam; margin and pitch too, unless the maker chose figures of their own. */
function alongMethod(document: JobDocument): readonly Patch[] {
  const before = SEAM_DEFAULTS[(valueAt(document, 'seam.method') as Method | undefined) ?? 'stitching'];
  const usual = (['edgeMargin_mm', 'pitch_mm'] as const).filter(
    (key) => valueAt(document, `seam.${key}`) === before?.[key],
  );
  // An iron serves one of the two seams.
  return (['style', 'iron', ...usual] as const).map((key) => ({ path: `seam.${key}`, value: undefined }));
}

export function SeamFields() {
  const { getState } = useBenchStore();
  const method = useBench(({ history }) => history.good.job.seam.method);
  const depth = useBench(({ design }) => design.pieces.pocketDepth);
  const stride = useBench(({ history: { good }, lengths }) =>
    good.job.seam.iron === null ? null : lengths.exact(good.job.seam.pitch_mm),
  );
  const styles = optionsOf(SEAM_STYLES[method]);
  return (
    <section aria-label="Seam and pockets">
      <ChoiceField
        path="seam.method"
        title="Seam"
        options={METHODS}
        along={() => alongMethod(getState().history.document)}
      />
      {styles.length > 1 && <ChoiceField path="seam.style" title="Lacing" options={styles} />}
      <FigureField path="seam.edgeMargin_mm" empty="default" />
      {stride === null ? (
        <FigureField path="seam.pitch_mm" empty="default" />
      ) : (
        <p className="help">
          Pitch {stride}, the stride of the iron.{' '}
          <button type="button" className="quiet" onClick={() => goToField('seam.iron')}>
            Change the iron
          </button>
        </p>
      )}
      <FigureField path="seam.cornerRadius_mm" empty="default" />
      <ChoiceField path="pockets.construction" title="Pockets" options={CONSTRUCTIONS} />
      <PocketShare />
      <FigureField path="pockets.depth_mm" empty="decided" decided={depth} title="Pocket depth" />
      <FigureField path="pockets.hold_mm" empty="default" />
      <PocketTable />
      <ChoiceField
        path="seating"
        title="Where the spare wrap goes"
        options={SEATINGS}
        help="Where the spare length goes: shared, pushed to one board, or left at the spine."
      />
    </section>
  );
}
