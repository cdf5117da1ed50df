/** What the engine says, in the words of the page. */
import type { CauseId } from '../../../../procedures/troubleshooting/causes.ts';
import { causeOf } from '../../../../procedures/troubleshooting/causes.ts';
import { checkOf } from '../../../../procedures/troubleshooting/checks.ts';
import type { Counted } from '../../../../procedures/troubleshooting/engine/evidence.ts';
import { saysTheSame } from '../../../../procedures/troubleshooting/engine/looks.ts';
import { voicesFor } from '../../../../procedures/troubleshooting/engine/speaks.ts';
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
  return causes
    .slice(0, SHOWN)
    .filter(({ probability }, at) => at < 2 || probability >= WORTH_SHOWING)
    .map(({ id, probability }) => {
      const voices = voicesFor(model, { belief, cause: id }).flatMap(({ item, logOdds }) => {
        const found = WEIGHS.find(([from]) => Math.abs(logOdds) >= from);
        if (found === undefined) return [];
        return [{ weight: found[1], weighs: found[2], text: sayItem(item), isFor: logOdds > 0 }];
      });
      const side = (isFor: boolean): readonly VoiceView[] =>
        voices
          .filter((one) => one.isFor === isFor)
          .slice(0, VOICES)
          .map(({ weight, weighs, text }) => ({ weight, weighs, text }));
      return {
        words: causeOf(id).words,
        fraction: probability,
        chance: sayChance(probability),
        speaksFor: side(true),
        speaksAgainst: side(false),
      };
    });
}

/** One answer in a line: what was looked at, and what it showed. */
export function sayItem({ item, looks }: Counted): string {
  if (item.kind === 'repaired')
    return `${repairOf(item.repair).words}: ${item.cured ? 'it helped' : 'it did not help'}`;
  const check = checkOf(item.check);
  const word = item.outcome ?? bandOf(item.check, item.value);
  const found = word === undefined ? undefined : check.outcomes[word];
  return `${check.title}: ${found ?? 'a number off its axis'}${sayLooks(looks)}`;
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
export function footLines({ alike }: Advice): readonly string[] {
  if (alike === null) return [];
  const names = alike.causes.map((id: CauseId) => causeOf(id).words).join('; ');
  const told = alike.toldBy.map((id) => checkOf(id).title.toLowerCase()).join(', ');
  return [`Cannot be told apart from outside: ${names}.${told === '' ? '' : ` What would tell: ${told}.`}`];
}

/** Where the readings fit nothing on the list, that comes before any ranking; blank where they do. */
export function warningOf({ surprise }: Advice): string {
  if (!surprise.strange) return '';
  const off = surprise.unexplained.map(sayItem).join('; ');
  return `No cause of the list explains what was read${off === '' ? '' : `: ${off}`}. Read it again on another gauge, and look for what is not on the list.`;
}
