/**
 * Runs a task whenever it is asked for, never twice at once: what is asked for meanwhile is done once, afterwards. So
 * a busy cursor waits for no timer and heaps up no requests.
 * @param task gets told whether it has been asked for again, which makes its result stale
 */
export function oneAtATime(task: (isStale: () => boolean) => Promise<void>): () => void {
  let isRunning = false;
  let isAskedAgain = false;
  const run = async (): Promise<void> => {
    isRunning = true;
    try {
      while (isAskedAgain) {
        isAskedAgain = false;
        await task(() => isAskedAgain);
      }
    } finally {
      isRunning = false;
    }
  };
  return () => {
    isAskedAgain = true;
    if (!isRunning) void run();
  };
}
