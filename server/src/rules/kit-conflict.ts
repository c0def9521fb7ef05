import type { ModelRef } from '../evaluate/equipment/models.ts';
import type { FindingDraft, Related, Rule, SiteView } from './rule.ts';

export const rule: Rule = {
  name: 'kit-conflict',
  group: 'Reading the file',
  severity: 'error',
  title: 'Two kits of a site give one id to two models.',
  why: 'Points name models by their id. Which of the two data sheets is meant, nobody can tell; the first kit named counts, and everything is checked against its numbers.',
  mend: 'Rename the model in one of the two kits, and wherever it is meant; or name only one of the kits.',
  leavesAlone: 'An id given twice in one kit: yaml-syntax speaks of that. A probe and a receiver may share an id.',
  sources: ['The file formats'],
  facts: [],
  fixes: [],
  check: { site: conflicts },
};

function conflicts({ catalogue, kits }: SiteView): readonly FindingDraft[] {
  return catalogue.conflicts.flatMap(({ id, first, second }) => {
    const naming = kits.find(({ file }) => file === second.file);
    if (naming === undefined) return [];
    return {
      message: () =>
        `The model ${id} is in this kit and in one named before it, and the one before counts. Rename one of the two.`,
      origin: naming.named.origin,
      subject: id,
      related: () => [placeOf(first, 'This one counts.'), placeOf(second, 'This one is passed over.')],
    };
  });
}

function placeOf({ keyOrigin, file }: ModelRef<unknown>, message: string): Related {
  return { message, origin: keyOrigin, file };
}
