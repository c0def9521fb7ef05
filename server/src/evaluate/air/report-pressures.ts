/** The pressures that a report gives itself. */
import type { Located } from '../../model/located.ts';
import type { Report } from '../../model/model-types.generated.ts';
import { showQuantity } from '../../quantity/format-quantity.ts';
import type { Quantity } from '../../quantity/quantity.ts';
import type { FactInput } from '../facts/fact.ts';
import { lazyInput } from '../facts/inputs.ts';
import type { SiteSettings } from '../facts/site-settings.ts';
import { absolutePressure } from './space-pressure.ts';

/** An absolute pressure in Pa, and where it is written. */
export interface GivenPressure {
  readonly value: number;
  readonly input: FactInput;
}

export interface ReportPressures {
  /** The process pressure used for this quantity, in place of the space's. */
  readonly own?: GivenPressure;
  /** For `dew-point-at`: the pressure that the gas is brought to. */
  readonly other?: GivenPressure;
}

export function reportPressures({ pressure, atPressure }: Report, settings: SiteSettings): ReportPressures {
  const given = (label: string, { value, origin }: Located<Quantity>): GivenPressure => {
    const absolute = absolutePressure(value, settings);
    return { value: absolute, input: lazyInput(label, () => showQuantity(absolute, 'pressure'), { origin }) };
  };
  return {
    ...(pressure === undefined ? {} : { own: given('pressure of the report', pressure) }),
    ...(atPressure === undefined ? {} : { other: given('pressure that the gas is brought to', atPressure) }),
  };
}
