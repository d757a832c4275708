import { FACE_CHOICES } from '../../../artwork/faces/loadFace.ts';
import { type Artwork, MOST_LETTERS, type MovableDesign, type ToolingDesign } from '../../../core/index.ts';
import { Choice } from '../../fields/Choice.tsx';
import { optionsOf } from '../../fields/optionsOf.ts';
import { PlainField } from '../../fields/PlainField.tsx';
import { useDraft } from '../../fields/useDraft.ts';
import { DesignFigure } from './DesignFigure.tsx';
import { PictureFields } from './PictureFields.tsx';
import { useToolingEdits } from './useTooling.ts';

interface DesignFieldsProps<Design extends ToolingDesign = ToolingDesign> {
  readonly index: number;
  readonly design: Design;
}

/** The fields of the design in hand. */
export function DesignFields({
  index,
  design,
  artwork,
}: DesignFieldsProps & { readonly artwork: Artwork | undefined }) {
  switch (design.kind) {
    case 'border':
      return <BorderFields index={index} design={design} />;
    case 'title':
      return (
        <>
          <TitleFields index={index} design={design} />
          <PlacingFields index={index} design={design} />
        </>
      );
    case 'drawing':
      return (
        <>
          {artwork !== undefined && <PictureFields artwork={artwork} />}
          <DesignFigure index={index} design={design} at="width_mm" />
          <PlacingFields index={index} design={design} />
        </>
      );
  }
}

function BorderFields({ index, design }: DesignFieldsProps<Extract<ToolingDesign, { kind: 'border' }>>) {
  const { change } = useToolingEdits();
  return (
    <>
      <Choice
        path={`tooling.designs.${index}.lines`}
        title="Lines"
        options={[
          { value: '1', label: 'one' },
          { value: '2', label: 'two' },
        ]}
        chosen={String(design.lines)}
        choose={(value) => change(index, { lines: Number(value) })}
      />
      <Choice
        path={`tooling.designs.${index}.corners`}
        title="Corners of the border"
        options={optionsOf(['square', 'rounded', 'notched'])}
        chosen={design.corners}
        choose={(corners) => change(index, { corners })}
      />
      <DesignFigure index={index} design={design} at="inset_mm" />
      {design.lines === 2 && <DesignFigure index={index} design={design} at="gap_mm" />}
      {design.corners !== 'square' && <DesignFigure index={index} design={design} at="corner_mm" />}
    </>
  );
}

function TitleFields({ index, design }: DesignFieldsProps<Extract<ToolingDesign, { kind: 'title' }>>) {
  const { change } = useToolingEdits();
  const path = `tooling.designs.${index}.text`;
  const words = useDraft(path, design.text, String, readWords, (text) => change(index, { text }, path));
  return (
    <>
      <PlainField
        path={path}
        title="Words"
        help={`Up to ${MOST_LETTERS} letters, in one line.`}
        text={words.text}
        change={words.change}
        issues={words.issues}
      />
      <Choice
        path={`tooling.designs.${index}.face`}
        title="Letters"
        options={FACE_CHOICES.map(({ id, title }) => ({ value: id, label: title.toLowerCase() }))}
        chosen={design.face === '' ? FACE_CHOICES[0]!.id : design.face}
        choose={(face) => change(index, { face })}
      />
      <Choice
        path={`tooling.designs.${index}.reading`}
        title="Reads"
        options={optionsOf(['across', 'down', 'up'])}
        chosen={design.reading}
        choose={(reading) => change(index, { reading })}
      />
      <DesignFigure index={index} design={design} at="height_mm" />
    </>
  );
}

function readWords(text: string) {
  if (text.trim() === '')
    return { ok: false, message: 'A title needs a letter: type one, or take the title out.', remedy: '' } as const;
  if (text.length > MOST_LETTERS)
    return { ok: false, message: `${text.length} letters are too many: ${MOST_LETTERS} at most.`, remedy: '' } as const;
  return { ok: true, value: text, understood: text } as const;
}

/** Where a title or drawing stands, and its copies. */
function PlacingFields({ index, design }: DesignFieldsProps<MovableDesign>) {
  const { change } = useToolingEdits();
  const { columns, rows } = design.repeat;
  return (
    <>
      <DesignFigure index={index} design={design} at="x_mm" />
      <DesignFigure index={index} design={design} at="y_mm" />
      <DesignFigure index={index} design={design} at="turn_deg" />
      <label className="tick">
        <input
          type="checkbox"
          checked={design.mirrored}
          onChange={({ target }) => change(index, { mirrored: target.checked })}
        />
        Mirrored
      </label>
      <details open={columns * rows > 1}>
        <summary>Repeat</summary>
        <DesignFigure index={index} design={design} at="repeat.columns" />
        {columns > 1 && <DesignFigure index={index} design={design} at="repeat.stepX_mm" />}
        <DesignFigure index={index} design={design} at="repeat.rows" />
        {rows > 1 && <DesignFigure index={index} design={design} at="repeat.stepY_mm" />}
      </details>
    </>
  );
}
