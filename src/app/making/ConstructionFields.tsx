import { degreesFromRadians, fieldNote, radians, slitAngle } from '../../core/index.ts';
import { Choice } from '../fields/Choice.tsx';
import { ChoiceField } from '../fields/ChoiceField.tsx';
import { FigureField } from '../fields/FigureField.tsx';
import { useFieldIssues, useWritten } from '../fields/fieldState.ts';
import { optionsOf } from '../fields/optionsOf.ts';
import { useBench, useDispatch } from '../state/BenchContext.tsx';

/** Size that a corner takes when it is first rounded or clipped, mm. Common practice, no source. */
const USUAL_CORNER = 6;

/** Corners, mouths, lining and holes of the pieces. */
export function ConstructionFields() {
  const dispatch = useDispatch();
  const { radius, method, isLined, isByIron, slit } = useBench(({ history: { good } }) => ({
    radius: good.job.seam.cornerRadius_mm,
    method: good.job.seam.method,
    isLined: good.job.leather.lining !== null,
    isByIron: good.job.seam.iron !== null,
    slit: degreesFromRadians(radians(slitAngle(good.job))),
  }));
  const corners = String(useWritten('construction.corners') ?? (radius > 0 ? 'rounded' : 'square'));
  const cornerIssues = useFieldIssues('construction.corners');
  const isCurved = (useWritten('construction.mouth') ?? 'straight') === 'curved';
  const isFull = useWritten('construction.lining') === 'full';
  const chooseCorners = (value: string): void => {
    const needsSize = value !== 'square' && radius === 0;
    dispatch({
      type: 'edit',
      patches: [
        ...(needsSize ? [{ path: 'seam.cornerRadius_mm', value: USUAL_CORNER } as const] : []),
        { path: 'construction.corners', value },
      ],
    });
  };
  return (
    <section aria-labelledby="piece-fields">
      <h3 id="piece-fields">Pieces</h3>
      <Choice
        path="construction.corners"
        title={fieldNote('construction.corners').title}
        options={optionsOf(['square', 'rounded', 'clipped'])}
        chosen={corners}
        choose={chooseCorners}
        notes={cornerIssues}
      />
      {corners !== 'square' && <FigureField path="seam.cornerRadius_mm" empty="default" title="Corner size" />}
      <ChoiceField
        path="construction.mouth"
        title={fieldNote('construction.mouth').title}
        options={optionsOf(['straight', 'curved'])}
      />
      {isCurved && <FigureField path="construction.mouthCurve" empty="default" />}
      {isLined || isFull ? (
        <ChoiceField
          path="construction.lining"
          title={`${fieldNote('construction.lining').title} reaches over`}
          options={[
            { value: 'centre', label: 'the centre' },
            { value: 'full', label: 'the whole outside' },
          ]}
        />
      ) : (
        <p className="help">No lining. Choose one under Leather to decide how far it reaches.</p>
      )}
      {isByIron ? null : method === 'stitching' ? (
        <FigureField path="construction.hole_mm" empty="default" />
      ) : (
        <>
          <FigureField path="construction.slitWidth_mm" empty="default" />
          <FigureField path="construction.slitAngle_deg" empty="decided" decided={slit} />
        </>
      )}
    </section>
  );
}
