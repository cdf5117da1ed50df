/** What is advised at a hub: the next check, the way to it, or to stop checking and repair. */
import type { Job } from '../../../../procedures/job.ts';
import { causeOf } from '../../../../procedures/troubleshooting/causes.ts';
import { type Hub, moveMinutes } from '../../../../procedures/troubleshooting/check.ts';
import { checkOf } from '../../../../procedures/troubleshooting/checks.ts';
import { bearsOn } from '../../../../procedures/troubleshooting/engine/bears-on.ts';
import { repairRanking } from '../../../../procedures/troubleshooting/engine/belief.ts';
import type { Suggestion } from '../../../../procedures/troubleshooting/engine/next-check.ts';
import type { Advice } from '../../../../procedures/troubleshooting/job/advice.ts';
import { goesOnFrom, repairWay } from '../../../../procedures/troubleshooting/repair-way.ts';
import { type RepairId, repairOf } from '../../../../procedures/troubleshooting/repairs.ts';
import { mendChoice, mendsAt } from '../../../../procedures/troubleshooting/steps/hub-choices.ts';
import { GAUGE_POINTS } from '../../../../procedures/troubleshooting/valve-facts.ts';
import { sayChance, sayItem } from './fault-words.ts';

interface Act {
  readonly text: string;
  readonly value: string;
  readonly kind: 'main' | 'plain';
}

export interface NextView {
  readonly kind: string;
  readonly title: string;
  readonly rows: readonly { readonly label: string; readonly text: string; readonly strong?: string }[];
  readonly acts: readonly Act[];
}

/** What a sound valve wants, and one that was mended. */
const NO_REPAIR: RepairId = 'leaveAlone';

/** A repair is named beside a check where it is so likely: judgement. */
const WORTH_NAMING = 0.2;

const HUB_WORDS: Readonly<Record<Hub, string>> = {
  'in service': 'in service',
  bypassed: 'on the bypass',
  isolated: 'isolated',
};

/** The first and large thing of a hub. */
export function nextView(advice: Advice, job: Pick<Job, 'sheet' | 'facts'>): NextView {
  const { decision, proofDue, standing } = advice;
  if (proofDue !== null) return proofView(proofDue, standing.hub);
  const { check } = decision;
  return decision.best === 'check' && check !== null ? checkView(check, advice) : repairView(advice, job);
}

function proofView({ repair, check }: NonNullable<Advice['proofDue']>, hub: Hub): NextView {
  const { title, todo, minutes, hubs } = checkOf(check);
  const here = hubs.includes(hub);
  return {
    kind: 'Prove the repair',
    title,
    rows: [
      { label: 'what to do', text: todo },
      { label: 'it proves', text: repairOf(repair).words },
      { label: 'takes', text: '', strong: sayMinutes(minutes) },
      ...(here ? [] : [{ label: 'where', text: `It is made ${HUB_WORDS[hubs[0] ?? hub]}.` }]),
    ],
    acts: here ? [{ text: 'Do this check', value: check, kind: 'main' }] : [nameAct('plain')],
  };
}

function checkView(check: Suggestion, advice: Advice): NextView {
  const { standing, decision } = advice;
  const { title, todo, consent } = checkOf(check.check);
  const here = check.hub === standing.hub && check.fit.length === 0;
  return {
    kind: `${check.again ? 'Look again' : 'Next check'}${here ? '' : ', after the way to it'}`,
    title,
    rows: [
      { label: 'what to do', text: todo },
      { label: 'why this one', text: whyThis(check, advice) },
      ...toldOf(advice),
      { label: 'takes', text: sayWay(check), strong: sayMinutes(check.minutes) },
      {
        label: 'needs',
        text:
          [
            ...(consent ? ['the operator’s word'] : []),
            ...check.fit.map((point) => `a gauge ${GAUGE_POINTS[point]}`),
            ...(here && !consent && check.fit.length === 0 ? ['nothing opened, nothing moved'] : []),
          ].join(', ') || 'the valve as it stands',
      },
      ...(decision.repair.probability < WORTH_NAMING
        ? []
        : [
            {
              label: 'or repair',
              text: `${repairOf(decision.repair.id).words}, ${sayChance(decision.repair.probability)} to be the one`,
            },
          ]),
    ],
    acts: [
      here
        ? { text: check.again ? 'Look again' : 'Do this check', value: check.check, kind: 'main' }
        : wayTo(check, standing.hub),
      nameAct('plain'),
    ],
  };
}

/** Of which causes its answer tells: what a person weighs who thinks of another check. */
function toldOf({ model, causes, decision: { joint } }: Advice): NextView['rows'] {
  const told = joint === null ? [] : bearsOn(model, { joint, causes });
  return told.length === 0
    ? []
    : [{ label: 'it tells of', text: told.map((cause) => causeOf(cause).words).join('; ') }];
}

/** A look that was taken already is named with what it showed. */
function whyThis({ check, again }: Suggestion, { belief, checks }: Advice): string {
  if (!again)
    return check === checks[0]?.check
      ? 'Of all that may be done now it tells most for its minutes.'
      : 'Of all that may be done now it leads to a cured valve in the fewest minutes.';
  const item = belief.items.findLast((one) => one.item.kind === 'answer' && one.item.check === check);
  const showed = item === undefined ? '' : ` ${sayItem(item)}.`;
  return `Much hangs on this one answer.${showed} Look as if nobody had looked: at the tag, on another gauge if one is at hand, best with other eyes.`;
}

function sayWay({ moveMinutes: move, fitMinutes, hub }: Suggestion): string {
  const parts = [
    ...(move > 0 ? [`${sayMinutes(move)} to have the valve ${HUB_WORDS[hub]}`] : []),
    ...(fitMinutes > 0 ? [`${sayMinutes(fitMinutes)} to fit the gauge`] : []),
  ];
  return parts.length === 0 ? '' : `${parts.join(', ')}; in all`;
}

/** The next act on the way to a check that is not made as the valve stands. */
function wayTo({ hub, fit }: Suggestion, here: Hub): Act {
  if (here === 'in service') return { text: 'Put the valve on its bypass', value: 'bypass', kind: 'main' };
  if (here === 'bypassed' && fit.length > 0)
    return { text: 'Fit the gauge', value: 'fitGauge', kind: 'main' };
  if (here === 'bypassed' && hub === 'isolated')
    return { text: 'Isolate the valve', value: 'isolate', kind: 'main' };
  return { text: 'Give the valve back, and look on in service', value: 'giveBack', kind: 'main' };
}

/** Why a cheap repair comes before a likelier one: its minutes, and nothing else, put it first. */
function whyFirst({ model, belief, decision }: Advice): NextView['rows'] {
  const [likeliest] = repairRanking(model, belief);
  const { id } = decision.repair;
  if (likeliest === undefined || likeliest.id === id || id === NO_REPAIR) return [];
  const text = `It costs less to try than what is likelier: ${repairOf(likeliest.id).words}, ${sayChance(likeliest.probability)}.`;
  return [{ label: 'why first', text }];
}

function repairView(advice: Advice, job: Pick<Job, 'sheet' | 'facts'>): NextView {
  const { decision, standing } = advice;
  const { repair, checkFirstMinutes, repairNowMinutes } = decision;
  const { words, todo, hub } = repairOf(repair.id);
  const mended = mendsAt(standing.hub).includes(repair.id);
  const check = decision.check === null ? null : checkOf(decision.check.check);
  const wayMinutes = moveMinutes({ from: standing.hub, to: hub });
  return {
    kind: repair.id === NO_REPAIR ? 'Stop checking: nothing is left to repair' : 'Stop checking: repair',
    title: words,
    rows: [
      { label: 'what to do', text: todo },
      { label: 'likely', text: '', strong: sayChance(repair.probability) },
      ...whyFirst(advice),
      {
        label: 'costs',
        text: `${sayMinutes(repairNowMinutes)} to a cured valve on the average${checkFirstMinutes === null ? '' : `, ${sayMinutes(checkFirstMinutes)} with another check first`}${wayMinutes > 0 ? '; the way there is counted in' : ''}`,
      },
      ...(mended
        ? [{ label: 'how', text: 'Here and now; the check that proves it comes next.' }]
        : howMade(repair.id, { hub: standing.hub, job })),
    ],
    acts: [
      mended ? { text: 'Mend it now', value: mendChoice(repair.id), kind: 'main' } : nameAct('main'),
      ...(check === null || decision.check?.hub !== standing.hub || decision.check.fit.length > 0
        ? []
        : [{ text: `Check on: ${check.title}`, value: decision.check.check, kind: 'plain' as const }]),
    ],
  };
}

const FROM: Readonly<Record<ReturnType<typeof goesOnFrom>, string>> = {
  here: 'Name it: it may go on at once as its own job, with the valve as it stands.',
  isolated:
    'Isolate the valve and name it there: it goes on as its own job behind these locks. Named here, the valve goes back first.',
  'given back': 'Name it, and the valve goes back. It has its own procedure, opened after this job.',
};

/** How a repair is made that is not made here and now, and why not by a procedure of the house. */
function howMade(
  id: RepairId,
  { hub, job }: { readonly hub: Hub; readonly job: Pick<Job, 'sheet' | 'facts'> },
): NextView['rows'] {
  if (id === NO_REPAIR) return [{ label: 'how', text: 'Name it, and the valve goes back.' }];
  const way = repairWay(id, { sheet: job.sheet, place: job.facts.place });
  if (way.because === '') return [{ label: 'how', text: FROM[goesOnFrom(id, { hub, way })] }];
  const how =
    way.procedure === null
      ? 'Name it, and the valve goes back. The repair is planned.'
      : 'Name it, and the valve goes back. No procedure here makes it on this valve: it is planned.';
  return [
    { label: 'how', text: how },
    { label: 'because', text: way.because },
  ];
}

function nameAct(kind: Act['kind']): Act {
  return { text: 'Name the cause, and stop checking', value: 'name', kind };
}

export function sayMinutes(minutes: number): string {
  const whole = Math.max(1, Math.round(minutes));
  return whole === 1 ? '1 minute' : `${whole} minutes`;
}
