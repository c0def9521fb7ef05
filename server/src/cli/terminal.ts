/** Colours where they are wanted, and nothing else where they are not. */
import type { Severity } from '../rules/rule.ts';

export interface Colours {
  strong(text: string): string;
  quiet(text: string): string;
  severity(severity: Severity, text: string): string;
}

const CODES: Readonly<Record<Severity, number>> = { error: 31, warning: 33, information: 36, hint: 90 };

export function coloursFor(wanted: boolean): Colours {
  const paint = (code: number, text: string): string => (wanted ? `\u001b[${code}m${text}\u001b[0m` : text);
  return {
    strong: (text) => paint(1, text),
    quiet: (text) => paint(2, text),
    severity: (severity, text) => paint(CODES[severity], text),
  };
}

/** https://no-color.org: any value but the empty one switches colours off. */
export function wantsColour(noColour: boolean): boolean {
  return !noColour && (process.env['NO_COLOR'] ?? '') === '' && process.stdout.isTTY === true;
}
