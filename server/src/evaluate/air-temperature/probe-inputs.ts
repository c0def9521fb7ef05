/** The entries that the errors of an air temperature are computed from, with their places. */

import type { SpaceEvaluation } from '../air/space.ts';
import type { FactInput } from '../facts/fact.ts';
import { quantityInput } from '../facts/inputs.ts';
import type { ResolvedPoint } from '../resolved/resolved-point.ts';
import type { ThermometerKind } from '../resolved/thermometer.ts';

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
