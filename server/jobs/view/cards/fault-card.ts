import type { Job } from '../../../../procedures/job.ts';
import type { Hub } from '../../../../procedures/troubleshooting/check.ts';
import { checkOf } from '../../../../procedures/troubleshooting/checks.ts';
import { repairRanking } from '../../../../procedures/troubleshooting/engine/belief.ts';
import { settledIn } from '../../../../procedures/troubleshooting/engine/reopened.ts';
import { type Advice, adviceFor } from '../../../../procedures/troubleshooting/job/advice.ts';
import { MENDED_HERE } from '../../../../procedures/troubleshooting/repair-procedures.ts';
import { goesOnFrom, type RepairWay, repairWay } from '../../../../procedures/troubleshooting/repair-way.ts';
import type { RepairId } from '../../../../procedures/troubleshooting/repairs.ts';
import {
  choicesAt,
  LOOKED_ELSEWHERE,
  readChoice,
} from '../../../../procedures/troubleshooting/steps/hub-choices.ts';
import type { ReadingStep } from '../../../../procedures/vocabulary.ts';
import type { CardInput, CardView } from './card.ts';
import { type NextView, nextView, sayMinutes } from './fault-next.ts';
import { type CauseView, causeViews, footLines, sayChance, warningOf } from './fault-words.ts';
import { readingCard } from './plain-cards.ts';

const HUB_OF_RULE: Readonly<Record<string, Hub>> = {
  hubInService: 'in service',
  hubOnBypass: 'bypassed',
  hubIsolated: 'isolated',
};

const NAMES_REPAIR: Readonly<Record<string, Hub | null>> = {
  // Older jobs named on the bypass by this rule as well, which says where.
  causeNamed: null,
  causeNamedOnBypass: 'bypassed',
  causeNamedIsolated: 'isolated',
};

interface Option {
  readonly value: string;
  readonly label: string;
  readonly help?: string;
  readonly checked: boolean;
}

export interface FaultHub {
  readonly warning: string;
  readonly next: NextView;
  readonly caption: string;
  readonly causes: readonly CauseView[];
  readonly foot: readonly string[];
  readonly groups: readonly {
    readonly of: 'checks' | 'others';
    readonly legend: string;
    readonly options: readonly Option[];
  }[];
}

/** The card on which a gauge is fitted, on the bypass. */
const FITS_GAUGE = 'gaugeFitted';

/** A card whose order is advice of the engine: a hub, the card that names the repair, or the one that fits a gauge. */
export function isFaultCard({ judge }: ReadingStep<string>): boolean {
  return (
    HUB_OF_RULE[judge.rule] !== undefined ||
    Object.hasOwn(NAMES_REPAIR, judge.rule) ||
    judge.rule === FITS_GAUGE
  );
}

/** The card with its choices in the order of the advice; nothing stands on it that this valve has not. */
export function faultCard(
  step: ReadingStep<string>,
  input: CardInput,
): CardView & { readonly hub?: FaultHub } {
  const hub = HUB_OF_RULE[step.judge.rule];
  if (step.judge.rule === FITS_GAUGE) return gaugeCard(step, input);
  if (hub === undefined) return nameCard(step, input);
  const advice = adviceFor(input.job, hub);
  const next = nextView(advice, input.job);
  const groups = groupsOf(advice, hub);
  const ordered = groups.flatMap(({ options }) => options).map(({ value }) => value);
  const first = next.acts[0]?.value ?? '';
  return {
    ...withOptions(readingCard(step, input), [first, ...ordered.filter((value) => value !== first)]),
    hub: {
      warning: warningOf(advice),
      next,
      caption: `Likely causes after ${advice.evidence.length} ${advice.evidence.length === 1 ? 'answer' : 'answers'}`,
      causes: causeViews(advice),
      foot: footLines(advice),
      groups,
    },
  };
}

/** How likely it is to be the one, where that is worth a word, and how it is made on this valve. */
function helpFor(
  id: RepairId,
  of: { readonly probability: number; readonly hub: Hub; readonly job: Job },
): string {
  const { probability, hub, job } = of;
  const chance = probability < WORTH_A_WORD ? '' : `${sayChance(probability)}`;
  const way = repairWay(id, { sheet: job.sheet, place: job.facts.place });
  return [chance, sayWay(id, { way, hub })].filter((text) => text !== '').join('; ');
}

function sayWay(id: RepairId, { way, hub }: { readonly way: RepairWay; readonly hub: Hub }): string {
  if (way.procedure === null) return MENDED_HERE.includes(id) ? 'mended on the spot' : '';
  if (way.because !== '') return 'no procedure here makes it on this valve: by its maker’s manual, planned';
  const from = goesOnFrom(id, { hub, way });
  if (from === 'here') return 'may go on at once as its own job';
  return from === 'isolated' ? 'goes on as its own job once isolated' : 'has its own procedure';
}

/** One chance in twenty: judgement. */
const WORTH_A_WORD = 0.05;
/** So many stand in sight, however likely; the others open. */
const IN_SIGHT = 5;

function withHelp<O extends object>(option: O, help: string): O {
  return help === '' ? option : { ...option, help };
}

/** Options of the first field in this order; what is not named goes. */
function withOptions(card: CardView, values: readonly string[]): CardView {
  const fields = card.fields.map((field, at) => {
    if (at > 0) return field;
    const options = values.flatMap((value) => field.options.find((one) => one.value === value) ?? []);
    return { ...field, options };
  });
  return { ...card, fields };
}

function groupsOf(advice: Advice, hub: Hub): FaultHub['groups'] {
  const labels = new Map(choicesAt(hub).map(({ value, label }) => [value, label]));
  const option = (value: string, help?: string): Option => ({
    value,
    label: labels.get(value) ?? value,
    checked: false,
    ...(help === undefined ? {} : { help }),
  });
  const here = advice.checks.filter((one) => one.hub === hub && one.fit.length === 0 && !one.again);
  const done = settledIn(advice.model, advice.evidence);
  const again = advice.model.checks.filter((id) => done.has(id) && labels.has(id));
  const brought = advice.model.checks.filter(
    (id) =>
      labels.has(id) && !done.has(id) && (LOOKED_ELSEWHERE.includes(id) || checkOf(id).broughtOnly === true),
  );
  const ways = [...labels.keys()].filter((value) => readChoice(value).kind === 'way');
  const mends = [...labels.keys()].filter((value) => {
    const chosen = readChoice(value);
    return chosen.kind === 'mend' && advice.model.repairs.includes(chosen.repair);
  });
  const groups = [
    {
      legend: 'Checks, the best for its minutes first',
      options: here.map((one) => option(one.check, sayMinutes(one.minutes))),
    },
    { legend: 'Ways on', options: ways.map((value) => option(value)) },
    { legend: 'Mended on the spot', options: mends.map((value) => option(value)) },
    { legend: 'Look again', options: again.map((id) => option(id)) },
    { legend: 'Known from elsewhere', options: brought.map((id) => option(id)) },
  ];
  return groups
    .map((group, at) => ({ of: at === 0 ? ('checks' as const) : ('others' as const), ...group }))
    .filter(({ options }) => options.length > 0);
}

function hubOfNaming({ judge }: ReadingStep<string>): Hub {
  return NAMES_REPAIR[judge.rule] ?? ((judge.with?.hub ?? 'in service') as Hub);
}

/** The repairs that this valve can want, the likeliest first. */
/** Where the next check wants its gauge stands first, and says which check that is. */
function gaugeCard(step: ReadingStep<string>, input: CardInput): CardView {
  const { decision, checks } = adviceFor(input.job, 'bypassed');
  const check = [decision.check, ...checks].find((one) => one !== null && one.fit.length > 0);
  const card = readingCard(step, input);
  const wanted: readonly string[] = check?.fit ?? [];
  const values = card.fields[0]?.options.map(({ value }) => value) ?? [];
  const ordered = withOptions(card, [
    ...values.filter((value) => wanted.includes(value)),
    ...values.filter((value) => !wanted.includes(value)),
  ]);
  const fields = ordered.fields.map((field) => ({
    ...field,
    options: field.options.map((one) =>
      withHelp(one, check && wanted.includes(one.value) ? `wanted for: ${checkOf(check.check).title}` : ''),
    ),
  }));
  return { ...ordered, fields };
}

function nameCard(step: ReadingStep<string>, input: CardInput): CardView {
  const hub = hubOfNaming(step);
  const { belief, model } = adviceFor(input.job, hub);
  const ranked = repairRanking(model, belief);
  const named = new Set(ranked.map(({ id }) => id));
  const all = [
    ...ranked,
    ...model.repairs.filter((id) => !named.has(id)).map((id) => ({ id, probability: 0 })),
  ];
  const card = withOptions(
    readingCard(step, input),
    all.map(({ id }) => id),
  );
  const about = new Map<string, { readonly help: string; readonly probability: number }>(
    all.map(({ id, probability }) => [
      id,
      { help: helpFor(id, { probability, hub, job: input.job }), probability },
    ]),
  );
  const fields = card.fields.map((field) => ({
    ...field,
    options: field.options.map((one, at) => {
      const { help = '', probability = 0 } = about.get(one.value) ?? {};
      return { ...withHelp(one, help), isRest: at >= IN_SIGHT && probability < WORTH_A_WORD };
    }),
  }));
  return { ...card, fields };
}
