/** The stem of a probe as it is mounted: what leads heat between the wall and the sensor. */
import { fail, succeed } from '../../base/outcome.ts';
import type { Located } from '../../model/located.ts';
import type { AirTemperatureProbeMounting, HumidityProbeMounting, Stem } from '../../model/model-types.generated.ts';
import type { CylinderAxis } from '../../physics/heat/head-conductance.ts';
import { MATERIALS } from '../../physics/heat/materials.ts';
import type { Stem as StemProperties } from '../../physics/heat/stem-conduction.ts';
import { showQuantity } from '../../quantity/format-quantity.ts';
import type { ModelRef } from '../equipment/models.ts';
import type { FactInput } from '../facts/fact.ts';
import { type Given, given, positive } from '../facts/given.ts';
import { isUnread } from '../facts/unread.ts';

export interface MountedStem {
  readonly stem: StemProperties;
  /** Length in the air, from the inner surface of the wall to the tip, m. */
  readonly insertion: number;
  /** Thickness of the insulation around the fitting, m; 0 where none is given. */
  readonly insulation: number;
  readonly axis: CylinderAxis;
  readonly inputs: readonly FactInput[];
}

/** @param attitude of the probe; the air-temperature probe is taken to lie as the humidity probe does */
export function mountedStem(
  model: ModelRef<{ readonly stem?: Located<Stem> }> | undefined,
  mounting: Located<HumidityProbeMounting | AirTemperatureProbeMounting> | undefined,
  attitude: HumidityProbeMounting['attitude'],
): Given<MountedStem> {
  if (inSampleLine(mounting?.value)) return fail('the probe sits in a sample line');
  const located = model?.model?.value.stem;
  const stem = stemProperties(located?.value);
  if (!stem.ok) return stem;
  const insertion = positive(mounting?.value.insertion, 'no insertion is given');
  if (!insertion.ok) return insertion;
  const { insulation } = mounting?.value ?? {};
  if (isUnread(mounting, 'insulation', insulation)) return fail('the insulation of the fitting cannot be read');
  const thickness = Math.max(0, insulation?.value.value ?? 0);
  return succeed({
    stem: stem.value,
    insertion: insertion.value,
    insulation: thickness,
    axis: axisOf(attitude),
    inputs: [
      stemInput(model?.file, located, stem.value),
      lengthInput('insertion', insertion.value, mounting?.value.insertion),
      lengthInput('insulation of the fitting', thickness, insulation),
    ],
  });
}

/** Such a probe is in no air stream of the space and goes through no wall of it. */
export function inSampleLine(mounting: HumidityProbeMounting | AirTemperatureProbeMounting | undefined): boolean {
  return mounting !== undefined && 'path' in mounting && mounting.path?.value === 'sample-line';
}

function axisOf(attitude: HumidityProbeMounting['attitude']): CylinderAxis {
  return attitude === undefined || attitude.value === 'horizontal' ? 'horizontal' : 'vertical';
}

function stemProperties(stem: Stem | undefined): Given<StemProperties> {
  const diameter = positive(stem?.diameter, 'the kit gives no diameter of the stem');
  if (!diameter.ok) return diameter;
  const wall = positive(stem?.wall, 'the kit gives no wall thickness of the stem');
  if (!wall.ok) return wall;
  const material = given(stem?.material?.value, 'the kit gives no material of the stem');
  if (!material.ok) return material;
  // A wall of half the diameter or more is a solid rod.
  const wallThickness = Math.min(wall.value, diameter.value / 2);
  return succeed({ diameter: diameter.value, wallThickness, conductivity: MATERIALS[material.value].conductivity });
}

function stemInput(file: string | undefined, located: Located<Stem> | undefined, stem: StemProperties): FactInput {
  const [diameter, wall] = [stem.diameter, stem.wallThickness].map((length) => showQuantity(length, 'length'));
  const text = `${diameter} × ${wall} ${located?.value.material?.value ?? ''}, ${stem.conductivity} W/(m·K)`;
  return {
    label: 'stem',
    text,
    ...(file === undefined ? {} : { file }),
    ...(located === undefined ? {} : { origin: located.origin }),
  };
}

function lengthInput(label: string, length: number, located: Located<unknown> | undefined): FactInput {
  const text = showQuantity(length, 'length');
  return located === undefined ? { label, text: 'none given' } : { label, text, origin: located.origin };
}
