/**
 * The tree of a file. A file is a row of parts, each a stretch of whole lines that is parsed alone: a top-level
 * key, or one entry of a map such as `points`. Places inside a part count from the part's start, so that a part
 * is the same object wherever it moves to.
 */
import type { TextRange } from '../base/text-range.ts';

export type SyntaxNode = MapNode | ListNode | ScalarNode | AliasNode;

interface NodeBase extends TextRange {
  readonly anchor?: Anchor;
}

export interface Anchor extends TextRange {
  readonly name: string;
}

export interface MapNode extends NodeBase {
  readonly kind: 'map';
  readonly flow: boolean;
  readonly pairs: readonly PairNode[];
}

export interface PairNode {
  readonly key: ScalarNode;
  readonly value: SyntaxNode;
}

export interface ListNode extends NodeBase {
  readonly kind: 'list';
  readonly flow: boolean;
  readonly items: readonly SyntaxNode[];
}

export type ScalarValue = string | number | boolean | null;

export interface ScalarNode extends NodeBase {
  readonly kind: 'scalar';
  /** As YAML 1.2 reads it. */
  readonly value: ScalarValue;
  /** The characters as typed, without quotes; what values with units are read from. */
  readonly text: string;
  /** Where `text` starts, where every character of it stands as typed; otherwise absent. */
  readonly textStart?: number;
}

export interface AliasNode extends NodeBase {
  readonly kind: 'alias';
  readonly name: string;
  /** What it stands for, where the anchor stands above it in the same part. */
  readonly target?: Exclude<SyntaxNode, AliasNode>;
}

export interface SyntaxProblem extends TextRange {
  readonly sentence: string;
  readonly related?: TextRange;
}

export interface Comment extends TextRange {
  readonly text: string;
  /** True where nothing but the comment stands on its line. */
  readonly alone: boolean;
}

export interface Part {
  /** `[]` for a file that could not be split, else `['site']`, `['points', 'K2-MT-101']` … */
  readonly path: readonly string[];
  readonly text: string;
  /** The pairs that this part holds: one, or all of the file's where it was not split. */
  readonly root: MapNode | undefined;
  readonly problems: readonly SyntaxProblem[];
  readonly acceptanceComments: readonly Comment[];
  /** The last node with each anchor: what later parts see. */
  readonly anchors: ReadonlyMap<string, Exclude<SyntaxNode, AliasNode>>;
  /** Aliases whose anchors do not stand above them in this part. */
  readonly foreignAliases: readonly AliasNode[];
}

export interface PlacedPart {
  readonly part: Part;
  /** Where the part starts in the file. */
  readonly offset: number;
  /** The line it starts on, from 0. */
  readonly line: number;
}

export interface SyntaxTree {
  readonly text: string;
  readonly parts: readonly PlacedPart[];
}

/** A place that stays true while the part moves; `definedAt` is the anchor's content where an alias stands here. */
export interface Origin extends TextRange {
  readonly part: Part;
  readonly definedAt?: Origin;
}
