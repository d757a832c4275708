import { fieldNote, type LeatherName } from '../../core/index.ts';
import { Choice } from '../fields/Choice.tsx';
import { ChoiceField } from '../fields/ChoiceField.tsx';
import { ColourField } from '../fields/ColourField.tsx';
import { FigureField } from '../fields/FigureField.tsx';
import { useWritten } from '../fields/fieldState.ts';
import { optionsOf } from '../fields/optionsOf.ts';
import { useBench, useDispatch } from '../state/BenchContext.tsx';

const SURFACES = optionsOf(['matt', 'satin', 'glossy']);
const EDGES = optionsOf(['raw', 'burnished', 'painted']);
const METALS = optionsOf(['brass', 'nickel', 'black']);
const POCKET_FINISHES = [
  { value: 'same', label: 'as the outside' },
  { value: 'own', label: 'another' },
];

/** Colours and finish of leather, edges, seam and fittings: of what the cover has. */
export function FinishFields() {
  const dispatch = useDispatch();
  const hasPocket = (useWritten('finish.pocket') ?? null) !== null;
  const { finish, leather, pockets, seam, construction } = useBench(({ history }) => history.good.job);
  const { colour, surface } = finish.outside;
  const { strap, ribbon } = construction;
  return (
    <section aria-labelledby="finish-fields">
      <h3 id="finish-fields">Colour and finish</h3>
      <p className="help">For the picture, the papers and the 3D model. A colour here names no dye.</p>
      <div className="field-group">
        <SkinFields piece="outside" name="Outside" />
        {pockets.construction === 'separate' && (
          <Choice
            path="finish.pocket"
            title="Pocket finish"
            options={POCKET_FINISHES}
            chosen={hasPocket ? 'own' : 'same'}
            choose={(value) =>
              dispatch({
                type: 'edit',
                patches: [{ path: 'finish.pocket', value: value === 'own' ? { colour, surface } : undefined }],
              })
            }
          />
        )}
        {hasPocket && <SkinFields piece="pocket" name="Pocket" />}
        {leather.lining !== null && <SkinFields piece="lining" name="Lining" />}
      </div>
      <div className="field-group">
        <ChoiceField path="finish.edge" title={fieldNote('finish.edge').title} options={EDGES} />
        {finish.edge === 'painted' && <ColourField path="finish.edgeColour" />}
      </div>
      <div className="field-group">
        {seam.method === 'lacing' ? (
          <ColourField path="finish.lace" />
        ) : (
          <>
            <ColourField path="finish.thread" />
            <FigureField path="finish.thread_mm" empty="default" />
          </>
        )}
        {ribbon !== null && <ColourField path="finish.ribbon" />}
        {strap !== null && strap.fastening !== 'magnet' && (
          <ChoiceField path="finish.metal" title={fieldNote('finish.metal').title} options={METALS} />
        )}
      </div>
    </section>
  );
}

function SkinFields({ piece, name }: { readonly piece: LeatherName; readonly name: string }) {
  return (
    <>
      <ColourField path={`finish.${piece}.colour`} title={`${name} colour`} />
      <ChoiceField path={`finish.${piece}.surface`} title={`${name} surface`} options={SURFACES} />
    </>
  );
}
