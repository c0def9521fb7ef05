/**
 * A mutant has to be noticed by the tests that are there for it, not by another one by chance: that of a rule by the
 * tests that bear the rule's name, that of the physics by the tests of the physics. Stryker writes down in a first run
 * which mutants each test meets, and tries a mutant against those tests; here the others are struck out.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { basename } from 'node:path';
import { afterAll } from 'vitest';

/** How often each mutant was met, by its number. */
type Meetings = Record<string, number>;

interface Stryker {
  /** None in the first run. */
  readonly activeMutant?: string;
  readonly mutantCoverage?: { readonly perTest: Readonly<Record<string, Meetings>> };
}

afterAll(() => {
  const { activeMutant, mutantCoverage } = (Reflect.get(globalThis, '__stryker__') ?? {}) as Stryker;
  if (activeMutant !== undefined || mutantCoverage === undefined) return;
  const testsOf = new Map([...mutantsIn('rules', ownTestsOfRule), ...mutantsIn('physics', () => /test\/physics\//)]);
  for (const [test, met] of Object.entries(mutantCoverage.perTest)) {
    for (const mutant of Object.keys(met)) if (testsOf.get(mutant)?.test(test) !== true) delete met[mutant];
  }
});

/** The mutants of a module's files, as they stand in the code that runs, with the tests that are there for each. */
function mutantsIn(module: string, testsFor: (file: string) => RegExp): readonly (readonly [string, RegExp])[] {
  const folder = `server/src/${module}`;
  return readdirSync(folder, { recursive: true, encoding: 'utf8' }).flatMap((file) => {
    if (!file.endsWith('.ts')) return [];
    const calls = readFileSync(`${folder}/${file}`, 'utf8').matchAll(/stryCov_\w+\(([^)]*)\)/g);
    const mutants = [...calls].flatMap(([, list = '']) => list.match(/\d+/g) ?? []);
    return mutants.map((mutant) => [mutant, testsFor(file)] as const);
  });
}

/** A test goes by its file and its full name: `test/rules/rules.test.ts#still-air says what is wrong in sentences`. */
function ownTestsOfRule(file: string): RegExp {
  const rule = basename(file, '.ts');
  return new RegExp(`#${rule}[ :]|/${rule}\\.test\\.ts#`);
}
