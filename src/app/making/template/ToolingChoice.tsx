import { Choice } from '../../fields/Choice.tsx';
import type { TemplateChoice } from './templateChoice.ts';
import type { TemplateParts } from './templateParts.ts';

const DRAWN = [
  { value: 'pattern', label: 'the pattern' },
  { value: 'tracings', label: 'tracings of the tooling' },
];

const LAID = [
  { value: 'up', label: 'drawn side up, gone over' },
  { value: 'down', label: 'drawn side down, to transfer' },
];

const SHOWN = [
  { value: 'shown', label: 'shown' },
  { value: 'out', label: 'left out' },
];

/** For a job that is tooled: its pattern with the tooling or without it, or tracings of the tooling. */
export function ToolingChoice({
  choice,
  choose,
  isTracing,
  lettersNote,
}: TemplateParts & { readonly lettersNote: string | null }) {
  return (
    <section aria-labelledby="template-tooling">
      <h3 id="template-tooling">Tooling</h3>
      <Choice
        title="Drawn here"
        options={DRAWN}
        chosen={choice.drawn}
        choose={(value) => choose({ drawn: value as TemplateChoice['drawn'] })}
        notes={
          isTracing
            ? [
                'One tracing for each tooled face, in true size for the cut piece. Its rings match the edges of the piece.',
              ]
            : []
        }
      />
      {isTracing ? (
        <Choice
          title="Laid on"
          options={LAID}
          chosen={choice.transferred ? 'down' : 'up'}
          choose={(value) => choose({ transferred: value === 'down' })}
        />
      ) : (
        choice.cards === 'pieces' && (
          <Choice
            title="On the pattern"
            options={SHOWN}
            chosen={choice.hasTooling ? 'shown' : 'out'}
            choose={(value) => choose({ hasTooling: value === 'shown' })}
            notes={choice.hasTooling ? ['The designs and the clear part of each face, with its centre lines.'] : []}
          />
        )
      )}
      {lettersNote !== null && <p className="issue">{lettersNote}</p>}
    </section>
  );
}
