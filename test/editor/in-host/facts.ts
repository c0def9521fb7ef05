/** What the suite inside the extension host shows, in the order in which it runs; each is a test of its own outside. */
export const FACTS = {
  findings: [
    'a finding carries source, severity, rule name and a link to the page of its rule',
    'the page of a rule is a Markdown file that cannot be changed, and an unknown rule has none',
    'a kit changed on disk refreshes the findings of the sites that use it',
    'a file that is not open has its findings too, and loses them when it goes',
  ],
  mending: [
    'the quick fix of a finding removes it',
    'fix all makes every safe edit, and then has nothing left to do',
    'accepting a finding writes the comment and selects the reason to be typed over',
    'a value is written in another unit',
    'a humidity is written as a dew point, and the title says what the envelope then takes in',
    'the envelope of a space becomes its first phase',
    'a point is copied under the next free tag',
  ],
  reading: [
    'a hover on a point shows its highest dew point',
    'a hover on a report shows what its uncertainty is made of',
    'a hover on a plan of checks shows what the visits found, with a picture',
    'a dew point stands beside the humidity of a space',
    'a line above a point tells its state, and leads to the place that it speaks of',
    'numbers, units, quantities and names are coloured apart',
  ],
  typing: [
    'a key is offered with its explanation',
    'the quantities that a point can report are offered first, the others with the reason against them',
    'a unit is offered behind a number, the likeliest first',
    'a model of the kit is offered with how well it suits the space',
  ],
  names: [
    'the definition of a model is in the kit',
    'the references of a model are found in the kit and in the sites',
    'the uses of a space are highlighted',
    'renaming a model changes the kit and the sites',
    'a name that does not fit, and a word that is no name, are refused with the reason',
    'renaming a kit file updates the sites that name it',
    'the path of a kit is a link to it',
  ],
  structure: [
    'the outline shows sections, points and their parts',
    'a point is found by its title in the whole workspace',
    'a point can be folded',
    'a selection grows from the number over the value and the point to the file',
  ],
  visits: [
    'the steps of the handover are offered in a visit, with what should be seen',
    'a hover on a reading of a visit shows how it agrees with its reference',
    'the fix of a setting that differs changes the site file',
  ],
  files: [
    'the server finds the files of the workspace without what git ignores',
    'the server reads files of the workspace, and none outside it',
    'a new site file holds the skeleton and is checked before it is saved',
    'after a restart of the server the findings are back',
    'what is asked just as the server is restarted is answered',
  ],
} as const;

export type FactGroup = keyof typeof FACTS;

export type Fact = (typeof FACTS)[FactGroup][number];

/** A check for each fact of a group; it rejects where the fact does not hold. */
export type Checks<Group extends FactGroup> = Readonly<Record<(typeof FACTS)[Group][number], () => Promise<void>>>;

export interface InHostResult {
  readonly fact: Fact;
  /** Absent where the fact holds. */
  readonly failure?: string;
}

export interface InHostStart {
  /** Of the editor. */
  readonly version: string;
  readonly inWebWorker: boolean;
  /** The scheme of the folder that is open. */
  readonly scheme: string;
  /** Milliseconds that the extension took to become active. */
  readonly activation: number;
  /** Milliseconds from then until the first file that was opened had its findings; the server starts meanwhile. */
  readonly firstFindings: number;
}

/** Marks the line that tells how the suite began. */
export const START_MARK = 'IN-HOST-START ';

/** Marks the lines of the console that carry a result. */
export const RESULT_MARK = 'IN-HOST-RESULT ';
