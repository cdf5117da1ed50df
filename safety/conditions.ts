/**
 * Everything about a valve that can hurt, or that keeps it from hurting, as closed sets of states.
 * The first state of each is what counts until a person has shown or recorded otherwise: for an energy the
 * worst one, for a control how a valve in service stands.
 *
 * Each instance is a condition of its own: a second air feed, each volume that keeps air, each side of the process.
 * One of them shown safe says nothing about the other, in the table, the proof, the interlock and a hold alike.
 *
 * An *energy* has a letter, the same on screen, phone, radio and print. A *control* (lock, bypass, controller
 * line, signature) has none. The bypass carries the letter F because people look for it on the drawing, but
 * it is a record, never an isolation.
 */
export const CONDITIONS = {
  supplyAir: { group: 'energy', letter: 'A', name: 'Supply air', states: ['live', 'isolated', 'absent'] },
  secondSupply: {
    group: 'energy',
    letter: 'N',
    name: 'Second air feed',
    states: ['live', 'isolated', 'absent'],
  },
  signalAir: {
    group: 'energy',
    letter: 'B',
    name: 'Signal or test air',
    states: ['live', 'held', 'isolated', 'absent'],
  },
  spring: {
    group: 'energy',
    letter: 'C',
    name: 'Spring',
    states: ['loaded', 'contained', 'released', 'absent'],
  },
  processInlet: {
    group: 'energy',
    letter: 'D',
    name: 'Process, inlet side',
    states: ['live', 'isolated', 'absent'],
  },
  processOutlet: {
    group: 'energy',
    letter: 'E',
    name: 'Process, outlet side',
    states: ['live', 'isolated', 'absent'],
  },
  bypass: { group: 'control', letter: 'F', name: 'Bypass', states: ['shut', 'open', 'absent'] },
  trappedAir: {
    group: 'energy',
    letter: 'G',
    name: 'Air in tank or booster',
    states: ['live', 'isolated', 'absent'],
  },
  lockUpAir: {
    group: 'energy',
    letter: 'P',
    name: 'Air behind the lock-up relay',
    states: ['live', 'isolated', 'absent'],
  },
  oppositeAir: {
    group: 'energy',
    letter: 'R',
    name: 'Air on the other side of the actuator',
    states: ['live', 'isolated', 'absent'],
  },
  temperature: { group: 'energy', letter: 'H', name: 'Temperature', states: ['hot', 'safe', 'absent'] },
  weight: { group: 'energy', letter: 'J', name: 'Weight', states: ['free', 'hung', 'absent'] },
  residue: { group: 'energy', letter: 'K', name: 'Residue', states: ['present', 'cleared', 'absent'] },
  electrical: { group: 'energy', letter: 'L', name: 'Electrical', states: ['live', 'isolated', 'absent'] },
  safetyFunction: {
    group: 'energy',
    letter: 'M',
    name: 'Safety function',
    states: ['armed', 'overridden', 'absent'],
  },
  commands: {
    group: 'energy',
    letter: 'S',
    name: 'Commands from outside',
    states: ['live', 'isolated', 'absent'],
  },
  supplyLock: { group: 'lock', letter: null, name: 'Lock on the supply cock', states: ['off', 'on'] },
  secondSupplyLock: {
    group: 'lock',
    letter: null,
    name: 'Lock on the cock of the second feed',
    states: ['off', 'on'],
  },
  inletLock: { group: 'lock', letter: null, name: 'Lock on the inlet block valve', states: ['off', 'on'] },
  outletLock: { group: 'lock', letter: null, name: 'Lock on the outlet block valve', states: ['off', 'on'] },
  controllerLine: {
    group: 'control',
    letter: null,
    name: 'Controller line',
    states: ['connected', 'capped', 'absent'],
  },
  testAir: { group: 'control', letter: null, name: 'Test air', states: ['off', 'connected'] },
  loop: { group: 'control', letter: null, name: 'Control loop', states: ['automatic', 'manual', 'absent'] },
  processFlow: {
    group: 'control',
    letter: null,
    name: 'Process without this valve',
    states: ['needs the valve', 'set up', 'absent'],
  },
  consent: { group: 'control', letter: null, name: "Operator's consent", states: ['none', 'given'] },
  plug: { group: 'control', letter: null, name: 'Plug', states: ['seat unknown', 'off seat'] },
  springHolder: {
    group: 'control',
    letter: null,
    name: 'What holds the spring',
    states: ['adjuster', 'case', 'absent'],
  },
  shortBolts: { group: 'control', letter: null, name: 'Short case bolts', states: ['in', 'out'] },
  closure: { group: 'control', letter: null, name: 'Actuator, bonnet and gland', states: ['open', 'shut'] },
  isolationGrade: {
    group: 'control',
    letter: null,
    name: 'Shut-off of the line, for this fluid and this work',
    states: ['not enough', 'enough', 'absent'],
  },
  gasTest: { group: 'control', letter: null, name: 'Gas test', states: ['none', 'fresh', 'absent'] },
  clear: {
    group: 'control',
    letter: null,
    name: 'Tools out and people clear',
    states: ['not looked at', 'clear'],
  },
  told: { group: 'control', letter: null, name: 'People told', states: ['nobody', 'told'] },
  workSignOff: { group: 'signature', letter: null, name: 'Sign-off for the work', states: ['none', 'given'] },
  returnSignOff: {
    group: 'signature',
    letter: null,
    name: 'Sign-off for the return',
    states: ['none', 'given'],
  },
} as const satisfies Record<string, Condition>;

interface Condition {
  readonly group: 'energy' | 'control' | 'lock' | 'signature';
  readonly letter: string | null;
  readonly name: string;
  readonly states: readonly string[];
}

export type ConditionId = keyof typeof CONDITIONS;
export type StateOf<C extends ConditionId> = (typeof CONDITIONS)[C]['states'][number];
export type AnyState = StateOf<ConditionId>;

/** For some conditions, the states that an action allows. */
export type Needs = { readonly [C in ConditionId]?: readonly StateOf<C>[] };

/** One state for each condition. */
export type States = { readonly [C in ConditionId]: StateOf<C> };

export const CONDITION_IDS = Object.keys(CONDITIONS) as readonly ConditionId[];

export const ENERGY_IDS: readonly ConditionId[] = CONDITION_IDS.filter(
  (id) => CONDITIONS[id].group === 'energy',
);

export const LOCK_IDS: readonly ConditionId[] = CONDITION_IDS.filter((id) => CONDITIONS[id].group === 'lock');

/** The state that counts while nothing has been shown: the worst. */
export function worstState(condition: ConditionId): AnyState {
  return CONDITIONS[condition].states[0];
}

/** @example isStateOf('spring', 'released') // true */
export function isStateOf(condition: ConditionId, state: string): state is AnyState {
  return (CONDITIONS[condition].states as readonly string[]).includes(state);
}

/** Where a job begins: everything live, loaded, hot, unlocked and unsigned. */
export function everythingLive(): States {
  return Object.fromEntries(CONDITION_IDS.map((id) => [id, worstState(id)])) as States;
}
