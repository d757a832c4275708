import { degreesFromRadians, fieldNote, radians, slitAngle, valueAt } from '../../core/index.ts';
import { Choice } from '../fields/Choice.tsx';
import { ChoiceField } from '../fields/ChoiceField.tsx';
import { FigureField } from '../fields/FigureField.tsx';
import { fieldIssues } from '../fields/fieldState.ts';
import { useBench } from '../state/BenchContext.tsx';

const words = (values: readonly string[]) => values.map((value) => ({ value, label: value }));

/** Size that a corner takes when it is first rounded or clipped, mm. Common practice, no source. */
const USUAL_CORNER = 6;

/** Corners, mouths, lining and holes of the pieces. */
export function ConstructionFields() {
  const { history, dispatch } = useBench();
  const { document, good } = history;
  const { job } = good;
  const { cornerRadius_mm: radius, method } = job.seam;
  const corners = String(valueAt(document, 'construction.corners') ?? (radius > 0 ? 'rounded' : 'square'));
  const isCurved = (valueAt(document, 'construction.mouth') ?? 'straight') === 'curved';
  const isLined = job.leather.lining !== null;
  const isFull = valueAt(document, 'construction.lining') === 'full';
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
        title={fieldNote('construction.corners').title}
        options={words(['square', 'rounded', 'clipped'])}
        chosen={corners}
        choose={chooseCorners}
        notes={fieldIssues(history, 'construction.corners')}
      />
      {corners !== 'square' && <FigureField path="seam.cornerRadius_mm" empty="default" title="Corner size" />}
      <ChoiceField
        path="construction.mouth"
        title={fieldNote('construction.mouth').title}
        options={words(['straight', 'curved'])}
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
      {method === 'stitching' ? (
        <FigureField path="construction.hole_mm" empty="default" />
      ) : (
        <>
          <FigureField path="construction.slitWidth_mm" empty="default" />
          <FigureField
            path="construction.slitAngle_deg"
            empty="decided"
            decided={degreesFromRadians(radians(slitAngle(job)))}
          />
        </>
      )}
    </section>
  );
}
