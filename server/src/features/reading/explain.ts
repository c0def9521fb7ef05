/** The page of a rule, a quantity or a key: the same text in the editor, in the terminal and in the documentation. */
import { DIMENSIONS } from '../../quantity/dimension.ts';
import { isQuantityName, QUANTITY_NAMES, quantityInfo } from '../../quantity/quantities.ts';
import type { Rule } from '../../rules/rule.ts';
import { RULE_NAMES, ruleNamed } from '../../rules/rule-names.ts';
import { keyNames, keyPage } from './explain-keys.ts';

export interface ExplainedNames {
  readonly rules: readonly string[];
  readonly quantities: readonly string[];
  readonly keys: readonly string[];
}

export function explainedNames(): ExplainedNames {
  return { rules: RULE_NAMES, quantities: QUANTITY_NAMES, keys: keyNames() };
}

/** The page as Markdown, or undefined where nothing has that name. */
export function explain(name: string): string | undefined {
  const rule = ruleNamed(name);
  if (rule !== undefined) return rulePage(rule);
  const pages = [isQuantityName(name) ? quantityPage(name) : undefined, keyPage(name)];
  const known = pages.filter((page) => page !== undefined);
  return known.length === 0 ? undefined : known.join('\n');
}

export function rulePage(rule: Rule): string {
  const fixes =
    rule.fixes.length === 0
      ? 'None: what is right, only a person can say.'
      : rule.fixes.map((kind) => FIX_WORDS[kind]).join(' ');
  const section = (heading: string, text: string | undefined): string =>
    text === undefined ? '' : `## ${heading}\n\n${text}\n`;
  return [
    `# ${rule.name}\n\n${rule.title}\n\nGroup: ${rule.group} · severity: ${rule.severity}\n`,
    section('Why', rule.why),
    section('What to do', rule.mend),
    section('Fixes', fixes),
    section('What it leaves alone', rule.leavesAlone),
    section(
      'What it compares',
      rule.facts.length === 0 ? undefined : rule.facts.map(({ id, pattern }) => `\`${id ?? pattern}\``).join(', '),
    ),
    section('Sources', rule.sources.map((source) => `- ${source}`).join('\n')),
    section(
      'Accepting it',
      `Where a finding is known and stands, write \`# accept ${rule.name}: the reason\` on its line or alone on the line above. ` +
        `For a whole site, \`rules: {${rule.name}: off}\` under \`site:\` switches it off, and another severity changes how it is shown.`,
    ),
  ]
    .filter((text) => text !== '')
    .join('\n');
}

const FIX_WORDS = {
  safe: 'Safe: it keeps what was plainly meant, and may run in fix-all.',
  choice: 'Choice: offered one by one, each with its consequence.',
} as const;

function quantityPage(name: (typeof QUANTITY_NAMES)[number]): string {
  const { title, about, dimension, difference, needsAirTemperature, needsPressure } = quantityInfo(name);
  const units = DIMENSIONS[dimension].units.map(({ symbol }) => symbol).join(', ');
  const differences = DIMENSIONS[difference].units.map(({ symbol }) => symbol).join(', ');
  return [
    `# ${name}\n\nA quantity: ${title}. ${about}\n`,
    `- Units: ${units}; a tolerance is in ${differences}`,
    `- Depends on the air temperature: ${needsAirTemperature ? 'yes, a heated head alone cannot report it' : 'no'}`,
    `- Depends on the pressure: ${needsPressure ? 'yes' : 'no'}\n`,
  ].join('\n');
}
