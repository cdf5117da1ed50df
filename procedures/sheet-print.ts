import { ACTION_CLASSES, type ActionClass, type ActionClassRow, needsOf } from '../safety/action-classes.ts';
import { CONDITIONS, type ConditionId } from '../safety/conditions.ts';
import type { WhenFact } from './facts.ts';
import { GEAR_ROLES } from './test-gear/roles.ts';
import type {
  Caution,
  Definition,
  EndStep,
  Field,
  OpenStep,
  OtherWords,
  PictureName,
  Standing,
  Step,
  Target,
} from './vocabulary.ts';
import { waysOf } from './ways.ts';

/**
 * A definition as a sheet in Markdown, for people who review it: every text with its quantities by name, every
 * step by number, and behind each way where it leads and what it records. Pure: the same definition prints the same.
 *
 * @example printSheet(strokeCheck).startsWith('# Stroke check and plug adjustment') // true
 */
export function printSheet(definition: Definition): string {
  const numbers = numbered(definition);
  const phases = definition.phases.flatMap(({ id, title }) => [
    `## ${title}`,
    ...[...numbers.keys()].filter((step) => definition.steps[step]?.phase === id).map(printed),
  ]);
  return `${[...headOf(definition), ...phases].join('\n\n')}\n`;

  function printed(id: string): string {
    return stepLines(id, { definition, numbers }).join('\n');
  }
}

type Numbers = ReadonlyMap<string, number>;

/** Steps get their numbers phase by phase, in the order in which they are written. */
export function numbered({ phases, steps }: Pick<Definition, 'phases' | 'steps'>): Numbers {
  const order = phases.flatMap(({ id }) => Object.keys(steps).filter((step) => steps[step]?.phase === id));
  return new Map(order.map((step, index) => [step, index + 1]));
}

function headOf({ id, title, revisions, phases, energyControl }: Definition): readonly string[] {
  return [
    `# ${title}`,
    `Procedure \`${id}\`. Names in braces are numbers of the valve, put in from its sheet. Local codes, the site's permit and lockout system and the maker's manual come first.`,
    revisions.map((one) => `- Revision ${one.letter}, ${one.date}: ${one.change}`).join('\n'),
    [
      `- For: ${energyControl.use}`,
      `- Isolated by: ${energyControl.isolation}`,
      `- Locks and tags: ${energyControl.locks}`,
      `- Tried by: ${energyControl.verification}`,
    ].join('\n'),
    `Phases: ${phases.map((phase) => phase.title).join(', ')}.`,
  ];
}

export interface PrintedStep {
  readonly id: string;
  readonly number: number;
  readonly title: string;
  readonly phase: string;
  readonly isHold: boolean;
  /** What the sheet says of it, one fact a line, without markup. */
  readonly lines: readonly string[];
}

/** The steps as the sheet prints them, for a page. @example printedSteps(strokeCheck)[0]?.number // 1 */
export function printedSteps(definition: Definition): readonly PrintedStep[] {
  const numbers = numbered(definition);
  return [...numbers].flatMap(([id, number]) => {
    const step = definition.steps[id];
    if (step === undefined) return [];
    const lines = stepLines(id, { definition, numbers }).slice(2);
    const bare = lines.map((line) => line.replace(/^- /, '').replaceAll(/\*\*|`/g, ''));
    return [{ id, number, title: step.title, phase: step.phase, isHold: step.kind === 'hold', lines: bare }];
  });
}

function stepLines(
  id: string,
  { definition, numbers }: { readonly definition: Definition; readonly numbers: Numbers },
): readonly string[] {
  const step = definition.steps[id] as Step;
  const head = [`### ${numbers.get(id)}. ${step.title}`, ''];
  if (step.kind === 'end') return [...head, endLine(step)];
  return [
    ...head,
    `- ${step.kind === 'hold' ? step.point.toUpperCase() : KINDS[step.kind]}${waitWords(step, numbers)}, \`${id}\``,
    ...takenOverLines(id, definition),
    ...cautionLines(step.caution),
    ...actionLines(step.action),
    ...(step.how === undefined ? [] : [`- How: ${step.how}`]),
    ...(step.why === undefined ? [] : [`- Why: ${step.why}`]),
    ...(step.picture === undefined ? [] : [`- Drawn on the card: ${PICTURES[step.picture]}`]),
    ...('do' in step ? (step.do ?? []).map((line) => `- Do: ${line}`) : []),
    ...(step.shows === undefined ? [] : [`- Shows: ${step.shows.map((name) => `{${name}}`).join(', ')}`]),
    ...askLines(step),
    ...(step.kind === 'reading' && step.oneGo === true
      ? ['- Entered in one go with the plain cards beside it, where all of it is as it should be']
      : []),
    ...holdLines(step),
    ...cylinderLines(step.onCylinder),
    ...wayLines(step, numbers),
  ];
}

/** What the card says instead where the actuator is a cylinder. */
function cylinderLines(words: OtherWords | undefined): readonly string[] {
  if (words === undefined) return [];
  const { title, how, why, do: acts, shows, criterion, labels = {}, choices = {}, caution } = words;
  const said = [
    ...(title === undefined ? [] : [title]),
    ...(caution === undefined ? [] : [`Caution: ${caution.hazard} ${caution.consequence} ${caution.avoid}`]),
    ...(how === undefined ? [] : [`How: ${how}`]),
    ...(why === undefined ? [] : [`Why: ${why}`]),
    ...(acts ?? []).map((line) => `Do: ${line}`),
    ...(shows === undefined ? [] : [`Shows: ${shows.map((name) => `{${name}}`).join(', ')}`]),
    ...Object.entries(labels).map(([field, label]) => `Asks: ${label} \`${field}\``),
    ...(criterion === undefined ? [] : [`Acceptable when: ${criterion}`]),
    ...Object.values(choices).map((label) => `Choice: ${label}`),
  ];
  return said.map((line) => `- On a cylinder: ${line}`);
}

function takenOverLines(id: string, { takesOver = {} }: Definition): readonly string[] {
  return Object.entries(takesOver)
    .filter(([, { at }]) => at === id)
    .flatMap(([as, { onlyWhere = {}, standing, where = [] }]) => [
      `- Begins here where it is taken over, ${[as, ...Object.values(onlyWhere)].join(', ')}: ${standingWords(standing)}`,
      ...where.map(
        (one) => `- There with ${Object.values(one.facts).join(', ')}: ${standingWords(one.standing)}`,
      ),
    ]);
}

function standingWords(standing: Standing): string {
  const states = Object.entries(standing).map(
    ([condition, named]) => `${CONDITIONS[condition as ConditionId].name} ${named.join(' or ')}`,
  );
  return states.join('; ');
}

function endLine({ closes, handsOver }: EndStep): string {
  const on = handsOver === undefined ? '' : ` to \`${handsOver.procedure}\`, ${handsOver.as}, as it stands`;
  return `- End: the job closes as ${closes}${on}.`;
}

function waitWords(step: OpenStep, numbers: Numbers): string {
  if (step.kind !== 'wait') return '';
  return `, ${step.waitS} s${step.since === undefined ? '' : ` from step ${numbers.get(step.since)}`}`;
}

const PICTURES: Readonly<Record<PictureName, string>> = {
  relay: 'a relay in section, with plunger, restriction, nozzle, flapper and the gauge that answers',
  flapper: 'a flapper against the light, square and not square',
  tieRods: 'the tie rods from above, numbered in the order of tightening',
};

const KINDS: Readonly<Record<Exclude<OpenStep['kind'], 'hold'>, string>> = {
  instruction: 'Instruction',
  reading: 'Reading',
  table: 'Table of readings',
  question: 'Question',
  wait: 'Timed wait',
  judgement: 'Judgement',
};

function cautionLines(caution: Caution | undefined): readonly string[] {
  if (caution === undefined) return [];
  const { word, hazard, consequence, avoid } = caution;
  return [`- **${word.toUpperCase()}:** ${hazard} ${consequence} ${avoid}`];
}

function actionLines(action: ActionClass | undefined): readonly string[] {
  if (action === undefined) return [];
  const { name, danger, source, electricalRule }: ActionClassRow = ACTION_CLASSES[action];
  const needs = Object.entries(needsOf(action)).map(
    ([id, states]) => `${nameOf(id)} ${(states as readonly string[]).join(' or ')}`,
  );
  return [
    `- Action: ${name}. ${danger} (${source})`,
    ...(electricalRule === undefined ? [] : [`- Electrical work by: ${electricalRule}`]),
    `- Only with: ${needs.length === 0 ? 'nothing; it is never held back' : needs.join('; ')}`,
  ];
}

function nameOf(condition: string): string {
  return CONDITIONS[condition as ConditionId].name;
}

function askLines(step: OpenStep): readonly string[] {
  const rows =
    step.kind === 'table'
      ? [`- Rows: ${step.rows.map((row) => `${row.percent} % ${row.direction}`).join(', ')}`]
      : [];
  const asks = step.kind === 'reading' ? step.asks.map((field) => `- Asks: ${asked(field)}`) : [];
  return [...rows, ...asks, ...judgeLines(step)];
}

function asked(field: Field): string {
  const marks = [
    kindOf(field),
    ...(field.optional ? ['may be left blank'] : []),
    ...(field.carried ? ['known from before, where left blank'] : []),
    ...(field.when === undefined ? [] : [`only where ${factWords(field.when)}`]),
  ];
  return `${field.label} \`${field.name}\` (${marks.join('; ')})`;
}

function kindOf(field: Field): string {
  if (field.type === 'choice')
    return field.choices
      .map(({ label, when }) => (when === undefined ? label : `${label} (where ${factWords(when)})`))
      .join(' / ');
  if (field.type === 'csv') return 'a table, uploaded or pasted';
  if (field.type === 'text') return field.mustBe === undefined ? 'text' : `must be {${field.mustBe}}`;
  const gauge = field.gauge === undefined ? '' : `, on: ${GEAR_ROLES[field.gauge].label}`;
  const most = field.onCase ? 'testAirLimit' : field.most;
  const limit = most === undefined ? '' : `, at most {${most}}`;
  return `${field.dimension}${gauge}${limit}${field.wanted === undefined ? '' : `, wanted {${field.wanted}}`}`;
}

/** @example factWords({ fact: 'actuator', is: 'piston' }) // 'actuator is piston' */
function factWords({ fact, is }: WhenFact): string {
  return `${fact} is ${[is].flat().join(' or ')}`;
}

function judgeLines(step: OpenStep): readonly string[] {
  if (!('judge' in step)) return [];
  const params = Object.entries(step.judge.with ?? {}).map(([name, value]) => `${name}: ${value}`);
  return [`- Rule: \`${step.judge.rule}\`${params.length === 0 ? '' : ` (${params.join('; ')})`}`];
}

function holdLines(step: OpenStep): readonly string[] {
  if (step.kind !== 'hold') return [];
  const work = step.allows.map((action) => ACTION_CLASSES[action].name);
  const notice = step.noticeS === undefined ? '' : `; notice of ${step.noticeS} s`;
  const nothing = step.point === 'hold' ? 'nothing more; the work ends' : 'nothing more than before';
  return [
    `- Kind of point: ${step.point}${notice}`,
    `- Acceptable when: ${step.criterion}`,
    ...(step.readTwice === undefined
      ? []
      : [`- Read again by a second person: ${step.readTwice.map(nameOf).join(', ')}`]),
    ...(step.named === undefined ? [] : [`- Signed only by: ${step.named.join(', ')}`]),
    ...(step.waivedBy === undefined ? [] : [`- May be waived by: ${step.waivedBy}`]),
    ...(step.evidence.length === 0 ? [] : [`- The signer is shown: ${step.evidence.map(nameOf).join(', ')}`]),
    `- The signature allows: ${work.length === 0 ? nothing : work.join(', ')}`,
  ];
}

const EVENTS = {
  SIGN: 'Signed',
  SEND_BACK: 'Sent back',
  GO_ON: 'Gone on before it is signed',
  WAIVE: 'Waived',
  STOP: 'Make safe and stop',
  ANSWER: 'Done',
} as const;

function wayLines(step: OpenStep, numbers: Numbers): readonly string[] {
  return waysOf(step).map(({ event, outcome, way }) => {
    const label = step.kind === 'question' && outcome !== null ? step.choices[outcome]?.label : outcome;
    const choice = step.kind === 'question' ? step.choices[outcome ?? ''] : undefined;
    const only = choice?.when === undefined ? '' : ` (only where ${factWords(choice.when)})`;
    const reason = choice?.reason ? ' (with its reason)' : '';
    const sets = Object.entries(way.sets ?? {}).map(
      ([id, set]) => `${nameOf(id)} ${typeof set === 'object' ? set.among.join(' or ') : set}`,
    );
    const records = sets.length === 0 ? '' : `; records ${sets.join(', ')}`;
    return `- ${label ?? EVENTS[event]}${only}${reason}: then ${target(way.to, numbers)}${records}${nextLine(step, outcome)}`;
  });
}

function nextLine(step: OpenStep, outcome: string | null): string {
  const next = step.kind === 'question' ? step.choices[outcome ?? '']?.comesNext : undefined;
  return next === undefined ? '' : `; names \`${next}\` as the next procedure`;
}

function target(to: Target<string>, numbers: Numbers): string {
  if (typeof to === 'string') return `step ${numbers.get(to)}`;
  return Object.entries(to.ways)
    .map(([is, step]) => `step ${numbers.get(step)} where ${to.by} is ${is}`)
    .join(', ');
}
