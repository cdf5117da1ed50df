/** Sets an exercise: a simulated valve of its own after a sheet of the plant, with its own points and test gear. */

import type { Json } from '../../procedures/json.ts';
import {
  causesToPractise,
  drawFaults,
  mayMeet,
  SEVERITIES,
  type SeverityWord,
} from '../../procedures/practice/bench/draw.ts';
import type { Given } from '../../procedures/practice/faults.ts';
import { seeded } from '../../procedures/practice/random.ts';
import type { GearItem } from '../../procedures/test-gear/gear.ts';
import { GEAR_ROLES, type GearRole } from '../../procedures/test-gear/roles.ts';
import { wantedOf } from '../../procedures/test-gear/wanted.ts';
import type { CauseId } from '../../procedures/troubleshooting/causes.ts';
import type { ValveSheet } from '../../procedures/valve-sheet/sheet.ts';
import { Refusal } from '../../safety/refusal.ts';
import { wrongFields } from '../http/fields.ts';
import type { EntryDraft } from '../log/act.ts';
import { fingerprintOf } from '../log/chain.ts';
import { streamOf } from '../log/stream-kind.ts';
import type { By } from '../people/people.ts';
import type { Services } from '../services.ts';
import { savedSheet } from '../valves/valve-acts.ts';
import { exerciseKind } from './exercise-stream.ts';

export interface ExerciseAsked {
  readonly sheet: ValveSheet;
  readonly how: 'drawn' | 'drawn, two' | 'chosen';
  /** Where it is chosen: one or two. */
  readonly causes: readonly string[];
  readonly severity: SeverityWord;
  readonly seed: number;
}

export interface ExerciseSet {
  readonly [name: string]: Json;
  readonly tag: string;
  readonly gear: Record<string, string>;
}

const bare = { outcome: {}, effects: {} };

/**
 * @param services  of the practice bench
 * @throws Refusal FRM-002 for a cause that this valve cannot have, PRC-001 where another exercise was set at this moment
 */
export async function setExercise(
  { services, by }: { readonly services: Services; readonly by: By },
  asked: ExerciseAsked,
): Promise<ExerciseSet> {
  const faults = faultsOf(asked);
  const number = (await services.log.summaries('exercise', { limit: EXERCISES_MAX })).length + 1;
  const sheet = practiceSheet(asked.sheet, number);
  const gear = gearOf(sheet, { number, today: services.now().toISOString().slice(0, 10) });
  const drafts: readonly EntryDraft[] = [
    exerciseEntry(sheet, { asked, faults }),
    savedSheet(sheet, {}),
    ...Object.values(gear).map((item) => gearEntry(item)),
  ];
  return await services.log.act({
    ...by,
    fingerprint: fingerprintOf({
      exercise: asked.sheet.tag,
      how: asked.how,
      causes: [...asked.causes],
      severity: asked.severity,
    }),
    streams: drafts.map(({ stream }) => stream),
    decide: (read) => {
      if (read.place(exerciseKind, sheet.tag) > 0) throw setMeanwhile();
      const numbers = Object.entries(gear).map(([role, item]) => [role, item.number]);
      return { entries: drafts, answer: { tag: sheet.tag, gear: Object.fromEntries(numbers) } };
    },
  });
}

/** Beyond this many the bench is cleared by hand: its folder is moved away. */
const EXERCISES_MAX = 100_000;

function faultsOf({ sheet, how, causes, severity, seed }: ExerciseAsked): readonly Given[] {
  if (how !== 'chosen') return drawFaults(sheet, { count: how === 'drawn' ? 1 : 2, random: seeded(seed) });
  const can = causesToPractise(sheet);
  const chosen = [...new Set(causes.filter((text) => text !== ''))].map((text) => {
    const cause = can.find((id): id is CauseId => id === text);
    if (cause === undefined) throw wrongFields({ cause1: 'This valve cannot have that fault.' });
    return cause;
  });
  const [one, other] = chosen;
  if (one !== undefined && other !== undefined && !mayMeet(sheet, [one, other]))
    throw wrongFields({ cause2: 'These two cannot be there together.' });
  return chosen.map((cause) => ({ cause, severity: SEVERITIES[severity] }));
}

/** Tag and points of its own, so that no lock of one exercise stands in the way of another. */
function practiceSheet(sheet: ValveSheet, number: number): ValveSheet {
  const own = (name: string | null): string | null => (name === null ? null : `P${number}-${name}`);
  return {
    ...sheet,
    tag: `P${number}-${sheet.tag}`,
    supplyPoint: own(sheet.supplyPoint) ?? sheet.supplyPoint,
    secondSupplyPoint: own(sheet.secondSupplyPoint),
    inletPoint: own(sheet.inletPoint),
    outletPoint: own(sheet.outletPoint),
    bypassPoint: own(sheet.bypassPoint),
  };
}

/** Gear that suits this valve: half as much again as it has to show. */
function gearOf(
  sheet: ValveSheet,
  { number, today }: { readonly number: number; readonly today: string },
): Readonly<Record<GearRole, GearItem>> {
  const roles = Object.keys(GEAR_ROLES) as readonly GearRole[];
  const items = roles.map((role, at): readonly [GearRole, GearItem] => {
    const { kind, highSi } = wantedOf(role, sheet);
    const length = kind === 'dial indicator';
    const us = sheet.units === 'us';
    return [
      role,
      {
        number: `P${number}-G${at + 1}`,
        kind,
        rangeLowSi: 0,
        rangeHighSi: Math.max(highSi, length ? 1e-3 : 1e4) * 1.5,
        dimension: length ? 'length' : 'pressure',
        unit: length ? (us ? 'in' : 'mm') : us ? 'psi' : 'kPa',
        accuracyPercentOfSpan: kind === 'regulator' ? 0 : 0.25,
        calibratedOn: today,
        dueOn: '2099-12-31',
        certificate: 'practice bench',
        bleedsDown: kind === 'regulator' ? true : null,
        note: 'practice bench',
      },
    ];
  });
  return Object.fromEntries(items) as Record<GearRole, GearItem>;
}

function gearEntry(item: GearItem): EntryDraft {
  const inputs = { item } as unknown as Json;
  return { stream: streamOf('gear', item.number), kind: 'gear-saved', inputs, ...bare };
}

function exerciseEntry(
  sheet: ValveSheet,
  { asked, faults }: { readonly asked: ExerciseAsked; readonly faults: readonly Given[] },
): EntryDraft {
  const { how, seed } = asked;
  const inputs = {
    tag: sheet.tag,
    after: asked.sheet.tag,
    faults: faults.map(({ cause, severity }) => ({ cause, severity })),
    seed,
    how,
  };
  return { stream: streamOf('exercise', sheet.tag), kind: 'exercise-set', inputs, ...bare };
}

function setMeanwhile(): Refusal {
  return new Refusal({
    kind: 'conflict',
    code: 'PRC-001',
    what: 'Another exercise was set at this moment.',
    kept: 'Nothing was set.',
    next: 'Send it again.',
  });
}
