/** What a person is told where an act is refused. */
import { Refusal, type RefusalText } from '../../safety/refusal.ts';

/** @throws Error where the act was not refused, so that a test cannot pass by accident */
export function refusalOf(attempt: () => unknown): RefusalText {
  try {
    attempt();
  } catch (error) {
    if (error instanceof Refusal) return error.text;
    throw error;
  }
  throw new Error('the act was taken, not refused');
}
