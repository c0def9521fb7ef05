/** One thing that the moist-air chart shows: its mark in the plane, its label beside it, and its row in the legend. */
import type { MarkupElement } from '../../base/markup.ts';
import type { PhaseEvaluation } from '../../evaluate/air/phase.ts';
import type { SpaceEvaluation } from '../../evaluate/air/space.ts';
import type { PointEvaluation } from '../../evaluate/point.ts';
import type { RecordingSummary } from '../../evaluate/recorded/summary.ts';
import type { Origin } from '../../syntax/nodes.ts';
import type { Place, XY } from '../svg.ts';
import type { ChartPlane } from './plane.ts';

export interface ChartItem {
  /** In the plane. */
  readonly mark: MarkupElement;
  /** In the legend, around the origin of coordinates, within `SWATCH`. */
  readonly swatch: MarkupElement;
  readonly text: string;
  readonly place: Place | undefined;
  /** A few words beside the mark, at the first of the spots where there is room. */
  readonly label: string;
  readonly spots: readonly LabelSpot[];
  /** True for what the cursor is in. */
  readonly isHere?: boolean;
}

export interface LabelSpot {
  readonly at: XY;
  readonly anchor: 'start' | 'middle' | 'end';
}

/** What the chart is made from. */
export interface ChartSubject {
  readonly space: SpaceEvaluation;
  /** Those of its points that are shown. */
  readonly points: readonly PointEvaluation[];
  readonly phases: readonly PhaseEvaluation[];
  /** The envelope that the cursor is in. */
  readonly here: PhaseEvaluation | undefined;
  /** Of the space. */
  readonly recordings: readonly ChartRecording[];
  readonly placeOf: (origin: Origin) => Place;
}

export interface ChartRecording {
  /** The file, as the visit names it. */
  readonly log: string;
  readonly summary: RecordingSummary;
  /** Where the visit names it. */
  readonly place: Place | undefined;
}

export type ChartLayer = (plane: ChartPlane, subject: ChartSubject) => readonly ChartItem[];

/** Half the size of what stands in front of a row of the legend. */
export const SWATCH = { across: 12, down: 5 } as const;

/** More tags than this are told by their number. */
const MOST_TAGS = 3;

/** What points are called that the chart shows as one. */
export function tagsOf(points: readonly Pick<PointEvaluation, 'tag'>[]): string {
  return points.length > MOST_TAGS ? `${points.length} points` : points.map(({ tag }) => tag).join(', ');
}

/** Beside a mark that reaches from one spot to another on its right: right of it, below, above, left of it. */
export function spotsAround(from: XY, to: XY = from): readonly LabelSpot[] {
  const [left, y] = from;
  const [right] = to;
  const middle = (left + right) / 2;
  return [
    { at: [right + 8, y + 4], anchor: 'start' },
    { at: [middle, y + 18], anchor: 'middle' },
    { at: [middle, y - 9], anchor: 'middle' },
    { at: [left - 8, y + 4], anchor: 'end' },
  ];
}

/** Along a rising line, a little below it and to its right. */
export function spotsAlong(points: readonly XY[]): readonly LabelSpot[] {
  return [0.8, 0.65, 0.9, 0.5, 0.35, 0.2].flatMap((share): LabelSpot[] => {
    const [x, y] = points[Math.round(share * (points.length - 1))] ?? [Number.NaN, Number.NaN];
    return Number.isNaN(x) ? [] : [{ at: [x + 6, y + 12], anchor: 'start' }];
  });
}
