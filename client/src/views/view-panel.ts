/** One view beside its file: asks the server for what it shows, again whenever the file or the cursor has changed. */
import { type Disposable, env, l10n, type Uri, type WebviewPanel, window } from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import type { FromPage, Inputs, ToPage } from './messages.ts';
import { oneAtATime } from './one-at-a-time.ts';
import type { ViewKind } from './view-kinds.ts';
import { viewPage } from './view-page.ts';
import { goTo, type ViewSubject } from './view-subject.ts';

export interface ViewPanel {
  reveal(): void;
  /** Turns to another file or place. */
  follow(subject: ViewSubject): void;
  /** Shows the same place anew, since something has changed. */
  refresh(): void;
}

interface ShownView {
  readonly title: string;
  readonly body: string;
  /** There is more to be shown, which the server is asked for again. */
  readonly isPartial?: boolean;
}

export function fillPanel(
  kind: ViewKind,
  panel: WebviewPanel,
  extension: Uri,
  client: BaseLanguageClient,
  first: ViewSubject | undefined,
): ViewPanel {
  const { webview } = panel;
  let subject = first;
  let inputs: Inputs = {};
  let shown = '';
  let isOpen = true;

  const tell = (message: ToPage): Thenable<boolean> => webview.postMessage(message);
  /** Null where there is nothing to ask about, or where the server is just restarting. */
  const ask = async <Answer>(method: string, more: object = {}): Promise<Answer | null> => {
    if (subject === undefined) return null;
    const { uri, position } = subject;
    const params = { kind: kind.name, uri: uri.toString(), position, inputs, ...more };
    return client.sendRequest<Answer | null>(method, params).catch(() => null);
  };
  const update = oneAtATime(async (isStale) => {
    if (!isOpen || !panel.visible || subject === undefined) return;
    const uri = subject.uri.toString();
    const view = await ask<ShownView>('dewright/view');
    if (view === null || isStale() || !isOpen) return;
    if (view.isPartial === true) update();
    panel.title = view.title;
    if (`${uri} ${view.body}` === shown) return;
    shown = `${uri} ${view.body}`;
    await tell({ type: 'show', uri, body: view.body });
  });
  const heard = async (message: FromPage): Promise<void> => {
    switch (message.type) {
      case 'ready': // also where the page had been hidden, and begins anew
        shown = '';
        inputs = message.inputs;
        return update();
      case 'inputs':
        inputs = message.inputs;
        return update();
      case 'go-to':
        return goTo(message.file, message.start);
      case 'read': {
        const reading = await ask<{ readonly text: string }>('dewright/viewReading', { spot: message.spot });
        if (isOpen) await tell({ type: 'reading', text: reading?.text ?? '' });
        return;
      }
      case 'write':
        await ask('dewright/viewWrite');
        return;
      case 'copy':
        await env.clipboard.writeText(message.svg);
        window.setStatusBarMessage(l10n.t('The picture is in the clipboard.'), 3000);
    }
  };
  const listening: Disposable[] = [
    webview.onDidReceiveMessage(heard),
    panel.onDidChangeViewState(update),
    panel.onDidDispose(() => {
      isOpen = false; // from here on the panel may not even be asked
      for (const each of listening) each.dispose();
    }),
  ];
  webview.html = viewPage(webview, extension, kind.title);
  return {
    reveal: () => panel.reveal(undefined, true),
    follow(next) {
      subject = next;
      update();
    },
    refresh: update,
  };
}
