/** The heated head of a point's humidity probe, as its kit and its mounting describe it. */
import { succeed } from '../../base/outcome.ts';
import type { HeatedHead } from '../../physics/heat/head-conductance.ts';
import { CLEANED_STEEL_EMISSIVITY } from '../../physics/heat/radiation.ts';
import { showQuantity } from '../../quantity/format-quantity.ts';
import type { FactInput } from '../facts/fact.ts';
import { type Given, positive } from '../facts/given.ts';
import { mountedStem } from '../resolved/mounted-stem.ts';
import type { ResolvedPoint } from '../resolved/resolved-point.ts';

export interface HeatedHeadOfPoint {
  readonly geometry: HeatedHead;
  /** The most that the heater takes, W. */
  readonly power: number;
  readonly inputs: readonly FactInput[];
}

export function heatedHead({ point, humidityProbeModel }: ResolvedPoint): Given<HeatedHeadOfPoint> {
  const model = humidityProbeModel?.model?.value;
  const mounting = point.humidityProbe?.value.mounting;
  const power = positive(model?.heater?.value.power, 'the kit gives no power of the heater');
  if (!power.ok) return power;
  const diameter = positive(model?.head?.value.diameter, 'the kit gives no diameter of the head');
  if (!diameter.ok) return diameter;
  const length = positive(model?.head?.value.length, 'the kit gives no length of the head');
  if (!length.ok) return length;
  const mounted = mountedStem(humidityProbeModel, mounting, mounting?.value.attitude);
  if (!mounted.ok) return mounted;
  const { stem, insertion, axis, inputs } = mounted.value;
  const text = `${showQuantity(diameter.value, 'length')} × ${showQuantity(length.value, 'length')}`;
  const file = humidityProbeModel?.file;
  const origin = model?.head?.origin;
  return succeed({
    geometry: {
      diameter: diameter.value,
      length: length.value,
      axis,
      emissivity: CLEANED_STEEL_EMISSIVITY,
      stem,
      // The insertion reaches to the tip of the head.
      stemLength: Math.max(0, insertion - length.value),
    },
    power: power.value,
    inputs: [
      { label: 'head', text, ...(file === undefined ? {} : { file }), ...(origin === undefined ? {} : { origin }) },
      ...inputs,
    ],
  });
}
