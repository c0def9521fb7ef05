import { expect, it } from 'vitest';
import { staleFiles } from '../../server/tools/generate.mjs';

it('every generated file holds what its source says; `npm run generate` mends a stale one', async () => {
  expect(await staleFiles()).toEqual([]);
});
