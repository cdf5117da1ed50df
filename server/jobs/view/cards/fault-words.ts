/** What the engine says, in the words of the page. */
import type { CauseId } from '../../../../procedures/troubleshooting/causes.ts';
import { causeOf } from '../../../../procedures/troubleshooting/causes.ts';
import { type CheckId, checkOf } from '../../../../procedures/troubleshooting/checks.ts';
import { type Alike, tellingApart } from '../../../../procedures/troubleshooting/engine/alike.ts';
import {
  type Answer,
  type Counted,
  HEARSAY,
} from '../../../../procedures/troubleshooting/engine/evidence.ts';
import { saysTheSame } from '../../../../procedures/troubleshooting/engine/looks.ts';
import { type Voice, voicesFor } from '../../../../procedures/troubleshooting/engine/speaks.ts';
import type { Advice } from '../../../../procedures/troubleshooting/job/advice.ts';
import { repairOf } from '../../../../procedures/troubleshooting/repairs.ts';

export interface VoiceView {
  readonly weight: number;
  readonly weighs: string;
  readonly text: string;
}

export interface CauseView {
  readonly words: string;
  readonly fraction: number;
  readonly chance: string;
  readonly speaksFor: readonly VoiceView[];
  readonly speaksAgainst: readonly VoiceView[];
}

/** @example sayChance(0.62) // 'about 6 in 10' */
export function sayChance(fraction: number): string {
  if (fraction < 0.095) return 'less than 1 in 10';
  if (fraction > 0.95) return 'more than 9 in 10';
  return `about ${Math.round(fraction * 10)} in 10`;
}

/** How many causes are shown, and how unlikely the last of them may be: judgement. */
const SHOWN = 5;
const WORTH_SHOWING = 0.02;
/** Voices of one side that are shown. */
const VOICES = 3;
/** From which shift of the odds on a voice weighs little, plainly, much: a fifth, three times, ten times. */
const WEIGHS: readonly (readonly [from: number, weight: number, words: string])[] = [
  [Math.log(10), 3, 'weighs much'],
  [Math.log(3), 2, 'weighs'],
  [Math.log(1.2), 1, 'weighs little'],
];

/** The likeliest causes, each with what speaks for and against it. */
export function causeViews({ model, belief, causes }: Advice): readonly CauseView[] {
  const shown = causes
    .slice(0, SHOWN)
    .filter(({ probability }, at) => at < 2 || probability >= WORTH_SHOWING);
  const voices = voicesFor(model, { belief, causes: shown.map(({ id }) => id) });
  return shown.map(({ id, probability }, at) => ({
    words: causeOf(id).words,
    fraction: probability,
    chance: sayChance(probability),
    ...sidesOf(voices[at] ?? []),
  }));
}

function sidesOf(voices: readonly Voice[]): Pick<CauseView, 'speaksFor' | 'speaksAgainst'> {
  const heard = voices.flatMap(({ item, logOdds }) => {
    const found = WEIGHS.find(([from]) => Math.abs(logOdds) >= from);
    if (found === undefined) return [];
    return [{ weight: found[1], weighs: found[2], text: sayItem(item), isFor: logOdds > 0 }];
  });
  const side = (isFor: boolean): readonly VoiceView[] =>
    heard
      .filter((one) => one.isFor === isFor)
      .slice(0, VOICES)
      .map(({ weight, weighs, text }) => ({ weight, weighs, text }));
  return { speaksFor: side(true), speaksAgainst: side(false) };
}

/** One answer in a line: what was looked at, and what it showed. */
export function sayItem({ item, looks }: Counted): string {
  if (item.kind === 'seen before')
    return `${repairOf(item.repair).words}, job ${item.job} on ${item.on}: the trouble is back`;
  if (item.kind === 'repaired')
    return `${repairOf(item.repair).words}: ${item.cured ? 'it helped' : 'it did not help'}`;
  const check = checkOf(item.check);
  const word = item.outcome ?? bandOf(item.check, item.value);
  const found = word === undefined ? undefined : check.outcomes[word];
  // What the operator said was looked at by nobody yet: no check is named that was not made.
  if (item.gauge === HEARSAY && found !== undefined) return `As told: ${found}`;
  return `${check.title}: ${found ?? 'a number off its axis'}${sayNumber(item)}${sayLooks(looks)}`;
}

/** How far off a number was, in the unit of its axis: the word alone hides whether it was a little or much. */
function sayNumber({ check, value }: Answer): string {
  const { measured } = checkOf(check);
  if (value === undefined || measured === undefined) return '';
  const isCurrent = measured.axis.startsWith('mA');
  const rounded = Math.abs(value) < 10 ? Math.round(value * 10) / 10 : Math.round(value);
  return ` (${String(rounded).replace('-', '\u2212')} ${isCurrent ? 'mA' : '%'})`;
}

/** How often it was looked at, and whether the looks agree. */
function sayLooks(looks: Counted['looks']): string {
  const last = looks.at(-1);
  if (last === undefined || looks.length === 1) return '';
  const often = looks.length === 2 ? 'twice' : `${looks.length} times`;
  return looks.every((one) => saysTheSame(one, last))
    ? `, looked at ${often}`
    : `, looked at ${often} and not the same`;
}

function bandOf(id: Parameters<typeof checkOf>[0], value: number | undefined): string | undefined {
  const bands = Object.entries(checkOf(id).measured?.bands ?? {});
  return bands.find(([, [low, high]]) => value !== undefined && value >= low && value <= high)?.[0];
}

/** What a ranking alone does not say, in a sentence each. */
export function footLines(
  advice: Pick<Advice, 'alike' | 'evidence' | 'model' | 'checks'>,
): readonly string[] {
  const { alike, evidence } = advice;
  const alikeLines = alike === null ? [] : [alikeLine(alike, advice)];
  return [...beforeLines(evidence), ...triedLines(evidence), ...alikeLines];
}

/** What an earlier job did counts by the technician’s word, which may be taken back. */
function beforeLines(evidence: Advice['evidence']): readonly string[] {
  return evidence.flatMap((item) =>
    item.kind !== 'seen before'
      ? []
      : [
          `Counted from job ${item.job} on ${item.on}: ${repairOf(item.repair).words}. The trouble is back, which speaks against it, weakly. Correct the answer about the same trouble, and it counts no more.`,
        ],
  );
}

/** A repair that was made speaks for every cause that it does not cure: said by itself, whether it weighs or not. */
function triedLines(evidence: Advice['evidence']): readonly string[] {
  return evidence.flatMap((item) =>
    item.kind !== 'repaired'
      ? []
      : [
          item.cured
            ? `Made and proved: ${repairOf(item.repair).words}. Its check is sound now; what is left to find is something else.`
            : `Made, and it did not help: ${repairOf(item.repair).words}. Its check is not sound: the repair did not take, or the fault is another. What it cures counts less, as far as the repair can be trusted.`,
        ],
  );
}

function alikeLine(alike: Alike, advice: Pick<Advice, 'model' | 'checks'>): string {
  const names = alike.causes.map((id: CauseId) => causeOf(id).words).join('; ');
  return `Cannot be told apart from outside any more: ${names}. ${whatTells(alike, advice)}`;
}

function whatTells(alike: Alike, advice: Pick<Advice, 'model' | 'checks'>): string {
  if (alike.toldBy.length > 0) return `What would tell, once isolated: ${titlesOf(alike.toldBy)}.`;
  const again = toldBySecondLook(alike, advice);
  return again.length > 0
    ? `Nothing else on the list would tell, but a second look may, where the first was a slip: ${titlesOf(again)}.`
    : 'Nothing on the list would tell: their repairs are tried one after the other, the likeliest for its minutes first.';
}

/** What was read already, may be looked at once more, and would tell such causes apart. */
function toldBySecondLook(
  { causes: [first, ...same] }: Alike,
  { model, checks }: Pick<Advice, 'model' | 'checks'>,
): readonly CheckId[] {
  const again = checks.filter((one) => one.again).map(({ check }) => check);
  if (first === undefined) return [];
  return again.filter((check) =>
    same.some((other) => tellingApart(model, { one: first, other, checks: [check] }).length > 0),
  );
}

function titlesOf(ids: readonly CheckId[]): string {
  return ids.map((id) => checkOf(id).title.toLowerCase()).join(', ');
}

/** Where the readings fit nothing on the list, that comes before any ranking; blank where they do. */
export function warningOf({ surprise }: Advice): string {
  if (!surprise.strange) return '';
  const off = surprise.unexplained.map(sayItem).join('; ');
  return `No cause of the list explains what was read${off === '' ? '' : `: ${off}`}. Read it again on another gauge, and look for what is not on the list.`;
}
