/** The views beside a file: their HTML, and what the pointer is at in their drawings. */
import type { Position } from 'vscode-languageserver';
import { writeMarkup } from '../../base/markup.ts';
import type { XY } from '../../pictures/svg.ts';
import { overviewView } from '../../views/overview.ts';
import type { View, ViewKind, ViewRequest } from '../../views/view.ts';
import { VIEW_KINDS } from '../../views/view-kinds.ts';
import { workspaceEditOf } from '../protocol.ts';
import type { Served } from '../served.ts';
import { comparisonOf } from './comparison.ts';
import { overviewOf } from './overview.ts';

interface ViewParams {
  readonly kind: string;
  readonly uri: string;
  readonly position: Position;
  readonly inputs: Readonly<Record<string, string>>;
}

interface Asked {
  readonly kind: ViewKind;
  readonly request: ViewRequest;
}

export function serveViews(served: Served, isOpen: (uri: string) => boolean): void {
  const { connection, workspace, analysisOf, find } = served;
  const rowsOfAll = overviewOf(served, isOpen);
  const changesIn = comparisonOf(served);
  const asked = async ({ kind: name, uri, position, inputs }: ViewParams): Promise<Asked | undefined> => {
    const kind = VIEW_KINDS.get(name);
    const analysis = await analysisOf(uri);
    if (kind === undefined || analysis === undefined) return undefined;
    const offset = analysis.parsed.lines.offsetAt(position);
    return { kind, request: { analysis, offset, inputs: new Map(Object.entries(inputs)), workspace } };
  };
  connection.onRequest('dewright/view', async (params: ViewParams) => {
    if (params.kind === OVERVIEW) {
      const { rows, left } = await rowsOfAll();
      return { ...written(overviewView(rows, left)), isPartial: left > 0 };
    }
    if (params.kind === COMPARISON) {
      const view = await changesIn(params.uri, params.inputs);
      return view === undefined ? null : written(view);
    }
    const { kind, request } = (await asked(params)) ?? {};
    return kind === undefined || request === undefined ? null : written(kind.show(request));
  });
  connection.onRequest('dewright/viewReading', async (params: ViewParams & { readonly spot: XY }) => {
    const { kind, request } = (await asked(params)) ?? {};
    if (kind === undefined || request === undefined) return null;
    return { text: kind.readAt?.(request, params.spot) ?? '' };
  });
  connection.onRequest('dewright/viewWrite', async (params: ViewParams) => {
    const { kind, request } = (await asked(params)) ?? {};
    const edits = request === undefined ? undefined : kind?.edits?.(request);
    if (edits === undefined || edits.length === 0) return { applied: false };
    const { applied } = await connection.workspace.applyEdit(workspaceEditOf(edits, find));
    return { applied };
  });
}

/** The one view that is about no single file. */
const OVERVIEW = 'overview';
/** The one view that needs files as they were. */
const COMPARISON = 'comparison';

function written({ title, body }: View) {
  return { title, body: body.map(writeMarkup).join('') };
}
