import { expect, it } from 'vitest';
import { baseName } from '../../server/src/analysis/file-location.ts';
import { Workspace } from '../../server/src/analysis/workspace.ts';

const KIT = `dewright: 1
kit: {id: k}
humidity-probes:
  used: {supply: {voltage: 10 .. 30 V}}
  idle: {supply: {voltage: 10 .. 30 V}}
`;

function site(id: string, tag: string, model = 'used'): string {
  return `dewright: 1
site: {id: ${id}, kits: [k.dewkit.yaml]}
spaces:
  room: {air: {temperature: 20 .. 25 degC, humidity: 40 .. 60 %RH}}
points:
  ${tag}:
    space: room
    humidity-probe: {model: ${model}}
    reports: {dew-point: {}}
    checks: {interval: 12 months, method: reference-instrument, last: 2026-09-01}
`;
}

const today = (): string => '2026-10-01';
const file = (name: string): string => `file:///fennmoor/${name}`;

function workspaceOf(texts: Readonly<Record<string, string>>, mostParsed?: number): Workspace {
  const workspace = new Workspace(mostParsed === undefined ? { today } : { today, mostParsed });
  for (const [name, text] of Object.entries(texts)) workspace.set(file(name), text);
  workspace.markWhole();
  return workspace;
}

function rulesOf(workspace: Workspace, name: string): readonly string[] {
  return (workspace.analysis(file(name))?.findings ?? []).map(({ rule, subject }) => `${rule} ${subject}`);
}

it('a tag that another site gives is found in both, and no longer once either lets it go', () => {
  const workspace = workspaceOf({
    'k.dewkit.yaml': KIT,
    'a.dewsite.yaml': site('a', 'P-1'),
    'b.dewsite.yaml': site('b', 'P-1'),
  });
  expect(rulesOf(workspace, 'a.dewsite.yaml')).toContain('tag-duplicate P-1');
  expect(rulesOf(workspace, 'b.dewsite.yaml')).toContain('tag-duplicate P-1');
  workspace.set(file('b.dewsite.yaml'), site('b', 'P-2'));
  expect(rulesOf(workspace, 'a.dewsite.yaml')).not.toContain('tag-duplicate P-1');
  workspace.set(file('b.dewsite.yaml'), site('b', 'P-1'));
  expect(rulesOf(workspace, 'a.dewsite.yaml')).toContain('tag-duplicate P-1');
  workspace.remove(file('b.dewsite.yaml'));
  expect(rulesOf(workspace, 'a.dewsite.yaml')).not.toContain('tag-duplicate P-1');
});

it('where the other site moves its tag, the finding here points at the new place', () => {
  const workspace = workspaceOf({
    'k.dewkit.yaml': KIT,
    'a.dewsite.yaml': site('a', 'P-1'),
    'b.dewsite.yaml': site('b', 'P-1'),
  });
  const place = () =>
    workspace.analysis(file('a.dewsite.yaml'))?.findings.find(({ rule }) => rule === 'tag-duplicate')?.related[0];
  const before = place()?.range.start ?? 0;
  workspace.set(file('b.dewsite.yaml'), `# moved\n${site('b', 'P-1')}`);
  expect(place()?.range.start).toBe(before + '# moved\n'.length);
});

it('a file is analysed anew only where something that it depends on has changed', () => {
  const workspace = workspaceOf({
    'k.dewkit.yaml': KIT,
    'a.dewsite.yaml': site('a', 'P-1'),
    'b.dewsite.yaml': site('b', 'P-2'),
  });
  const before = workspace.analysis(file('a.dewsite.yaml'));
  workspace.set(file('b.dewsite.yaml'), `${site('b', 'P-2')}# typed\n`);
  expect(workspace.analysis(file('a.dewsite.yaml'))).toBe(before);
  workspace.set(file('k.dewkit.yaml'), `${KIT}# typed\n`);
  expect(workspace.analysis(file('a.dewsite.yaml'))).not.toBe(before);
});

it('a kit that goes and comes back takes and gives what depends on it', () => {
  const workspace = workspaceOf({ 'k.dewkit.yaml': KIT, 'a.dewsite.yaml': site('a', 'P-1') });
  expect(rulesOf(workspace, 'a.dewsite.yaml')).not.toContain('reference-unknown a');
  workspace.remove(file('k.dewkit.yaml'));
  expect(rulesOf(workspace, 'a.dewsite.yaml')).toContain('reference-unknown a');
  workspace.set(file('k.dewkit.yaml'), KIT);
  expect(rulesOf(workspace, 'a.dewsite.yaml')).not.toContain('reference-unknown a');
});

it('a model is unused where no site of the workspace uses it, and only then', () => {
  const workspace = workspaceOf({ 'k.dewkit.yaml': KIT, 'a.dewsite.yaml': site('a', 'P-1') });
  expect(rulesOf(workspace, 'k.dewkit.yaml')).toContain('unused-definition idle');
  expect(rulesOf(workspace, 'k.dewkit.yaml')).not.toContain('unused-definition used');
  workspace.set(file('b.dewsite.yaml'), site('b', 'P-2', 'idle'));
  expect(rulesOf(workspace, 'k.dewkit.yaml')).not.toContain('unused-definition idle');
});

function visit(siteId: string, tag = 'P-1'): string {
  return `dewright: 1
visit: {site: ${siteId}, date: 2026-09-02}
readings:
  - {point: ${tag}, quantity: dew-point, shown: 12.4 degC, reference: 12.1 degC, using: reference-instrument}
`;
}

function readingsOf(workspace: Workspace, name: string): readonly (readonly string[])[] {
  const content = workspace.analysis(file(name))?.content;
  const points = content?.kind === 'site' ? [...content.site.points.values()] : [];
  return points.map(({ readings }) => readings.map((reading) => baseName(reading.file)));
}

const VISITED = {
  'k.dewkit.yaml': KIT,
  'a.dewsite.yaml': site('a', 'P-1'),
  'a-1.dewvisit.yaml': visit('a'),
  'a-2.dewvisit.yaml': visit('a'),
};

it('the readings of a point are those of the visits that name its site, whichever is known first', () => {
  const workspace = workspaceOf(VISITED);
  expect(readingsOf(workspace, 'a.dewsite.yaml')).toEqual([['a-1.dewvisit.yaml', 'a-2.dewvisit.yaml']]);
  workspace.set(file('a-1.dewvisit.yaml'), visit('b'));
  expect(readingsOf(workspace, 'a.dewsite.yaml')).toEqual([['a-2.dewvisit.yaml']]);
  workspace.remove(file('a-2.dewvisit.yaml'));
  expect(readingsOf(workspace, 'a.dewsite.yaml')).toEqual([[]]);
});

it('a visit is laid against its site as the site stands', () => {
  const workspace = workspaceOf(VISITED);
  expect(rulesOf(workspace, 'a-1.dewvisit.yaml')).not.toContain('reference-unknown P-1');
  workspace.set(file('a.dewsite.yaml'), site('a', 'P-2'));
  expect(rulesOf(workspace, 'a-1.dewvisit.yaml')).toContain('reference-unknown P-1');
});

it('a visit to a site that nobody knows is told once all files are known', () => {
  const workspace = new Workspace({ today });
  workspace.set(file('a-1.dewvisit.yaml'), visit('a'));
  expect(rulesOf(workspace, 'a-1.dewvisit.yaml')).toEqual([]);
  workspace.markWhole();
  expect(rulesOf(workspace, 'a-1.dewvisit.yaml')).toEqual(['reference-unknown a-1.dewvisit.yaml']);
});

it('where two sites have one id, a visit belongs to neither and says so', () => {
  const workspace = workspaceOf({ ...VISITED, 'b.dewsite.yaml': site('a', 'P-2') });
  expect(readingsOf(workspace, 'a.dewsite.yaml')).toEqual([[]]);
  const [finding] = workspace.analysis(file('a-1.dewvisit.yaml'))?.findings ?? [];
  expect(finding?.rule).toBe('reference-unknown');
  expect(finding?.related.map((place) => baseName(place.file))).toEqual(['a.dewsite.yaml', 'b.dewsite.yaml']);
});

it('a point is evaluated anew only where a reading of it has changed', () => {
  const workspace = workspaceOf(VISITED);
  const pointOf = () => {
    const content = workspace.analysis(file('a.dewsite.yaml'))?.content;
    return content?.kind === 'site' ? content.site.points.get('P-1') : undefined;
  };
  const before = pointOf();
  workspace.set(file('a-1.dewvisit.yaml'), `${visit('a')}log: logs/a.csv\n`);
  expect(pointOf()).toBe(before);
  workspace.set(file('a-1.dewvisit.yaml'), visit('a').replace('12.4', '12.5'));
  expect(pointOf()).not.toBe(before);
  expect(pointOf()?.readings.map(({ shown }) => shown)).toEqual([12.5, 12.4]);
});

it('what an alias stands for follows its anchor in another entry, and the anchor that stands in that one', () => {
  const spaces = (low: number): string => `dewright: 1
site: {id: a}
spaces:
  one: {air: {temperature: &warm ${low} .. 25 degC, humidity: 40 .. 60 %RH}}
  two: {air: &air {temperature: *warm, humidity: 40 .. 60 %RH}}
  three: {air: *air}
`;
  const workspace = workspaceOf({ 'a.dewsite.yaml': spaces(20) });
  const lowest = () => {
    const content = workspace.analysis(file('a.dewsite.yaml'))?.content;
    const evaluated = content?.kind === 'site' ? [...content.site.spaces.values()] : [];
    return evaluated.map(({ phases }) => phases[0]?.envelope.temperature.value.low);
  };
  expect(lowest()).toEqual([20, 20, 20]);
  workspace.set(file('a.dewsite.yaml'), spaces(18));
  expect(lowest()).toEqual([18, 18, 18]);
});

it('a workspace that keeps nothing parsed but what it looks at says the same', () => {
  const texts = {
    'k.dewkit.yaml': KIT,
    ...Object.fromEntries(
      Array.from({ length: 12 }, (_, at) => [`s${at}.dewsite.yaml`, site(`s${at}`, `P-${at % 7}`)]),
    ),
  };
  const [roomy, narrow] = [workspaceOf(texts), workspaceOf(texts, 1)];
  for (const name of Object.keys(texts)) {
    expect(narrow.analysis(file(name))?.findings).toEqual(roomy.analysis(file(name))?.findings);
    narrow.release(file(name));
  }
});

it('the day decides what is due, and a new day is asked for at every analysis', () => {
  let day = '2027-07-01';
  const workspace = new Workspace({ today: () => day });
  workspace.set(file('k.dewkit.yaml'), KIT);
  workspace.set(file('a.dewsite.yaml'), site('a', 'P-1'));
  expect(rulesOf(workspace, 'a.dewsite.yaml')).not.toContain('check-due P-1');
  day = '2027-08-15';
  expect(rulesOf(workspace, 'a.dewsite.yaml')).toContain('check-due P-1');
});
