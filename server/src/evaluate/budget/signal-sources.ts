/** What a signal adds to the reported value: errors of output and receiver, and resolution. */
import { standardUncertaintyOf } from '../../physics/metrology/standard-uncertainty.ts';
import { showQuantity } from '../../quantity/format-quantity.ts';
import { quantityInfo } from '../../quantity/quantities.ts';
import type { FactInput } from '../facts/fact.ts';
import type { ResolvedPoint } from '../resolved/resolved-point.ts';
import { type AnalogueUse, countOf, type SignalUse } from '../resolved/signal-use.ts';
import { limitsSource, type SourceKind, type UncertaintySource } from './uncertainty-source.ts';

export interface SignalSources {
  readonly name: string;
  readonly sources: readonly UncertaintySource[];
}

/**
 * Of the signals that carry a quantity, the one that adds most: what is read through any other is at least as good.
 * @param magnitude the largest value that the quantity takes
 */
export function worstSignal(
  uses: readonly SignalUse[],
  resolved: ResolvedPoint,
  magnitude: number,
): SignalSources | undefined {
  let worst: (SignalSources & { readonly variance: number }) | undefined;
  for (const use of uses) {
    const parts = partsOf(use, resolved, magnitude);
    const variance = parts.reduce(
      (sum, { halfWidth }) => sum + standardUncertaintyOf(halfWidth, 'rectangular') ** 2,
      0,
    );
    if (parts.length === 0 || (worst !== undefined && variance <= worst.variance)) continue;
    const sources = parts.map(({ kind, halfWidth, input }) => ({
      ...limitsSource(kind, 'reported-value', halfWidth, [input]),
      signal: use.name,
    }));
    worst = { name: use.name, sources, variance };
  }
  return worst;
}

/** In words what of an analogue signal could not be counted. */
export function uncountedOf(use: SignalUse, { transmitterModel }: ResolvedPoint): readonly string[] {
  if (use.kind === 'register') return [];
  const { name, receiver, inputPerSignal } = use;
  const isInputKnown = receiver?.model?.value.accuracy !== undefined && inputPerSignal !== undefined;
  return [
    ...(transmitterModel?.model?.value.outputAccuracy === undefined
      ? [`the output of ${name} (no kit gives its accuracy)`]
      : []),
    ...(isInputKnown ? [] : [`the input of ${name} (no kit gives its accuracy)`]),
  ];
}

interface SignalPart {
  readonly kind: SourceKind;
  /** In the difference of the quantity. */
  readonly halfWidth: number;
  readonly input: FactInput;
}

function partsOf(use: SignalUse, resolved: ResolvedPoint, magnitude: number): readonly SignalPart[] {
  const count = countOf(use, magnitude);
  const { difference } = quantityInfo(use.quantity);
  const resolution: readonly SignalPart[] =
    count === undefined
      ? []
      : [
          {
            kind: use.kind === 'register' ? 'register-resolution' : 'receiver-resolution',
            halfWidth: count / 2,
            input: {
              label: `one count of ${use.name}`,
              text: showQuantity(count, difference),
              origin: use.located.origin,
            },
          },
        ];
  return use.kind === 'register' ? resolution : [...analogueErrors(use, resolved), ...resolution];
}

function analogueErrors(use: AnalogueUse, { transmitterModel }: ResolvedPoint): readonly SignalPart[] {
  const { carries, span, receiver, inputPerSignal } = use;
  if (carries === undefined || span === undefined) return [];
  const width = carries.high - carries.low;
  const parts: SignalPart[] = [];
  const output = transmitterModel?.model?.value.outputAccuracy;
  if (output !== undefined) {
    const text = `± ${showQuantity(output.value.value, 'percentage')} of the span`;
    const input = { label: `accuracy of ${use.name}`, text, origin: span.origin };
    parts.push({ kind: 'output-accuracy', halfWidth: output.value.value * width, input });
  }
  const accuracy = receiver?.model?.value.accuracy;
  if (accuracy !== undefined && inputPerSignal !== undefined && receiver !== undefined) {
    const text = `± ${showQuantity(accuracy.value.value, 'percentage')} of its range`;
    const input = { label: `accuracy of ${receiver.id}`, text, origin: span.origin };
    parts.push({ kind: 'receiver-accuracy', halfWidth: accuracy.value.value * inputPerSignal * width, input });
  }
  return parts;
}
