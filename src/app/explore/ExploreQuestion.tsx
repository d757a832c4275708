import { useId } from 'react';
import { capital, EXPLORE_RESULTS, type ExploreField } from '../../core/index.ts';
import { fieldHeading, fieldName } from './fieldWords.ts';

interface ExploreQuestionProps {
  readonly fields: readonly ExploreField[];
  readonly fieldId: string;
  readonly resultId: string;
  readonly onField: (id: string) => void;
  readonly onResult: (id: string) => void;
}

/** The question as a sentence to fill in: a result, and the field that it follows. */
export function ExploreQuestion({ fields, fieldId, resultId, onField, onResult }: ExploreQuestionProps) {
  const id = useId();
  return (
    <p className="explore-question">
      <label htmlFor={`${id}-result`}>How does</label>{' '}
      <select
        id={`${id}-result`}
        data-pick="result"
        value={resultId}
        onChange={(event) => onResult(event.target.value)}
      >
        {grouped(EXPLORE_RESULTS, ({ group }) => group).map(([group, members]) => (
          <optgroup key={group} label={capital(group)}>
            {members.map((result) => (
              <option key={result.id} value={result.id}>
                {result.title}
              </option>
            ))}
          </optgroup>
        ))}
      </select>{' '}
      <label htmlFor={`${id}-field`}>change with</label>{' '}
      <span className="explore-field">
        <select id={`${id}-field`} value={fieldId} onChange={(event) => onField(event.target.value)}>
          {grouped(fields, fieldHeading).map(([heading, members]) => (
            <optgroup key={heading} label={heading}>
              {members.map((field) => (
                <option key={field.id} value={field.id}>
                  {fieldName(field)}
                </option>
              ))}
            </optgroup>
          ))}
        </select>
        ?
      </span>
    </p>
  );
}

function grouped<T>(items: readonly T[], headingOf: (item: T) => string): readonly (readonly [string, readonly T[]])[] {
  const headings = [...new Set(items.map(headingOf))];
  return headings.map((heading) => [heading, items.filter((item) => headingOf(item) === heading)]);
}
