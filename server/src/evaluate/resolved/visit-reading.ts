/** The pairs that were read at points on visits: what the point showed, and what the reference beside it showed. */
import { groupedBy } from '../../base/grouped.ts';
import type { VisitModel } from '../../model/file-models.ts';
import type { CalendarDate, HeaterDuringCheck, Reading, VisitHeader } from '../../model/model-types.generated.ts';
import { SALT_COVERAGE, SALT_IDS, type SaltHumidity, saltHumidity } from '../../physics/air/saturated-salts.ts';
import type { QuantityName } from '../../quantity/quantities.ts';
import type { Origin } from '../../syntax/nodes.ts';
import { isUnread } from '../facts/unread.ts';
import { saltUsed } from './salt-choices.ts';

/** One pair, in canonical units. */
export interface VisitReading {
  /** URI of the visit file. */
  readonly file: string;
  readonly origin: Origin;
  /** Of what the point showed. */
  readonly shownOrigin: Origin;
  readonly date: CalendarDate;
  readonly purpose: NonNullable<VisitHeader['purpose']>['value'] | undefined;
  readonly tag: string;
  readonly quantity: QuantityName;
  readonly shown: number;
  readonly reference: number;
  /** Expanded, at the site's coverage: as written, or over a salt as its table has it. */
  readonly referenceUncertainty: number | undefined;
  readonly atCelsius: number | undefined;
  readonly using: string | undefined;
  readonly state: 'as-found' | 'as-left' | undefined;
  readonly heater: HeaterDuringCheck | undefined;
}

/** A visit file of the workspace. */
export interface VisitOfSite {
  readonly file: string;
  readonly model: VisitModel;
}

/** Of the visit; of one that gives none, before all others. */
export function dateOf({ header }: VisitModel): CalendarDate | '' {
  return header?.value.date?.value ?? '';
}

/** The readings of some visits by the tags of their points, the oldest first. @param coverage factor k of the site */
export function readingsByTag(
  visits: readonly VisitOfSite[],
  coverage: number,
): ReadonlyMap<string, readonly VisitReading[]> {
  const readings = visits.flatMap((visit) => readingsOf(visit, coverage));
  return groupedBy(
    readings.toSorted((one, other) => one.date.localeCompare(other.date)),
    ({ tag }) => tag,
  );
}

/** True where nothing of them has changed: a part that stands as it did has the origins that it had. */
export function sameReadings(one: readonly VisitReading[], other: readonly VisitReading[]): boolean {
  return (
    one.length === other.length &&
    one.every((reading, index) => {
      const now = other[index];
      return now?.origin === reading.origin && now.date === reading.date && now.purpose === reading.purpose;
    })
  );
}

/** A pair of which something needed cannot be read is left out. */
function readingsOf({ file, model }: VisitOfSite, coverage: number): readonly VisitReading[] {
  const { date, purpose } = model.header?.value ?? {};
  if (date === undefined) return [];
  return model.readings.flatMap((located): readonly VisitReading[] => {
    const { value, origin } = located;
    const { point, quantity, shown, reference, referenceUncertainty } = value;
    if (point === undefined || quantity === undefined || shown === undefined || reference === undefined) return [];
    const isLost = isUnread(located, 'reference-uncertainty', referenceUncertainty);
    return [
      {
        file,
        origin,
        shownOrigin: shown.origin,
        date: date.value,
        purpose: purpose?.value,
        tag: point.value,
        quantity: quantity.value,
        shown: shown.value.value,
        reference: reference.value.value,
        referenceUncertainty: isLost ? undefined : (referenceUncertainty?.value.value ?? ofTable(value, coverage)),
        atCelsius: value.at?.value.value,
        using: value.using?.value,
        state: value.state?.value,
        heater: value.heater?.value,
      },
    ];
  });
}

function ofTable(reading: Reading, coverage: number): number | undefined {
  const salt = reading.quantity?.value === 'relative-humidity' ? humidityOverSalt(reading) : undefined;
  return salt === undefined ? undefined : (salt.expandedUncertainty / SALT_COVERAGE) * coverage;
}

/** Over the salt that a reading names, at the temperature of the reading. */
function humidityOverSalt({ using, at }: Reading): SaltHumidity | undefined {
  const name = saltUsed(using?.value);
  const salt = SALT_IDS.find((id) => id === name);
  const humidity = salt === undefined || at === undefined ? undefined : saltHumidity(salt, at.value.value);
  return humidity?.ok === true ? humidity.value : undefined;
}
