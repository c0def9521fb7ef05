/** The usual caution for each hazard: what findings, hovers, reports and handover plans say where one is met. */
import type { Hazard } from '../model/model-types.generated.ts';

const FLAMMABLE =
  'Only equipment certified for the zone, its gas group and its temperature class is installed, and nothing is opened under voltage.';

export const CAUTIONS: Readonly<Record<Hazard, string>> = {
  'hot-surface': 'Hot surfaces burn: let them cool, or wear gloves, before anything is touched or drawn out.',
  pressure: 'Fittings are rated for the pressure, and none is loosened before the pressure is let off.',
  'confined-space': 'Nobody goes in alone or without a permit, and somebody stays outside.',
  asphyxiant: 'The air may lack oxygen: it is measured before anybody goes in, and while somebody is inside.',
  'flammable-zone-0': FLAMMABLE,
  'flammable-zone-1': FLAMMABLE,
  'flammable-zone-2': FLAMMABLE,
  toxic: 'Find out what is in the air, and protect breath and skin, before the space or a sample line is opened.',
  electrical: 'Only qualified persons work on this voltage, switched off and secured against switching on.',
};

/** Ends every caution. */
export const WHO_DECIDES = 'Local codes and licensed practice decide; Dewright is no safety device.';

/** The cautions for some hazards, each once, and who decides; empty where there is no hazard. */
export function cautionsFor(hazards: readonly Hazard[]): readonly string[] {
  return hazards.length === 0 ? [] : [...new Set(hazards.map((hazard) => CAUTIONS[hazard])), WHO_DECIDES];
}
