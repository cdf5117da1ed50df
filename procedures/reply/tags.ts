import type { Job } from '../job.ts';

import { GEAR_ROLES, type GearRole } from '../test-gear/roles.ts';

/** What a number or tag that somebody typed or scanned belongs to. */
export interface KnownTag {
  readonly kind: 'valve' | 'point' | 'lock' | 'gauge' | 'gear';
  readonly tag: string;
  /** In words: `the supply cock of FV-214`. */
  readonly is: string;
  readonly role?: GearRole;
}

/** All that carries a label at this job: the valve, its isolation points, the locks that hang, the gauges. */
export function knownTags(job: Job): readonly KnownTag[] {
  const { sheet, tag } = job;
  const points: readonly (readonly [string | null, string])[] = [
    [sheet.supplyPoint, 'supply cock'],
    [sheet.secondSupplyPoint ?? null, 'cock of the second air feed'],
    [sheet.inletPoint, 'inlet block valve'],
    [sheet.outletPoint, 'outlet block valve'],
    [sheet.bypassPoint, 'bypass valve'],
    [sheet.electricalPoint ?? null, 'breaker or fuse'],
  ];
  return [
    { kind: 'valve', tag, is: 'the valve of this job' },
    ...points.flatMap(([point, name]): KnownTag[] =>
      point === null || point === '' ? [] : [{ kind: 'point', tag: point, is: `the ${name} of ${tag}` }],
    ),
    ...Object.values(job.locks).flatMap((lock): KnownTag[] =>
      lock === undefined || lock.lock === ''
        ? []
        : [{ kind: 'lock', tag: lock.lock, is: `the lock that hangs on ${lock.point}` }],
    ),
    ...Object.entries(job.gear).flatMap(([role, item]): KnownTag[] =>
      item === undefined
        ? []
        : [
            {
              kind: GEAR_ROLES[role as GearRole].kind === 'regulator' ? 'gear' : 'gauge',
              tag: item.number,
              is: `${GEAR_ROLES[role as GearRole].label.toLowerCase()} of this job`,
              role: role as GearRole,
            },
          ],
    ),
  ];
}

/** A number alone is never a tag that was written short. */
const LETTERS_AND_DIGITS = /^(?=.*[A-Z])(?=.*\d)/;

/** `HV-214A` as people type it: `hv214a`. */
function tight(tag: string): string {
  return tag.toUpperCase().replaceAll(/[\s_.-]/g, '');
}

/** @example tagOf('g-07', tags)?.is // 'signal gauge of this job'; so does 'g07' */
export function tagOf(text: string, tags: readonly KnownTag[]): KnownTag | undefined {
  const said = text.trim().toUpperCase();
  const whole = tags.find(({ tag }) => tag.toUpperCase() === said);
  if (whole !== undefined || !LETTERS_AND_DIGITS.test(said)) return whole;
  const [only, ...more] = tags.filter(({ tag }) => tight(tag) === tight(said));
  return more.length === 0 ? only : undefined;
}
