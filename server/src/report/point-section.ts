/** One point: what it is, why it is right, how it is connected, put to work and checked, and what is still open. */

import type { Analysis } from '../analysis/analysis.ts';
import type { SiteEvaluation } from '../analysis/site-analysis.ts';
import { expandedUncertainty } from '../evaluate/budget/uncertainty-facts.ts';
import { type Bound, showBound } from '../evaluate/facts/limit.ts';
import type { PointEvaluation } from '../evaluate/point.ts';
import type { ResolvedSource } from '../evaluate/resolved/air-temperature-source.ts';
import { highestReported, lowestReported } from '../evaluate/resolved/report-range.ts';
import type { ReportEvaluation } from '../evaluate/resolved/resolved-point.ts';
import type { Located } from '../model/located.ts';
import { quantityInfo } from '../quantity/quantities.ts';
import { checkBlocks } from './checks-blocks.ts';
import {
  type Block,
  factWithCorner,
  listed,
  named,
  nameTable,
  paragraph,
  type Section,
  stated,
  type Text,
  table,
  told,
  words,
} from './document.ts';
import { openAt } from './findings-section.ts';
import { heldFacts } from './limits.ts';
import { budgetPictures, historyPictures, sectionPicture } from './point-pictures.ts';
import { spaceName } from './space-section.ts';
import { stepBlocks } from './steps-blocks.ts';
import { wiringBlocks } from './wiring.ts';

export function pointSection(view: PointEvaluation, site: SiteEvaluation, analysis: Analysis): Section {
  const { tag, point } = view;
  const title = point.title === undefined ? [] : [', ', ...stated(point.title)];
  return {
    title: ['Point ', words(tag), ...title],
    startsPage: true,
    blocks: [...buildTable(view), ...sectionPicture(view), ...reportTable(view)],
    sections: [
      { title: ['The reasons'], blocks: [...reasonBlocks(view), ...budgetPictures(view)] },
      { title: ['How it is connected'], blocks: wiringBlocks(view) },
      { title: ['How it is put to work'], blocks: stepBlocks(view, site) },
      { title: ['How it is checked'], blocks: [...checkBlocks(view), ...historyPictures(view)] },
      { title: ['What is open'], blocks: openAt(tag, analysis) },
    ],
  };
}

function buildTable(view: PointEvaluation): readonly Block[] {
  const { point, heater } = view;
  const probe = point.humidityProbe?.value;
  const thermometer = point.airTemperatureProbe?.value;
  const mounting = probe?.mounting?.value;
  const other = thermometer?.mounting?.value;
  return nameTable('What it is', [
    ['Space', spaceName(view)],
    ['Humidity probe', modelText(probe)],
    ['Its heater', heaterText(heater)],
    ['Why it is heated so', stated(heater.located?.value.reason)],
    [
      'How it is mounted',
      listed(
        named('insertion', mounting?.insertion),
        named('attitude', mounting?.attitude),
        named('insulation', mounting?.insulation),
        named('path', mounting?.path),
      ),
    ],
    ['Air-temperature probe', modelText(thermometer)],
    [
      'How that is mounted',
      listed(
        named('insertion', other?.insertion),
        named('insulation', other?.insulation),
        named('spacing', other?.spacing),
        named('position', other?.position),
      ),
    ],
    ['Transmitter', modelText(point.transmitter?.value)],
  ]);
}

interface Installed {
  readonly model?: Located<string>;
  readonly serial?: Located<string>;
}

function modelText(installed: Installed | undefined): Text {
  return listed(named('model', installed?.model), named('serial number', installed?.serial));
}

function heaterText({ on, located, rise }: PointEvaluation['heater']): Text {
  if (!on) return ['off'];
  return listed(stated(located?.value.mode), named('rise', rise), named('set by the', located?.value.setAt));
}

function reportTable({ tag, reports, facts }: PointEvaluation): readonly Block[] {
  return table(
    'What it reports',
    ['quantity', 'air temperature from', 'tolerance', 'uncertain by', 'lowest', 'highest'],
    reports.map(({ quantity, report, source }) => [
      [quantityInfo(quantity).title],
      sourceText(source, report),
      stated(report.value.tolerance),
      factWithCorner(tag, facts.get(expandedUncertainty(quantity))),
      factWithCorner(tag, facts.get(lowestReported(quantity))),
      factWithCorner(tag, facts.get(highestReported(quantity))),
    ]),
  );
}

function sourceText({ kind }: ResolvedSource, { value }: ReportEvaluation['report']): Text {
  if (value.airTemperature !== undefined) return stated(value.airTemperature);
  if (kind === 'not-needed') return ['not needed'];
  return kind === 'own-head' ? ['its own unheated head'] : ['nothing'];
}

/** `a third of 3 %RH`, `80 %RH (built in)` */
function boundText(bound: Bound): Text {
  const part = bound.part === undefined ? [] : [`${bound.part} `];
  return [...part, { kind: 'stated', text: showBound(bound) }, ...(bound.isBuiltIn ? [' (built in)'] : [])];
}

function reasonBlocks(view: PointEvaluation): readonly Block[] {
  const held = heldFacts(view);
  if (held.length === 0) return [paragraph('Too little is given for a number to be held to a limit.')];
  return table(
    'Numbers held to their limits, at the worst state of the air',
    ['number', 'value', 'limit', 'kept', 'rule'],
    held.map(({ rule, fact, side, bound, isKept }) => [
      [told(fact.title)],
      factWithCorner(view.tag, fact),
      [`${side} `, ...boundText(bound)],
      [isKept ? 'yes' : 'no, see what is open'],
      [rule],
    ]),
  );
}
