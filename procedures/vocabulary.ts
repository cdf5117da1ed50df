import type { ActionClass } from '../safety/action-classes.ts';
import type { ConditionId, StateOf } from '../safety/conditions.ts';
import type { Dimension } from './calculations/unit-table.ts';
import type { FactName, Facts, WhenFact } from './facts.ts';
import type { Json } from './json.ts';
import type { FigureName } from './quantities.ts';
import type { RuleName } from './rules/registry.ts';
import type { GearRole } from './test-gear/roles.ts';

/** A signal word as ANSI Z535 means it; `notice` is about damage only. */
export type SignalWord = 'danger' | 'warning' | 'caution' | 'notice';

/** Line drawings that a card may show: a relay in section, a flapper against the light, tie rods in their order. */
export type PictureName = 'relay' | 'flapper' | 'tieRods';

/** Stands directly above what it guards, and holds no instruction of its own beyond how to avoid. */
export interface Caution {
  readonly word: SignalWord;
  readonly hazard: string;
  readonly consequence: string;
  readonly avoid: string;
}

/** A state that an answer sets: fixed, or what the person chose in a field, among the states named. */
export type Sets = {
  readonly [C in ConditionId]?: StateOf<C> | { readonly from: string; readonly among: readonly StateOf<C>[] };
};

/** Where a way leads: to a step, or to one of several by a fact pinned at opening. */
export type Target<Id extends string> = Id | ByFact<Id>;

export interface ByFact<Id extends string> {
  readonly by: FactName;
  readonly ways: Readonly<Record<string, Id>>;
}

export interface Way<Id extends string> {
  readonly to: Target<Id>;
  readonly sets?: Sets;
}

interface FieldBase {
  /** The same spelling in form, JSON, log and template. */
  readonly name: string;
  readonly label: string;
  readonly optional?: true;
  /** A reading of this name that the job already has stands where the field is left blank. */
  readonly carried?: true;
  readonly when?: WhenFact;
}

export interface QuantityField extends FieldBase {
  readonly type: 'quantity';
  /** `travel` is read in percent of the scale or as a length. */
  readonly dimension: Dimension | 'travel';
  /** The gauge that is read, unless another is named with the reading. */
  readonly gauge?: GearRole;
  /** Pressure that stands on the actuator case: held against the limit of test air. */
  readonly onCase?: true;
  /** The most that may be read here: more gives the outcome 'above limit', as with the air on a case. */
  readonly most?: FigureName;
  /** A value that is hoped for, shown beside the field. */
  readonly wanted?: FigureName;
}

export interface ChoiceField extends FieldBase {
  readonly type: 'choice';
  readonly choices: readonly {
    readonly value: string;
    readonly label: string;
    /** Offered only where the fact stands so. */
    readonly when?: WhenFact;
  }[];
}

export interface TextField extends FieldBase {
  readonly type: 'text';
  /** The text must be this tag, read off the label: the right component, confirmed. */
  readonly mustBe?: FigureName;
}

/** A table that is uploaded or pasted, and kept in the log as it came. */
export interface CsvField extends FieldBase {
  readonly type: 'csv';
  readonly of: 'loop record';
}

export type Field = QuantityField | ChoiceField | TextField | CsvField;

/** Names a rule and gives its parameters; its outcome names the way on. */
export interface Judge {
  readonly rule: RuleName;
  readonly with?: Readonly<Record<string, string>>;
}

/** Other words for a card; what it does, asks and records stays as it is. */
export interface OtherWords {
  readonly title?: string;
  readonly how?: string;
  readonly why?: string;
  readonly do?: readonly string[];
  readonly shows?: readonly FigureName[];
  readonly criterion?: string;
  /** By field. */
  readonly labels?: Readonly<Record<string, string>>;
  /** By choice of a question. */
  readonly choices?: Readonly<Record<string, string>>;
  readonly caution?: { readonly hazard: string; readonly consequence: string; readonly avoid: string };
}

interface StepBase<Id extends string> {
  readonly phase: string;
  readonly title: string;
  /** One line on how. */
  readonly how?: string;
  /** Why this step. */
  readonly why?: string;
  readonly caution?: Caution;
  readonly action?: ActionClass;
  /** A drawing that belongs on the card, where people would rather look than read. */
  readonly picture?: PictureName;
  /** Numbers of this valve that belong on the card. */
  readonly shows?: readonly FigureName[];
  /** What the card says where the actuator is a cylinder. */
  readonly onCylinder?: OtherWords;
  /** Where "make safe and stop" leads from here; no guard may block it. */
  readonly makeSafe: Id;
}

export interface InstructionStep<Id extends string> extends StepBase<Id> {
  readonly kind: 'instruction';
  /** One action a line, verb first. */
  readonly do: readonly string[];
  readonly next: Way<Id>;
}

export interface ReadingStep<Id extends string> extends StepBase<Id> {
  readonly kind: 'reading';
  readonly do?: readonly string[];
  readonly asks: readonly Field[];
  /** Done in one go with the plain cards beside it, and entered with them where all of it is as it should be. */
  readonly oneGo?: true;
  readonly judge: Judge;
  readonly ways: Readonly<Record<string, Way<Id>>>;
}

/** A row of a table: one setting of the signal, approached from one side. */
export interface RowPlan {
  readonly percent: number;
  readonly direction: 'up' | 'down';
  readonly cycle: number;
}

export interface TableStep<Id extends string> extends StepBase<Id> {
  readonly kind: 'table';
  readonly rows: readonly RowPlan[];
  readonly judge: Judge;
  readonly ways: Readonly<Record<string, Way<Id>>>;
}

export interface Choice<Id extends string> extends Way<Id> {
  readonly label: string;
  /** A choice that departs from the sheet wants its reason written. */
  readonly reason?: true;
  /** Offered only where the fact stands so. */
  readonly when?: WhenFact;
  /** The procedure that fits next, by its id: named as the job closes, and in its record. */
  readonly comesNext?: string;
}

export interface QuestionStep<Id extends string> extends StepBase<Id> {
  readonly kind: 'question';
  readonly choices: Readonly<Record<string, Choice<Id>>>;
}

/**
 * A hold stops work until it is signed. A witness is told and may come; once the notice is over, work may go on
 * without them. A review is looked at while work goes on, and the job does not close before.
 */
export type PointKind = 'hold' | 'witness' | 'review';

export interface HoldStep<Id extends string> extends StepBase<Id> {
  readonly kind: 'hold';
  /** Written here, before the job begins; a live job cannot change it. */
  readonly point: PointKind;
  /** What must be so for the signer to accept it: a number or a quality. */
  readonly criterion: string;
  /** How long a witness has to come, from when the card was reached. */
  readonly noticeS?: number;
  /** Ids of the people who alone may sign it, where the site names them. */
  readonly named?: readonly string[];
  /** Role that may waive it, with a reason; never where it stands for an isolation. */
  readonly waivedBy?: string;
  /** Energies whose reading a second person must have read again before it is signed. */
  readonly readTwice?: readonly ConditionId[];
  /** The energies and records whose evidence the signer is shown. */
  readonly evidence: readonly ConditionId[];
  /** What the signature allows. */
  readonly allows: readonly ActionClass[];
  readonly signed: Way<Id>;
  readonly sentBack: Way<Id>;
}

export interface WaitStep<Id extends string> extends StepBase<Id> {
  readonly kind: 'wait';
  readonly waitS: number;
  /** The wait runs from the newest answer to this step, so that other work may fill it; else from arriving here. */
  readonly since?: Id;
  readonly next: Way<Id>;
}

export interface JudgementStep<Id extends string> extends StepBase<Id> {
  readonly kind: 'judgement';
  readonly judge: Judge;
  readonly ways: Readonly<Record<string, Way<Id>>>;
}

export interface EndStep {
  readonly kind: 'end';
  readonly phase: string;
  readonly title: string;
  /** How the job closes: work done, stopped, or going on in another procedure with everything as it stands. */
  readonly closes: 'done' | 'stopped' | 'handed over';
  /** Which procedure goes on, and by which of the beginnings that it takes over at. */
  readonly handsOver?: { readonly procedure: string; readonly as: string };
}

/** How another procedure may go on in this one: at which step, and how what it left may stand there. */
export interface TakesOver<Id extends string> {
  readonly at: Id;
  /** Facts under which alone it is taken over; left out: wherever the procedure is done. */
  readonly onlyWhere?: Partial<Facts>;
  /** States that may be met; a condition that is not named stands as at an opening. */
  readonly standing: Standing;
  /** What is met instead where the facts stand so; the last that fits counts. */
  readonly where?: readonly { readonly facts: Partial<Facts>; readonly standing: Standing }[];
}

export type Standing = { readonly [C in ConditionId]?: readonly StateOf<C>[] };

export type OpenStep<Id extends string = string> =
  | InstructionStep<Id>
  | ReadingStep<Id>
  | TableStep<Id>
  | QuestionStep<Id>
  | HoldStep<Id>
  | WaitStep<Id>
  | JudgementStep<Id>;

export type Step<Id extends string = string> = OpenStep<Id> | EndStep;

export interface Revision {
  readonly letter: string;
  readonly date: string;
  /** What a technician must now do differently. */
  readonly change: string;
}

/** What an energy control procedure states before anybody follows it (29 CFR 1910.147(c)(4)(ii)(A) to (D)). */
export interface EnergyControl {
  readonly use: string;
  /** How it is shut down, isolated, blocked and secured. */
  readonly isolation: string;
  /** Who hangs, removes and hands over locks and tags, and how. */
  readonly locks: string;
  /** How the isolation is tried. */
  readonly verification: string;
}

export interface Definition<Id extends string = string> {
  readonly id: string;
  readonly title: string;
  readonly energyControl: EnergyControl;
  readonly revisions: readonly Revision[];
  /** Who tried this very revision on a real job without having written it, and when. */
  readonly tried?: { readonly letter: string; readonly by: string; readonly on: string };
  /** Phases in the order of the job scale. */
  readonly phases: readonly { readonly id: string; readonly title: string }[];
  readonly start: Id;
  /** Facts that its steps were cut to: it is done nowhere else, and hands a valve on only so. */
  readonly onlyWhere?: Partial<Facts>;
  readonly takesOver?: Readonly<Record<string, TakesOver<Id>>>;
  /** Steps from which nothing more must be done to be safe. */
  readonly safe: readonly Id[];
  readonly steps: Readonly<Record<Id, Step<Id>>>;
}

/**
 * A procedure as data: no functions inside, so that it can be stored by its hash, printed and proved.
 * A way that names a step which does not exist does not compile.
 */
export function procedure<Id extends string>(definition: {
  readonly id: string;
  readonly title: string;
  readonly energyControl: EnergyControl;
  readonly revisions: readonly Revision[];
  readonly tried?: NonNullable<Definition['tried']>;
  readonly phases: readonly { readonly id: string; readonly title: string }[];
  readonly start: NoInfer<Id>;
  readonly onlyWhere?: Partial<Facts>;
  readonly takesOver?: Readonly<Record<string, TakesOver<NoInfer<Id>>>>;
  readonly safe: readonly NoInfer<Id>[];
  readonly steps: Readonly<Record<Id, Step<NoInfer<Id>>>>;
}): Definition<Id> {
  return definition;
}

/** A definition is plain data; this says so to the type checker. */
export function asJson(definition: Definition): Json {
  return definition as unknown as Json;
}

export function revisionOf(definition: Definition): string {
  return definition.revisions.at(-1)?.letter ?? '';
}

/** What everybody who works by a procedure reads until somebody has tried this very revision. */
export function sayTried(definition: Definition): string {
  const { tried } = definition;
  const letter = revisionOf(definition);
  return tried?.letter === letter
    ? `Revision ${letter} was tried on a job by ${tried.by} on ${tried.on}.`
    : `Revision ${letter} has not been tried on a real job yet by somebody who did not write it.`;
}
