import { mkdirSync, readFileSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { systemDay } from '../../server/src/analysis/today.ts';
import { isKnown, showFact } from '../../server/src/evaluate/facts/fact.ts';
import { copyOfSamples, type Run, runIn, temporaryFolder } from './built-program.ts';
import { analysisOf, readSample, SAMPLE_NAMES, SAMPLES_FOLDER, sampleWorkspace } from './sample-files.ts';

interface ShownFinding {
  readonly rule: string;
  readonly message: string;
  readonly values: Readonly<Record<string, { readonly text: string }>>;
  readonly fixes: readonly { readonly kind: string }[];
}

function checkedFiles(folder: string): ReadonlyMap<string, readonly ShownFinding[]> {
  const { files } = JSON.parse(runIn(folder, 'check', '--format', 'json', '--fail-on', 'never').output);
  return new Map(files.map(({ path, findings }: { path: string; findings: ShownFinding[] }) => [path, findings]));
}

describe('check of the samples', () => {
  it('prints the same bytes in two runs', () => {
    const [first, second] = [1, 2].map(() => runIn(SAMPLES_FOLDER, 'check', '--format', 'json'));
    expect(first?.output).toContain('"version"');
    expect(second).toEqual(first);
  });

  it('says in JSON what the editor says, number by number', () => {
    const workspace = sampleWorkspace(systemDay());
    const files = checkedFiles(SAMPLES_FOLDER);
    expect([...files.keys()]).toEqual(SAMPLE_NAMES);
    for (const [name, findings] of files) {
      const inEditor = analysisOf(workspace, name).findings.map(({ rule, message, facts }) => ({
        rule,
        message,
        texts: Object.fromEntries(facts.filter(isKnown).map((fact) => [fact.id, showFact(fact)])),
      }));
      // A recording is read by the program alone; what it says is tested with the recordings.
      const told = findings.filter(({ rule }) => rule !== 'log-outside-envelope');
      const inJson = told.map(({ rule, message, values }) => ({
        rule,
        message,
        texts: Object.fromEntries(Object.entries(values).map(([id, { text }]) => [id, text])),
      }));
      expect(inJson).toEqual(inEditor);
    }
  });

  it('ends with 1, since errors are found, and with 0 where that is asked for', () => {
    expect(runIn(SAMPLES_FOLDER, 'check').status).toBe(1);
    expect(runIn(SAMPLES_FOLDER, 'check', '--fail-on', 'never').status).toBe(0);
  });
});

describe('fix of the samples', () => {
  const safeFixes = (folder: string): readonly string[] =>
    [...checkedFiles(folder)].flatMap(([name, findings]) =>
      findings.filter(({ fixes }) => fixes.some(({ kind }) => kind === 'safe')).map(({ rule }) => `${name} ${rule}`),
    );

  it('leaves no finding with a safe fix, and a second run changes nothing', () => {
    const folder = copyOfSamples();
    expect(safeFixes(folder)).not.toEqual([]);
    expect(runIn(folder, 'fix').status).toBe(0);
    expect(safeFixes(folder)).toEqual([]);
    expect(runIn(folder, 'fix').errors).toBe('0 edits made in 0 files\n');
  });

  it('keeps every comment, and every line that needs no fix', () => {
    const folder = copyOfSamples();
    runIn(folder, 'fix');
    for (const name of SAMPLE_NAMES) {
      const [before, after] = [readSample(name), readFileSync(join(folder, name), 'utf8')];
      expect(commentsOf(after)).toEqual(commentsOf(before));
      const kept = new Set(after.split('\n'));
      const changed = before.split('\n').filter((line) => !kept.has(line));
      expect(changed.length).toBeLessThanOrEqual(4); // the safe fixes of one sample mend few lines
    }
  });

  it('shows with --dry-run what it would do, and does not do it', () => {
    const folder = copyOfSamples();
    const { output } = runIn(folder, 'fix', '--dry-run');
    expect(output).toMatch(/^\+.*air-temperature: air-temperature-probe/m);
    for (const name of SAMPLE_NAMES) expect(readFileSync(join(folder, name), 'utf8')).toBe(readSample(name));
  });
});

function commentsOf(text: string): readonly string[] {
  return text.split('\n').flatMap((line) => /(?:^|\s)#.*$/.exec(line)?.[0] ?? []);
}

describe('a call or a path that cannot be read ends with 2 and one line on standard error', () => {
  const refused = ({ status, output, errors }: Run): void => {
    expect(status).toBe(2);
    expect(output).toBe('');
    expect(errors).toMatch(/^dewright: [^\n]+\n$/);
  };

  it.each([
    [['chek'], 'chek: not a command; the nearest is check; dewright --help lists them'],
    [['check', '--frmat', 'json'], '--frmat: not an option of this command; the nearest is --format'],
    [['check', '--format'], '--format: needs a value'],
    [['check', '--no-color=1'], '--no-color: takes no value'],
    [['check', '--only', 'still-ai'], '--only still-ai: there is no such rule; the nearest is still-air'],
  ])('%j says what is wrong with the call', (words, sentence) => {
    const run = runIn(temporaryFolder(), ...words);
    refused(run);
    expect(run.errors).toBe(`dewright: ${sentence}\n`);
  });

  it('no such file', () => refused(runIn(temporaryFolder(), 'check', 'missing.dewsite.yaml')));

  it('a file that is none of ours', () => {
    const folder = temporaryFolder();
    writeFileSync(join(folder, 'notes.txt'), 'kiln 2');
    refused(runIn(folder, 'check', 'notes.txt'));
  });

  it('a link to itself', () => {
    const folder = temporaryFolder();
    symlinkSync('round.dewsite.yaml', join(folder, 'round.dewsite.yaml'));
    refused(runIn(folder, 'check', 'round.dewsite.yaml'));
  });

  it('a path through a file', () => {
    const folder = temporaryFolder();
    writeFileSync(join(folder, 'file'), '');
    refused(runIn(folder, 'check', 'file/site.dewsite.yaml'));
  });

  it('standard input under a name that is none of ours', () =>
    refused(runIn(temporaryFolder(), 'check', '--stdin-as', 'site.yaml')));
});

it.each([
  ['check', ['format', 'fail-on', 'only', 'shard', 'stdin-as', 'no-color']],
  ['fix', ['choose', 'dry-run']],
  ['calc', ['format']],
  ['explain', ['no-color']],
  ['report', ['out']],
  ['compare', ['format', 'fail-on']],
  ['replay', ['space', 'columns', 'format', 'fail-on']],
  ['serve', ['stdio']],
])('%s --help says what each of its options does: %j', (command, options) => {
  const { status, output } = runIn(temporaryFolder(), command, '--help');
  expect([status, output.split('\n')[0]]).toEqual([0, expect.stringContaining(`dewright ${command}`)]);
  expect([...output.matchAll(/^ {2}--([\w-]+).*\n {6}\w/gm)].map(([, name]) => name)).toEqual(options);
});

it('--version says that of package.json', () => {
  const { version } = JSON.parse(readFileSync(join(SAMPLES_FOLDER, '..', 'package.json'), 'utf8'));
  expect(runIn(temporaryFolder(), '--version')).toEqual({ status: 0, output: `${version}\n`, errors: '' });
});

describe('odd folders', () => {
  it('a folder that is named as a site is searched as a folder', () => {
    const folder = temporaryFolder();
    const odd = join(folder, 'hall.dewsite.yaml');
    mkdirSync(odd);
    writeFileSync(join(odd, 'prover.dewsite.yaml'), 'dewright: 1\nsite: {id: prover}\n');
    const { status, output } = runIn(folder, 'check', 'hall.dewsite.yaml', '--format', 'json');
    expect(status).toBe(0);
    expect(JSON.parse(output).files).toHaveLength(1);
  });

  it('an empty folder has nothing to report', () => {
    expect(runIn(temporaryFolder(), 'check').status).toBe(0);
  });
});
