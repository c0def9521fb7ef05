/** One small site with its kit and a visit, for the tests of features. All of it is invented. */

export const KIT = `dewright: 1
kit: {id: fennmoor, title: Models used at Fennmoor}
humidity-probes:
  hp-heated:
    title: Heated humidity probe, 80 °C
    ranges: {relative-humidity: 0 .. 100 %RH, temperature: -40 .. 120 degC, pressure: 50 .. 1000 kPa}
    heater: {power: 4 W, kind: constant-power, minimum-voltage: 18 V, maximum-rise: 20 K}
    supply: {voltage: 10 .. 30 V, power: 0.6 W}
    accuracy:
      - {when: 0 .. 90 %RH, relative-humidity: 0.8 %RH, coverage: 2}
      - {when: 90 .. 100 %RH, relative-humidity: 1.3 %RH, coverage: 2}
    head-temperature: 0.1 K
    drift: 0.5 %RH/year
    response: 15 s
    head: {diameter: 12 mm, length: 60 mm}
    stem: {diameter: 12 mm, wall: 1 mm, material: stainless-steel}
    withstands: [wash-down, acetic-acid]
  hp-plain:
    title: Plain humidity probe
    ranges: {relative-humidity: 0 .. 100 %RH, temperature: -40 .. 80 degC}
    withstands: [acetic-acid]
temperature-probes:
  tp-slim: {ranges: {temperature: -40 .. 180 degC}, accuracy: {class: A}}
transmitters:
  tx-two: {title: Transmitter for two probes, probes: 2}
receivers:
  plc-ai: {title: Current input, input: 4 .. 20 mA, bits: 14}
`;

export const SITE = `dewright: 1
site:
  id: fennmoor
  title: Fennmoor Timber
  kits: [kits/fennmoor.dewkit.yaml]
spaces:
  kiln-2:
    title: Kiln 2, green oak
    pressure: 99 kPa
    air:
      temperature: 55 .. 78 degC
      humidity: 35 .. 88 %RH
      speed: 2 .. 4 m/s
    exposure: [acetic-acid]
  hall:
    air: {temperature: 5 .. 32 degC, dew-point: 2 .. 18 degC}
points:
  K2-MT-101:
    title: Kiln 2, air on the load
    space: kiln-2
    humidity-probe:
      model: hp-heated
      serial: A1001
      heater: {mode: continuous, rise: 8 K, set-at: factory}
      mounting: {insertion: 200 mm}
    air-temperature-probe: {model: tp-slim, serial: T2001}
    reports:
      relative-humidity: {air-temperature: air-temperature-probe, tolerance: 3 %RH}
      dew-point: {tolerance: 0.8 K}
    supply: {voltage: 24 V, cable: {length: 60 m, conductor: 0.5 mm2}}
    signals:
      AO1: {kind: current-loop, quantity: relative-humidity, span: 0 .. 100 %RH, receiver: plc-ai}
  K2-MT-102:
    space: kiln-2
    humidity-probe: {model: hp-heated, heater: {mode: continuous, rise: 8 K, set-at: site}}
    reports:
      relative-humidity: {air-temperature: K2-MT-101, tolerance: 3 %RH}
`;

export const VISIT = `dewright: 1
visit: {site: fennmoor, date: 2026-09-02}
readings:
  - {point: K2-MT-101, quantity: dew-point, shown: 58.9 degC, reference: 58.4 degC, using: reference-instrument}
log: logs/kiln-2.csv
`;

export const FENNMOOR = {
  'fennmoor.dewsite.yaml': SITE,
  'kits/fennmoor.dewkit.yaml': KIT,
  'first.dewvisit.yaml': VISIT,
};

/** A file of the small workspace with the cursor before the first place of some words, or inside them at `|`. */
export function cursorIn(text: string, words: string): string {
  const bare = words.replace('|', '');
  const at = text.indexOf(bare);
  if (at < 0) throw new RangeError(`“${bare}” does not stand in the file`);
  const offset = at + Math.max(0, words.indexOf('|'));
  return `${text.slice(0, offset)}|${text.slice(offset)}`;
}
