/** Findings as a list whose items lead to what they speak of. */
import type { Finding } from '../analysis/finding.ts';
import { element, type MarkupElement } from '../base/markup.ts';
import { linkTo, paragraph } from './elements.ts';

export function findingList(findings: readonly Finding[], file: string, none: string): MarkupElement {
  if (findings.length === 0) return paragraph(none);
  return element(
    'ul',
    { class: 'findings' },
    findings.map(({ severity, rule, message, range }) =>
      element('li', { 'data-rule': rule }, [
        `${severity}: `,
        linkTo({ file, start: range.start }, message),
        ` (${rule})`,
      ]),
    ),
  );
}
