#!/usr/bin/env node
/** The command line: which command a call means, and its exit status. */
import { createRequire } from 'node:module';
import { isMainThread } from 'node:worker_threads';
import { version } from '../../../package.json';
import { calc } from './calc.ts';
import { type Call, type CallForm, type CallOption, readCall } from './call.ts';
import { check } from './check.ts';
import { runWorker } from './check-worker.ts';
import { compare } from './compare.ts';
import { explainName } from './explain.ts';
import { fix } from './fix.ts';
import { CallProblem, failureWords, nearestHint } from './problem.ts';
import { replay } from './replay.ts';
import { report } from './report.ts';

interface Command extends CallForm {
  readonly usage: string;
  readonly about: string;
  /** @returns the exit status, or nothing where the command goes on running */
  run(call: Call): number | undefined | Promise<number>;
}

const FORMAT: CallOption = { takes: 'text|json', does: 'for people or for programs [text]' };
const FAIL_ON: CallOption = {
  takes: 'error|warning|information|hint|never',
  does: 'ends with 1 where a finding is as severe as that or more [error]',
};
const NO_COLOR = 'without colours, as the environment variable NO_COLOR asks for too';

const COMMANDS: Readonly<Record<string, Command>> = {
  check: {
    usage: 'check [PATH ...]',
    about: 'checks files and folders; without a path this folder, but for what git ignores',
    options: {
      format: { takes: 'text|json|sarif|junit|github', does: 'for people, programs or build servers [text]' },
      'fail-on': FAIL_ON,
      only: { takes: 'RULE', does: 'applies this rule alone' },
      shard: { takes: 'I/N', does: 'checks the I-th of N parts of the files, on one of N machines' },
      'stdin-as': { takes: 'NAME', does: 'checks what comes over standard input as the file of that name' },
    },
    flags: { 'no-color': NO_COLOR },
    run: check,
  },
  fix: {
    usage: 'fix [PATH ...]',
    about: 'makes the safe fixes',
    options: { choose: { takes: 'RULE=N', does: 'also makes the N-th of the fixes that findings of this rule offer' } },
    flags: { 'dry-run': 'prints the edits as a unified diff and writes nothing' },
    run: fix,
  },
  calc: {
    usage: 'calc KEY=VALUE ...',
    about:
      "computes one state of moist air from two quantities and a pressure: air-temperature='60 degC' relative-humidity='85 %RH' pressure='99 kPa'",
    options: { format: FORMAT },
    flags: {},
    run: calc,
  },
  explain: {
    usage: 'explain [NAME]',
    about: 'prints the page of a rule, a quantity or a key; without a name, the list',
    options: {},
    flags: { 'no-color': NO_COLOR },
    run: explainName,
  },
  report: {
    usage: 'report SITE --out FILE',
    about: 'writes the handover pack of a site',
    options: {
      out: {
        takes: 'FILE.html|FILE.pdf|FILE.md',
        does: 'where to; a PDF is printed by the Chromium of this machine, or the one that the variable CHROMIUM names',
      },
    },
    flags: {},
    run: report,
  },
  compare: {
    usage: 'compare OLD NEW',
    about: 'tells what has changed in meaning between two versions of a site: files, or git revisions as REV:PATH',
    options: {
      format: FORMAT,
      'fail-on': { ...FAIL_ON, does: 'ends with 1 where a new finding is as severe [error]' },
    },
    flags: {},
    run: compare,
  },
  replay: {
    usage: 'replay LOG --space SPACE [SITE]',
    about: 'lays a recording, as CSV or Parquet, against the envelope of a space; being outside it is a warning',
    options: {
      space: { takes: 'SPACE', does: 'the space that was recorded, by its name in the site' },
      columns: { takes: 'KEY=COLUMN,...', does: 'which column holds what, such as air-temperature=T1,dew-point=Td' },
      format: FORMAT,
      'fail-on': FAIL_ON,
    },
    flags: {},
    run: replay,
  },
  serve: {
    usage: 'serve --stdio',
    about: 'runs the language server for any editor',
    options: {},
    flags: { stdio: 'speaks over standard input and output' },
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
  return `dewright checks the site files of humidity measurement points.

${commands.join('\n')}
  dewright COMMAND --help
      lists the options of a command
  dewright --version
      prints the version

Exit status: 0 nothing at or above --fail-on, 1 findings at or above it, 2 the call or a file could not be read.
`;
}

function helpOf({ usage, about, options, flags }: Command): string {
  const lines = [
    ...Object.entries(options).map(([name, { takes, does }]) => `  --${name} ${takes}\n      ${does}`),
    ...Object.entries(flags).map(([name, does]) => `  --${name}\n      ${does}`),
  ];
  return `dewright ${usage}\n    ${about}\n${lines.map((line) => `${line}\n`).join('')}`;
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
    process.stdout.write(helpOf(command));
    return 0;
  }
  return command.run(readCall(rest, command));
}

function fail(error: unknown): void {
  process.stderr.write(`dewright: ${failureWords(error)}\n`);
  process.exitCode = UNREADABLE;
}

/** Whoever reads the output may stop reading: `dewright check | head`. */
function endQuietlyWithReader(error: NodeJS.ErrnoException): void {
  if (error.code === 'EPIPE') process.exit();
  throw error;
}

if (isMainThread) {
  process.stdout.on('error', endQuietlyWithReader);
  main(process.argv.slice(2)).then((status) => {
    if (status !== undefined) process.exitCode = status;
  }, fail);
} else {
  runWorker();
}
