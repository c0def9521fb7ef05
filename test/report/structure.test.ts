/** The HTML of a pack needs nothing else, and can be read by everyone. */
import { describe, expect, it } from 'vitest';
import { SAMPLE_PACKS } from './packs.ts';
import { elementsOf } from './read-html.ts';

describe.each(SAMPLE_PACKS)('the pack of $name', ({ html, root }) => {
  const elements = elementsOf(root);
  const attribute = (name: string): readonly string[] =>
    elements.flatMap(({ attributes }) => attributes.get(name) ?? []);

  it('refers to nothing outside itself, and runs nothing', () => {
    expect(attribute('src')).toEqual([]);
    expect(attribute('href').filter((address) => !address.startsWith('#'))).toEqual([]);
    expect(html).not.toMatch(/url\(|@import|<script|<link|<iframe| on\w+=/);
    expect(html).toContain(`content="default-src 'none'; style-src 'unsafe-inline'"`);
  });

  it('tells no place of the machine that it was made on', () => {
    expect(html).not.toMatch(/file:\/\/| data-file=| data-start=/);
  });

  it('leads its contents to sections that are there, and names every id once', () => {
    const ids = attribute('id');
    expect(new Set(ids).size).toBe(ids.length);
    expect(
      attribute('href')
        .map((address) => address.slice(1))
        .filter((id) => !ids.includes(id)),
    ).toEqual([]);
    expect(attribute('aria-labelledby').filter((id) => !ids.includes(id))).toEqual([]);
  });

  it('has a language, landmarks, and headings without a gap', () => {
    const names = elements.map(({ name }) => name);
    expect(attribute('lang')).toEqual(['en']);
    for (const landmark of ['header', 'nav', 'main']) {
      expect(names.filter((name) => name === landmark)).toHaveLength(1);
    }
    const levels = names.flatMap((name) => (/^h[1-6]$/.test(name) ? [Number(name.slice(1))] : []));
    expect(levels[0]).toBe(1);
    expect(levels.slice(1).every((level, index) => level >= 2 && level <= (levels[index] ?? 0) + 1)).toBe(true);
  });

  it('gives every picture a name and a caption', () => {
    const drawings = elements.filter(({ name, attributes }) => name === 'svg' && attributes.has('role'));
    expect(drawings.length).toBeGreaterThan(1);
    for (const { attributes } of drawings) expect(attributes.get('aria-label')).not.toBe('');
    expect(elements.filter(({ name }) => name === 'figcaption')).toHaveLength(drawings.length);
  });
});
