/** Which models can keep the sensor of a point dry, by what their data sheets say. */
import { exceeds } from '../base/rounding.ts';
import type { HumidityProbeModel } from '../model/model-types.generated.ts';
import { highest } from './air/quantity-range.ts';
import { highestHumidityWith } from './dryness/dryness.ts';
import { humidityProbeFit } from './equipment/model-fit.ts';
import type { ModelRef } from './equipment/models.ts';
import { isKnown } from './facts/fact.ts';
import { isUnread } from './facts/unread.ts';
import type { ResolvedPoint } from './resolved/resolved-point.ts';

type Ref = ModelRef<HumidityProbeModel>;

/** True where the point's model can be read and has no heater. */
export function modelHasNoHeater({ humidityProbeModel }: ResolvedPoint): boolean {
  const model = humidityProbeModel?.model;
  return model !== undefined && model.value.heater === undefined && !isUnread(model, 'heater', undefined);
}

/** True where the point's own model reaches a rise in K and its head bears the hottest air with it. */
export function ownModelHeats(resolved: ResolvedPoint, rise: number): boolean {
  const { humidityProbeModel } = resolved;
  return humidityProbeModel !== undefined && heats(humidityProbeModel, rise, hottestAir(resolved));
}

/** The other models of the site's kits that reach the rise and suit the space in every way, in the order of the kits. */
export function otherModelsThatHeat(
  { humidityProbeModel, catalogue, space }: ResolvedPoint,
  rise: number,
): readonly Ref[] {
  if (space === undefined) return [];
  const highestHumidity = highestHumidityWith(space, rise);
  return [...catalogue.humidityProbes.values()].filter(({ id, model }) => {
    if (id === humidityProbeModel?.id || model?.value.heater?.value.maximumRise === undefined) return false;
    const { temperatureMargin, objections } = humidityProbeFit(model.value, space, {
      heater: true,
      rise,
      highestHumidity,
    });
    return temperatureMargin !== undefined && objections.length === 0;
  });
}

function heats({ model }: Ref, rise: number, hottestAirCelsius: number | undefined): boolean {
  const reach = model?.value.heater?.value.maximumRise?.value.value;
  const bears = model?.value.ranges?.value.temperature?.value.high;
  if (reach === undefined || bears === undefined || hottestAirCelsius === undefined) return false;
  return rise <= reach && !exceeds(hottestAirCelsius + rise, bears);
}

function hottestAir({ space }: ResolvedPoint): number | undefined {
  if (space === undefined) return undefined;
  const fact = space.facts.get(highest('air-temperature'));
  return isKnown(fact) ? fact.value : undefined;
}
