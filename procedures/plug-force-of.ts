import type { Job } from './job.ts';

/** Force of the flow on the shut plug at the shut-off drop, positive where it opens. */
export function plugForceN({ sheet }: Pick<Job, 'sheet'>): number {
  const diameterM = sheet.balanceSealDiameterM ?? sheet.portDiameterM;
  const portM2 = (Math.PI / 4) * diameterM ** 2;
  const stemM2 = (Math.PI / 4) * sheet.stemDiameterM ** 2;
  // Balanced: only the ring between seat and balance seal is pushed, taken as the stem's area at the most.
  const pushedM2 = sheet.balanceSealDiameterM === null ? portM2 : stemM2;
  return (sheet.flow === 'under' ? 1 : -1) * sheet.shutOffDropPa * pushedM2;
}
