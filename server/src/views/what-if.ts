/** Other values of a point, tried without writing them: what numbers and findings they would give. */
import type { Analysis } from '../analysis/analysis.ts';
import type { Finding } from '../analysis/finding.ts';
import { element, type MarkupElement } from '../base/markup.ts';
import { upperFirst } from '../base/words.ts';
import type { PointEvaluation } from '../evaluate/point.ts';
import { heading, paragraph, table, textCell } from './elements.ts';
import { findingList } from './finding-list.ts';
import { nameOf, pointAt } from './point-subject.ts';
import type { ViewKind } from './view.ts';
import { analysisAfter, type Trial, type TriedField, trialOf } from './what-if-change.ts';
import { type TriedFact, type TriedFindings, triedFacts, triedFindings } from './what-if-difference.ts';
import { fieldsOf } from './what-if-fields.ts';

export const whatIfView: ViewKind = {
  show({ analysis, offset, inputs, workspace }) {
    const point = pointAt(analysis, offset);
    if (point === undefined) {
      const reason = 'The file has no point that can be read.';
      return { title: 'Other values', body: [heading(1, 'Other values'), paragraph(reason)] };
    }
    const trial = trialOf(analysis, fieldsOf(analysis, point), inputs);
    const after = analysisAfter(workspace, analysis, trial);
    const change = after === analysis ? undefined : changeOf(analysis, after, point.tag);
    return {
      title: `Other values: ${point.tag}`,
      body: [
        heading(1, `Other values for ${nameOf(point)}`),
        element('p', { class: 'summary', role: 'status' }, [change === undefined ? NOTHING_TRIED : summaryOf(change)]),
        controls(trial, point, analysis),
        ...(change === undefined ? asItIs(analysis, point.tag) : outcome(analysis, after, change)),
      ],
    };
  },
  edits({ analysis, offset, inputs }) {
    const point = pointAt(analysis, offset);
    return point === undefined ? [] : trialOf(analysis, fieldsOf(analysis, point), inputs).edits;
  },
};

function controls(trial: Trial, { space }: PointEvaluation, { content }: Analysis): MarkupElement {
  const groups = [...new Set(trial.fields.map(({ field }) => field.group))];
  const points = content.kind === 'site' ? [...content.site.points.values()] : [];
  const sharing = points.filter((point) => space !== undefined && point.space === space).length;
  const legend = (group: string): string =>
    group.startsWith('space ') && sharing > 1 ? `${group}, which ${sharing} points are in` : group;
  return element('form', { 'data-live': true }, [
    ...groups.map((group) =>
      element('fieldset', {}, [
        element('legend', {}, [legend(group)]),
        ...trial.fields.filter(({ field }) => field.group === group).map(control),
      ]),
    ),
    element('p', { class: 'controls' }, [
      element('button', { type: 'button', 'data-action': 'write', disabled: trial.edits.length === 0 }, [
        'Write to the file',
      ]),
      element('button', { type: 'button', 'data-action': 'reset' }, ['Back to the file']),
    ]),
  ]);
}

function control({ field, tried, problem }: TriedField): MarkupElement {
  const { name, label, text, value } = field;
  const isChanged = tried !== text;
  const saysProblem = `${name}/problem`;
  const common = {
    name,
    'aria-invalid': problem === undefined ? undefined : 'true',
    'aria-describedby': problem === undefined ? undefined : saysProblem,
  };
  const input =
    value.kind === 'quantity'
      ? element('input', { ...common, type: 'text', value: tried, autocomplete: 'off', spellcheck: 'false' })
      : element(
          'select',
          common,
          [...new Set([text, ...value.words])].map((word) =>
            element('option', { value: word, selected: word === tried }, [word]),
          ),
        );
  return element('div', { class: isChanged ? 'field changed' : 'field' }, [
    element('label', {}, [element('span', {}, [label]), input]),
    ...(isChanged ? [element('span', { class: 'was' }, [`was ${text}`])] : []),
    ...(problem === undefined ? [] : [element('span', { class: 'problem', id: saysProblem }, [problem])]),
  ]);
}

interface Change {
  readonly findings: TriedFindings;
  readonly facts: readonly TriedFact[];
}

function changeOf(before: Analysis, after: Analysis, tag: string): Change {
  return { findings: triedFindings(before, after), facts: triedFacts(before, after, tag) };
}

const NOTHING_TRIED = 'Change a value to see what follows. Nothing is written until you ask for it.';

function summaryOf({ findings: { gone, come, changed }, facts }: Change): string {
  const findings = `${gone.length} gone, ${come.length} new, ${changed.length} changed`;
  return `Findings: ${findings}. Numbers that change: ${facts.length}. Nothing is written yet.`;
}

function asItIs({ findings, file }: Analysis, tag: string): readonly MarkupElement[] {
  const own = findings.filter(({ subject }) => subject === tag);
  return [heading(2, 'Findings of the file as it is'), findingList(own, file, 'Nothing is found.')];
}

function outcome(before: Analysis, after: Analysis, { findings, facts }: Change): readonly MarkupElement[] {
  const { gone, come, changed } = findings;
  // What is tried moves places along their lines, and no line to another.
  const inFile = ({ range }: Finding): number =>
    before.parsed.lines.offsetAt(after.parsed.lines.positionAt(range.start));
  return [
    heading(2, 'Findings'),
    heading(3, 'Gone'),
    findingList(gone, before.file, 'None.'),
    heading(3, 'New'),
    findingList(come, before.file, 'None.', inFile),
    ...(changed.length === 0 ? [] : [heading(3, 'Changed'), findingList(changed, before.file, '', inFile)]),
    heading(2, 'Numbers that change'),
    facts.length === 0 ? paragraph('None.') : factTable(facts),
  ];
}

function factTable(facts: readonly TriedFact[]): MarkupElement {
  return table({
    title: 'Numbers that change',
    columns: [{ title: 'What' }, { title: 'Before', isNumber: true }, { title: 'After', isNumber: true }],
    rows: facts.map(({ title, before, after }) => [textCell(upperFirst(title)), textCell(before), textCell(after)]),
  });
}
