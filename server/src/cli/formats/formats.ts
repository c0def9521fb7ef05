/** The formats of `check`, by the names that `--format` takes. */
import type { Format } from './format.ts';
import { github } from './github.ts';
import { json } from './json.ts';
import { junit } from './junit.ts';
import { sarif } from './sarif.ts';
import { text } from './text.ts';

export const FORMAT_NAMES = ['text', 'json', 'sarif', 'junit', 'github'] as const;

export type FormatName = (typeof FORMAT_NAMES)[number];

export const FORMATS: Readonly<Record<FormatName, Format>> = { text, json, sarif, junit, github };
