/** What is mutated: the physics, or the rule that `DEWRIGHT_RULE` names. */
export const RULE = process.env.DEWRIGHT_RULE;
export const MODULE = RULE === undefined ? 'physics' : 'rules';
export const NAME = RULE ?? MODULE;
