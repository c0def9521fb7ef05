/**
 * Thermal conductivities of what walls, insulation and stems are made of. Design values for dry material near room
 * temperature: insulation conducts more when hot (mineral wool about 20 % more at 80 °C) and much more when wet.
 */

export interface Material {
  readonly title: string;
  /** W/(m·K) */
  readonly conductivity: number;
  readonly source: string;
}

const BUILDING_MATERIAL = 'EN ISO 10456, table 3; from memory';
const HANDBOOK = 'common handbook value, from memory';

/** Every material that a site or kit file may name. */
export const MATERIALS = {
  'stainless-steel': { title: 'stainless steel, austenitic', conductivity: 17, source: BUILDING_MATERIAL },
  'carbon-steel': { title: 'carbon steel', conductivity: 50, source: BUILDING_MATERIAL },
  aluminium: { title: 'aluminium alloy', conductivity: 160, source: BUILDING_MATERIAL },
  copper: { title: 'copper', conductivity: 380, source: BUILDING_MATERIAL },
  brass: { title: 'brass', conductivity: 120, source: BUILDING_MATERIAL },
  brick: { title: 'common brick', conductivity: 0.72, source: HANDBOOK },
  concrete: { title: 'dense concrete, 2400 kg/m³', conductivity: 2, source: BUILDING_MATERIAL },
  'aerated-concrete': { title: 'aerated concrete, 500 kg/m³', conductivity: 0.14, source: HANDBOOK },
  timber: { title: 'softwood timber, 500 kg/m³', conductivity: 0.13, source: BUILDING_MATERIAL },
  plywood: { title: 'plywood, 500 kg/m³', conductivity: 0.13, source: BUILDING_MATERIAL },
  glass: { title: 'soda lime glass', conductivity: 1, source: BUILDING_MATERIAL },
  polycarbonate: { title: 'polycarbonate, solid', conductivity: 0.2, source: BUILDING_MATERIAL },
  polypropylene: { title: 'polypropylene', conductivity: 0.22, source: BUILDING_MATERIAL },
  plastic: { title: 'solid thermoplastic', conductivity: 0.2, source: HANDBOOK },
  ptfe: { title: 'PTFE', conductivity: 0.25, source: BUILDING_MATERIAL },
  peek: { title: 'PEEK', conductivity: 0.25, source: HANDBOOK },
  grp: { title: 'glass-fibre reinforced polyester', conductivity: 0.3, source: HANDBOOK },
  'mineral-wool': { title: 'mineral wool', conductivity: 0.04, source: HANDBOOK },
  'glass-wool': { title: 'glass wool', conductivity: 0.038, source: HANDBOOK },
  'polyurethane-foam': { title: 'polyurethane foam', conductivity: 0.028, source: HANDBOOK },
  'polystyrene-foam': { title: 'polystyrene foam', conductivity: 0.036, source: HANDBOOK },
  'elastomeric-foam': { title: 'elastomeric foam', conductivity: 0.038, source: HANDBOOK },
  'cellular-glass': { title: 'cellular glass', conductivity: 0.045, source: HANDBOOK },
  'calcium-silicate': { title: 'calcium silicate insulation', conductivity: 0.06, source: HANDBOOK },
} as const satisfies Readonly<Record<string, Material>>;
