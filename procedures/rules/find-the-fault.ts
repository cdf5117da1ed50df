/** Rules of "Find the fault". The engine's advice is kept among the figures; where the card leads, the choice says. */
import { Refusal } from '../../safety/refusal.ts';
import type { Figures, Reading } from '../job.ts';
import type { Hub, Measured } from '../troubleshooting/check.ts';
import { CHECK_READINGS, type Reads } from '../troubleshooting/check-readings.ts';
import { type CheckId, checkOf, isCheckId } from '../troubleshooting/checks.ts';
import { HEARSAY } from '../troubleshooting/engine/evidence.ts';
import { planFor } from '../troubleshooting/engine/next-check.ts';
import { adviceFigures, adviceFor } from '../troubleshooting/job/advice.ts';
import { factsOfJob } from '../troubleshooting/job/facts-of-job.ts';
import type { OnAxis } from '../troubleshooting/readings/axis.ts';
import { repairWay } from '../troubleshooting/repair-way.ts';
import { REPAIR_IDS, repairFor } from '../troubleshooting/repairs.ts';
import { GOES_ON_AS, goesOnAs, type HandingHub } from '../troubleshooting/steps/goes-on.ts';
import { LOOKED_ELSEWHERE, outcomesAt, readChoice } from '../troubleshooting/steps/hub-choices.ts';
import { GAUGE_POINTS, type ValveFacts } from '../troubleshooting/valve-facts.ts';
import { judgeLoopTable } from './loop-record.ts';
import type { Rule, RuleInput } from './rule.ts';

/** The symptom in words and the first numbers, put on the axes of the checks that they speak of. */
const firstLineRule: Rule = {
  outcomes: ['kept', 'kept, seen before'],
  params: [],
  judge({ job, readings, words }) {
    const facts = factsOfJob({ sheet: job.sheet, words: { ...job.words, ...words } });
    const figures: Record<string, number | string | null> = { evidence: 'first line' };
    if (words.symptom === undefined && Object.keys(readings).length === 0) throw nothingSaid();
    for (const check of ['valveAgainstCommand', 'travelAgainstOutput'] as const) {
      const onAxis = axisOf(check, { facts, readings });
      if (onAxis === null) continue;
      figures[`${check}Value`] = onAxis.value;
      figures[`${check}Sigma`] = onAxis.readSigma;
    }
    return { outcome: job.lastTime === undefined ? 'kept' : 'kept, seen before', figures };
  },
};

/** Reads what was chosen at a hub; refuses what this valve has not, and what its gauges or its area do not allow. */
function hubRule(hub: Hub): Rule {
  return {
    outcomes: outcomesAt(hub),
    params: [],
    judge({ job, words }) {
      const choice = words.hubChoice ?? '';
      const chosen = readChoice(choice);
      const advice = adviceFor(job, hub);
      if (chosen.kind === 'check') {
        const check = checkOf(chosen.check);
        if (!advice.model.checks.includes(chosen.check))
          throw refused(check.title, 'This valve has no such thing.');
        const gauges = check.gauges?.(advice.facts) ?? [];
        const missing = gauges.filter((point) => !advice.standing.gaugesFitted.includes(point));
        if (missing.length > 0)
          throw refused(
            check.title,
            `No gauge is fitted ${missing.map((one) => GAUGE_POINTS[one]).join(', ')}.`,
          );
        const elsewhere = LOOKED_ELSEWHERE.includes(chosen.check);
        if (!elsewhere && planFor(check, { standing: advice.standing, gauges })?.hub !== hub)
          throw refused(check.title, 'What it needs is not to be had as the valve stands.');
      }
      return { outcome: choice, figures: adviceFigures(advice) };
    },
  };
}

const hubInServiceRule = hubRule('in service');
const hubOnBypassRule = hubRule('bypassed');
const hubIsolatedRule = hubRule('isolated');

/** A check answered: a word, a number put on its axis, "cannot tell" or "skip". */
const checkRule: Rule = {
  outcomes: ['answered', 'cannot tell', 'skip'],
  params: ['check'],
  judge(input) {
    const { job, readings, words, params } = input;
    const id = params.check ?? '';
    if (!isCheckId(id)) throw new Error(`there is no check ${id}`);
    const { found } = words;
    const figures = { evidence: 'check', check: id };
    const table = input.csv?.loopRecord;
    if (table !== undefined) return judgeLoopTable(table, { kind: words.loopKind });
    if (found === 'cannot tell' || found === 'skip')
      return { outcome: found, figures: { ...figures, found } };
    const facts = factsOfJob(job);
    const onAxis = axisOf(id, { facts, readings });
    const word = onAxis === null ? found : bandOf(checkOf(id).measured, onAxis.value);
    if (word === undefined) throw id === 'loopRecord' ? noTable() : neither(checkOf(id).title);
    const [sound] = Object.keys(checkOf(id).outcomes);
    return {
      outcome: 'answered',
      figures: {
        ...figures,
        found: word,
        sound: word === sound ? 'yes' : 'no',
        value: onAxis?.value ?? null,
        readSigma: onAxis?.readSigma ?? null,
        gauge: gaugeOf(input),
        gaugeAlive: words.gaugeAlive ?? null,
      },
    };
  },
};

/** A repair made on the spot: the check that proves it comes next. */
const mendedRule: Rule = {
  outcomes: ['made', 'not made'],
  params: ['repair'],
  judge({ words, params }) {
    if (words.made !== 'yes') return { outcome: 'not made', figures: {} };
    return { outcome: 'made', figures: { evidence: 'mended', repair: params.repair ?? '' } };
  },
};

/** Which gauge was fitted where. */
const gaugeFittedRule: Rule = {
  outcomes: ['fitted', 'not fitted'],
  params: [],
  judge({ words }) {
    if (words.jointTight !== 'yes') return { outcome: 'not fitted', figures: {} };
    return { outcome: 'fitted', figures: { evidence: 'gauge fitted', point: words.gaugePoint ?? '' } };
  },
};

/** The repair to do, the likeliest cause that it puts right, and the procedure of the house that makes it. */
const causeNamedRule: Rule = {
  outcomes: ['named'],
  params: ['hub'],
  judge: (input) => ({ outcome: 'named', figures: namedFigures(input, input.params.hub as Hub) }),
};

/** The same on the bypass or behind locks: where its procedure takes the valve over so, the outcome is that procedure. */
function namedWhere(hub: HandingHub): Rule {
  return {
    outcomes: ['named', ...GOES_ON_AS[hub]],
    params: [],
    judge(input) {
      const figures = namedFigures(input, hub);
      const { sheet, facts } = input.job;
      const isFit =
        figures.repair !== null && repairWay(figures.repair, { sheet, place: facts.place }).because === '';
      return { outcome: (isFit ? goesOnAs(hub, figures.procedure) : null) ?? 'named', figures };
    },
  };
}

const causeNamedOnBypassRule = namedWhere('bypassed');
const causeNamedIsolatedRule = namedWhere('isolated');

function namedFigures({ job, words }: RuleInput, hub: Hub) {
  const repair = REPAIR_IDS.find((id) => id === words.repairToDo);
  const { causes } = adviceFor(job, hub);
  const cause = causes.find(({ id }) => repairFor(id) === repair);
  const { sheet, facts } = job;
  return {
    repair: repair ?? null,
    cause: cause?.id ?? null,
    causeFraction: cause?.probability ?? null,
    procedure: repair === undefined ? null : repairWay(repair, { sheet, place: facts.place }).procedure,
  };
}

/** Standard uncertainty of a gauge at the valve that nobody names, in parts of its reading's span: judgement. */
const PANEL_GAUGE_FRACTION = 0.01;

function axisOf(
  id: CheckId,
  of: { readonly facts: ValveFacts; readonly readings: Readonly<Record<string, Reading>> },
): OnAxis | null {
  const asked = CHECK_READINGS[id];
  if (asked === undefined) return null;
  const reads: Record<string, Reads[string]> = {};
  for (const { name } of asked.asks) {
    const reading = of.readings[name];
    if (reading === undefined) return null;
    reads[name] = { value: reading.valueSi, sigma: sigmaOf(reading, of.facts) };
  }
  const onAxis = asked.onAxis(of.facts, reads);
  return onAxis === null || !Number.isFinite(onAxis.value) ? null : onAxis;
}

function sigmaOf({ field, uncertaintySi, valueSi }: Reading, { numbers }: ValveFacts): number {
  if (uncertaintySi !== null) return uncertaintySi / 2;
  if (field.endsWith('M')) return PANEL_GAUGE_FRACTION * numbers.travelM;
  const spanPa = Math.max(numbers.signalHighPa, Math.abs(valueSi));
  return field.endsWith('Pa') ? PANEL_GAUGE_FRACTION * spanPa : 0;
}

/** The word into whose band a number falls; beyond all of them the nearest. */
function bandOf(measured: Measured | undefined, value: number): string | undefined {
  if (measured === undefined) return undefined;
  const bands = Object.entries(measured.bands);
  const within = bands.find(([, [low, high]]) => value >= low && value <= high);
  const nearest = bands.toSorted(([, a], [, b]) => distance(value, a) - distance(value, b))[0];
  return (within ?? nearest)?.[0];
}

function distance(value: number, [low, high]: readonly [number, number]): number {
  return Math.max(low - value, value - high, 0);
}

/** Who or what gave the answer: the same again is no second witness. */
function gaugeOf({ readings }: RuleInput): Figures[string] {
  const named = Object.values(readings).flatMap(({ gauge }) => gauge ?? []);
  const gauge = named.join(' ');
  return gauge === HEARSAY ? '' : gauge;
}

function refused(title: string, why: string): Refusal {
  const next = 'Choose another check, or a way on.';
  return new Refusal({
    kind: 'unreadable',
    code: 'TRB-001',
    what: `${title}: ${why}`,
    kept: 'Nothing was counted.',
    next,
    fields: { hubChoice: `${why} ${next}` },
  });
}

function neither(title: string): Refusal {
  const next =
    'Choose what was seen, or write every number that is asked; "cannot tell" and "skip" are answers too.';
  return new Refusal({
    kind: 'unreadable',
    code: 'TRB-002',
    what: `${title}: neither a word nor a whole reading.`,
    kept: 'What you typed is still there; nothing was counted.',
    next,
    fields: { found: next },
  });
}

function nothingSaid(): Refusal {
  const next = 'Choose what the operator says, or write a number with its unit.';
  return new Refusal({
    kind: 'unreadable',
    code: 'TRB-004',
    what: 'Neither a complaint nor a number was written.',
    kept: 'Nothing was counted.',
    next,
    fields: { symptom: next },
  });
}

function noTable(): Refusal {
  const next = 'Choose the file or paste the table; "cannot tell" and "skip" are answers too.';
  return new Refusal({
    kind: 'unreadable',
    code: 'TRB-003',
    what: 'No table was given.',
    kept: 'Nothing was counted.',
    next,
    fields: { loopRecord: `No table was given. ${next}` },
  });
}

/** The names of the rules of this procedure. */
export const FAULT_RULE_NAMES = [
  'firstLine',
  'hubInService',
  'hubOnBypass',
  'hubIsolated',
  'faultCheck',
  'faultMended',
  'gaugeFitted',
  'causeNamed',
  'causeNamedOnBypass',
  'causeNamedIsolated',
] as const;

/** The rules of this procedure by their names. */
export const FAULT_RULES = {
  firstLine: firstLineRule,
  hubInService: hubInServiceRule,
  hubOnBypass: hubOnBypassRule,
  hubIsolated: hubIsolatedRule,
  faultCheck: checkRule,
  faultMended: mendedRule,
  gaugeFitted: gaugeFittedRule,
  causeNamed: causeNamedRule,
  causeNamedOnBypass: causeNamedOnBypassRule,
  causeNamedIsolated: causeNamedIsolatedRule,
} as const satisfies Readonly<Record<(typeof FAULT_RULE_NAMES)[number], Rule>>;
