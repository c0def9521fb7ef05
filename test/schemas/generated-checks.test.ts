import { build } from 'esbuild';
import { expect, it } from 'vitest';
import * as checks from '../../server/src/model/validators.generated.js';
import { completeExample } from './schema-files.ts';

it.each([
  ['site', checks.siteRoot, { spaces: checks.siteSpace, points: checks.sitePoint }],
  [
    'kit',
    checks.kitRoot,
    {
      'humidity-probes': checks.kitHumidityProbe,
      'temperature-probes': checks.kitTemperatureProbe,
      transmitters: checks.kitTransmitter,
      receivers: checks.kitReceiver,
    },
  ],
  ['visit', checks.visitRoot, { steps: checks.visitStep }],
] as const)(
  'the complete %s file passes the check of its root and of each of its entries',
  (kind, root, entryChecks) => {
    const file = completeExample(kind);
    expect([root(file), root.errors]).toEqual([true, null]);
    for (const [key, check] of Object.entries(entryChecks)) {
      for (const entry of Object.values(file[key] as object))
        expect([check(entry), check.errors]).toEqual([true, null]);
    }
  },
);

it('the check of the root leaves entries alone, but not their names', () => {
  const file = { dewright: 1, site: { id: 'fennmoor' }, points: { 'K2-MT-101': 'anything' } };
  expect(checks.siteRoot(file)).toBe(true);
  expect(checks.siteRoot({ ...file, points: { 'K2 101': {} } })).toBe(false);
});

it('the check of a point places errors from the point on', () => {
  checks.sitePoint({ space: 'kiln-2', checks: {} });
  expect(checks.sitePoint.errors).toEqual([
    { instancePath: '/checks', schemaPath: '#/required', keyword: 'required', params: { missingProperty: 'interval' } },
  ]);
});

it('the checks take values without a prototype, as the syntax tree makes them', () => {
  const point = Object.assign(Object.create(null), { space: 'kiln-2', toString: 1 });
  checks.sitePoint(point);
  expect(checks.sitePoint.errors?.map(({ params }) => params)).toEqual([{ additionalProperty: 'toString' }]);
});

it('a bundle of the checks needs nothing else', async () => {
  const bundle = await build({
    entryPoints: ['server/src/model/validators.generated.js'],
    bundle: true,
    format: 'esm',
    write: false,
    metafile: true,
  });
  expect(Object.keys(bundle.metafile.inputs)).toEqual(['server/src/model/validators.generated.js']);
});
