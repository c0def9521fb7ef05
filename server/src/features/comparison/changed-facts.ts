/** Which numbers differ between two versions of a site, and the changed values that they come from. */
import { type Fact, type FactInput, isKnown, showFact } from '../../evaluate/facts/fact.ts';
import type { ChangedValue } from './changed-values.ts';
import { isWithin, type PlaceNow, pathOf } from './place-path.ts';

export interface ChangedFact {
  /** With its name in the new version. */
  readonly subject: string;
  readonly id: string;
  readonly title: string;
  readonly before: string;
  readonly after: string;
  /** The changed values that go into it. */
  readonly because: readonly ChangedValue[];
  /** Where none does: its inputs that differ. */
  readonly inputs: readonly ChangedInput[];
}

export interface ChangedInput {
  readonly label: string;
  readonly before: string;
  readonly after: string;
}

/** Differences smaller than this part of the value come from rounding inside the machine. */
const ROUNDING = 1e-9;

/** A fact that only one version has comes and goes with what it is a number of. */
export function changedFacts(
  subject: string,
  before: readonly Fact[],
  after: readonly Fact[],
  changes: readonly ChangedValue[],
  nowAt: PlaceNow,
): readonly ChangedFact[] {
  const old = new Map(before.map((fact) => [fact.id, fact]));
  return after.flatMap((fact) => {
    const earlier = old.get(fact.id);
    if (earlier === undefined || isSame(earlier, fact)) return [];
    const [was, is] = [placed(earlier.inputs, nowAt), placed(fact.inputs, (path) => path)];
    const because = changes.filter((change) => [...was, ...is].some(({ path }) => goesInto(change, path)));
    return [
      {
        subject,
        id: fact.id,
        title: fact.title,
        before: shown(earlier),
        after: shown(fact),
        because,
        inputs: because.length > 0 ? [] : changedInputs(was, is),
      },
    ];
  });
}

function isSame(one: Fact, other: Fact): boolean {
  if (!isKnown(one) || !isKnown(other)) return !isKnown(one) && !isKnown(other);
  if (showFact(one) === showFact(other)) return true;
  return Math.abs(one.value - other.value) <= ROUNDING * Math.abs(one.value);
}

function shown(fact: Fact): string {
  return isKnown(fact) ? showFact(fact) : `none, ${fact.missing ?? 'not known'}`;
}

interface PlacedInput extends Pick<FactInput, 'label' | 'text'> {
  readonly path: readonly string[] | undefined;
}

function placed(inputs: readonly FactInput[], nowAt: PlaceNow): readonly PlacedInput[] {
  return inputs.map((input) => ({
    label: input.label,
    text: input.text,
    path: input.origin === undefined ? undefined : nowAt(pathOf(input.origin)),
  }));
}

/** A value stated where an input stands, or the choice of the model that an input is a figure of. */
function goesInto({ path, before, after }: ChangedValue, input: readonly string[] | undefined): boolean {
  if (input === undefined) return false;
  if (isWithin(path, input)) return true;
  const [, model] = input;
  const isChoice = path.at(-1) === 'model' || path.at(-1) === 'receiver';
  return isChoice && model !== undefined && (before === model || after === model);
}

function changedInputs(before: readonly PlacedInput[], after: readonly PlacedInput[]): readonly ChangedInput[] {
  const keyOf = ({ label, path }: PlacedInput): string => JSON.stringify([label, path]);
  const old = new Map(before.map((input) => [keyOf(input), input]));
  return after.flatMap((input) => {
    const earlier = old.get(keyOf(input));
    if (earlier === undefined || earlier.text === input.text) return [];
    return [{ label: input.label, before: earlier.text, after: input.text }];
  });
}
