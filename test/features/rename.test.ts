import { describe, expect, it } from 'vitest';
import { editsForMoves } from '../../server/src/features/moving/moved-files.ts';
import { prepareRename, rename } from '../../server/src/features/moving/rename.ts';
import { cursorIn, FENNMOOR, KIT, SITE, VISIT } from './fennmoor.ts';
import { edited, type Marked, openAt, workspaceOf } from './marked-files.ts';

const site = (words: string): Marked => openAt('fennmoor.dewsite.yaml', cursorIn(SITE, words), FENNMOOR);
const kit = (words: string): Marked => openAt('kits/fennmoor.dewkit.yaml', cursorIn(KIT, words), FENNMOOR);

function renamed({ workspace, parsed, offset }: Marked, name: string): string | Readonly<Record<string, string>> {
  const outcome = rename(workspace, parsed, offset, name);
  return outcome.ok ? edited(workspace, outcome.value) : outcome.problem;
}

describe('renaming', () => {
  it('a space changes its site and nothing else', () => {
    expect(renamed(site('space: kil|n-2'), 'kiln-two')).toEqual({
      'fennmoor.dewsite.yaml': SITE.replace('  kiln-2:', '  kiln-two:').replaceAll('space: kiln-2', 'space: kiln-two'),
    });
  });

  it('a point changes the reports that lean on it and the visits', () => {
    expect(renamed(site('  K2-MT|-101:'), 'K2-MT-201')).toEqual({
      'fennmoor.dewsite.yaml': SITE.replaceAll('K2-MT-101', 'K2-MT-201'),
      'first.dewvisit.yaml': VISIT.replace('K2-MT-101', 'K2-MT-201'),
    });
  });

  it('a model changes its kit and the sites', () => {
    expect(renamed(site('model: hp-|heated'), 'hp-warm')).toEqual({
      'kits/fennmoor.dewkit.yaml': KIT.replace('hp-heated', 'hp-warm'),
      'fennmoor.dewsite.yaml': SITE.replaceAll('hp-heated', 'hp-warm'),
    });
  });

  it('a site changes its visits; a kit has its id to itself', () => {
    expect(renamed(site('id: fenn|moor'), 'fennmoor-timber')).toEqual({
      'fennmoor.dewsite.yaml': SITE.replace('id: fennmoor', 'id: fennmoor-timber'),
      'first.dewvisit.yaml': VISIT.replace('fennmoor', 'fennmoor-timber'),
    });
    expect(renamed(kit('id: fenn|moor'), 'timber')).toEqual({
      'kits/fennmoor.dewkit.yaml': KIT.replace('id: fennmoor', 'id: timber'),
    });
  });

  it('an anchor changes its aliases', () => {
    const marked = openAt('a.dewsite.yaml', 'spaces:\n  a: {air: &w|arm {}}\n  b: {air: *warm}\n');
    expect(renamed(marked, 'hot')).toEqual({ 'a.dewsite.yaml': 'spaces:\n  a: {air: &hot {}}\n  b: {air: *hot}\n' });
  });

  it('keeps quotes, and sets them where a tag would be read as something else', () => {
    const marked = openAt('a.dewsite.yaml', 'points:\n  "A|-1":\n    reports: {}\n', {
      'b.dewvisit.yaml': 'readings:\n  - {point: A-1}\n',
    });
    expect(renamed(marked, 'true')).toEqual({
      'a.dewsite.yaml': 'points:\n  "true":\n    reports: {}\n',
      'b.dewvisit.yaml': 'readings:\n  - {point: "true"}\n',
    });
  });

  it.each([
    ['a space to a name with capitals and a blank', site('  kiln|-2:'), 'Kiln 2', /lower-case letters/],
    ['a space to the name of another', site('  kiln|-2:'), 'hall', /given already to another space/],
    ['a point to a tag with a blank', site('  K2-MT|-101:'), 'K2 101', /no blanks/],
    ['a point to a tag that is there', site('  K2-MT|-101:'), 'K2-MT-102', /given already to another point/],
    ['a point to what starts like a temperature', site('  K2-MT|-101:'), '2K', /read it as something else/],
    ['a point to the name of a source', site('  K2-MT|-101:'), 'humidity-probe', /read it as something else/],
    ['a model to one of the same kit', site('model: hp-|heated'), 'hp-plain', /given already in a kit/],
    ['a kit by its path', site('kits/|fennmoor'), 'x', /rename the file/],
    [
      'a model that no kit has',
      openAt('b.dewsite.yaml', 'points:\n  A: {humidity-probe: {model: x|}}\n'),
      'y',
      /Nothing/,
    ],
    ['a word that names nothing', site('mode: contin|uous'), 'x', /Only spaces, points/],
  ])('%s is refused', (_, marked, name, words) => {
    expect(renamed(marked, name)).toMatch(words);
  });
});

describe('before renaming', () => {
  it('the name under the cursor is offered', () => {
    const { workspace, parsed, offset } = site('space: kil|n-2');
    const start = SITE.indexOf('space: kiln-2') + 'space: '.length;
    expect(prepareRename(workspace, parsed, offset)).toEqual({
      ok: true,
      value: { range: { start, end: start + 'kiln-2'.length }, name: 'kiln-2' },
    });
  });
});

describe('moving', () => {
  const workspace = workspaceOf(FENNMOOR);
  const moved = (from: string, to: string) =>
    edited(workspace, editsForMoves(workspace, [{ from: `file:///${from}`, to: `file:///${to}` }]));

  it('a kit changes the path in the sites that name it', () => {
    expect(moved('kits/fennmoor.dewkit.yaml', 'models/timber.dewkit.yaml')).toEqual({
      'fennmoor.dewsite.yaml': SITE.replace('kits/fennmoor.dewkit.yaml', 'models/timber.dewkit.yaml'),
    });
  });

  it('a folder moves what is in it', () => {
    expect(moved('kits', 'shared/kits')).toEqual({
      'fennmoor.dewsite.yaml': SITE.replace('[kits/', '[shared/kits/'),
    });
  });

  it('a site or visit changes the paths in itself', () => {
    expect(moved('fennmoor.dewsite.yaml', 'sites/fennmoor.dewsite.yaml')).toEqual({
      'fennmoor.dewsite.yaml': SITE.replace('[kits/', '[../kits/'),
    });
    expect(moved('first.dewvisit.yaml', 'visits/first.dewvisit.yaml')).toEqual({
      'first.dewvisit.yaml': VISIT.replace('logs/', '../logs/'),
    });
  });

  it('a path with a blank is put in quotes', () => {
    expect(moved('kits', 'my kits')).toEqual({
      'fennmoor.dewsite.yaml': SITE.replace('[kits/fennmoor.dewkit.yaml]', '["my kits/fennmoor.dewkit.yaml"]'),
    });
  });

  it('what nothing names changes nothing', () => {
    expect(moved('drawings', 'old')).toEqual({});
  });
});
