/** The moist-air chart of the space that the cursor is in, or of the space of its point. */
import type { Analysis, SiteRecording } from '../analysis/analysis.ts';
import type { SiteEvaluation } from '../analysis/site-analysis.ts';
import { element, type MarkupElement } from '../base/markup.ts';
import type { PhaseEvaluation } from '../evaluate/air/phase.ts';
import type { SpaceEvaluation } from '../evaluate/air/space.ts';
import type { ChartRecording, ChartSubject } from '../pictures/chart/item.ts';
import { chartPlane, moistAirChart } from '../pictures/chart/moist-air-chart.ts';
import type { HumidityAxis } from '../pictures/chart/plane.ts';
import { readChart } from '../pictures/chart/reading.ts';
import { quantityInfo } from '../quantity/quantities.ts';
import { locate } from '../syntax/locate.ts';
import { heading, paragraph } from './elements.ts';
import type { View, ViewKind, ViewRequest } from './view.ts';

const AXES: readonly HumidityAxis[] = ['mixing-ratio', 'dew-point'];
const AXIS = 'humidity-axis';
const HEADING = 'Moist-air chart';

export const chartView: ViewKind = {
  show(request) {
    const subject = subjectOf(request);
    if (subject === undefined) return without('The file has no space that can be read.');
    const { id } = subject.space;
    const axis = axisOf(request);
    const plane = chartPlane(axis, subject);
    if (plane === undefined) return without(`Nothing can be drawn of ${id}: it has no envelope that can be computed.`);
    return { title: `Chart: ${id}`, body: [heading(1, HEADING), controls(axis), moistAirChart(plane, subject)] };
  },
  readAt(request, spot) {
    const subject = subjectOf(request);
    const plane = subject === undefined ? undefined : chartPlane(axisOf(request), subject);
    return plane === undefined ? undefined : readChart(plane, spot);
  },
};

function without(reason: string): View {
  return { title: 'Chart', body: [heading(1, HEADING), paragraph(reason)] };
}

function controls(chosen: HumidityAxis): MarkupElement {
  const options = AXES.map((axis) =>
    element('option', { value: axis, selected: axis === chosen }, [quantityInfo(axis).title]),
  );
  return element('form', { class: 'controls' }, [
    element('label', {}, ['Humidity content as ', element('select', { name: AXIS }, options)]),
  ]);
}

function axisOf({ inputs }: ViewRequest): HumidityAxis {
  return AXES.find((axis) => axis === inputs.get(AXIS)) ?? 'mixing-ratio';
}

/** What the cursor is in decides; the first space of the file where it is in none. */
function subjectOf({ analysis, offset }: ViewRequest): ChartSubject | undefined {
  const { content, parsed } = analysis;
  if (content.kind !== 'site') return undefined;
  const { site } = content;
  const [map, name = '', section, phase] = locate(parsed.tree, offset)?.path ?? [];
  const point = map === 'points' ? site.points.get(name) : undefined;
  const space = point?.space ?? (map === 'spaces' ? site.spaces.get(name) : undefined) ?? firstSpace(site);
  if (space === undefined) return undefined;
  const phases = space.phases.filter(({ sampled }) => sampled !== undefined);
  const isInSpace = map === 'spaces' && space.id === name;
  return {
    space,
    points: point?.space === undefined ? [...site.points.values()].filter((each) => each.space === space) : [point],
    phases,
    here: isInSpace ? phaseNamed(phases, section, phase) : undefined,
    recordings: content.recordings.flatMap((recording) =>
      recording.space === space ? recordingOf(analysis, recording) : [],
    ),
    placeOf: (origin) => ({ file: parsed.file, start: parsed.rangeOf(origin).start }),
  };
}

/** None where it was not read yet, or cannot be. */
function recordingOf({ fileNamed }: Analysis, { visit, log, answer }: SiteRecording): readonly ChartRecording[] {
  if (answer?.kind !== 'summary') return [];
  const start = fileNamed(visit)?.rangeOf(log.origin).start;
  return [{ log: log.value, summary: answer.summary, place: start === undefined ? undefined : { file: visit, start } }];
}

function firstSpace({ spaces }: SiteEvaluation): SpaceEvaluation | undefined {
  return [...spaces.values()].find(({ phases }) => phases.length > 0);
}

function phaseNamed(
  phases: readonly PhaseEvaluation[],
  section: string | undefined,
  name: string | undefined,
): PhaseEvaluation | undefined {
  if (section === 'air') return phases.find(({ envelope }) => envelope.phase === undefined);
  return section === 'phases' ? phases.find(({ envelope }) => envelope.phase === name) : undefined;
}
