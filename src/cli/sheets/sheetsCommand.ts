import { mkdir } from 'node:fs/promises';
import { join } from 'node:path';
import { type OpenedJob, openJob, parseJobText, workedIn } from '../../core/index.ts';
import { type MachineProfile, parseMachineText } from '../../output/machine/machineProfile.ts';
import { today } from '../../output/today.ts';
import { BadInput, badWord } from '../badInput.ts';
import { someJobNames } from '../catalogue/folderRows.ts';
import { isFolder } from '../catalogue/openInput.ts';
import { EXIT } from '../exitCode.ts';
import { readJobText } from '../readJob.ts';
import { readJsonText } from '../readText.ts';
import { command } from '../runCommand.ts';
import type { Terminal } from '../terminal.ts';
import { writeWhole } from '../writeWhole.ts';
import { SHEETS_OPTIONS, sheetsRequest } from './sheetsRequest.ts';

const USAGE = `Writes the papers and machine files of jobs, the same files as the page saves.

  npm run --silent sheets -- job.json --out folder
  npm run --silent sheets -- a.json b.json jobs --to pdf,svg,dxf --out folder     jobs is a folder of .json files
  npm run --silent sheets -- - --out folder < job.json

  --out folder            where the files go; it is made where there is none. An older file of a name is replaced once
                          the new one is whole
  --to pdf,...            pdf, svg, dxf, hpgl, glb, usdz (usual: pdf)
  --sheets template,...   which sheets: template, layout, bench, drafting, tests, covers, photograph (usual: template). Template and
                          layout of the leather come as PDF, SVG and DXF, the others as PDF only: bench and drafting sheet, the
                          strips for tests, a page to write finished covers on, the pages that the book is photographed on
  --paper a4              a4, letter, a3, tabloid, a2, a1, a0, or a roll of a width, as roll:610 or roll:24in (usual: a4);
                          bench and drafting sheet, strips and the pages for photographs are on a4 or letter, a layout to scale on a sheet
  --bars 149.6,150.2      both check bars as an earlier print shows them, level and upright
  --made-in card|leather  what the pattern is for (usual: card)
  --cards pieces|one|half on a card for each piece, on one card, or on half a card (usual: pieces)
  --tooling shown|out     whether the pattern of a tooled job shows its tooling (usual: shown)
  --drawn tracings        tracings of the tooling instead of the pattern
  --strips                the straight runs of holes as strips too, on the template's pages
  --mirrored              seen from the flesh side; tracings with the drawn side down
  --layers cut,hole       layers of SVG and DXF without a machine (usual: all but the tooling areas)
  --profile laser.json    a machine as the page saves it: beds, passes and their order, and its kerf, for SVG, DXF and HPGL
  --leather "calf"        leather of the machine's table whose kerf is allowed for
  --thickness 1.8         its thickness (usual: the middle of the job's leather, or its card)
  --kerf 0.2              width that the beam burns away, instead of the table's; without a machine, too
  --date 2026-11-27       day that the papers bear (usual: today)
  --address https://...   address of the page, for the square code that opens the job; without it there is none
  --units mm|in           unit that a job which names none is worked in (usual: mm)
  --help                  this text

Each file written is a line of standard output; what the maker must know is on standard error, after the file's name. The name of a
second job with the name of another has a 2. Equal jobs, words, date and address give equal files. The customer's page needs
pictures of the cover and is saved by the page only. The fit is not judged. Exit code: 0 written, 2 bad input (each error as "path:
message"; the files of other jobs are written), 3 internal failure, 4 a file could not be written whole.
`;

export const sheetsCommand = command(USAGE, SHEETS_OPTIONS, async (words, terminal) => {
  const out = words.text('out');
  if (out === null) throw badWord('--out', 'nothing', 'the folder that the files go to');
  const units = words.choice('units', ['mm', 'in']);
  const profile = words.text('profile');
  const machine = profile === null ? null : await readMachine(profile, terminal);
  const request = sheetsRequest(words, machine, today());
  const files = await jobFilesNamed(words.someFiles());
  await mkdir(out, { recursive: true }).catch((error: Error) => {
    throw badWord('--out', error.message, 'a folder that can be made');
  });
  // Fetched here, so that other commands start without it.
  const { jobFiles } = await import('./jobFiles.ts');

  const taken = new Set<string>();
  let exit: number = EXIT.noneFails;
  for (const file of files) {
    const prefix = files.length > 1 ? `${file}: ` : '';
    const opened = await open(file, units, terminal);
    if (!opened.ok) {
      exit = EXIT.badInput;
      await terminal.complain(opened.issues, prefix);
      continue;
    }
    try {
      let nth = 1;
      let made = await jobFiles(opened, request, nth);
      while (made.some(({ name }) => taken.has(name))) made = await jobFiles(opened, request, ++nth);
      for (const { name, make } of made) {
        taken.add(name);
        const path = join(out, name);
        const notes: string[] = [];
        await writeWhole(path, () => make((note) => notes.push(note)));
        await terminal.print(`${path}\n`);
        await terminal.say(notes.map((note) => `${path}: ${note}`));
      }
    } catch (error) {
      if (!(error instanceof RangeError)) throw error;
      exit = EXIT.badInput;
      await terminal.say([`${prefix}(job): ${error.message}`]);
    }
  }
  return exit;
});

/**
 * The job files named, and those of the folders named.
 * @throws BadInput for a folder that cannot be read or has none
 */
async function jobFilesNamed(names: readonly string[]): Promise<readonly string[]> {
  const files = await Promise.all(
    names.map(async (name) =>
      name !== '-' && (await isFolder(name).catch(() => false))
        ? (await someJobNames(name)).map((job) => join(name, job))
        : [name],
    ),
  );
  return files.flat();
}

async function open(file: string, units: 'mm' | 'in' | null, terminal: Terminal): Promise<OpenedJob> {
  const read = await readJobText(file, terminal.input);
  if (!read.ok) return { ok: false, issues: [read.issue] };
  const parsed = parseJobText(read.text, units);
  return parsed.ok ? openJob(workedIn(JSON.parse(read.text.replace(/^\uFEFF/, '')), units)) : parsed;
}

/** Largest file of a machine, in bytes. */
const MAX_MACHINE_BYTES = 1_000_000;

async function readMachine(file: string, terminal: Terminal): Promise<MachineProfile> {
  const read = await readJsonText(file, MAX_MACHINE_BYTES, terminal.input);
  if (!read.ok) throw new BadInput([read.issue]);
  const parsed = parseMachineText(read.text);
  if (!parsed.ok) throw new BadInput(parsed.issues.map((issue) => ({ ...issue, path: `${file}: ${issue.path}` })));
  return parsed.profile;
}
