/** The views beside a file: their HTML, and what the pointer is at in their drawings. */
import type { Position } from 'vscode-languageserver';
import { writeMarkup } from '../base/markup.ts';
import type { XY } from '../pictures/svg.ts';
import type { ViewKind, ViewRequest } from '../views/view.ts';
import { VIEW_KINDS } from '../views/view-kinds.ts';
import type { Served } from './served.ts';

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

export function serveViews({ connection, workspace, analysisOf }: Served): void {
  const asked = async ({ kind: name, uri, position, inputs }: ViewParams): Promise<Asked | undefined> => {
    const kind = VIEW_KINDS.get(name);
    const analysis = await analysisOf(uri);
    if (kind === undefined || analysis === undefined) return undefined;
    const offset = analysis.parsed.lines.offsetAt(position);
    return { kind, request: { analysis, offset, inputs: new Map(Object.entries(inputs)), workspace } };
  };
  connection.onRequest('dewright/view', async (params: ViewParams) => {
    const { kind, request } = (await asked(params)) ?? {};
    if (kind === undefined || request === undefined) return null;
    const { title, body } = kind.show(request);
    return { title, body: body.map(writeMarkup).join('') };
  });
  connection.onRequest('dewright/viewReading', async (params: ViewParams & { readonly spot: XY }) => {
    const { kind, request } = (await asked(params)) ?? {};
    if (kind === undefined || request === undefined) return null;
    return { text: kind.readAt?.(request, params.spot) ?? '' };
  });
}
