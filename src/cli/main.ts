import { createReadStream, statSync } from 'node:fs';
import process from 'node:process';
import type { Readable } from 'node:stream';
import { fitReport } from '../core/fit.ts';
import { createElasticSolvers } from '../core/fold/elasticFit.ts';
import { type JobIssue, jobIssue } from '../core/job/jobIssue.ts';
import { MAX_JOB_CHARACTERS, type ParsedJob, parseJobText } from '../core/job/parseJob.ts';
import { type Arguments, parseArguments, USAGE } from './arguments.ts';
import { EXIT } from './exitCode.ts';
import { oneLine } from './oneLine.ts';

type Read = { readonly ok: true; readonly text: string } | { readonly ok: false; readonly issue: JobIssue };

/** Reads a whole stream as text, but gives up past the size that any job may have. */
async function readStream(stream: Readable): Promise<string> {
  const chunks: Buffer[] = [];
  let size = 0;
  for await (const chunk of stream) {
    chunks.push(chunk as Buffer);
    size += (chunk as Buffer).length;
    if (size > 4 * MAX_JOB_CHARACTERS) break;
  }
  return Buffer.concat(chunks).toString('utf8');
}

async function read(name: string): Promise<Read> {
  try {
    if (name === '-') return { ok: true, text: await readStream(process.stdin) };
    if (statSync(name).isDirectory())
      return refused(name, 'a folder', 'a job file', 'name the job files in it one by one');
    return { ok: true, text: await readStream(createReadStream(name)) };
  } catch (error) {
    const code = (error as NodeJS.ErrnoException).code;
    const got = code === 'ENOENT' ? 'no such file' : code === 'EACCES' ? 'a file that may not be read' : String(code);
    return refused(name, got, 'a job file that can be read', 'check the name and the place');
  }
}

const refused = (name: string, got: string, allowed: string, remedy: string): Read => ({
  ok: false,
  issue: jobIssue('unreadable', '(file)', `${got}: ${name}`, allowed, remedy),
});

function complain(issues: readonly JobIssue[], prefix: string): void {
  for (const { path, message } of issues) process.stderr.write(`${oneLine(`${prefix}${path}: ${message}`)}\n`);
}

async function run({ files, units, strip }: Arguments): Promise<number> {
  const isMany = files.length > 1;
  const solvers = strip ? createElasticSolvers() : undefined;
  let exit: number = EXIT.fits;
  for (const file of files) {
    const prefix = isMany ? `${file}: ` : '';
    const content = await read(file);
    const parsed: ParsedJob = content.ok ? parseJobText(content.text, units) : { ok: false, issues: [content.issue] };
    if (!parsed.ok) {
      complain(parsed.issues, prefix);
      exit = EXIT.badInput;
      continue;
    }
    const report = fitReport(parsed.job, { solvers });
    process.stdout.write(`${JSON.stringify(report, null, isMany ? undefined : 2)}\n`);
    if (report.verdict === 'fails') exit = Math.max(exit, EXIT.fails);
  }
  return exit;
}

async function main(): Promise<number> {
  const parsed = parseArguments(process.argv.slice(2));
  if (!parsed.ok) {
    process.stderr.write(`${parsed.message}\n`);
    return EXIT.badInput;
  }
  if (parsed.arguments.help) {
    process.stdout.write(USAGE);
    return EXIT.fits;
  }
  return run(parsed.arguments);
}

// A reader that stops early, as `head` does, is not a failure of the command.
process.stdout.on('error', () => process.exit(EXIT.fits));

main().then(
  (code) => {
    process.exitCode = code;
  },
  (error: unknown) => {
    process.stderr.write(`internal failure: ${error instanceof Error ? error.message : String(error)}\n`);
    process.exitCode = EXIT.internal;
  },
);
