#!/usr/bin/env node
/** The command line: which command a call means, and its exit status. */
import { createRequire } from 'node:module';
import { isMainThread } from 'node:worker_threads';
import { version } from '../../../package.json';
import { calc } from './calc.ts';
import { type Call, type CallForm, readCall } from './call.ts';
import { check } from './check.ts';
import { runWorker } from './check-worker.ts';
import { compare } from './compare.ts';
import { explainName } from './explain.ts';
import { fix } from './fix.ts';
import { CallProblem, nearestHint } from './problem.ts';
import { replay } from './replay.ts';
import { report } from './report.ts';

interface Command extends CallForm {
  readonly usage: string;
  readonly about: string;
  /** @returns the exit status, or nothing where the command goes on running */
  run(call: Call): number | undefined | Promise<number>;
}

const COMMANDS: Readonly<Record<string, Command>> = {
  check: {
    usage:
      'check [PATH ...] [--format text|json|sarif|junit|github] [--fail-on error|warning|information|hint|never] [--only RULE] [--shard I/N] [--stdin-as NAME] [--no-color]',
    about: 'checks files and folders (default: here, recursively, what git ignores left out)',
    options: ['format', 'fail-on', 'only', 'shard', 'stdin-as'],
    flags: ['no-color'],
    run: check,
  },
  fix: {
    usage: 'fix [PATH ...] [--choose RULE=N] [--dry-run]',
    about: 'applies safe fixes; --dry-run prints them as a unified diff',
    options: ['choose'],
    flags: ['dry-run'],
    run: fix,
  },
  calc: {
    usage: 'calc KEY=VALUE ... [--format text|json]',
    about:
      "computes one state of moist air from two quantities and a pressure, such as air-temperature='60 degC' relative-humidity='85 %RH' pressure='99 kPa'",
    options: ['format'],
    flags: [],
    run: calc,
  },
  explain: {
    usage: 'explain [NAME] [--no-color]',
    about: 'prints the page of a rule, a quantity or a key; without a name, the list',
    options: [],
    flags: ['no-color'],
    run: explainName,
  },
  report: {
    usage: 'report SITE --out FILE.html|FILE.pdf|FILE.md',
    about:
      'writes the handover pack of a site; a PDF is printed by the Chromium of this machine, or by the one that the environment variable CHROMIUM names',
    options: ['out'],
    flags: [],
    run: report,
  },
  compare: {
    usage: 'compare OLD NEW [--format text|json] [--fail-on error|warning|information|hint|never]',
    about:
      'tells what has changed in meaning between two versions of a site: files, or git revisions as REV:PATH; findings that came count against --fail-on',
    options: ['format', 'fail-on'],
    flags: [],
    run: compare,
  },
  replay: {
    usage:
      'replay LOG --space SPACE [SITE] [--columns KEY=COLUMN,...] [--format text|json] [--fail-on error|warning|information|hint|never]',
    about: 'lays a recording, as CSV or Parquet, against the envelope of a space; being outside it is a warning',
    options: ['space', 'columns', 'format', 'fail-on'],
    flags: [],
    run: replay,
  },
  serve: {
    usage: 'serve --stdio',
    about: 'runs the language server for any editor',
    options: [],
    flags: ['stdio'],
    run: serve,
  },
};

const UNREADABLE = 2;

function serve(call: Call): undefined {
  if (!call.flags.has('stdio'))
    throw new CallProblem('serve: the server speaks over standard input and output; say --stdio');
  // A bundle of its own, so that the other commands need not load the protocol.
  createRequire(__filename)('./server.js');
  return undefined;
}

function help(): string {
  const commands = Object.values(COMMANDS).map(({ usage, about }) => `  dewright ${usage}\n      ${about}`);
  return `dewright checks the site files of humidity measurement points.\n\n${commands.join('\n')}\n  dewright --version\n      prints the version\n\nExit status: 0 nothing at or above --fail-on, 1 findings at or above it, 2 the call or a file could not be read.\n`;
}

async function main(words: readonly string[]): Promise<number | undefined> {
  const [name, ...rest] = words;
  if (name === undefined || name === '--help' || name === '-h' || name === 'help') {
    process.stdout.write(help());
    return name === undefined ? UNREADABLE : 0;
  }
  if (name === '--version') {
    process.stdout.write(`${version}\n`);
    return 0;
  }
  const command = Object.hasOwn(COMMANDS, name) ? COMMANDS[name] : undefined;
  if (command === undefined)
    throw new CallProblem(
      `${name}: not a command${nearestHint(name, Object.keys(COMMANDS))}; dewright --help lists them`,
    );
  if (rest.includes('--help') || rest.includes('-h')) {
    process.stdout.write(`dewright ${command.usage}\n    ${command.about}\n`);
    return 0;
  }
  return command.run(readCall(rest, command));
}

function fail(error: unknown): void {
  const words =
    error instanceof CallProblem ? error.message : 'something went wrong in the program itself; please report it';
  process.stderr.write(`dewright: ${words}\n`);
  process.exitCode = UNREADABLE;
}

if (isMainThread) {
  main(process.argv.slice(2)).then((status) => {
    if (status !== undefined) process.exitCode = status;
  }, fail);
} else {
  runWorker();
}
