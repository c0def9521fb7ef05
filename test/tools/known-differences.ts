/**
 * What the output of this version is meant to say otherwise than the version that it is compared with. Each names its
 * fault, and is taken out of both: where the rest is equal, nothing else has changed.
 */
export interface KnownDifference {
  readonly fault: string;
  /** An output of either version without what differs. */
  without(output: string): string;
}

/** Rules whose pages named facts that the rule does not read, or left out some that it shows. */
const WRONG_PAGES = [
  'alarm-misses',
  'alarm-outside-span',
  'drift-ahead',
  'envelope-impossible',
  'insulation-missing',
  'register-overflow',
  'resolution-coarse',
  'span-too-narrow',
  'span-too-wide',
];

export const KNOWN_DIFFERENCES: readonly KnownDifference[] = [
  {
    fault: 'facts of signals and alarms had no key of their own kind',
    without: (output) => output.replaceAll(/(?<=")((?:[^"/\n]+\/)?)(?:signal|alarm)s?\/(?=[^"\n]+\/[a-z-]+")/g, '$1'),
  },
  {
    fault: 'a page named facts that its rule does not read, or left out some that it shows',
    without: (output) => {
      const isWrong = WRONG_PAGES.some((name) => output.startsWith(`# ${name}\n`));
      return isWrong ? output.replace(/## What it compares\n\n.*\n\n/, '') : output;
    },
  },
  {
    fault: 'what weighs most and what would help was worded twice',
    // The bars of a budget carry that sentence too: one that is shorter makes the picture lower.
    without: (output) =>
      output
        .replaceAll(/<svg[^>]*aria-label="Uncertainty of .*?<\/svg>/g, '')
        .replaceAll(/weighs most[.;] .*? would leave/g, 'weighs most'),
  },
  {
    fault: 'the check that the visits propose stood in lens and overview, and not in the pack',
    // A longer row makes the columns of its table wider in Markdown.
    without: (output) =>
      output
        .replaceAll(/<tr><th[^>]*>Proposed check<\/th>.*?<\/tr>/g, '')
        .replaceAll(/^\| Proposed check .*\n/gm, '')
        .replaceAll(/ {2,}/g, ' ')
        .replaceAll(/-{4,}/g, '---'),
  },
];
