/** Leaves out every test but those of the rule that is mutated: its fixture has to notice, not another one by chance. */
import { beforeEach } from 'vitest';

const rule = process.env['DEWRIGHT_RULE'];

if (rule !== undefined) {
  beforeEach(({ task, skip }) => {
    if (task.suite?.name !== rule) skip();
  });
}
