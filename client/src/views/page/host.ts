/** The extension at the other end, as a page sees it. */
import type { FromPage, PageState, ToPage } from '../messages.ts';

declare function acquireVsCodeApi(): {
  postMessage(message: FromPage): void;
  getState(): PageState | undefined;
  setState(state: PageState): void;
};

const editor = acquireVsCodeApi();

export function tell(message: FromPage): void {
  editor.postMessage(message);
}

export function onMessage(hear: (message: ToPage) => void): void {
  addEventListener('message', ({ data }: MessageEvent<ToPage>) => hear(data));
}

export function keepState(change: Partial<PageState>): void {
  editor.setState({ ...keptState(), ...change });
}

export function keptState(): PageState {
  return editor.getState() ?? { uri: '', inputs: {} };
}
