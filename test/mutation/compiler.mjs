/**
 * Leaves out the mutants that the compiler refuses: nobody could run them. Those of many files are compiled together,
 * one of each file, in a copy of the code.
 */
import { spawnSync } from 'node:child_process';
import { cpSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { relative } from 'node:path';

const COPY = '.cache/mutation/copy';
const CODE = ['server/src', 'schemas'];

class Compiler {
  async init() {
    rmSync(COPY, { recursive: true, force: true });
    mkdirSync(COPY, { recursive: true });
    for (const folder of CODE) cpSync(folder, `${COPY}/${folder}`, { recursive: true });
    const settings = { extends: '../../../tsconfig.json', include: ['server/src/rules', 'server/src/physics'] };
    writeFileSync(`${COPY}/tsconfig.json`, JSON.stringify({ ...settings, compilerOptions: { incremental: true } }));
    const refused = this.refusedFiles();
    if (refused.size > 0) throw new Error(`the code itself does not compile: ${[...refused]}`);
  }

  async group(mutants) {
    const groups = [];
    const met = new Map();
    for (const { id, fileName } of mutants) {
      const index = met.get(fileName) ?? 0;
      met.set(fileName, index + 1);
      groups[index] ??= [];
      groups[index].push(id);
    }
    return groups;
  }

  async check(mutants) {
    const files = mutants.map(({ fileName }) => relative(process.cwd(), fileName));
    for (const [index, file] of files.entries()) {
      writeFileSync(`${COPY}/${file}`, mutated(readFileSync(file, 'utf8'), mutants[index]));
    }
    const refused = this.refusedFiles();
    for (const file of files) cpSync(file, `${COPY}/${file}`);
    return Object.fromEntries(
      mutants.map(({ id }, index) => [
        id,
        refused.has(files[index])
          ? { status: 'compileError', reason: 'the compiler refuses it' }
          : { status: 'passed' },
      ]),
    );
  }

  /** Those of which the compiler tells an error. */
  refusedFiles() {
    const compile = ['node_modules/typescript/bin/tsc', '-p', COPY, '--pretty', 'false'];
    const { stdout } = spawnSync(process.execPath, compile, { encoding: 'utf8' });
    return new Set([...stdout.matchAll(/^(?:.*\/)?(server\/src\/[^(]*)\(/gm)].map(([, file]) => file));
  }
}

function mutated(text, { location: { start, end }, replacement }) {
  const lines = text.split('\n');
  const before = [...lines.slice(0, start.line), lines[start.line].slice(0, start.column)].join('\n');
  const after = [lines[end.line].slice(end.column), ...lines.slice(end.line + 1)].join('\n');
  return `${before}${replacement}${after}`;
}

export const strykerPlugins = [{ kind: 'Checker', name: 'compiler', injectableClass: Compiler }];
