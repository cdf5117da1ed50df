import type { ActionClass } from '../../safety/action-classes.ts';
import { ENERGY_IDS, LOCK_IDS } from '../../safety/conditions.ts';
import type { Definition, EnergyControl, OpenStep } from '../vocabulary.ts';
import { waysOf } from '../ways.ts';

/** The parts that an energy control procedure must state. */
const PARTS = [
  'use',
  'isolation',
  'locks',
  'verification',
] as const satisfies readonly (keyof EnergyControl)[];

/** What an energy control procedure does not state, part by part (29 CFR 1910.147(c)(4)(ii)). */
export function controlFaults({ energyControl }: Definition): readonly string[] {
  // What comes out of the log was written by an older program and may lack it.
  const stated: Partial<EnergyControl> = energyControl ?? {};
  return PARTS.filter((part) => (stated[part] ?? '').trim() === '').map(
    (part) => `the procedure does not state its ${part}`,
  );
}

const FREES_SPRING: readonly ActionClass[] = ['backOffAdjuster', 'loosenLongCaseBolts'];

/** A lock and the energy behind it are two acts: shut and locked first, made safe and shown after that. */
export function energyFaults(id: string, step: OpenStep): readonly string[] {
  return waysOf(step).flatMap(({ outcome, way }) => {
    const sets: Readonly<Record<string, unknown>> = way.sets ?? {};
    const locks = LOCK_IDS.some((lock) => sets[lock] === 'on');
    const shows = ENERGY_IDS.some((energy) => sets[energy] === 'isolated');
    const freed = step.action !== undefined && FREES_SPRING.includes(step.action);
    return [
      ...(locks && shows ? [`${id}: "${outcome ?? 'done'}" locks and shows safe in one`] : []),
      ...(sets.spring === 'released' && !freed
        ? [`${id}: the spring is freed by its adjuster or by the long bolts alone`]
        : []),
    ];
  });
}
