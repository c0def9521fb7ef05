/** Does something a while after the last of many times that it was asked for. */
export interface AfterPause {
  /** Asks for it: the pause begins anew. */
  start(): void;
  /** For good. */
  stop(): void;
}

/**
 * @param run may fail: an editor that refuses, or is gone by then, shows what it has until it asks by itself
 * @param tell is given what it failed with
 */
export function afterPause(
  milliseconds: number,
  run: () => Promise<unknown>,
  tell: (error: unknown) => void,
): AfterPause {
  let waiting: NodeJS.Timeout | undefined;
  let isStopped = false;
  return {
    start() {
      clearTimeout(waiting);
      if (!isStopped) waiting = setTimeout(() => void run().catch(tell), milliseconds);
    },
    stop() {
      isStopped = true;
      clearTimeout(waiting);
    },
  };
}
