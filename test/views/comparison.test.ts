import { describe, expect, it } from 'vitest';
import { comparisonView } from '../../server/src/views/comparison.ts';
import { SITE } from '../features/fennmoor.ts';
import { elementsNamed, fennmoorAt, listBehind, wordsOf } from './shown-view.ts';

const NOW = fennmoorAt('title: Fennmoor').analysis;
const HIGHER = fennmoorAt(
  'title: Fennmoor',
  SITE.replace('rise: 8 K, set-at: factory', 'rise: 6 K, set-at: factory'),
).analysis;
const REQUEST = { analysis: NOW, against: 'committed', others: ['file:///other.dewsite.yaml'] };

describe('the view of changes', () => {
  it('tells what has changed under what it is about', () => {
    const view = comparisonView({ ...REQUEST, before: HIGHER });
    expect(view.title).toBe('Changes: fennmoor.dewsite.yaml');
    expect(listBehind(view, 'K2-MT-101')).toEqual(['humidity-probe.heater.rise: 6 K → 8 K']);
    expect(listBehind(view, 'K2-MT-101, because humidity-probe.heater.rise: 6 K → 8 K')).toContainEqual(
      expect.stringMatching(/^least margin of the sensor to the dew point: .+ K → .+ K$/),
    );
  });

  it('says so where nothing has', () => {
    const view = comparisonView({ ...REQUEST, before: NOW });
    expect(elementsNamed(view.body, 'p').map(wordsOf)).toEqual(['Nothing has changed in meaning.']);
  });

  it('says so where there is no committed version, and offers the other sites', () => {
    const view = comparisonView({ ...REQUEST, before: undefined });
    expect(elementsNamed(view.body, 'p').map(wordsOf).join()).toMatch(/^There is no committed version/);
    expect(elementsNamed(view.body, 'option').map(wordsOf)).toEqual([
      'its last committed version',
      'other.dewsite.yaml',
    ]);
  });

  it('says which of the two does not parse, as while somebody types in it', () => {
    const broken = fennmoorAt('title: Fennmoor', SITE.replace('mode: continuous', 'mode: {continuous')).analysis;
    const sentence = /ine \d+ does not parse, so that it cannot be compared\.$/;
    const now = comparisonView({ ...REQUEST, analysis: broken, before: NOW });
    expect(elementsNamed(now.body, 'p').map(wordsOf)).toEqual([expect.stringMatching(sentence)]);
    const old = comparisonView({ ...REQUEST, before: broken });
    expect(elementsNamed(old.body, 'p').map(wordsOf)).toEqual([expect.stringMatching(sentence)]);
  });
});
