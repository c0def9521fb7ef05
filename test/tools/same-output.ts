/**
 * Compares what two checkouts say of the same files: `npm run same-output -- OTHER`, both built. Over samples, corpus
 * and fixtures: findings in every format, packs, the pages of all rules, comparisons, single states.
 */
import { execFile } from 'node:child_process';
import { mkdtempSync, readdirSync } from 'node:fs';
import { readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join, posix, resolve, sep } from 'node:path';
import { promisify } from 'node:util';
import { KNOWN_DIFFERENCES } from './known-differences.ts';

const run = promisify(execFile);
const [other] = process.argv.slice(2);
if (other === undefined) throw new Error('name the other checkout');
const PROGRAMS = [other, '.'].map((folder) => resolve(folder, 'server', 'dist', 'cli.js'));
const AT_ONCE = 2;
const SHOWN_LINES = 3;

const FILES = ['samples', 'test/corpus', 'test/rules'].flatMap((folder) =>
  readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((file) => file.endsWith('.yaml'))
    .map((file) => posix.join(folder, file.split(sep).join('/')))
    .toSorted(),
);
const SITES = FILES.filter((file) => file.endsWith('.dewsite.yaml'));
const FOLDERS = [...new Set(FILES.map((file) => posix.dirname(file)))];

const STATES = [
  ['air-temperature=60 degC', 'relative-humidity=85 %RH', 'pressure=99 kPa'],
  ['air-temperature=-12 degC', 'dew-point=-20 degC', 'pressure=1013 hPa'],
  ['air-temperature=140 degC', 'mixing-ratio=0.4 kg/kg', 'pressure=101.3 kPa'],
  ['air-temperature=25 degC', 'wet-bulb=18 degC', 'pressure=80 kPa'],
  ['dew-point=74 degC', 'relative-humidity=90 %RH', 'pressure=101.3 kPa'],
  ['air-temperature=20 degC', 'relative-humidity=120 %RH', 'pressure=101.3 kPa'],
];

function calls(): readonly (readonly string[])[] {
  const pairs = SITES.flatMap((site) => {
    const fixed = site.replace('.dewsite.yaml', '.fixed.dewsite.yaml');
    return FILES.includes(fixed) ? [[site, fixed]] : [];
  });
  return [
    ...FOLDERS.flatMap((folder) => ['text', 'json', 'sarif'].map((format) => ['check', folder, '--format', format])),
    ...SITES.flatMap((site) => ['html', 'md'].map((format) => ['report', site, '--out', `pack.${format}`])),
    ...pairs.flatMap((pair) => ['text', 'json'].map((format) => ['compare', ...pair, '--format', format])),
    ...STATES.map((state) => ['calc', ...state]),
    ...STATES.map((state) => ['calc', ...state, '--format', 'json']),
  ];
}

/** What a call prints, or the pack that it writes. */
async function outputOf(program: string, call: readonly string[]): Promise<string> {
  const [command, file, , pack] = call;
  if (command !== 'report' || file === undefined || pack === undefined) return printed(program, call);
  const folder = mkdtempSync(join(tmpdir(), 'same-output-'));
  const told = await printed(program, [command, file, '--out', join(folder, pack)]);
  const written = await readFile(join(folder, pack), 'utf8').catch(() => 'no pack\n');
  await rm(folder, { recursive: true });
  return `${written}${told.replaceAll(folder, '')}`;
}

async function printed(program: string, call: readonly string[]): Promise<string> {
  const options = { maxBuffer: 1 << 28, encoding: 'utf8' as const };
  try {
    const { stdout, stderr } = await run(process.execPath, [program, ...call], options);
    return `${stdout}${stderr}`;
  } catch (error) {
    const { stdout = '', stderr = '', code } = error as { stdout?: string; stderr?: string; code?: unknown };
    return `${stdout}${stderr}exit status ${code}\n`;
  }
}

/** The pages of all rules, quantities and keys. */
async function explanations(): Promise<readonly (readonly string[])[]> {
  const list = await outputOf(join('server', 'dist', 'cli.js'), ['explain']);
  const names = [...list.matchAll(/^ {2}([a-z][a-z.-]*)/gm)].map(([, name = '']) => name);
  return [[], ...names.map((name) => [name])].map((rest) => ['explain', ...rest]);
}

const faults = new Map<string, number>();
let compared = 0;
let different = 0;

async function compare(call: readonly string[]): Promise<void> {
  const [before = '', after = ''] = await Promise.all(PROGRAMS.map((program) => outputOf(program, call)));
  compared += 1;
  if (before === after) return;
  let [old, young] = [before, after];
  const touched: string[] = [];
  for (const { fault, without } of KNOWN_DIFFERENCES) {
    const [oldRest, youngRest] = [without(old), without(young)];
    if (oldRest !== old || youngRest !== young) touched.push(fault);
    [old, young] = [oldRest, youngRest];
  }
  if (old === young) {
    for (const fault of touched) count(fault);
    return;
  }
  different += 1;
  console.log(`DIFFERENT: ${call.join(' ')}`);
  for (const line of changedLines(old, young)) console.log(`  ${line.slice(0, 240)}`);
}

function count(fault: string): void {
  faults.set(fault, (faults.get(fault) ?? 0) + 1);
}

/** Lines that only one of two texts has; those of HTML and JSON are long, and their parts are shown. */
function changedLines(before: string, after: string): readonly string[] {
  const parts = /\n|(?<=>)(?=<)|(?<=,)(?=[{"])/;
  const [old, young] = [new Set(before.split(parts)), new Set(after.split(parts))];
  const gone = [...old].filter((line) => !young.has(line)).map((line) => `- ${line}`);
  const come = [...young].filter((line) => !old.has(line)).map((line) => `+ ${line}`);
  if (gone.length + come.length > 0) return [...gone.slice(0, SHOWN_LINES), ...come.slice(0, SHOWN_LINES)];
  return before === after ? [] : ['the order of the lines'];
}

const left = [...calls(), ...(await explanations())];
await Promise.all(
  Array.from({ length: AT_ONCE }, async () => {
    for (let call = left.shift(); call !== undefined; call = left.shift()) await compare(call);
  }),
);
for (const [fault, outputs] of faults) console.log(`${outputs} outputs differ, as they should: ${fault}`);
console.log(`${compared} outputs compared, ${different} with a difference that is not known`);
process.exitCode = different === 0 ? 0 : 1;
