import {
  type BentResults,
  droopTest,
  GIVE_OR_TAKE,
  type LeatherTestResults,
  type LeatherTests,
  leatherTestResults,
  MAKING_STATES,
  type ReadingList,
  type ResultByWay,
  type TestResult,
  WAYS,
} from '../../../core/index.ts';
import { FieldTitle } from '../../fields/Term.tsx';
import { useLengths } from '../../state/BenchContext.tsx';
import { WAY_WORDS } from './stripWords.ts';

interface FindingsProps {
  readonly lists: readonly ReadingList[];
  readonly tests: LeatherTests;
}

interface Line {
  readonly name: string;
  readonly found: (results: LeatherTestResults, bent: BentResults) => ResultByWay | null;
  /** The value and how far it may be off. */
  readonly say: (value: number, giveOrTake: number) => string;
}

/** What the readings of a test say, each figure by how its strips were cut and worked. */
export function Findings({ lists, tests }: FindingsProps) {
  const print = useLengths();
  const share = (decimals: number) => (value: number, off: number) =>
    `${print.share(value, decimals)}, give or take ${print.share(off, decimals)}`;
  const plain = (value: number, off: number): string =>
    `${print.number(value, 2)}, give or take ${print.number(off, 2)}`;
  const LINES: Readonly<Record<ReadingList, readonly Line[]>> = {
    bends: [{ name: 'K factor', found: (_, { neutral }) => neutral, say: plain }],
    folds: [{ name: 'Bend ratio', found: (_, { bendRatio }) => bendRatio, say: plain }],
    droops: [
      {
        name: 'Stiffness, bent a little',
        found: (_, { modulus_MPa }) => modulus_MPa,
        say: (value, off) => `${print.number(value, 0)} MPa, give or take ${print.number(off, 0)}`,
      },
    ],
    changes: [{ name: 'Change of size', found: ({ change }) => change, say: share(1) }],
    creases: [
      { name: 'Kept after a day', found: (_, { creaseSet }) => creaseSet, say: share(0) },
      { name: 'Foretold for a week', found: (_, { creaseSetWeek }) => creaseSetWeek, say: share(0) },
    ],
  };
  const rows = MAKING_STATES.filter((worked) =>
    lists.some((list) => tests[list].some((each) => each.worked === worked)),
  )
    .map((worked) => ({ worked, results: leatherTestResults(tests, { worked }) }))
    .flatMap(({ worked, results }) =>
      (['out', 'in'] as const).flatMap((grain) =>
        lists.flatMap((list) =>
          LINES[list].flatMap(({ name, found, say }) => {
            if (list === 'changes' && grain === 'in') return [];
            const byWay = found(results, grain === 'out' ? results : results.grainIn);
            return WAYS.flatMap((way) => {
              const result = byWay?.[way] ?? null;
              if (result === null) return [];
              const how = [WAY_WORDS[way], `worked ${worked}`, ...(grain === 'in' ? ['grain inside'] : [])].join(', ');
              return [{ key: [name, worked, grain, way].join(' '), name, how, result, say }];
            });
          }),
        ),
      ),
    );
  if (rows.length === 0) return <p className="findings">Not tested yet: what is usual counts.</p>;
  return (
    <div className="findings" role="status">
      <ul>
        {rows.map(({ key, name, how, result, say }) => (
          <li key={key}>
            <strong>
              <FieldTitle title={name} /> {say(result.value, GIVE_OR_TAKE * result.u)}
            </strong>
            <span className="help">
              {' '}
              {how}, {countWords(result)}
            </span>
          </li>
        ))}
      </ul>
      {lists.includes('droops') && <DroopBeside tests={tests} />}
    </div>
  );
}

function countWords({ count, scatter, u, again }: TestResult): string {
  return [
    count === 1 ? 'from one strip' : `from ${count} strips`,
    ...(again.length > 0
      ? ['which contradict each other']
      : scatter > u
        ? ['which differ by more than reading explains']
        : []),
  ].join(' ');
}

/** What the last strip that hung says by other formulas, and at which stretch of the grain. */
function DroopBeside({ tests }: { readonly tests: LeatherTests }) {
  const print = useLengths();
  const answer = tests.droops.map(droopTest).findLast((each) => !('reason' in each));
  if (answer === undefined || 'reason' in answer) return null;
  const { bendingLength_mm, rigidity_Nmm, fabricLength_mm, smallDroopModulus_MPa, density_kg_m3, strain } = answer;
  return (
    <details className="help">
      <summary>The last strip in detail</summary>
      <p>
        The grain stretched by {print.share(strain, 1)} at the edge. Leather is stiffer where it is bent more, as in a
        fold.
      </p>
      <p>
        Bending length {print.length(bendingLength_mm)}, or {print.length(fabricLength_mm)} by the formula of the fabric
        tests (ASTM D1388, ISO 9073-7). Flexural rigidity {print.number(rigidity_Nmm, 1)} N mm for each mm of width.
      </p>
      <p>
        By the formula for small droops it would be {print.number(smallDroopModulus_MPa, 0)} MPa. Density{' '}
        {print.number(density_kg_m3.value, 0)} kg/m³, give or take {print.number(GIVE_OR_TAKE * density_kg_m3.u, 0)}.
      </p>
    </details>
  );
}
