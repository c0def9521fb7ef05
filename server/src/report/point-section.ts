/** One point: what it is, why it is right, how it is connected, put to work and checked, and what is still open. */
import type { Analysis } from '../analysis/analysis.ts';
import type { SiteEvaluation } from '../analysis/site-analysis.ts';
import type { ResolvedSource } from '../evaluate/air-temperature.ts';
import type { PointEvaluation, ReportEvaluation } from '../evaluate/point.ts';
import { quantityInfo } from '../quantity/quantity-names.ts';
import { checkBlocks } from './checks-blocks.ts';
import {
  type Block,
  factWithCorner,
  listed,
  named,
  paragraph,
  type Section,
  stated,
  type Text,
  table,
  told,
  words,
} from './document.ts';
import { openBlocks } from './findings-section.ts';
import { heldFacts } from './limits.ts';
import { wiringBlocks } from './wiring.ts';

export function pointSection(view: PointEvaluation, site: SiteEvaluation, { findings }: Analysis): Section {
  const { tag, point } = view;
  const title = point.title === undefined ? [] : [', ', ...stated(point.title)];
  return {
    title: ['Point ', words(tag), ...title],
    startsPage: true,
    blocks: [...buildTable(view, site), ...reportTable(view)],
    sections: [
      { title: ['Why it is right'], blocks: reasonBlocks(view) },
      { title: ['How it is connected'], blocks: wiringBlocks(view) },
      { title: ['How it is checked'], blocks: checkBlocks(view) },
      { title: ['What is open'], blocks: openBlocks(findings.filter(({ subject }) => subject === tag)) },
    ],
  };
}

function buildTable({ point, heater }: PointEvaluation, { spaces }: SiteEvaluation): readonly Block[] {
  const probe = point.humidityProbe?.value;
  const thermometer = point.airTemperatureProbe?.value;
  const mounting = probe?.mounting?.value;
  const other = thermometer?.mounting?.value;
  const space = spaces.get(point.space?.value ?? '');
  return table(
    'What it is',
    ['', ''],
    [
      [['Space'], space === undefined ? stated(point.space) : [words(space.located.value.title?.value ?? space.id)]],
      [['Humidity probe'], listed(named('model', probe?.model), named('serial number', probe?.serial))],
      [
        ['Its heater'],
        heater.on
          ? listed(
              stated(heater.located?.value.mode),
              named('rise', heater.rise),
              named('set by the', heater.located?.value.setAt),
            )
          : ['off'],
      ],
      [['Why it is heated so'], stated(heater.located?.value.reason)],
      [
        ['Its mounting'],
        listed(
          named('insertion', mounting?.insertion),
          named('attitude', mounting?.attitude),
          named('insulation', mounting?.insulation),
          named('path', mounting?.path),
        ),
      ],
      [
        ['Air-temperature probe'],
        listed(named('model', thermometer?.model), named('serial number', thermometer?.serial)),
      ],
      [
        ['Its mounting'],
        listed(
          named('insertion', other?.insertion),
          named('insulation', other?.insulation),
          named('spacing', other?.spacing),
          named('position', other?.position),
        ),
      ],
      [
        ['Transmitter'],
        listed(named('model', point.transmitter?.value.model), named('serial number', point.transmitter?.value.serial)),
      ],
    ],
  );
}

function reportTable({ tag, reports, facts }: PointEvaluation): readonly Block[] {
  return table(
    'What it reports',
    ['quantity', 'air temperature from', 'tolerance', 'uncertain by', 'lowest', 'highest'],
    reports.map(({ quantity, report, source }) => [
      [quantityInfo(quantity).title],
      sourceText(source, report),
      stated(report.value.tolerance),
      factWithCorner(tag, facts.get(`${quantity}/expanded-uncertainty`)),
      factWithCorner(tag, facts.get(`${quantity}/lowest`)),
      factWithCorner(tag, facts.get(`${quantity}/highest`)),
    ]),
  );
}

function sourceText({ kind }: ResolvedSource, { value }: ReportEvaluation['report']): Text {
  if (value.airTemperature !== undefined) return stated(value.airTemperature);
  if (kind === 'not-needed') return ['not needed'];
  return kind === 'own-head' ? ['its own unheated head'] : ['nothing'];
}

function reasonBlocks(view: PointEvaluation): readonly Block[] {
  const held = heldFacts(view);
  if (held.length === 0) return [paragraph('Too little is given for a number to be held to a limit.')];
  return table(
    'Numbers held to their limits, at the worst state of the air',
    ['number', 'value', 'limit', 'kept', 'rule'],
    held.map(({ rule, fact, bound, limit, isKept }) => [
      [told(fact.title)],
      factWithCorner(view.tag, fact),
      [`${bound} `, ...limit],
      [isKept ? 'yes' : 'no'],
      [rule],
    ]),
  );
}
