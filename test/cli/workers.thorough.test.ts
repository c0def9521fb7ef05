import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { WORTH_WORKERS } from '../../server/src/cli/check-in-workers.ts';
import { generateSite, KIT } from '../bench/generated-site.ts';
import { runIn, temporaryFolder } from '../samples/built-program.ts';

const VISITS = 5;

/** Two models that only one site uses each, neighbours and so on two threads, and one that none uses. */
const RARE_MODELS = ['of-s0', 'of-s1', 'idle'];
const [SLIM = ''] = KIT.match(/^ {2}slim: .*\n/m) ?? [];

/** To a site of the row: one thread reads it, and another the site, wherever threads share out neighbours. */
function visitTo(siteId: string, tag: string): string {
  return `dewright: 1
visit: {site: ${siteId}, date: 2026-09-02}
readings:
  - {point: ${tag}, quantity: dew-point, shown: 50.9 degC, reference: 50.4 degC, reference-uncertainty: 0.3 K}
`;
}

/**
 * More files than one thread is given, some with one tag twice, one that uses a kit that is not there, and visits, one
 * of them to a site that is not there.
 */
function manySites(): string {
  const folder = temporaryFolder();
  mkdirSync(join(folder, 'kits'));
  writeFileSync(
    join(folder, 'kits', 'bench.dewkit.yaml'),
    KIT + RARE_MODELS.map((id) => SLIM.replace('slim', id)).join(''),
  );
  for (let index = 0; index < WORTH_WORKERS + 10; index++) {
    const kit = index === 7 ? 'kits/lost.dewkit.yaml' : 'kits/bench.dewkit.yaml';
    const firstPoint = index % 50 === 0 ? 0 : index;
    const model = index < 2 ? `of-s${index}` : 'slim';
    const text = generateSite(45, kit, `s${index}`, firstPoint).replace('model: slim', `model: ${model}`);
    writeFileSync(join(folder, `s${index}.dewsite.yaml`), text);
  }
  for (let index = 0; index < VISITS; index++) {
    writeFileSync(
      join(folder, `v${index}.dewvisit.yaml`),
      visitTo(index === 1 ? 's5x' : 's5', index === 2 ? 'lost' : 'K-MT-5'),
    );
  }
  return folder;
}

/** One file stands on one line, with a comma where another follows. */
function fileLines(output: string): readonly string[] {
  return output.split('\n').flatMap((line) => (line.startsWith('{"path"') ? line.replace(/,$/, '') : []));
}

it('many threads say what one thread says, and the shards of three machines together say the whole', () => {
  const folder = manySites();
  const whole = fileLines(runIn(folder, 'check', '--format', 'json', '--fail-on', 'never').output);
  expect(whole).toHaveLength(WORTH_WORKERS + 11 + VISITS);
  const shards = [1, 2, 3].flatMap((shard) =>
    fileLines(runIn(folder, 'check', '--format', 'json', '--fail-on', 'never', '--shard', `${shard}/3`).output),
  );
  expect(shards.toSorted()).toEqual(whole.toSorted());
  const found: readonly { rule: string; subject: string }[] = whole.flatMap((line) => JSON.parse(line).findings);
  const rules = new Set(found.map(({ rule }) => rule));
  expect(rules).toContain('tag-duplicate');
  expect(rules).toContain('reference-unknown');
  const unused = found.filter(({ rule }) => rule === 'unused-definition');
  expect(unused.map(({ subject }) => subject)).toEqual(['idle']);
}, 120_000);
