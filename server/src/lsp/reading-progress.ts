/** How far a reading is, told in the editor's way and with its way to cancel. */
import type { CancellationTokenSource, Connection } from 'vscode-languageserver';

/** ms: what is read sooner needs no progress. */
const PROGRESS_AFTER = 700;

export interface ReadingProgress {
  /** @param share from 0 to 1 */
  report(share: number): void;
  done(): void;
}

export function showProgress(
  connection: Connection,
  name: string,
  cancelling: CancellationTokenSource,
): ReadingProgress {
  let report: (share: number) => void = () => undefined;
  let end = (): void => undefined;
  let ended = false;
  const start = async (): Promise<void> => {
    const shown = await connection.window.createWorkDoneProgress();
    if (ended) return shown.done();
    shown.begin(`Reading ${name}`, 0, undefined, true);
    shown.token.onCancellationRequested(() => cancelling.cancel());
    report = (share) => shown.report(Math.round(share * 100));
    end = () => shown.done();
  };
  const timer = setTimeout(() => void start().catch(() => undefined), PROGRESS_AFTER);
  return {
    report: (share) => report(share),
    done() {
      ended = true;
      clearTimeout(timer);
      end();
    },
  };
}
