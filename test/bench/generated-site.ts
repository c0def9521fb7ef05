/** Site files of any length: 45 lines a point, with comments, phases and units in strings. */

const LINES_PER_POINT = 45;
const POINTS_PER_SPACE = 10;

export const KIT = `dewright: 1
kit: {id: bench, title: Invented models for the bench}
humidity-probes:
  heated:
    ranges: {relative-humidity: 0 .. 100 %RH, temperature: -40 .. 120 degC, pressure: 50 .. 1000 kPa}
    accuracy:
      - {when: 0 .. 90 %RH, relative-humidity: 0.8 %RH, coverage: 2}
      - {when: 90 .. 100 %RH, relative-humidity: 1.3 %RH, coverage: 2}
    head-temperature: 0.1 K
    drift: 0.5 %RH/year
    response: 15 s
    head: {diameter: 12 mm, length: 60 mm}
    stem: {diameter: 12 mm, wall: 1 mm, material: stainless-steel}
    heater: {power: 4 W, kind: constant-power, minimum-voltage: 18 V, maximum-rise: 20 K}
    supply: {voltage: 10 .. 30 V, power: 0.6 W}
    withstands: [wash-down, acetic-acid]
temperature-probes:
  slim: {ranges: {temperature: -40 .. 180 degC}, accuracy: {class: A}, response: 20 s, stem: {diameter: 6 mm, wall: 0.5 mm, material: stainless-steel}, withstands: [wash-down, acetic-acid]}
`;

/** @param kit the path of the kit, as the site names it */
export function generateSite(lines: number, kit: string, id = 'bench', firstPoint = 0): string {
  const points = Math.max(1, Math.round(lines / LINES_PER_POINT));
  const spaces = Math.ceil(points / POINTS_PER_SPACE);
  const text = [
    'dewright: 1',
    `site: {id: ${id}, altitude: 210 m, surroundings: 5 .. 32 degC, kits: [${kit}]}`,
    'spaces:',
    ...Array.from({ length: spaces }, (_, index) => space(index)),
    'points:',
    ...Array.from({ length: points }, (_, index) => point(firstPoint + index, index % spaces)),
  ];
  return `${text.join('\n')}\n`;
}

function space(index: number): string {
  return `  kiln-${index}:
    title: Kiln ${index}, green oak  # loaded twice a week
    pressure: 99 kPa
    phases:
      warm-up: {temperature: 12 .. 55 degC, dew-point-depression: 1 .. 6 K, speed: 1.5 .. 4 m/s, ramp: 0.5 K/min}
      drying: {temperature: 55 .. 78 degC, humidity: 35 .. 88 %RH, speed: 2 .. 4 m/s}
      conditioning: {temperature: 75 .. 80 degC, humidity: 80 .. 90 %RH, speed: 1.5 .. 3 m/s}
    gradient: 0.8 K/m
    exposure: [wash-down]`;
}

function point(index: number, spaceIndex: number): string {
  return `  K-MT-${index}:
    title: Kiln ${spaceIndex}, air on the load
    # fitted through the north wall
    space: kiln-${spaceIndex}
    humidity-probe:
      model: heated
      serial: A${1000 + index}
      heater:
        mode: continuous
        rise: 8 K
        set-at: factory
      mounting:
        insertion: 200 mm
        attitude: horizontal
        insulation: 25 mm
        path: direct
    air-temperature-probe:
      model: slim
      mounting:
        insertion: 180 mm
        spacing: 120 mm
        position: below
    reports:
      relative-humidity:
        air-temperature: air-temperature-probe
        tolerance: 6 %RH
      dew-point:
        tolerance: 1.5 K
    supply:
      voltage: 24 V
      cable:
        length: 20 m
        conductor: 0.75 mm2
    signals:
      AO1:
        kind: current-loop
        quantity: relative-humidity
        span: 0 .. 100 %RH
        load: 250 ohm
        on-fault: 21 mA
    alarms:
      too-wet: {quantity: dew-point, above: 76 degC, clear: 74 degC, delay: 60 s}
    checks: {interval: 12 months, method: reference-instrument, last: 2026-09-14}`;
}
