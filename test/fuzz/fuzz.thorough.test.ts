import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { fuzzFiles } from './file-fuzz.ts';
import { checkHarmedFolder } from './program-fuzz.ts';
import { NOTIFICATIONS, REQUESTS, sendTraffic } from './traffic.ts';

const SEED = Number(process.env['DEWRIGHT_SEED'] ?? 20_261_125);

describe('whatever comes', () => {
  it('4,000 mutated, truncated, spliced and generated texts: no throw, no second, no number that is none', () => {
    expect(fuzzFiles(4000, SEED).failures).toEqual([]);
  }, 300_000);

  it('a folder of 40 harmed files: the command line ends with 0 or 1 and says nothing on standard error', () => {
    expect(checkHarmedFolder(40, SEED)).toBeUndefined();
  }, 120_000);

  it('1,000 messages in any order, fitting or not: each is answered in time, and the server goes on', async () => {
    expect(await sendTraffic(1000, SEED)).toEqual([]);
  }, 120_000);
});

it('the messages of our own that the server takes are all among those that are sent', () => {
  const folder = 'server/src/lsp';
  const files = readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter((file) => file.endsWith('.ts'));
  const sources = files.map((file) => readFileSync(`${folder}/${file}`, 'utf8'));
  const taken = sources.flatMap((source) =>
    [...source.matchAll(/\.on(?:Request|Notification)\('(dewright\/\w+)'/g)].map(([, name]) => name),
  );
  const sent = [...REQUESTS, ...NOTIFICATIONS].filter((name) => name.startsWith('dewright/'));
  expect(sent.toSorted()).toEqual(taken.toSorted());
});
