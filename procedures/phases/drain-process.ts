import { DRAIN_HOLD_S } from '../../safety/limits.ts';
import type { Caution, ChoiceField, QuantityField, Step } from '../vocabulary.ts';
import { SHOWN_BY, yesNo } from './common.ts';
import { after, before, lockField, notShown, zeroWays } from './isolate-parts.ts';

export type Drained =
  | 'shutInlet'
  | 'shutOutlet'
  | 'drainInlet'
  | 'inletNotShown'
  | 'drainOutlet'
  | 'outletNotShown'
  | 'waitDrained'
  | 'drainsAgain';

const phase = 'isolate';
const makeSafe = 'haltIsolating';

const LINE_OPENS: Caution = {
  word: 'warning',
  hazard: 'What is left in the body comes out at the drain.',
  consequence: 'Hot, toxic or fast fluid can burn, poison or blind.',
  avoid: 'Stand aside, face shield down, drain to where the site says.',
};

/**
 * Both sides of the process shut, locked, drained and read at zero, and read once more after they were shut in: a
 * block valve that passes shows itself only with time.
 */
export function drainProcess<const Next extends string>({
  next,
  heldNext,
}: {
  /** What is done while the drained sides are shut in. */
  readonly next: Next;
  readonly heldNext: Next;
}): Readonly<Record<Drained, Step<Drained | Next | 'haltIsolating'>>> {
  return {
    ...side<Next>('inlet', { shut: 'shutOutlet', drained: 'drainOutlet' }),
    ...side<Next>('outlet', { shut: 'drainInlet', drained: next }),
    waitDrained: {
      kind: 'wait',
      phase,
      title: 'Let both sides stand shut in',
      how: 'Drains shut since the outlet side was drained. The time runs while you isolate the air.',
      why: 'A block valve that passes a little shows it only with time.',
      waitS: DRAIN_HOLD_S,
      since: 'drainOutlet',
      next: { to: 'drainsAgain' },
      makeSafe,
    },
    drainsAgain: {
      kind: 'reading',
      phase,
      title: 'Read both drains again, on the same gauges',
      how: 'At most {processSafeLimit} still. Where a gauge cannot tell so little, crack the drain and watch it.',
      why: 'A block valve that passes fills the body again; a first zero does not show it.',
      action: 'drainProcess',
      caution: LINE_OPENS,
      asks: [
        again('inletAgainPa', 'inletGauge'),
        again('outletAgainPa', 'outletGauge'),
        flow('inletFlow', 'Inlet drain, cracked'),
        flow('outletFlow', 'Outlet drain, cracked'),
      ],
      judge: {
        rule: 'stillZero',
        with: { inlet: 'inletAfterPa', outlet: 'outletAfterPa' },
      },
      ways: {
        'still zero': { to: heldNext, sets: { processInlet: 'isolated', processOutlet: 'isolated' } },
        'inlet builds up': { to: 'inletNotShown' },
        'outlet builds up': { to: 'outletNotShown' },
        'not read': { to: 'drainsAgain' },
      },
      makeSafe,
    },
  } as Readonly<Record<Drained, Step<Drained | Next | 'haltIsolating'>>>;
}

function again(name: string, gauge: QuantityField['gauge']): QuantityField {
  return { ...after(name, gauge), label: name === 'inletAgainPa' ? 'Inlet drain, now' : 'Outlet drain, now' };
}

function flow(name: string, label: string): ChoiceField {
  return {
    name,
    label,
    type: 'choice',
    optional: true,
    choices: [
      { value: 'no flow', label: 'No flow' },
      { value: 'flow', label: 'It flows' },
    ],
  };
}

const SIDES = {
  inlet: {
    shut: 'shutInlet',
    drain: 'drainInlet',
    notShown: 'inletNotShown',
    lock: { inletLock: 'on', processInlet: 'live' },
    point: 'inletPoint',
    gauge: 'inletGauge',
    energy: 'processInlet',
    how: 'Shut the drain afterwards: the side is read again later.',
  },
  outlet: {
    shut: 'shutOutlet',
    drain: 'drainOutlet',
    notShown: 'outletNotShown',
    lock: { outletLock: 'on', processOutlet: 'live' },
    point: 'outletPoint',
    gauge: 'outletGauge',
    energy: 'processOutlet',
    how: 'A plug on its seat parts the two sides: each has its own drain and its own zero.',
  },
} as const;

function side<const Next extends string>(
  name: 'inlet' | 'outlet',
  { shut, drained }: { readonly shut: Drained; readonly drained: Drained | Next },
): Readonly<Partial<Record<Drained, Step<Drained | Next | 'haltIsolating'>>>> {
  const of = SIDES[name];
  return {
    [of.shut]: {
      kind: 'reading',
      phase,
      title: `Shut and lock the ${name} block valve {${of.point}}`,
      how: 'Read the drain gauge first, while the side is alive.',
      why: 'The lock keeps it shut; the gauge seen alive makes a later zero mean something.',
      action: 'shutBlockValves',
      do: ['Read the tag and the gauge.', 'Shut the valve.', 'Hang your lock and tag.'],
      asks: [
        before(`${name}BeforePa`, of.gauge),
        { name: `${name}Tag`, label: 'Tag on the valve', type: 'text', mustBe: of.point, carried: true },
        lockField(`${name}LockNumber`),
      ],
      judge: { rule: 'record' },
      ways: { kept: { to: shut, sets: of.lock } },
      makeSafe,
    },
    [of.drain]: {
      kind: 'reading',
      phase,
      title: `Drain the ${name} side and read zero`,
      how: `At most {processSafeLimit} with the gauge counted in. ${of.how}`,
      why: 'A drain that is plugged, frozen or locked by liquid reads zero with pressure behind it.',
      action: 'drainProcess',
      caution: LINE_OPENS,
      asks: [
        after(`${name}AfterPa`, of.gauge),
        ...SHOWN_BY,
        yesNo(`${name}Drained`, 'Rodded where it can plug; it flowed, and the flow stopped'),
      ],
      judge: {
        rule: 'showSafe',
        with: {
          energy: of.energy,
          before: `${name}BeforePa`,
          after: `${name}AfterPa`,
          also: `${name}Drained`,
        },
      },
      ways: zeroWays<Drained | Next>({ to: drained }, { to: of.notShown }),
      makeSafe,
    },
    [of.notShown]: notShown<Drained>(`The ${name} side is not shown safe`, {
      choices: {
        again: { label: 'Drain and read again', to: of.drain },
        shutAgain: { label: 'Shut the block valve again, it may pass', to: of.shut },
      },
    }),
  };
}
