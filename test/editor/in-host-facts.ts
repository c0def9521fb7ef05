/** What the suite inside the extension host shows; each is a test of its own outside. */
export const IN_HOST_FACTS = [
  'a finding carries source, severity, rule name and a link to the page of its rule',
  'the page of a rule is a Markdown file that cannot be changed, and an unknown rule has none',
  'a hover on a point shows its highest dew point',
  'the quick fix of a finding removes it',
  'fix all makes every safe edit, and then has nothing left to do',
  'a kit changed on disk refreshes the findings of the sites that use it',
  'the server finds the files of the workspace without what git ignores',
  'the server reads files of the workspace, and none outside it',
  'a new site file holds the skeleton and is checked before it is saved',
  'after a restart of the server the findings are back',
] as const;

export type InHostFact = (typeof IN_HOST_FACTS)[number];

export interface InHostResult {
  readonly fact: InHostFact;
  /** Absent where the fact holds. */
  readonly failure?: string;
}

export interface InHostStart {
  readonly inWebWorker: boolean;
  /** Milliseconds that the extension took to become active. */
  readonly activation: number;
  /** Milliseconds from then until the first file that was opened had its findings; the server starts meanwhile. */
  readonly firstFindings: number;
}

/** Marks the line that tells how the suite began. */
export const START_MARK = 'IN-HOST-START ';

/** Marks the lines of the console that carry a result. */
export const RESULT_MARK = 'IN-HOST-RESULT ';
