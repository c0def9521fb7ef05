import { showFact } from '../evaluate/facts/fact.ts';
import { heaterUntold } from '../evaluate/history/heater-untold.ts';
import type { ReadingError } from '../evaluate/history/reading-error.ts';
import { enWords } from '../evaluate/history/words.ts';
import {
  allowedDifference,
  readingErrorFact,
  readingFacts,
  uncertaintyOfPoint,
  uncertaintyOfReference,
} from '../handover/reading-facts.ts';
import { agrees, type ErrorOfVisit, errorsOfVisit } from '../handover/visit-errors.ts';
import { showQuantity } from '../quantity/format-quantity.ts';
import { quantityInfo } from '../quantity/quantities.ts';
import type { FindingDraft, Related, Rule, VisitView } from './rule.ts';
import { settingsOfVisit } from './support/visit-settings.ts';

export const rule: Rule = {
  name: 'visit-disagrees',
  group: 'Visits',
  severity: 'warning',
  title: 'A point and its reference differ by more than their uncertainties explain.',
  why: 'One of the two is wrong, or they did not see the same air. Until it is known which, the process runs on a reading that nobody can vouch for.',
  mend: 'Let both settle and read them again. If they still differ, look at the settings, at the sensor and at where the two sit; then adjust or replace, and write down the pair as left.',
  leavesAlone:
    'Pairs of which one uncertainty is not known, and pairs that a later one with the same kind of reference shows to be put right.',
  sources: ['ISO 13528, En number'],
  facts: [readingErrorFact, uncertaintyOfPoint, uncertaintyOfReference, allowedDifference],
  fixes: [],
  check: { visit: disagreements },
};

function disagreements(view: VisitView): readonly FindingDraft[] {
  if (view.visited.state !== 'found') return [];
  return errorsOfVisit(view.visited.site, view.file).flatMap((found) =>
    heaterUntold(found.error.reading, found.point) ? [] : disagrees(found, view),
  );
}

function disagrees({ error: found, history, point }: ErrorOfVisit, view: VisitView): readonly FindingDraft[] {
  const { reading, enNumber } = found;
  const facts = readingFacts(found, point.settings.coverage.value);
  if (facts === undefined || enNumber === undefined || agrees(found) !== false) return [];
  if (history.errors.some((other) => putsRight(other, found))) return [];
  const { title, dimension } = quantityInfo(reading.quantity);
  const [shown, reference] = [reading.shown, reading.reference].map((value) => showQuantity(value, dimension));
  const { error, ofPoint, ofReference, allowed } = facts;
  const source = otherSource(found, view);
  const advice =
    source.length > 0
      ? 'The instrument takes its air temperature from elsewhere than the site file says: set that right and compare again.'
      : 'Let both settle and read them again, then look at the sensor, the settings and where the two sit.';
  return [
    {
      message: () =>
        `The point showed ${shown} where the reference had ${reference}: the error of the ${title} is ${showFact(error)}, and the uncertainties of the point, ${showFact(ofPoint)}, and of the reference, ${showFact(ofReference)}, allow ${showFact(allowed)} (${enWords(enNumber)}). ${advice}`,
      origin: reading.origin,
      subject: point.tag,
      facts: [error, ofPoint, ofReference, allowed],
      related: () => source,
    },
  ];
}

/** Read after it, with the same kind of reference, and in agreement. */
function putsRight(later: ReadingError, { reading: found }: ReadingError): boolean {
  const { reading } = later;
  const isAfter = reading.date > found.date || isLeftAfter(reading, found);
  return isAfter && reading.using === found.using && agrees(later) === true;
}

function isLeftAfter(reading: ReadingError['reading'], found: ReadingError['reading']): boolean {
  return reading.date === found.date && reading.state === 'as-left' && found.state !== 'as-left';
}

/** Where the same visit has found that the quantity takes its air temperature from another source. */
function otherSource({ reading: { tag, quantity } }: ReadingError, view: VisitView): readonly Related[] {
  return settingsOfVisit(view).flatMap(({ point, recorded: { path, compared, located } }) =>
    point.tag === tag && path === `${quantity}.air-temperature` && compared?.agrees === false
      ? [{ message: 'The source of the air temperature as the instrument has it.', origin: located.origin }]
      : [],
  );
}
