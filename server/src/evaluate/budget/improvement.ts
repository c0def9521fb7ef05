/** What helps a budget most. */
import { type Remedy, remedyWords, type SourceKind, sourceInfo } from './uncertainty-source.ts';

/** What a person can change, and what would be left if that made its contributions vanish. */
export interface Improvement {
  readonly remedy: Remedy;
  readonly words: string;
  readonly expandedUncertainty: number;
}

/** The one change that helps most: contributions that one remedy lessens count together. */
export function bestImprovement(
  contributions: readonly { readonly kind: SourceKind; readonly share: number }[],
  expandedUncertainty: number,
): Improvement | undefined {
  const shares = new Map<Remedy, number>();
  for (const { kind, share } of contributions) {
    const { remedy } = sourceInfo(kind);
    shares.set(remedy, (shares.get(remedy) ?? 0) + share);
  }
  let best: readonly [Remedy, number] | undefined;
  for (const entry of shares) if (best === undefined || entry[1] > best[1]) best = entry;
  if (best === undefined) return undefined;
  const [remedy, share] = best;
  const left = Math.sqrt(Math.max(0, 1 - share));
  return { remedy, words: remedyWords(remedy), expandedUncertainty: expandedUncertainty * left };
}
