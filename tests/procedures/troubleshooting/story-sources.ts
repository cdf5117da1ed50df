/** What several stories of the trade rest on. */
export const PRACTICE = 'common practice, no source';
export const NOZZLES =
  'Lessons in Industrial Instrumentation (CC BY): plugged restriction low, plugged nozzle high output';
export const FORCES = 'Force balance of the stem: p A = k (x + x0) + friction + plug force';
