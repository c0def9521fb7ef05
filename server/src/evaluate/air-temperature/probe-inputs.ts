/** The entries that the errors of an air temperature are computed from, with their places. */
import type { Located } from '../../model/located.ts';
import { showQuantity, showRange } from '../../quantity/format-quantity.ts';
import type { Quantity } from '../../quantity/quantity.ts';
import type { PhaseEnvelope } from '../air/envelope.ts';
import type { FactInput } from '../facts/fact.ts';
import type { ResolvedPoint } from '../point.ts';
import type { ThermometerKind } from '../resolved/thermometer.ts';
import type { SpaceEvaluation } from '../space.ts';

/** Nothing where the quantity is not given. @param file where that is not the file of the point */
export function quantityInput(
  label: string,
  located: Located<Quantity> | undefined,
  file?: string,
): readonly FactInput[] {
  if (located === undefined) return [];
  const { value, origin } = located;
  return [{ label, text: showQuantity(value.value, value.dimension), origin, ...(file === undefined ? {} : { file }) }];
}

export function speedInput({ speed }: PhaseEnvelope): readonly FactInput[] {
  if (speed === undefined) return [{ label: 'air speed', text: 'none given, taken as still' }];
  const { value, origin } = speed;
  return [{ label: 'air speed', text: showRange(value.low, value.high, 'speed'), origin }];
}

export function gradientInputs({ point }: ResolvedPoint, space: SpaceEvaluation): readonly FactInput[] {
  return [
    ...quantityInput('gradient', space.located.value.gradient),
    ...quantityInput('spacing', point.airTemperatureProbe?.value.mounting?.value.spacing),
  ];
}

export function warmingInputs({ point, heater, humidityProbeModel }: ResolvedPoint): readonly FactInput[] {
  const mounting = point.airTemperatureProbe?.value.mounting?.value;
  const position = mounting?.position;
  const power = humidityProbeModel?.model?.value.heater?.value.power;
  return [
    ...quantityInput('heater rise', heater.rise),
    ...quantityInput('heater power', power, humidityProbeModel?.file),
    ...headInputs(humidityProbeModel),
    ...quantityInput('spacing', mounting?.spacing),
    ...(position === undefined ? [] : [{ label: 'position', text: position.value, origin: position.origin }]),
  ];
}

export function lagInputs(point: ResolvedPoint, space: SpaceEvaluation, kind: ThermometerKind): readonly FactInput[] {
  const { humidityProbeModel, airTemperatureProbeModel } = point;
  const ofHead = humidityProbeModel?.model?.value;
  const ofProbe = kind === 'own-head' ? undefined : airTemperatureProbeModel?.model?.value;
  return [
    ...space.phases.flatMap(({ envelope }) => quantityInput('ramp', envelope.located.value.ramp)),
    ...quantityInput('response of the humidity probe', ofHead?.response, humidityProbeModel?.file),
    ...quantityInput('diameter of its head', ofHead?.head?.value.diameter, humidityProbeModel?.file),
    ...quantityInput('response of the air-temperature probe', ofProbe?.response, airTemperatureProbeModel?.file),
    ...quantityInput('diameter of its stem', ofProbe?.stem?.value.diameter, airTemperatureProbeModel?.file),
  ];
}

function headInputs(ref: ResolvedPoint['humidityProbeModel']): readonly FactInput[] {
  const head = ref?.model?.value.head?.value;
  return [
    ...quantityInput('diameter of the head', head?.diameter, ref?.file),
    ...quantityInput('length of the head', head?.length, ref?.file),
  ];
}
