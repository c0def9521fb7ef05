/** Evaluates site texts for the tests: one space, its envelope and points, as files write them. */

import { fileUri } from '../../server/src/analysis/file-location.ts';
import type { SiteEvaluation } from '../../server/src/analysis/site-analysis.ts';
import { Workspace } from '../../server/src/analysis/workspace.ts';
import type { SpaceEvaluation } from '../../server/src/evaluate/air/space.ts';
import type { Fact, KnownFact } from '../../server/src/evaluate/facts/fact.ts';
import { isKnown } from '../../server/src/evaluate/facts/fact.ts';
import type { PointEvaluation } from '../../server/src/evaluate/point.ts';

const FILE = fileUri('/fennmoor/fennmoor.dewsite.yaml');

export function evaluatedSite(text: string): SiteEvaluation {
  const workspace = new Workspace();
  workspace.set(FILE, text);
  const content = workspace.analysis(FILE)?.content;
  if (content?.kind !== 'site') throw new Error('no site');
  return content.site;
}

/** @param air the envelope in flow style @param pressure as the file writes it */
export function evaluatedSpace(air: string, pressure = '101.325 kPa'): SpaceEvaluation {
  const site = evaluatedSite(`dewright: 1
site: {id: fennmoor, surroundings: 5 .. 32 degC}
spaces:
  room: {pressure: ${pressure}, air: ${air}}
`);
  return there(site.spaces.get('room'));
}

/** The one point of a site whose space has these phases or air, from the lines of both entries. */
export function evaluatedPoint(space: string, point: string, header = 'surroundings: 5 .. 32 degC'): PointEvaluation {
  const site = evaluatedSite(`dewright: 1
site: {id: fennmoor, ${header}}
spaces:
  room: ${space}
points:
  P-1: ${point}
`);
  return there(site.points.get('P-1'));
}

export function known(fact: Fact | undefined): KnownFact {
  if (!isKnown(fact)) throw new Error(`no value: ${fact?.id} ${fact?.missing}`);
  return fact;
}

export function there<Value>(value: Value | undefined): Value {
  if (value === undefined) throw new Error('not there');
  return value;
}
