import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';

type Texts = Readonly<Record<string, string>>;

const PROJECT = new URL('../../', import.meta.url);
const read = (path: string): string => readFileSync(new URL(path, PROJECT), 'utf8');
const texts = (path: string): Texts => JSON.parse(read(path));

describe('the manifest', () => {
  const english = texts('package.nls.json');
  const german = texts('package.nls.de.json');

  it('has the same texts in English and in German, none of them empty', () => {
    expect(Object.keys(german)).toEqual(Object.keys(english));
    expect([...Object.values(english), ...Object.values(german)]).not.toContain('');
  });

  it('uses every text once it is written, and writes every text that it uses', () => {
    const used = [...read('package.json').matchAll(/"%([^%"]+)%"/g)].map(([, key]) => key);
    expect(used.toSorted()).toEqual(Object.keys(english).toSorted());
  });

  it('shows settings, commands and languages only with texts that can be translated', () => {
    const { contributes, capabilities } = JSON.parse(read('package.json'));
    const untranslated: string[] = [];
    const visit = (value: unknown): void => {
      if (typeof value !== 'object' || value === null) return;
      for (const [key, inner] of Object.entries(value)) {
        const isText = /^(title|description|markdownDescription)$/.test(key) && typeof inner === 'string';
        if (isText && inner !== 'Dewright' && !/^%.*%$/.test(inner)) untranslated.push(inner);
        visit(inner);
      }
    };
    visit([contributes, capabilities]);
    expect(untranslated).toEqual([]);
  });

  it('says the same links and placeholders in both languages', () => {
    const fixedParts = (text: string) => text.match(/\(command:[^)]*\)|`[^`]*`/g) ?? [];
    for (const [key, text] of Object.entries(english)) {
      expect(fixedParts(german[key] ?? ''), key).toEqual(fixedParts(text));
    }
  });
});

describe('the program', () => {
  const german = texts('client/l10n/bundle.l10n.de.json');
  const files = readdirSync(new URL('client/src', PROJECT), { recursive: true, encoding: 'utf8' });
  const sources = files.filter((file) => file.endsWith('.ts')).map((file) => read(`client/src/${file}`));
  const used = sources.flatMap((source) => [...source.matchAll(/l10n\.t\('([^']*)'/g)].map(([, text]) => text));

  it('has a German text for every text that it shows, and no other', () => {
    expect(Object.keys(german).toSorted()).toEqual([...new Set(used)].toSorted());
  });

  it('fills the same placeholders in both languages', () => {
    const placeholders = (text: string) => text.match(/\{\d\}/g) ?? [];
    for (const [text, translated] of Object.entries(german)) {
      expect(placeholders(translated), text).toEqual(placeholders(text));
    }
  });
});
