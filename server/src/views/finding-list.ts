/** Findings as a list whose items lead to what they speak of. */
import type { Finding } from '../analysis/finding.ts';
import { element, type MarkupElement } from '../base/markup.ts';
import { linkTo, paragraph } from './elements.ts';

/** @param startOf where the place of a finding starts in the file, if that is not as its analysis says */
export function findingList(
  findings: readonly Finding[],
  file: string,
  none: string,
  startOf = ({ range }: Finding): number => range.start,
): MarkupElement {
  if (findings.length === 0) return paragraph(none);
  return element(
    'ul',
    {},
    findings.map((finding) =>
      element('li', { 'data-rule': finding.rule }, [
        `${finding.severity}: `,
        linkTo({ file, start: startOf(finding) }, finding.message),
        ` (${finding.rule})`,
      ]),
    ),
  );
}
