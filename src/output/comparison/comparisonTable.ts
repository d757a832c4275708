import { agreement, type Compared, grouped, isWithin, statedReach } from '../../core/index.ts';

/** One line of the answer: a length of one cover, or some lengths together. */
type Line = readonly [
  row: string,
  cover: string,
  leather: string,
  of: string,
  count: number | null,
  measured_mm: number | null,
  predicted_mm: number | null,
  difference_mm: number,
  rms_mm: number | null,
  stated_mm: number | null,
  within: number | string,
];

/** Columns of the table of compared lengths. A row `all`, `edge` or `leather` sums up: its difference is the bias. */
export const COMPARISON_COLUMNS = [
  'row',
  'cover',
  'leather',
  'of',
  'count',
  'measured_mm',
  'predicted_mm',
  'difference_mm',
  'rms_mm',
  'stated_mm',
  'within',
] as const;

/** Lengths of finished covers as a table: each, and all together, by edge and by leather. */
export function comparisonRows(lengths: readonly Compared[]): readonly Line[] {
  if (lengths.length === 0) return [];
  const sum = (row: string, leather: string, of: string, some: readonly Compared[]): Line => {
    const { count, bias, rms, within } = agreement(some);
    return [row, '', leather, of, count, null, null, round(bias), round(rms), null, within];
  };
  return [
    ...lengths.map((each): Line => {
      const { cover, leather, of, measured, predicted } = each;
      const difference = round(measured - predicted);
      const within = isWithin(each) ? 'yes' : 'no';
      return [
        'length',
        cover,
        leather,
        of,
        null,
        round(measured),
        round(predicted),
        difference,
        null,
        round(statedReach(each)),
        within,
      ];
    }),
    ...grouped(lengths, 'of').map(([name, some]) => sum('edge', '', name, some)),
    ...grouped(lengths, 'leather').map(([name, some]) => sum('leather', name, '', some)),
    sum('all', '', '', lengths),
  ];
}

const round = (value: number): number => Math.round(1000 * value) / 1000;

/** The same in words, for a terminal. */
export function comparisonText(lengths: readonly Compared[], leftOut: readonly string[]): string {
  const covers = new Set(lengths.map(({ cover }) => cover)).size;
  const head = `${lengths.length} lengths of ${covers} covers, measured against predicted, in mm.\n`;
  const tail = leftOut.length === 0 ? '' : `\nLeft out:\n${leftOut.map((line) => `  ${line}\n`).join('')}`;
  if (lengths.length === 0) return `${head}${tail}`;
  const summary = (name: string, some: readonly Compared[]): string[] => {
    const { count, bias, rms, within } = agreement(some);
    return [
      name,
      String(count),
      bias.toFixed(2),
      rms.toFixed(2),
      `${within} of ${count}, ${Math.round((100 * within) / count)} %`,
    ];
  };
  const sums = [
    ['', 'lengths', 'bias', 'RMS', 'within the stated 95 %'],
    ...grouped(lengths, 'of').map(([name, some]) => summary(name, some)),
    ...grouped(lengths, 'leather').map(([name, some]) => summary(`leather: ${name || 'not said'}`, some)),
    summary('all', lengths),
  ];
  const each = [
    ['cover', '', 'measured', 'predicted', 'difference', 'stated ±', ''],
    ...lengths.map((one) => [
      one.cover,
      one.of,
      one.measured.toFixed(1),
      one.predicted.toFixed(1),
      (one.measured - one.predicted).toFixed(1),
      statedReach(one).toFixed(1),
      isWithin(one) ? 'within' : 'outside',
    ]),
  ];
  return `${head}\n${columns(sums, 1)}\n${columns(each, 2)}${tail}`;
}

/** Lines with their cells under each other; from the column `from` on they stand to the right. */
function columns(rows: readonly (readonly string[])[], from: number): string {
  const widths = (rows[0] ?? []).map((_, i) => Math.max(...rows.map((row) => row[i]?.length ?? 0)));
  return rows
    .map((row) =>
      row
        .map((cell, i) => (i < from ? cell.padEnd(widths[i]!) : cell.padStart(widths[i]!)))
        .join('  ')
        .trimEnd(),
    )
    .map((line) => `${line}\n`)
    .join('');
}
