/** A session that ends with its test. */
import { onTestFinished } from 'vitest';
import { type Session, type SessionOptions, startSession } from './session.ts';

export async function sessionOfTest(options: SessionOptions): Promise<Session> {
  const session = await startSession(options);
  onTestFinished(() => session.end());
  return session;
}
