/** The validators that are compiled from the schemas, by file kind and map. */
import type { FileKind } from './schema.ts';
import type { SchemaCheck } from './validators.generated.js';
import * as compiled from './validators.generated.js';

export type { SchemaError } from './validators.generated.js';
export type Validator = SchemaCheck;

const ROOTS: Readonly<Record<FileKind, Validator>> = {
  site: compiled.siteRoot,
  kit: compiled.kitRoot,
  visit: compiled.visitRoot,
};

const ENTRIES: Readonly<Record<FileKind, Readonly<Record<string, Validator>>>> = {
  site: { spaces: compiled.siteSpace, points: compiled.sitePoint },
  kit: {
    'humidity-probes': compiled.kitHumidityProbe,
    'temperature-probes': compiled.kitTemperatureProbe,
    transmitters: compiled.kitTransmitter,
    receivers: compiled.kitReceiver,
  },
  visit: { steps: compiled.visitStep },
};

/** Checks the top level of a file, the entries of its maps left out. */
export function validatorOfRoot(kind: FileKind): Validator {
  return ROOTS[kind];
}

/** Checks one entry of a top-level map. */
export function validatorOfEntry(kind: FileKind, map: string): Validator | undefined {
  return ENTRIES[kind][map];
}
