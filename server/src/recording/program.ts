/**
 * The program that reads one log and ends. It is a process of its own, so that neither an editor nor its language server
 * waits for it, native code that fails takes nothing with it, and whoever wants it no longer just ends it.
 */
import { readFileSync } from 'node:fs';
import { constants, setPriority } from 'node:os';
import { answerRequest } from './answer-request.ts';
import type { RecordingMessage, RecordingRequest } from './messages.ts';

const PROGRESS_EVERY = 200; // ms

setPriority(constants.priority.PRIORITY_BELOW_NORMAL); // whoever types comes first
process.on('disconnect', () => process.exit());
process.once('message', async (request: RecordingRequest) => {
  let told = 0;
  const tell = (message: RecordingMessage): void => {
    process.send?.(message);
  };
  const onProgress = (share: number): void => {
    const now = Date.now();
    if (now - told < PROGRESS_EVERY) return;
    told = now;
    tell({ kind: 'progress', share });
  };
  const answer = await answerRequest(request, readFileSync(__filename), onProgress);
  process.send?.({ kind: 'answer', answer } satisfies RecordingMessage, () => process.disconnect());
});
