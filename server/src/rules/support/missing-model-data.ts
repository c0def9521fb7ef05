/** What a kit does not say of a model that sites use, and what could be checked with it. */
import { isUnread } from '../../evaluate/facts/unread.ts';
import type { Located } from '../../model/located.ts';
import type { HumidityProbeModel, TemperatureProbeModel } from '../../model/model-types.generated.ts';
import type { MissingInput } from './missing-inputs.ts';

export function missingOfHumidityProbe(located: Located<HumidityProbeModel>): readonly MissingInput[] {
  const { ranges, accuracy, heater, head } = located.value;
  return [
    ...missing(located, 'ranges', ranges, 'whether it bears its air'),
    ...missing(located, 'accuracy', accuracy, 'the uncertainty of its points'),
    ...(heater === undefined ? [] : missing(located, 'head', head, 'what its heater reaches')),
    ...(heater?.value.kind?.value === 'resistive'
      ? missing(heater, 'rated-voltage', heater.value.ratedVoltage, 'the power of its heater', 'heater.rated-voltage')
      : []),
  ];
}

export function missingOfTemperatureProbe(located: Located<TemperatureProbeModel>): readonly MissingInput[] {
  const { ranges, accuracy } = located.value;
  return [
    ...missing(located, 'ranges', ranges, 'whether it bears its air'),
    ...missing(located, 'accuracy', accuracy, 'the uncertainty of its points'),
  ];
}

function missing(
  map: Located<unknown>,
  key: string,
  read: unknown,
  check: string,
  shownKey = key,
): readonly MissingInput[] {
  return read !== undefined || isUnread(map, key, read) ? [] : [{ key: shownKey, check }];
}
