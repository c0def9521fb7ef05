import { RULES } from './registry.generated.ts';
import type { Rule } from './rule.ts';

const BY_NAME: ReadonlyMap<string, Rule> = new Map(RULES.map((rule) => [rule.name, rule]));

export const RULE_NAMES: readonly string[] = [...BY_NAME.keys()];

export function isRuleName(name: string): boolean {
  return BY_NAME.has(name);
}

export function ruleNamed(name: string): Rule | undefined {
  return BY_NAME.get(name);
}
