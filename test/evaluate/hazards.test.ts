import { expect, it } from 'vitest';
import { CAUTIONS, cautionsFor, WHO_DECIDES } from '../../server/src/evaluate/cautions.ts';
import { burnLimitPassed } from '../../server/src/evaluate/mounting/hot-surface.ts';
import { SCHEMAS } from '../../server/src/model/schema.ts';

it('every hazard that a space may name has its caution', () => {
  const hazards = SCHEMAS.site.definitions?.hazard?.enum ?? [];
  expect(Object.keys(CAUTIONS)).toEqual(hazards);
  for (const caution of Object.values(CAUTIONS)) expect(caution).toMatch(/^[A-Z].*\.$/);
});

it('cautions are given once each and end with who decides', () => {
  expect(cautionsFor([])).toEqual([]);
  expect(cautionsFor(['flammable-zone-1', 'flammable-zone-2', 'toxic'])).toEqual([
    CAUTIONS['flammable-zone-1'],
    CAUTIONS.toxic,
    WHO_DECIDES,
  ]);
});

it.each([
  [43, undefined], // ISO 13732-1, at second hand: 8 hours, which is no contact with a wall
  [47.9, undefined],
  [48, '10 minutes of contact'], // EN ISO 13732-1, at second hand
  [65, 'about half a second of contact'], // ISO 13732-1, at second hand
])('bare metal of %d °C: %s', (celsius, contact) => {
  expect(burnLimitPassed(celsius)?.contact).toBe(contact);
});
