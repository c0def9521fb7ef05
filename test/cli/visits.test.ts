import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { runIn, temporaryFolder } from '../samples/built-program.ts';

const SITE = `dewright: 1
site: {id: fennmoor}
spaces:
  room: {air: {temperature: 20 .. 25 degC, humidity: 40 .. 60 %RH}}
points:
  P-1:
    space: room
    reports: {dew-point: {}}
    checks: {interval: 12 months, method: reference-instrument}
`;

/** Long ago, so that the next check is overdue. */
function visit(site: string, tag = 'P-1'): string {
  return `dewright: 1
visit: {site: ${site}, date: 2020-09-02}
readings:
  - {point: ${tag}, quantity: dew-point, shown: 12.4 degC, reference: 12.1 degC, using: reference-instrument}
`;
}

function folderWith(files: Readonly<Record<string, string>>): string {
  const folder = temporaryFolder();
  mkdirSync(join(folder, 'visits'));
  for (const [name, text] of Object.entries(files)) writeFileSync(join(folder, name), text);
  return folder;
}

/** `PATH RULE` of every finding. */
function found(folder: string, ...paths: readonly string[]): readonly string[] {
  const { output } = runIn(folder, 'check', '--format', 'json', '--fail-on', 'never', ...paths);
  const { files }: { files: { path: string; findings: { rule: string }[] }[] } = JSON.parse(output);
  return files.flatMap(({ path, findings }) => findings.map(({ rule }) => `${path} ${rule}`));
}

describe('a visit that is checked alone', () => {
  it.each([
    ['beside its site', 'first.dewvisit.yaml'],
    ['in a folder below its site', 'visits/first.dewvisit.yaml'],
  ])('is laid against the site: %s', (_, name) => {
    const folder = folderWith({ 'hall.dewsite.yaml': SITE, [name]: visit('fennmoor', 'P-9') });
    expect(found(folder, name)).toEqual([`${name} reference-unknown`]);
    writeFileSync(join(folder, name), visit('fennmoor'));
    expect(found(folder, name)).toEqual([]);
  });

  it('and its folder too, where the site lies above', () => {
    const folder = folderWith({ 'hall.dewsite.yaml': SITE, 'visits/first.dewvisit.yaml': visit('fennmoor', 'P-9') });
    expect(found(folder, 'visits')).toEqual(['visits/first.dewvisit.yaml reference-unknown']);
  });

  it('says so where no site near it has the id', () => {
    const folder = folderWith({ 'hall.dewsite.yaml': SITE, 'first.dewvisit.yaml': visit('fenmoor') });
    expect(found(folder, 'first.dewvisit.yaml')).toEqual(['first.dewvisit.yaml reference-unknown']);
  });
});

describe('a site that is checked alone', () => {
  it.each([['first.dewvisit.yaml'], ['visits/first.dewvisit.yaml']])('is read with its visits: %s', (name) => {
    const folder = folderWith({ 'hall.dewsite.yaml': SITE, [name]: visit('fennmoor') });
    expect(found(folder, 'hall.dewsite.yaml')).toContain('hall.dewsite.yaml check-due');
    expect(found(folder, '.')).toContain('hall.dewsite.yaml check-due');
  });
});
