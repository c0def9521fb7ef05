import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { FORMAT_NAMES } from '../../server/src/cli/formats/formats.ts';
import { fileKindOf } from '../../server/src/model/schema.ts';
import { copyOfSamples, runIn } from '../samples/built-program.ts';
import { SAMPLE_NAMES } from '../samples/sample-files.ts';

const GUIDE = readFileSync('server/continuous-integration.md', 'utf8');

/** What the examples call, with the first of three machines put in where a system puts in its own. */
function calls(): readonly string[] {
  const lines = [...GUIDE.matchAll(/^ +(?:- run: |run: |- )(dewright [^>\n]*)/gm)].map(([, call = '']) => call.trim());
  return lines.map((call) => call.replace('$CI_NODE_INDEX', '1').replace('$CI_NODE_TOTAL', '3'));
}

describe('the examples for continuous integration', () => {
  it('are YAML, and install what `npm pack` makes', () => {
    const { name, version } = JSON.parse(readFileSync('package.json', 'utf8'));
    const examples = [...GUIDE.matchAll(/^```yaml\n(.*?)^```$/gms)].map(([, text = '']) => parse(text));
    expect(examples).toHaveLength(4);
    const archives = new Set(GUIDE.match(/[\w-]+-[\d.]+\.tgz/g));
    expect([...archives]).toEqual([`${name}-${version}.tgz`]);
  });

  it('call the program as it can be called', () => {
    expect(calls()).toHaveLength(4);
    const folder = copyOfSamples();
    for (const call of calls()) {
      const { status, output, errors } = runIn(folder, ...call.split(' ').slice(1));
      expect(errors, call).toBe('');
      expect(output, call).not.toBe('');
      expect(status, call).toBeLessThan(2);
    }
  });

  it('tell of every format for machines', () => {
    const told = [...GUIDE.matchAll(/^\| `--format (\w+)`/gm)].map(([, name = '']) => name);
    expect(told.toSorted()).toEqual(FORMAT_NAMES.filter((name) => name !== 'text').toSorted());
  });
});

it('the hook for pre-commit runs the program of the package, on every kind of file', () => {
  const { bin } = JSON.parse(readFileSync('package.json', 'utf8'));
  const [hook, ...others] = parse(readFileSync('.pre-commit-hooks.yaml', 'utf8'));
  expect(others).toEqual([]);
  const [program = '', ...words] = hook.entry.split(' ');
  expect(bin).toHaveProperty(program);
  expect(words).toEqual(['check']);
  const files = new RegExp(hook.files);
  for (const name of SAMPLE_NAMES) expect(files.test(name), name).toBe(true);
  expect(['site.yaml', 'notes.dewsite.yaml.bak'].filter((name) => files.test(name) || fileKindOf(name))).toEqual([]);
});
