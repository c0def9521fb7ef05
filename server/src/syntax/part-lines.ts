import { lineIndexOf } from '../base/line-index.ts';
import { remembered } from '../base/remembered.ts';
import type { Part } from './nodes.ts';

/** The lines of one part, counted once. */
export const linesOf = remembered(({ text }: Part) => lineIndexOf(text));
