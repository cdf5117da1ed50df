import { setImmediate as letOthers } from 'node:timers/promises';

/** So long a work keeps the server to itself before others are let in. */
const TURN_MS = 20;

/** Asked between the steps of a work: lets others in where it has been at it for a while. @returns whether it did */
export function turns(): () => Promise<boolean> {
  let sinceMs = performance.now();
  return async () => {
    if (performance.now() - sinceMs < TURN_MS) return false;
    await letOthers();
    sinceMs = performance.now();
    return true;
  };
}

/** Works through steps to their end, with others let in between. @example await lettingOthersIn(recordLoop(valve)) */
export async function lettingOthersIn(steps: Iterable<void>): Promise<void> {
  const turn = turns();
  for (const _ of steps) await turn();
}
