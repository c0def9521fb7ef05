/**
 * What the output of this version is meant to say otherwise than the version that it is compared with. Each names its
 * fault, and takes the difference away: where the rest is equal then, nothing else has changed.
 */
export interface KnownDifference {
  readonly fault: string;
  /** The output of this version, as the other one would have written it. */
  undo(output: string): string;
}

export const KNOWN_DIFFERENCES: readonly KnownDifference[] = [
  {
    fault: 'facts of signals and alarms had no key of their own kind',
    undo: (output) =>
      output
        .replaceAll(/(?<=")((?:[^"/\n]+\/)?(?:signal|alarm))\/(?=[^"\n]+\/frost-point")/g, '$1s/')
        .replaceAll(/(?<=")((?:[^"/\n]+\/)?)(?:signal|alarm)\/(?=[^"\n]+\/[a-z-]+")/g, '$1'),
  },
];
