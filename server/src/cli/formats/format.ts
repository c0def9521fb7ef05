/** What a format of `check` is: one text for each file, made where the file is checked, and the whole around them. */
import type { AcceptedFinding } from '../../analysis/acceptance.ts';
import type { Analysis } from '../../analysis/analysis.ts';
import type { Finding } from '../../analysis/finding.ts';
import type { ParsedFile } from '../../analysis/parsed-file.ts';
import type { SeverityCounts } from '../fail-on.ts';

export interface CheckedFile {
  /** As it is shown: from the current folder. */
  readonly path: string;
  readonly analysis: Analysis;
  readonly findings: readonly Finding[];
  readonly accepted: readonly AcceptedFinding[];
}

export interface Summary {
  readonly files: number;
  readonly points: number;
  readonly counts: SeverityCounts;
  readonly accepted: number;
}

export interface FormatContext {
  readonly colour: boolean;
  /** Any file that was read, for places in it. */
  fileNamed(file: string): ParsedFile | undefined;
}

export interface Format {
  /** The text of one file; empty where the format has nothing to say of it. */
  ofFile(file: CheckedFile, context: FormatContext): string;
  /** @param files the texts of the files, sorted by path, the empty ones left out */
  ofAll(files: readonly string[], summary: Summary, colour: boolean): string;
}
