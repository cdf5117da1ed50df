import { situationNow } from '../../../procedures/actions/move.ts';
import type { EvidenceNote, Job, Reading } from '../../../procedures/job.ts';
import { CONDITIONS, type ConditionId } from '../../../safety/conditions.ts';
import type { Situation } from '../../../safety/situation.ts';
import { ENERGY_STATES, type EnergyState, UNSAFE_STATES } from '../../../views/pictures/marks.ts';
import { asRead, clock, short, wasBefore } from './words.ts';

/** One energy, or the bypass, as tag, strip and evidence row show it. */
export interface EnergyView {
  readonly condition: ConditionId;
  readonly letter: string;
  readonly name: string;
  readonly state: EnergyState;
  readonly was: string | null;
  readonly is: string | null;
  readonly lock: string | null;
  readonly who: string;
  readonly when: string;
  readonly gauge: string;
  readonly proof: string;
}

/** The energies that stand on the drawing, in the order of their letters. */
export const DRAWN: readonly ConditionId[] = [
  'supplyAir',
  'signalAir',
  'spring',
  'processInlet',
  'processOutlet',
  'bypass',
];

/** Those that this valve can have: a cylinder without a spring has no tag for one. */
export function drawnOn({ sheet }: Pick<Job, 'sheet'>): readonly ConditionId[] {
  return sheet.springHeldBy === 'no spring' ? DRAWN.filter((condition) => condition !== 'spring') : DRAWN;
}

const LOCK_OF: { readonly [C in ConditionId]?: ConditionId } = {
  supplyAir: 'supplyLock',
  secondSupply: 'secondSupplyLock',
  processInlet: 'inletLock',
  processOutlet: 'outletLock',
};

const BEFORE_OF: { readonly [C in ConditionId]?: string } = {
  supplyAir: 'supplyBeforePa',
  secondSupply: 'secondBeforePa',
  signalAir: 'signalBeforePa',
  processInlet: 'inletBeforePa',
  processOutlet: 'outletBeforePa',
};

export function energyView(
  condition: ConditionId,
  { job, nowMs }: { readonly job: Job; readonly nowMs: number },
): EnergyView {
  const situation = situationNow(job, nowMs);
  const note = job.evidence[condition] ?? null;
  const lock = LOCK_OF[condition] === undefined ? null : (job.locks[LOCK_OF[condition]]?.lock ?? null);
  const state = stateOf(condition, { situation, lock });
  const is = note === null ? null : readingOf(note, condition);
  const before = job.readings[BEFORE_OF[condition] ?? ''];
  return {
    condition,
    letter: CONDITIONS[condition].letter ?? '',
    name: condition === 'signalAir' ? airName(situation) : CONDITIONS[condition].name,
    state,
    was: before === undefined || is === null || state === 'live' ? null : wasBefore(before, is),
    is: is === null ? null : asRead(is),
    lock,
    who: note === null ? '' : short(note.person),
    when: note === null ? '' : clock(note.at),
    gauge: is?.gauge ?? '',
    proof: proofOf(condition, { situation, note, state, before }),
  };
}

function stateOf(
  condition: ConditionId,
  { situation, lock }: { readonly situation: Situation; readonly lock: string | null },
): EnergyState {
  const state = situation.states[condition];
  if (situation.lapsed[condition] !== undefined) return 'prove-again';
  // What has neither lock nor a line that is capped was vented, blocked or switched off: how, the proof beside it says.
  if (state === 'isolated' && lock === null) return condition === 'signalAir' ? 'capped' : 'safe';
  if (state === 'isolated') return 'locked';
  if (state === 'live' && lock !== null) return 'to-prove';
  return ENERGY_STATES.find((drawn) => drawn === state) ?? 'live';
}

/** Once the controller's line is off, what is on the case is test air. */
function airName(situation: Situation): string {
  return situation.states.testAir === 'connected' ? 'Test air' : 'Signal air';
}

/** Fields that say how an energy stands now: one card, or one walk round, may hold those of several. */
const AFTER_OF: { readonly [C in ConditionId]?: RegExp } = {
  supplyAir: /^supply(After|AirAgain|Back)Pa$/,
  secondSupply: /^second(After|SupplyAgain|Back)Pa$/,
  signalAir: /^(signal(After|AirAgain)?Pa|airZeroPa|held(Again)?Pa)$/,
  spring: /^adjusterHeight/,
  processInlet: /^(inlet(After|Again)|processInletAgain)Pa$/,
  processOutlet: /^(outlet(After|Again)|processOutletAgain)Pa$/,
  temperature: /^bodyTemperatureK$/,
};

/** The newest reading of a line that says how this energy stands; null where the line holds none of it. */
export function readingOf(note: EvidenceNote, condition: ConditionId): Reading | null {
  const fits = AFTER_OF[condition];
  return (fits && note.readings.findLast((reading) => fits.test(reading.field))) ?? null;
}

function proofOf(
  condition: ConditionId,
  {
    situation,
    note,
    state,
    before,
  }: {
    readonly situation: Situation;
    readonly note: EvidenceNote | null;
    readonly state: EnergyState;
    readonly before: Reading | undefined;
  },
): string {
  const lapsed = situation.lapsed[condition];
  if (lapsed !== undefined) return `lapsed: ${lapsed}`;
  if (condition === 'bypass') return 'never an isolation';
  if (state === 'to-prove') return before === undefined ? 'not shown yet' : `was ${asRead(before)}, to show`;
  if (note === null) return UNSAFE_STATES.includes(state) ? 'not shown safe' : '';
  const by = `${short(note.person)} ${clock(note.at)}`;
  return before !== undefined && state !== 'live' && state !== 'held' ? `was ${asRead(before)}, ${by}` : by;
}

/** What its choice said, where no more than that was asked. */
const SAID: { readonly [C in ConditionId]?: string } = {
  trappedAir: 'Vented at its own vent: cracked twice, no flow',
  lockUpAir: 'Vented behind the relay: cracked twice, no flow',
  oppositeAir: 'Vented at its own port: cracked twice, no flow',
  temperature: 'It may be touched',
  weight: 'Hung, slack taken up',
  commands: 'Loop in manual and tagged, remote writes and tests blocked',
};

/** How it was made safe, as the evidence row says it. */
export function doneText(view: Pick<EnergyView, 'condition'>, job: Job): string {
  const { sheet } = job;
  const bench = job.facts.place === 'bench';
  switch (view.condition) {
    case 'supplyAir':
      return bench ? 'None connected' : `Cock ${sheet.supplyPoint} shut, vented`;
    case 'secondSupply':
      return `Cock ${sheet.secondSupplyPoint ?? ''} shut, vented`;
    case 'signalAir':
      return airText(job);
    case 'spring':
      return springText(job);
    case 'processInlet':
      return bench ? 'Valve is out of the line' : `${sheet.inletPoint} shut, drained`;
    case 'processOutlet':
      return bench ? 'Valve is out of the line' : `${sheet.outletPoint} shut, drained`;
    case 'bypass':
      return bench ? 'None here' : `${sheet.bypassPoint ?? 'none'}, the operator holds the process`;
    default:
      return (
        job.evidence[view.condition]?.words[`${view.condition}How`] ?? SAID[view.condition] ?? 'Recorded'
      );
  }
}

function airText({ facts, sheet }: Job): string {
  if (sheet.actuatorKind === 'piston')
    return facts.place === 'bench'
      ? 'Both ports open to the air'
      : 'Both tubes off at the cylinder, ends capped';
  return facts.place === 'bench' ? 'Case port open to the air' : 'Line off at the case, ends capped';
}

function springText({ situation: { states }, sheet }: Job): string {
  if (states.spring === 'contained' && sheet.springHeldBy === 'no spring')
    return 'None on the sheet; cylinder shut, every tie rod in and tight';
  if (states.spring === 'contained')
    return sheet.actuatorKind === 'piston'
      ? 'Cylinder shut, every bolt in and tight'
      : 'Case shut, every bolt in and tight';
  if (states.spring !== 'released') return 'Not looked at yet';
  return states.springHolder === 'case'
    ? 'Let off evenly by the long bolts'
    : 'Adjuster backed off, it turns freely by hand';
}

/** What was recorded absent, by whom and when, for nothing is absent of itself. */
export function recordedAbsent(
  rows: readonly { readonly condition: ConditionId; readonly note: EvidenceNote | null }[],
): string {
  const byWho = new Map<string, string[]>();
  for (const { condition, note } of rows) {
    const who = note === null ? 'Absent' : `Recorded absent by ${short(note.person)} at ${clock(note.at)}`;
    byWho.set(who, [...(byWho.get(who) ?? []), CONDITIONS[condition].name.toLowerCase()]);
  }
  const sentences = [...byWho].map(([who, names]) => `${who}: ${names.join(', ')}.`);
  return sentences.join(' ');
}
