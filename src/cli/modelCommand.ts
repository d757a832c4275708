import { BadInput, badWord } from './badInput.ts';
import { EXIT } from './exitCode.ts';
import { readJob } from './readJob.ts';
import { command } from './runCommand.ts';
import { writeWhole } from './writeWhole.ts';

const USAGE = `Writes the 3D model of a job, in metres and in its true size.

  npm run --silent model -- job.json --out cover.glb     glTF binary, with the making as an animation
  npm run --silent model -- job.json --out cover.usdz    USDZ, the closed cover at rest
  npm run --silent model -- - --out cover.glb < job.json

  --out file    where it goes, by its ending; an older file there is replaced once the new one is whole
  --plain       a GLB that is not packed, for programs that cannot unpack EXT_meshopt_compression
  --help        this text

The fit is not judged. Exit code: 0 written, 2 bad input (each error on standard error as "path: message"), 3 internal
failure, 4 the file could not be written whole; an older one is then left as it was.
`;

const OPTIONS = { out: { type: 'string' }, plain: { type: 'boolean' } } as const;

export const modelCommand = command(USAGE, OPTIONS, async (words, terminal) => {
  const files = words.someFiles();
  if (files.length > 1) throw badWord('(files)', `${files.length} files`, 'one job file, or -');
  const out = words.text('out');
  if (out === null) throw badWord('--out', 'nothing', 'a file that ends in .glb or .usdz');
  const ending = /\.(glb|usdz)$/i.exec(out)?.[1]?.toLowerCase();
  if (ending === undefined) throw badWord('--out', out, 'a file that ends in .glb or .usdz');
  if (ending === 'usdz' && words.has('plain')) throw badWord('--plain', 'a file in USDZ', 'it with .glb only');
  const parsed = await readJob(files[0]!, null, terminal.input);
  if (!parsed.ok) throw new BadInput(parsed.issues);
  const { job } = parsed;
  // Fetched here, so that other commands start without it.
  const [{ coverModel }, { lettersOf }] = await Promise.all([
    import('../output/model/coverModel.ts'),
    import('../artwork/faces/lettersOf.ts'),
  ]);
  const kind = ending === 'usdz' ? 'usdz' : words.has('plain') ? 'plain' : 'packed';
  await writeWhole(out, async () => coverModel(job, kind, await lettersOf(job.tooling.designs)));
  return EXIT.noneFails;
});
