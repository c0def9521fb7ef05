/**
 * `npm run bench`: how long an edit takes to its diagnostics, and what the rest costs, beside a bare parse of the same
 * file and a generic YAML language server with our schema, all in one run. Prints ratios against the targets and
 * writes them as JSON.
 */
import { execFileSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { availableParallelism, tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { parseDocument } from 'yaml';
import { SERVER_FLAGS } from '../../client/src/server-flags.ts';
import { middleRise, published, pull, timeEdits, timeTyping } from './edits.ts';
import { generateSite, KIT } from './generated-site.ts';
import { OpenDocument, type Server, startServer } from './server-under-test.ts';
import { median, percentile } from './statistics.ts';

const SIZES = [300, 2_000, 10_000, 50_000];
const MIDDLE = 10_000;
const EDITS = 60;
/** An editor is typed into for hours; these take about as long as the few edits that the generic server gets. */
const WARM_UP = 300;
/** The generic server waits this long after an edit before it looks at it. */
const GENERIC_TIMER = 200;
const CLI = resolve('server/dist/cli.js');
const GENERIC = resolve('node_modules/yaml-language-server/bin/yaml-language-server');

interface Row {
  readonly what: string;
  readonly measured: string;
  readonly target: string;
  readonly met: boolean;
}

const folder = mkdtempSync(join(tmpdir(), 'dewright-bench-'));
const uriOf = (name: string): string => pathToFileURL(join(folder, name)).toString();
writeFileSync(join(folder, 'bench.dewkit.yaml'), KIT);
const texts = new Map(SIZES.map((lines) => [lines, generateSite(lines, 'bench.dewkit.yaml')]));
const rows: Row[] = [];
const numbers: Record<string, number> = {};

function row(what: string, value: number, unit: string, limit: number, target: string): void {
  rows.push({ what, measured: `${value.toFixed(value < 10 ? 2 : 1)} ${unit}`, target, met: value <= limit });
}

function note(name: string, value: number): number {
  numbers[name] = Number(value.toPrecision(4));
  return value;
}

async function main(): Promise<void> {
  const bare = new Map(SIZES.map((lines) => [lines, note(`bare parseDocument, ${lines} lines, ms`, bareParse(lines))]));
  const ours = await measureOurs();
  const generic = await measureGeneric();
  row(
    'edit → diagnostics at 10,000 lines, against the generic server less its timer',
    ours.edit / generic.edit,
    '×',
    1 / 40,
    '≤ 1/40 ×',
  );
  row('the same against one bare parseDocument', ours.edit / (bare.get(MIDDLE) ?? 0), '×', 1 / 20, '≤ 1/20 ×');
  row('typing quotes, brackets and block scalars at 10,000 lines, 95th percentile', ours.typing, 'ms', 10, '≤ 10 ms');
  row('50,000 lines against 300 lines', ours.editLarge / ours.editSmall, '×', 2, '≤ 2 ×');
  row('hover after an edit at 10,000 lines', ours.hover, 'ms', 5, '≤ 5 ms');
  row('completion after an edit at 10,000 lines', ours.completion, 'ms', 5, '≤ 5 ms');
  row('quick-fix list after an edit at 10,000 lines', ours.fixes, 'ms', 5, '≤ 5 ms');
  row('the last of 200 edits in a storm, against a single edit', ours.storm / ours.edit, '×', 2, '≤ 2 ×');
  row('memory after opening 10,000 lines, against the generic server', ours.memory / generic.memory, '×', 1, '≤ 1 ×');
  measureCommandLine();
  print();
}

function bareParse(lines: number): number {
  const text = texts.get(lines) ?? '';
  return median(Array.from({ length: 5 }, () => timed(() => parseDocument(text, { merge: true }))));
}

async function measureOurs() {
  const edits = new Map<number, number>();
  for (const lines of SIZES) {
    const { server, document } = await openOurs(lines);
    const diagnose = pull(server, document.uri);
    await timeEdits(document, diagnose, WARM_UP);
    edits.set(
      lines,
      note(`ours: edit → diagnostics, ${lines} lines, ms`, median(await timeEdits(document, diagnose, EDITS))),
    );
    await server.stop();
  }
  const { server, document } = await openOurs(MIDDLE);
  const memory = note('ours: memory after opening 10,000 lines, MB', server.memory());
  const diagnose = pull(server, document.uri);
  await timeEdits(document, diagnose, WARM_UP);
  const typing = note(
    'ours: typing at 10,000 lines, 95th percentile, ms',
    percentile(await timeTyping(document, diagnose), 95),
  );
  const request = async (method: string, extra: object): Promise<number> => {
    const { line, character } = middleRise(document.text);
    const times: number[] = [];
    for (let index = 0; index < EDITS; index++) {
      void document.edit(line, character, character + 1, String(7 + (index % 3)));
      const from = performance.now();
      await server.connection.sendRequest(method, {
        textDocument: { uri: document.uri },
        position: { line, character },
        ...extra,
      });
      times.push(performance.now() - from);
    }
    return note(`ours: ${method} at 10,000 lines, ms`, median(times));
  };
  const hover = await request('textDocument/hover', {});
  const completion = await request('textDocument/completion', {});
  const { line, character } = middleRise(document.text);
  const range = { start: { line, character }, end: { line, character } };
  const fixes = await request('textDocument/codeAction', { range, context: { diagnostics: [] } });
  const storms: number[] = [];
  for (let round = 0; round < 5; round++) storms.push(await storm(server, document));
  const result = {
    edit: edits.get(MIDDLE) ?? 0,
    editSmall: edits.get(300) ?? 0,
    editLarge: edits.get(50_000) ?? 0,
    typing,
    hover,
    completion,
    fixes,
    storm: note('ours: last of 200 edits, ms', median(storms)),
    memory,
  };
  await server.stop();
  return result;
}

/** 200 edits as fast as they can be sent; the time from the last of them to its diagnostics. */
async function storm(server: Server, document: OpenDocument): Promise<number> {
  const { line, character } = middleRise(document.text);
  for (let index = 0; index < 199; index++) await document.edit(line, character, character + 1, String(index % 10));
  await new Promise((resolve) => setTimeout(resolve, 20));
  const from = performance.now();
  await document.edit(line, character, character + 1, '8');
  await pull(server, document.uri)();
  return performance.now() - from;
}

async function openOurs(lines: number): Promise<{ server: Server; document: OpenDocument }> {
  const server = await startServer({
    command: [...SERVER_FLAGS, CLI, 'serve', '--stdio'],
    folder: uriOf(''),
    pulls: true,
  });
  const document = new OpenDocument(
    server,
    uriOf(`site-${lines}.dewsite.yaml`),
    'dewright-site',
    texts.get(lines) ?? '',
  );
  await pull(server, document.uri)();
  return { server, document };
}

async function measureGeneric() {
  const schema = pathToFileURL(resolve('schemas/dewsite.schema.json')).toString();
  const yaml = {
    schemas: { [schema]: '*.dewsite.yaml' },
    schemaStore: { enable: false },
    validate: true,
    hover: true,
    completion: true,
  };
  let edit = 0;
  let memory = 0;
  for (const lines of SIZES) {
    const server = await startServer({
      command: [GENERIC, '--stdio'],
      folder: uriOf(''),
      pulls: false,
      configuration: (section) => (section === 'yaml' ? yaml : null),
      settings: { yaml },
    });
    const uri = uriOf(`site-${lines}.dewsite.yaml`);
    const diagnose = published(server, uri);
    const opened = diagnose();
    const document = new OpenDocument(server, uri, 'yaml', texts.get(lines) ?? '');
    await opened;
    const opening = server.memory();
    const count = lines > MIDDLE ? 5 : 15;
    const time = median(await timeEdits(document, diagnose, count)) - GENERIC_TIMER;
    note(`generic: edit → diagnostics less its timer, ${lines} lines, ms`, time);
    if (lines === MIDDLE) {
      edit = time;
      memory = note('generic: memory after opening 10,000 lines, MB', opening);
    }
    await server.stop();
  }
  return { edit, memory };
}

function measureCommandLine(): void {
  const single = join(folder, 'single.dewsite.yaml');
  writeFileSync(single, generateSite(120, 'bench.dewkit.yaml', 'single'));
  const run = (...args: readonly string[]): number =>
    timed(() => execFileSync(process.execPath, [...args], { stdio: 'ignore' }));
  const [bareNode, check] = [
    ['-e', ''],
    [CLI, 'check', single, '--fail-on', 'never'],
  ].map((args) => median(Array.from({ length: 15 }, () => run(...args)))) as [number, number];
  note("node -e '', ms", bareNode);
  note('check of one file, whole process, ms', check);
  row("check of one file, whole process, against node -e ''", check / bareNode, '×', 2.5, '≤ 2.5 ×');
  const many = join(folder, 'many');
  mkdirSync(many);
  writeFileSync(join(many, 'bench.dewkit.yaml'), KIT);
  for (let index = 0; index < 2000; index++) {
    writeFileSync(
      join(many, `site-${index}.dewsite.yaml`),
      generateSite(120, 'bench.dewkit.yaml', `site-${index}`, index * 3),
    );
  }
  const baseline = resolve('.cache', 'parse-many.mjs');
  writeFileSync(baseline, PARSE_MANY);
  const parse = note(
    'reading and parsing 2,000 files with yaml on two workers, ms',
    median([1, 2, 3].map(() => run(baseline, many))),
  );
  const checkMany = note(
    'check of 2,000 files, ms',
    median([1, 2, 3].map(() => run(CLI, 'check', many, '--fail-on', 'never'))),
  );
  row(
    `check of 2,000 files on ${availableParallelism()} threads, against reading and parsing them with yaml on two`,
    checkMany / parse,
    '×',
    1.3,
    '≤ 1.3 ×',
  );
}

/** What the check of many files is held against: nothing but reading and parsing, on two threads. */
const PARSE_MANY = `
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { isMainThread, Worker, workerData } from 'node:worker_threads';
import { parseDocument } from 'yaml';
if (isMainThread) {
  const folder = process.argv[2];
  const files = readdirSync(folder).map((file) => join(folder, file));
  for (const share of [0, 1]) new Worker(fileURLToPath(import.meta.url), { workerData: files.filter((_, at) => at % 2 === share) });
} else {
  for (const file of workerData) parseDocument(readFileSync(file, 'utf8'), { merge: true });
}
`;

function timed(work: () => unknown): number {
  const from = performance.now();
  work();
  return performance.now() - from;
}

function print(): void {
  const width = Math.max(...rows.map(({ what }) => what.length));
  for (const { what, measured, target, met } of rows) {
    console.log(`${met ? 'met ' : 'MISS'} ${what.padEnd(width)} ${measured.padStart(10)}   target ${target}`);
  }
  console.log();
  for (const [name, value] of Object.entries(numbers))
    console.log(`     ${name.padEnd(width)} ${String(value).padStart(10)}`);
  mkdirSync('.cache', { recursive: true });
  writeFileSync('.cache/bench.json', `${JSON.stringify({ rows, numbers }, undefined, 1)}\n`);
  console.log('\nwritten to .cache/bench.json');
}

try {
  await main();
} finally {
  rmSync(folder, { recursive: true, force: true });
}
