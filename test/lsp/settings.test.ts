import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { LENS_KINDS } from '../../server/src/features/reading/code-lenses.ts';
import { HINT_KINDS } from '../../server/src/features/reading/inlay-hints.ts';

const manifest = JSON.parse(readFileSync(new URL('../../package.json', import.meta.url), 'utf8'));
const settings: Readonly<Record<string, { readonly default: unknown; readonly scope: string }>> =
  manifest.contributes.configuration.properties;

it('every kind of hint and lens has its switch, on at first and settable per folder', () => {
  const hints = ['enabled', ...HINT_KINDS].map((kind) => `dewright.inlayHints.${kind}`);
  const lenses = ['enabled', ...LENS_KINDS].map((kind) => `dewright.codeLens.${kind}`);
  const switches = Object.keys(settings).filter((key) => /^dewright\.(inlayHints|codeLens)\./.test(key));
  expect(switches).toEqual([...hints, ...lenses]);
  for (const key of switches)
    expect(settings[key]).toMatchObject({ type: 'boolean', default: true, scope: 'resource' });
});
