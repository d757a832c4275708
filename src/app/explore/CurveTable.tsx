import { EXPLORE_RESULTS, type SweepPoint } from '../../core/index.ts';
import { useLengths } from '../state/BenchContext.tsx';
import { fieldName } from './fieldWords.ts';
import { bareText, fieldFigure, resultFigure } from './figure.ts';
import type { Answered } from './useExplored.ts';

/** Rows at most, the present job's not counted. */
const ROWS = 25;

const ENDS = ['thin', 'nominal', 'thick'] as const;

const END_WORDS = { thin: 'Thin', nominal: 'Middle', thick: 'Thick' };

const partsOf = (point: SweepPoint) => ('issue' in point ? [] : point.readings[0]!.parts);

/** The chart in figures: evenly spaced values of the field, and the present job. */
export function CurveTable({
  answered: { question, answer },
  overlayName,
}: {
  answered: Answered<'curve'>;
  overlayName: string;
}) {
  const lengths = useLengths();
  const result = EXPLORE_RESULTS.find(({ id }) => id === question.resultId)!;
  const { field, points } = answer.curve;
  const [across, upright] = [fieldFigure(field, lengths), resultFigure(result, lengths)];
  const every = Math.ceil(points.length / ROWS);
  const rows = points.filter(({ at }, i) => i % every === 0 || at === field.present);
  const ends = result.isRange ? ENDS : (['thick'] as const);
  const over = new Map(answer.overlay?.points.map((point) => [point.at, point]));
  const cell = (point: SweepPoint | undefined, end: (typeof ENDS)[number]): string => {
    const value = point === undefined || 'issue' in point ? null : point.readings[0]!.values[end];
    return value === null ? '–' : bareText(value, upright);
  };
  const partCell = (point: SweepPoint, name: string): string => {
    const part = partsOf(point).find((each) => each.name === name);
    return part === undefined ? '–' : bareText(part.length_mm, upright);
  };
  const parts = [...new Set(points.flatMap((point) => partsOf(point).map(({ name }) => name)))];
  const units = (unit: string): string => (unit === '' ? '' : `, ${unit}`);
  return (
    <details className="explore-table">
      <summary>The same in figures</summary>
      <table>
        <caption>
          {result.title}
          {units(upright.unit)}
        </caption>
        <thead>
          <tr>
            <th scope="col">
              {fieldName(field)}
              {units(across.unit)}
            </th>
            {ends.map((end) => (
              <th key={end} scope="col">
                {result.isRange ? END_WORDS[end] : result.title}
              </th>
            ))}
            {parts.map((name) => (
              <th key={name} scope="col">
                {name}
              </th>
            ))}
            {answer.overlay !== null && <th scope="col">{overlayName}, thick</th>}
            <th scope="col">Cover</th>
          </tr>
        </thead>
        <tbody>
          {rows.map((point) => (
            <tr key={point.at} className={point.at === field.present ? 'present' : undefined}>
              <th scope="row">
                {bareText(point.at, across)}
                {point.at === field.present && ' this job'}
              </th>
              {ends.map((end) => (
                <td key={end}>{cell(point, end)}</td>
              ))}
              {parts.map((name) => (
                <td key={name}>{partCell(point, name)}</td>
              ))}
              {answer.overlay !== null && <td>{cell(over.get(point.at), 'thick')}</td>}
              <td>{'issue' in point ? `not a job: ${point.issue.allowed}` : point.state}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </details>
  );
}
