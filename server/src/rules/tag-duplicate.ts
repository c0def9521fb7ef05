import type { Rule } from './rule.ts';

export const rule: Rule = {
  name: 'tag-duplicate',
  group: 'Reading the file',
  severity: 'error',
  title: 'A tag is given to points of two sites.',
  why: 'A tag is how everybody who has to do with the plant names the point. Given twice, a reading, a check or an alarm belongs to either of two places.',
  mend: 'Give one of the two points another tag.',
  leavesAlone: 'A tag given twice in one file: yaml-syntax speaks of that.',
  sources: ['common practice, no source'],
  facts: [],
  fixes: [],
  check: {
    site: ({ file, model, sharedTags, placesOfTag }) =>
      sharedTags.flatMap((tag) => {
        const point = model.points.get(tag);
        const elsewhere = placesOfTag(tag).filter((place) => place.file !== file);
        if (point === undefined) return [];
        return {
          message: () =>
            `The tag ${tag} is given to a point of another site too. A tag stands for one point; give one of the two another.`,
          origin: point.keyOrigin,
          subject: tag,
          related: () => elsewhere.map((place) => ({ ...place, message: `${tag} is given here too.` })),
        };
      }),
  },
};
