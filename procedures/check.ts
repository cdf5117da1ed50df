import { leavesOf, needsOf } from '../safety/action-classes.ts';
import { type ConditionId, ENERGY_IDS } from '../safety/conditions.ts';
import { sayFinding } from '../safety/proof.ts';
import type { Compiled } from './compile.ts';
import { everyFacts } from './facts.ts';
import { forValve } from './for-valve.ts';
import { controlFaults, energyFaults } from './lint/energy-control.ts';
import { oneGoFaults } from './lint/one-go.ts';
import { pointFaults, startFaults } from './lint/points.ts';
import { sentenceFaults } from './lint/sentences.ts';
import { isVerb } from './lint/verbs.ts';
import { wordFaults } from './lint/words.ts';
import { isFigureName } from './quantities.ts';
import { RULES } from './rules/registry.ts';
import { placeholdersIn } from './say.ts';
import type { Definition, HoldStep, OpenStep, Step } from './vocabulary.ts';
import { waysOf } from './ways.ts';

/** Acts that can hurt: a text that tells them needs an action class, from which its needs follow. */
const HURTING = /\b(undo|loosen|lift|turn|open|wind|unscrew|slacken|back off|break)\b/i;
const VAGUE = /\b(about|adequate|sufficient|appropriate|as needed|if necessary)\b/i;
const BARE_NUMBER = /\d/;

/** What is wrong with a definition, one sentence each: a definition with any is not served. */
export function faultsOf(compiled: Compiled): readonly string[] {
  const { definition } = compiled;
  const shape = everyWording(definition).flatMap((worded) =>
    Object.entries(worded.steps).flatMap(([id, step]) =>
      worded !== definition && step === definition.steps[id]
        ? []
        : stepFaults(id, { step, definition: worded }),
    ),
  );
  return [
    ...controlFaults(definition),
    ...startFaults(definition),
    ...takenOverFaults(definition),
    ...new Set(shape),
    ...proofFaults(compiled),
  ];
}

/** A card is written as carefully in its other words: both wordings are read. */
function everyWording(definition: Definition): readonly Definition[] {
  const [facts] = everyFacts([]);
  if (facts === undefined) return [definition];
  const onCylinder = forValve(definition, { ...facts, actuator: 'piston' });
  return onCylinder === definition ? [definition] : [definition, onCylinder];
}

function proofFaults({ definition, proofs }: Compiled): readonly string[] {
  const all = [...proofs.values()];
  const sentences = all.flatMap(({ findings }) =>
    findings.filter((one) => one.rule !== 'unreachable').map(sayFinding),
  );
  // A step for the bench is out of reach in the line: it is lost only where no facts lead to it.
  const lost = Object.keys(definition.steps).filter((step) => !all.some(({ reach }) => reach.has(step)));
  return [...new Set([...sentences, ...lost.map((step) => `unreachable at ${step}`)])];
}

function takenOverFaults({ takesOver = {}, steps }: Definition): readonly string[] {
  return Object.entries(takesOver).flatMap(([as, { at }]) =>
    steps[at] === undefined ? [`taken over as ${as}: there is no step ${at}`] : [],
  );
}

/** The answer goes along to the page on which the next procedure is opened: only a question has one that can. */
function handingWayFaults(
  id: string,
  { step, definition }: { readonly step: OpenStep; readonly definition: Definition },
): readonly string[] {
  const ends = waysOf(step)
    .flatMap(({ way }) => (typeof way.to === 'string' ? [way.to] : Object.values(way.to.ways)))
    .filter((to) => definition.steps[to]?.kind === 'end' && !isPlainEnd(definition.steps[to]));
  return step.kind === 'question' ? [] : ends.map((to) => `${id}: only a question hands on, as ${to} does`);
}

function stepFaults(
  id: string,
  { step, definition }: { readonly step: Step; readonly definition: Definition },
): readonly string[] {
  if (step.kind === 'end') return phaseFault(id, { phase: step.phase, definition });
  return [
    ...phaseFault(id, { phase: step.phase, definition }),
    ...targetFaults(id, { step, definition }),
    ...handingWayFaults(id, { step, definition }),
    ...textFaults(id, step),
    ...ruleFaults(id, step),
    ...leavesFaults(id, step),
    ...energyFaults(id, step),
    ...wordFaults(id, step),
    ...(step.kind === 'hold' ? holdFaults(id, { step, definition }) : []),
    ...pointFaults(id, step),
    ...oneGoFaults(id, { step, definition }),
    ...sentenceFaults(id, step),
    ...(definition.safe.includes(step.makeSafe) || isPlainEnd(definition.steps[step.makeSafe])
      ? []
      : [`${id}: making safe leads to ${step.makeSafe}, which is no safe step`]),
  ];
}

/** Making safe never ends where another procedure has to be opened first. */
function isPlainEnd(step: Step | undefined): boolean {
  return step?.kind === 'end' && step.handsOver === undefined;
}

function phaseFault(
  id: string,
  { phase, definition }: { readonly phase: string; readonly definition: Definition },
): readonly string[] {
  return definition.phases.some((one) => one.id === phase) ? [] : [`${id}: there is no phase ${phase}`];
}

function targetFaults(
  id: string,
  { step, definition }: { readonly step: OpenStep; readonly definition: Definition },
): readonly string[] {
  const targets = waysOf(step).flatMap(({ way }) =>
    typeof way.to === 'string' ? [way.to] : Object.values(way.to.ways),
  );
  return targets
    .filter((to) => definition.steps[to] === undefined)
    .map((to) => `${id}: there is no step ${to}`);
}

/** Every text of a step that a person reads. */
export function textsOf(step: OpenStep): readonly string[] {
  const caution =
    step.caution === undefined ? [] : [step.caution.hazard, step.caution.consequence, step.caution.avoid];
  const lines = 'do' in step ? (step.do ?? []) : [];
  const labels = step.kind === 'reading' ? step.asks.map((field) => field.label) : [];
  const choices = step.kind === 'question' ? Object.values(step.choices).map((choice) => choice.label) : [];
  const criterion = step.kind === 'hold' ? [step.criterion] : [];
  return [
    step.title,
    step.how ?? '',
    step.why ?? '',
    ...caution,
    ...lines,
    ...labels,
    ...choices,
    ...criterion,
  ].filter((text) => text !== '');
}

function textFaults(id: string, step: OpenStep): readonly string[] {
  const lines = 'do' in step ? (step.do ?? []) : [];
  const acts = [step.title, ...lines];
  const unclassed =
    step.action === undefined && step.kind !== 'hold' && step.kind !== 'question'
      ? acts.filter((text) => HURTING.test(text))
      : [];
  return [
    ...unclassed.map((text) => `${id}: "${text}" needs an action class`),
    ...textsOf(step).flatMap((text) =>
      placeholdersIn(text)
        .filter((name) => !isFigureName(name))
        .map((name) => `${id}: there is no figure {${name}}`),
    ),
    ...textsOf(step)
      .filter((text) => BARE_NUMBER.test(text))
      .map((text) => `${id}: a bare number in "${text}"`),
    ...textsOf(step)
      .filter((text) => VAGUE.test(text))
      .map((text) => `${id}: a vague word in "${text}"`),
    ...lines
      .filter((line) => !isVerb(line.split(' ')[0] ?? ''))
      .map((line) => `${id}: "${line}" does not begin with a verb of the list`),
  ];
}

/** What an act itself makes worse must stand on every answer to it; a stop leads to a step that vents or locks. */
function leavesFaults(id: string, step: OpenStep): readonly string[] {
  if (step.action === undefined) return [];
  const left = Object.entries(leavesOf(step.action));
  return waysOf(step)
    .filter(({ event, outcome }) => event !== 'STOP' && outcome !== 'above limit')
    .flatMap(({ outcome, way }) => {
      const sets: Readonly<Record<string, unknown>> = way.sets ?? {};
      return left
        .filter(([condition, state]) => sets[condition] !== state)
        .map(([condition, state]) => `${id}: after "${outcome ?? 'done'}" ${condition} is ${state}`);
    });
}

/** What a signer must be shown: every energy before work, what hands can meet before a valve leaves. */
function holdFaults(
  id: string,
  { step, definition }: { readonly step: HoldStep<string>; readonly definition: Definition },
): readonly string[] {
  const named = step.allows.flatMap((action) => Object.keys(needsOf(action)) as ConditionId[]);
  const leaves = typeof step.signed.to === 'string' && definition.steps[step.signed.to]?.kind === 'end';
  const needed = new Set<ConditionId>([
    ...(step.signed.sets?.workSignOff === 'given' ? ENERGY_IDS : []),
    ...named.filter((condition) => ENERGY_IDS.includes(condition)),
    ...(leaves ? (['signalAir', 'spring'] as const) : []),
  ]);
  return [...needed]
    .filter((condition) => !step.evidence.includes(condition))
    .map((condition) => `${id}: the signer is not shown ${condition}`);
}

function ruleFaults(id: string, step: OpenStep): readonly string[] {
  if (step.kind !== 'reading' && step.kind !== 'table' && step.kind !== 'judgement') return [];
  const rule = RULES[step.judge.rule];
  const limited =
    step.kind === 'table' ||
    (step.kind === 'reading' &&
      step.asks.some((field) => field.type === 'quantity' && (field.onCase || field.most !== undefined)));
  const given = { ...(step.judge.with ?? {}), ...(step.kind === 'table' ? { rows: '' } : {}) };
  const needed = [
    ...rule.outcomes.filter((outcome) => outcome !== 'above limit'),
    ...(limited ? ['above limit'] : []),
  ];
  return [
    ...needed
      .filter((outcome) => step.ways[outcome] === undefined)
      .map((outcome) => `${id}: no way for "${outcome}"`),
    ...Object.keys(step.ways)
      .filter((outcome) => !needed.includes(outcome))
      .map((outcome) => `${id}: nothing gives "${outcome}"`),
    ...rule.params
      .filter((name) => given[name as keyof typeof given] === undefined)
      .map((name) => `${id}: rule ${step.judge.rule} wants ${name}`),
  ];
}
