import { SAFE_TOUCH_C } from '../../safety/limits.ts';
import { energiesMissing } from '../energies.ts';
import type { Job, Words } from '../job.ts';
import { bothEndsFed } from '../valve-sheet/derived.ts';
import type { Rule } from './rule.ts';

const ZERO_CELSIUS_K = 273.15;
const NOT_SAFE: readonly string[] = ['live', 'free', 'present', 'hot', 'armed'];

function anyUnsafe(words: Words, fields: string | undefined): boolean {
  const states = (fields ?? '').split(' ').map((name) => words[name] ?? '');
  return states.some((state) => state === '' || NOT_SAFE.includes(state));
}

/** Whoever isolates knows each energy; a size that the sheet does not have is written down first. */
export const energiesKnownRule: Rule = {
  outcomes: ['known', 'not known', 'size missing'],
  params: [],
  judge({ job, words }) {
    if (words.energiesKnown !== 'yes') return { outcome: 'not known', figures: {} };
    const missing = energiesMissing(job);
    const written = (words.energiesFound ?? '') !== '';
    return { outcome: missing.length > 0 && !written ? 'size missing' : 'known', figures: {} };
  },
};

/** Air that is kept by design, volume by volume: what the sheet has is not absent because nobody found it. */
export const keptAirRule: Rule = {
  outcomes: ['all safe', 'one is not safe', 'the sheet has one'],
  params: ['fields'],
  judge({ job, words, params }) {
    const { volumeTank, lockUp } = job.sheet;
    const onSheet = { trappedAir: volumeTank, lockUpAir: lockUp, oppositeAir: bothEndsFed(job.sheet) };
    if (missed(words, onSheet)) return { outcome: 'the sheet has one', figures: {} };
    return { outcome: anyUnsafe(words, params.fields) ? 'one is not safe' : 'all safe', figures: {} };
  },
};

function missed(words: Words, onSheet: Readonly<Record<string, boolean>>): boolean {
  return Object.entries(onSheet).some(([name, is]) => is && words[name] === 'absent');
}

/** What says how it was made safe: a bare yes is no verification. */
const SAID_BY: readonly (readonly [string, string, string])[] = [
  ['residue', 'cleared', 'residueHow'],
  ['electrical', 'isolated', 'electricalHow'],
  ['safetyFunction', 'overridden', 'safetyFunctionHow'],
];

/** Every other energy is absent or made safe, in the states that table D knows, and it is said how. */
export const othersRule: Rule = {
  outcomes: ['all safe', 'one is not safe', 'too hot to touch', 'not said how', 'the sheet has one'],
  params: ['fields'],
  judge({ job, readings, words, params }) {
    const body = readings.bodyTemperatureK;
    const figures = { bodyTemperatureK: body?.valueSi ?? null, safeTouchC: SAFE_TOUCH_C };
    const bodyC = body === undefined ? null : body.valueSi - ZERO_CELSIUS_K;
    if (bodyC !== null && bodyC > SAFE_TOUCH_C && words.temperature !== 'hot')
      return { outcome: 'too hot to touch', figures };
    if (missed(words, othersOnSheet(job))) return { outcome: 'the sheet has one', figures };
    if (anyUnsafe(words, params.fields)) return { outcome: 'one is not safe', figures };
    const unsaid = SAID_BY.some(([name, safe, by]) => words[name] === safe && (words[by] ?? '') === '');
    const unread = words.temperature === 'safe' && bodyC === null;
    return { outcome: unsaid || unread ? 'not said how' : 'all safe', figures };
  },
};

/** What a valve in its line has by its sheet; on the bench it is off, cold and rinsed, and a person says so. */
function othersOnSheet({ sheet, facts }: Job): Readonly<Record<string, boolean>> {
  if (facts.place === 'bench') return {};
  return {
    temperature: sheet.heatTracing || sheet.processTemperatureC > SAFE_TOUCH_C,
    residue: sheet.fluidHarm !== 'none',
    electrical: sheet.electricalV !== null,
    safetyFunction: sheet.tripFunction,
  };
}
