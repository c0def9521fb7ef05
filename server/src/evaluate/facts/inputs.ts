/** Entries of files as what facts are computed from, with their places. */
import type { Located } from '../../model/located.ts';
import { showQuantity, showRange } from '../../quantity/format-quantity.ts';
import type { Quantity, QuantityRange } from '../../quantity/quantity.ts';
import type { Origin } from '../../syntax/nodes.ts';
import type { FactInput } from './fact.ts';

/** Where an input stands, if anywhere. */
export interface InputPlace {
  readonly origin?: Origin;
  readonly file?: string | undefined;
}

/** An input whose text is made when somebody reads it. */
export function lazyInput(label: string, makeText: () => string, place: InputPlace = {}): FactInput {
  return new LazyInput(label, makeText, place);
}

/** A class, so that thousands of inputs share their getters. */
class LazyInput implements FactInput {
  readonly origin?: Origin;
  readonly file?: string;
  readonly #makeText: () => string;

  constructor(
    readonly label: string,
    makeText: () => string,
    { origin, file }: InputPlace,
  ) {
    this.#makeText = makeText;
    if (origin !== undefined) this.origin = origin;
    if (file !== undefined) this.file = file;
  }

  get text(): string {
    return this.#makeText();
  }
}

/** Nothing where the quantity is not given. @param file where that is not the file of the point */
export function quantityInput(
  label: string,
  located: Located<Quantity> | undefined,
  file?: string,
): readonly FactInput[] {
  if (located === undefined) return [];
  const { value, origin } = located;
  return [lazyInput(label, () => showQuantity(value.value, value.dimension), { origin, file })];
}

export function rangeInput(label: string, { value, origin }: Located<QuantityRange>): FactInput {
  return lazyInput(label, () => showRange(value.low, value.high, value.dimension), { origin });
}

export function speedInput({ speed }: { readonly speed: Located<QuantityRange> | undefined }): readonly FactInput[] {
  if (speed === undefined) return [{ label: 'air speed', text: 'none given, taken as still' }];
  return [rangeInput('air speed', speed)];
}

/** What says the same at the same place is told once. */
export function withoutRepeats(inputs: readonly FactInput[]): readonly FactInput[] {
  const told = new Set<string>();
  return inputs.filter(({ label, text, file, origin }) => {
    const said = JSON.stringify([label, text, file, origin?.part.path, origin?.start]);
    if (told.has(said)) return false;
    told.add(said);
    return true;
  });
}
