/** What an apprentice finds at a card that is no check of the valve: who agrees, which tag, what a gauge says. */
import type { Job } from '../../job.ts';
import { FIGURES } from '../../quantities.ts';
import { asked } from '../../readings/given.ts';
import { say } from '../../say.ts';
import { findTheFault } from '../../troubleshooting/find-the-fault.ts';
import { GAUGE_FIELDS } from '../../troubleshooting/job/facts-of-job.ts';
import { valveFactsOf } from '../../troubleshooting/valve-facts.ts';
import type { ValveSheet } from '../../valve-sheet/sheet.ts';
import type { Field, QuantityField, ReadingStep } from '../../vocabulary.ts';
import { dialFor } from '../gauge.ts';
import type { SimulatedValve } from '../simulated.ts';
import type { Complaint } from './complaint.ts';
import type { Shown } from './gauges.ts';
import { type BenchEnds, benchEnds } from './on-rig.ts';

/** One thing that is found, as it would be entered. */
export interface Found {
  readonly name: string;
  readonly label: string;
  /** What the field takes: an option's value, or a text. */
  readonly entry: string;
  /** In words, with its unit. */
  readonly text: string;
}

export interface FoundOnCard {
  readonly found: readonly Found[];
  readonly shown: readonly Shown[];
  /** The card asks for a number that nothing on the bench gives: whoever practises writes one of their own. */
  readonly isOwn: boolean;
}

/** What stands before the apprentice at a card of readings. Fields that may stay blank and have nothing to say stay so. */
export function foundOnCard(
  job: Job,
  {
    step,
    complaint,
    valve,
  }: {
    readonly step: ReadingStep<string>;
    /** Where the card asks for it. */
    readonly complaint: Complaint | null;
    readonly valve: SimulatedValve;
  },
): FoundOnCard {
  const fields = step.asks.filter((field) => asked(field, job));
  if (step.judge.rule === 'benchSet') return benchSetOnCard(job, { fields, valve });
  if (!asInSearch().has(step.judge.rule)) return { found: [], shown: [], isOwn: true };
  const found = fields.flatMap((field): readonly Found[] => {
    const entry = entryFor(job, { field, complaint });
    if (entry === null) return [];
    return [{ name: field.name, label: field.label, entry, text: wordsOf(field, entry) }];
  });
  const isOwn = fields.some(
    (field) =>
      field.type === 'quantity' && field.optional !== true && !found.some(({ name }) => name === field.name),
  );
  return { found, shown: fields.flatMap((field) => shownFor(job, field)), isOwn };
}

/** Both ends of the bench set, as the simulated stem shows them on test air. */
function benchSetOnCard(
  job: Job,
  { fields, valve }: { readonly fields: readonly Field[]; readonly valve: SimulatedValve },
): FoundOnCard {
  const { units } = job.sheet;
  const ends = benchEnds(valve);
  const moves = ends.benchLowUpPa !== null && ends.benchHighUpPa !== null;
  const found = fields.flatMap((field): readonly Found[] => {
    const entry = benchSetEntry(field, { ends, moves, units });
    if (entry === null) return [];
    return [{ name: field.name, label: field.label, entry, text: wordsOf(field, entry) }];
  });
  return { found, shown: [], isOwn: false };
}

function benchSetEntry(
  { name, type }: Field,
  of: { readonly ends: BenchEnds; readonly moves: boolean; readonly units: Job['sheet']['units'] },
): string | null {
  if (name === 'moves') return of.moves ? 'yes' : 'no';
  if (name === 'plugJoined') return 'yes';
  const valueSi = Object.hasOwn(of.ends, name) ? of.ends[name as keyof BenchEnds] : null;
  if (type !== 'quantity' || valueSi === null || !of.moves) return null;
  return say({ valueSi, dimension: name === 'benchTravelM' ? 'length' : 'pressure', units: of.units });
}

/**
 * Rules of the cards that looking for a fault has: getting ready, locking, giving back. What another card judges is a
 * finding of its own, and the bench makes none up.
 */
function asInSearch(): ReadonlySet<string> {
  return new Set(
    Object.values(findTheFault.steps).flatMap((one) => (one.kind === 'reading' ? [one.judge.rule] : [])),
  );
}

function wordsOf(field: Field, entry: string): string {
  if (field.type !== 'choice') return entry;
  return field.choices.find(({ value }) => value === entry)?.label ?? entry;
}

interface Asked {
  readonly field: Field;
  readonly complaint: Complaint | null;
}

function entryFor(job: Job, { field, complaint }: Asked): string | null {
  const { units } = job.sheet;
  const told = complaint === null ? undefined : ofComplaint(field, { complaint, units });
  if (told !== undefined) return told;
  const own = ofThisValve(job.sheet)[field.name];
  if (own !== undefined) return own;
  if (GAUGE_FIELDS[field.name] !== undefined) return gaugeThere(job, field.name);
  if (field.type === 'choice') return choiceFor(field);
  if (field.type === 'text') return textFor(job, field);
  if (field.type === 'csv') return null;
  const valueSi = pressureFor(job, field);
  return valueSi === null ? null : say({ valueSi, dimension: 'pressure', units });
}

/** @returns undefined for a field that the complaint says nothing of; null where it has nothing to say */
function ofComplaint(
  { name }: Field,
  of: { readonly complaint: Complaint; readonly units: Job['sheet']['units'] },
): string | null | undefined {
  const { opening, outputPercent, signalPa } = of.complaint;
  if (name === 'symptom') return opening;
  if (name === 'outputPercent') return `${outputPercent} %`;
  if (name !== 'signalSeenPa') return undefined;
  return signalPa === null ? null : say({ valueSi: signalPa, dimension: 'pressure', units: of.units });
}

function gaugeThere(job: Job, name: string): string {
  const { gaugesFitted } = valveFactsOf(job.sheet);
  return (GAUGE_FIELDS[name] ?? []).some((point) => gaugesFitted.includes(point)) ? 'yes' : 'no';
}

/** What the sheet says that this valve has beside air and process, made safe as it should be. */
function ofThisValve(sheet: ValveSheet): Readonly<Record<string, string>> {
  const hot = sheet.heatTracing || sheet.processTemperatureC > TOUCH_C;
  return {
    ...(sheet.volumeTank ? { trappedAir: 'isolated' } : {}),
    ...(sheet.lockUp ? { lockUpAir: 'isolated' } : {}),
    ...(sheet.actuatorKind === 'piston' ? { oppositeAir: 'isolated' } : {}),
    ...(hot ? { temperature: 'safe', bodyTemperatureK: '30 °C' } : {}),
    ...(sheet.fluidHarm === 'none' ? {} : { residue: 'cleared', residueHow: 'flushed and drained' }),
    ...(sheet.electricalV === null
      ? {}
      : { electrical: 'isolated', electricalHow: 'isolated, and tested dead' }),
    ...(sheet.tripFunction
      ? { safetyFunction: 'overridden', safetyFunctionHow: 'overridden, the plant agrees' }
      : {}),
  };
}

/** Judgement: on the bench a body above this is let cool. */
const TOUCH_C = 40;

/** Fields that nothing on the bench decides: the repair to name, the gauge to fit. */
const APPRENTICE_SAYS: readonly string[] = ['repairToDo', 'gaugePoint', 'hubChoice', 'sourceKind'];
/** Where the first of the choices is not what is found. */
const FOUND_AS: Readonly<Record<string, string>> = { plantState: 'line out', method: 'gauge' };

function choiceFor(field: Extract<Field, { readonly type: 'choice' }>): string | null {
  if (APPRENTICE_SAYS.includes(field.name)) return null;
  const meant = FOUND_AS[field.name];
  const values = field.choices.map(({ value }) => value);
  return meant !== undefined && values.includes(meant) ? meant : (values[0] ?? null);
}

const TEXTS: Readonly<Record<string, string>> = {
  operator: 'the operator of the bench',
  watchedBy: 'the operator of the bench',
  takenBackBy: 'the operator of the bench',
  toldWho: 'everybody near the valve',
  airToldWho: 'everybody near the valve',
  plantAgreedWith: 'the operator of the bench',
  processBefore: '50 % of its range',
  processNow: '50 % of its range',
  loopOutput: '60 %',
  bypassPosition: 'a third open',
};

function textFor(job: Job, field: Extract<Field, { readonly type: 'text' }>): string | null {
  if (field.mustBe !== undefined) return String(FIGURES[field.mustBe].of(job) ?? '') || null;
  if (/LockNumber$/.test(field.name)) return `bench lock ${field.name.replace(/LockNumber$/, '')}`;
  if (field.optional === true) return null;
  return TEXTS[field.name] ?? 'as it should be';
}

/** Pressures of locking out and of the rig by itself; what a valve answers under air is simulated or left to whoever practises. */
const GIVEN =
  /(?:After|Zero|Again|Back|Still|Now)Pa$|^(?:rig|lastAir|held|soap|inletBefore|outletBefore|supplyBefore|secondBefore|signalBefore)/;

/** Gauges beside the valve: alive before, at zero after; air of a rig at half its range. */
function pressureFor(job: Job, field: QuantityField): number | null {
  if (field.dimension !== 'pressure' || !GIVEN.test(field.name)) return null;
  const { sheet } = job;
  if (/(?:After|Zero|Again)Pa$/.test(field.name)) return 0;
  if (field.name.startsWith('inletBefore')) return Math.max(sheet.processInletPa, 0);
  if (field.name.startsWith('outletBefore')) return Math.max(sheet.processOutletPa, 0);
  if (/^(?:supply|second)/.test(field.name)) return sheet.supplyHighPa ?? sheet.signalHighPa;
  return (sheet.signalLowPa + sheet.signalHighPa) / 2;
}

function shownFor(job: Job, field: Field): readonly Shown[] {
  if (field.type !== 'quantity' || field.name === 'signalSeenPa') return [];
  const valueSi = pressureFor(job, field);
  if (valueSi === null) return [];
  const item = field.gauge === undefined ? undefined : job.gear[field.gauge];
  const fullSi = item?.rangeHighSi ?? dialFor(Math.max(valueSi, job.sheet.signalHighPa));
  return [{ name: field.name, label: field.label, dimension: 'pressure', valueSi, fullSi }];
}
