/**
 * Every number of a pack is marked with where it comes from: a fact of `check`, a value of a file, or a sentence that
 * others have worded. The test reads the HTML as it is written, not the document that it was made from. Drawings have
 * tests of their own.
 */
import { describe, expect, it } from 'vitest';
import { CAUTIONS, WHO_DECIDES } from '../../server/src/evaluate/cautions.ts';
import { showCorner } from '../../server/src/evaluate/facts/fact.ts';
import { subjectFacts } from '../../server/src/features/support/subject-facts.ts';
import { handoverPlan } from '../../server/src/handover/plan.ts';
import type { Dimension } from '../../server/src/quantity/dimension.ts';
import { showQuantity, showRange } from '../../server/src/quantity/format-quantity.ts';
import { checkJson, REVISION, SAMPLE_PACKS, type SamplePack } from './packs.ts';
import { elementsOf, type HtmlElement, textOf, visit } from './read-html.ts';

const MARKS = ['data-fact', 'data-corner', 'data-stated', 'data-words', 'data-told'];

function marked(root: HtmlElement, name: string): readonly HtmlElement[] {
  return elementsOf(root).filter(({ attributes }) => attributes.has(name));
}

describe.each(SAMPLE_PACKS)('the pack of $name', (pack) => {
  const { analysis, root } = pack;
  const { subjects, findings } = checkJson(analysis);
  const facts: ReadonlyMap<string, (typeof subjects)[number]['facts'][string]> = new Map(
    subjects.flatMap(({ subject, facts: own }) =>
      Object.entries(own).map(([id, fact]) => [`${subject}/${id}`, fact] as const),
    ),
  );

  it('prints every fact as the JSON of check does', () => {
    const printed = marked(root, 'data-fact');
    const wrong = printed.filter((node) => facts.get(node.attributes.get('data-fact') ?? '')?.text !== textOf(node));
    expect(wrong.map(({ attributes, children }) => [attributes.get('data-fact'), children])).toEqual([]);
    expect(printed.length).toBeGreaterThan(30);
  });

  it('says of each fact where it is worst as the analysis does', () => {
    const corners: ReadonlyMap<string, string> = new Map(
      subjectFacts(analysis).flatMap(({ subject, facts: own }) =>
        own.flatMap(({ id, at }) => (at === undefined ? [] : [[`${subject}/${id}`, showCorner(at)] as const])),
      ),
    );
    const printed = marked(root, 'data-corner');
    const wrong = printed.filter((node) => corners.get(node.attributes.get('data-corner') ?? '') !== textOf(node));
    expect(wrong.map(textOf)).toEqual([]);
    expect(printed.length).toBeGreaterThan(10);
  });

  it('prints values of the files as every outlet does', () => {
    const values = statedValues(pack);
    const wrong = marked(root, 'data-stated')
      .map(textOf)
      .filter((text) => !values.has(text));
    expect(wrong).toEqual([]);
  });

  it('prints words of the files as they stand there', () => {
    const texts = textsOf(pack).join('\n');
    const wrong = marked(root, 'data-words')
      .map(textOf)
      .filter((text) => !texts.includes(text));
    expect(wrong).toEqual([]);
  });

  it('prints the sentences of findings, facts and cautions and no others', () => {
    const sentences = new Set<string | undefined>([
      ...findings.map(({ message }) => message),
      ...analysis.accepted.map(({ message }) => message),
      ...[...facts.values()].flatMap(({ title, missing, sources }) => [title, missing, ...sources]),
      ...Object.values(CAUTIONS),
      WHO_DECIDES,
      `Made on 2026-11-25 from ${REVISION}.`,
      ...countsOf(pack),
      ...stepsOf(pack),
    ]);
    const wrong = marked(root, 'data-told')
      .map(textOf)
      .filter((text) => !sentences.has(text));
    expect(wrong).toEqual([]);
  });

  it('prints no digit that is not marked', () => {
    const unmarked: string[] = [];
    visit(root, (node, around) => {
      if (typeof node !== 'string' || !/\d/.test(node)) return;
      const isMarked = around.some(({ attributes }) => MARKS.some((mark) => attributes.has(mark)));
      const isElsewhere = around.some(({ name }) => name === 'svg' || name === 'style' || name === 'head');
      if (!isMarked && !isElsewhere) unmarked.push(node);
    });
    expect(unmarked).toEqual([]);
  });

  it('has every point, every signal, every alarm and every open finding', () => {
    const text = textOf(root);
    for (const tag of analysis.content.kind === 'site' ? analysis.content.site.points.keys() : []) {
      expect(text).toContain(`Point ${tag}`);
    }
    for (const { message } of findings) expect(text).toContain(message);
  });
});

function textsOf({ analysis }: SamplePack): readonly string[] {
  const { content } = analysis;
  const site = content.kind === 'site' ? content.site : undefined;
  const others = [...(site?.kits ?? []), ...(site?.visits ?? [])].map(({ file }) => file);
  const due = checkJson(analysis).subjects.flatMap(({ facts }) => facts['check/time-left']?.title ?? []);
  return [...[analysis.file, ...others].map((file) => analysis.fileNamed(file)?.text ?? ''), ...due];
}

/** The built-in limits and signals, and every value and range of the site and its kits with the ends of the ranges. */
function statedValues({ analysis }: SamplePack): ReadonlySet<string> {
  const shown = new Set<string>();
  const { content } = analysis;
  if (content.kind !== 'site') return shown;
  const { settings, catalogue, model } = content.site;
  const limits = [settings.sensorHumidityLimit, settings.unheatedHumidityLimit];
  for (const { value } of limits) shown.add(showQuantity(value, 'relative-humidity'));
  shown.add(showQuantity(settings.margin.value, 'temperature-difference'));
  for (const usual of ['4 … 20 mA', '0 … 10 V']) shown.add(usual);
  for (const root of [settings.header, model.spaces, model.points, ...Object.values(catalogue)]) collect(root, shown);
  return shown;
}

function collect(value: unknown, shown: Set<string>): void {
  if (value instanceof Map || Array.isArray(value)) {
    for (const item of value.values()) collect(item, shown);
  } else if (typeof value === 'object' && value !== null) {
    if (isShown(value, 'value')) shown.add(showQuantity(value.value, value.dimension));
    if (isShown(value, 'low') && isShown(value, 'high')) {
      shown.add(showRange(value.low, value.high, value.dimension));
      for (const end of [value.low, value.high]) shown.add(showQuantity(end, value.dimension));
    }
    for (const [key, item] of Object.entries(value))
      if (!['cursor', 'origin', 'keyOrigin', 'map'].includes(key)) collect(item, shown);
  }
}

function isShown<Key extends string>(
  value: object,
  key: Key,
): value is { readonly dimension: Dimension } & Readonly<Record<Key, number>> {
  return 'dimension' in value && key in value && typeof (value as Readonly<Record<string, unknown>>)[key] === 'number';
}

function stepsOf({ analysis: { content } }: SamplePack): readonly (string | undefined)[] {
  const steps = content.kind === 'site' ? handoverPlan(content.site.points.values()) : [];
  return steps.flatMap(({ title, todo, expect: seen, caution }) => [title, todo, seen, caution]);
}

/** How many findings are open, in words. */
function countsOf({ analysis: { findings, accepted } }: SamplePack): readonly string[] {
  const counts = (['error', 'warning', 'information', 'hint'] as const).flatMap((severity) => {
    const { length } = findings.filter((finding) => finding.severity === severity);
    return length === 0 ? [] : [`${length} ${severity}${length > 1 && severity !== 'information' ? 's' : ''}`];
  });
  const open = counts.length === 0 ? 'nothing is open' : `open: ${counts.join(', ')}`;
  return [`${open}; accepted with a reason: ${accepted.length}`];
}
