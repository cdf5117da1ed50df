import { expectedTravel, signalAtPercent } from '../../calculations/signal-travel.ts';
import { SOURCES } from '../../calculations/sources.ts';
import type { Dimension, UnitId } from '../../calculations/unit-table.ts';
import { format, preferredUnit, unitFor } from '../../calculations/units.ts';
import { readNumber } from '../../readings/number-text.ts';
import { unitWord } from '../../readings/unit-words.ts';
import { say } from '../../say.ts';
import type { Ask } from '../ask.ts';
import { type ReplyTold, told } from '../reply.ts';
import { type Token, tokenise } from '../tokens.ts';
import { plainText } from '../words.ts';

type Quantity = { readonly valueSi: number; readonly unit: UnitId; readonly raw: string };

const PRESSURE_WORDS = /\b(?:pressure|signal|air|psi|bar|kpa)\b/;
const TRAVEL_WORDS = /\b(?:travel|stroke|stand|stands|open|position|percent|far|stem)\b/;
const LENGTH_WORDS = /\b(?:mm|millimet(?:re|er)s?|inch|inches)\b/;

/**
 * A question with one number in it that this valve's sheet, or a unit, answers by arithmetic; null for any other.
 *
 * @example workedQuestion('what pressure at 50 %?', ask) // heading '9.00 psi for 50 %'
 */
export function workedQuestion(question: string, ask: Ask): ReplyTold | null {
  const tokens = tokenise(question);
  const numbers = tokens.filter(({ kind }) => kind === 'number');
  const [only, ...more] = numbers;
  if (only === undefined || more.length > 0) return null;
  const quantity = quantityOf(only);
  if (quantity === null) return null;
  const words = plainText(question.replace(only.raw, ' '));
  return (
    convertedTo(quantity, { tokens, at: only.at }) ??
    (quantity.unit === '%' ? atPercent(quantity, { words, ask }) : atSignal(quantity, { words, ask }))
  );
}

function quantityOf({ raw }: Token): Quantity | null {
  const read = readNumber(raw, {
    dimensions: ['pressure', 'percent', 'length', 'torque', 'temperature', 'force', 'current', 'time'],
  });
  return read.ok ? { valueSi: read.valueSi, unit: read.unit, raw } : null;
}

/** `what is 9 psi in bar?`: the last word but one is `in`, `to` or `as`, and the last is a unit of the same kind. */
function convertedTo(
  { valueSi, unit, raw }: Quantity,
  { tokens, at }: { readonly tokens: readonly Token[]; readonly at: number },
): ReplyTold | null {
  const behind = tokens.filter((token) => token.at > at).map((token) => token.raw.replace(/\?+$/, ''));
  const [sign = '', ...rest] = behind;
  if (!/^(?:in|to|as)$/i.test(sign) || rest.length === 0) return null;
  const meant = unitWord(rest.join(' '));
  if (meant.kind !== 'units') return null;
  const { dimension } = unitFor(unit);
  const to = meant.units.find((one) => unitFor(one).dimension === dimension);
  if (to === undefined) return null;
  return told(`${raw} is ${format({ valueSi, unit: to })}.`, {
    lines: ['Worked out with the exact size of both units.'],
    source: 'NIST SP 811',
    calculation: 'convert-units',
  });
}

interface On {
  readonly words: string;
  readonly ask: Ask;
}

function atPercent({ valueSi: percent, raw }: Quantity, { words, ask }: On): ReplyTold | null {
  const { sheet, tag } = ask.job;
  const isLength = LENGTH_WORDS.test(words);
  if (!isLength && !PRESSURE_WORDS.test(words)) return null;
  if (percent < 0 || percent > 100)
    return told(`${raw} is past this valve’s travel.`, {
      lines: [
        `It strokes from 0 to 100 %, ${say({ valueSi: sheet.travelM, dimension: 'length', units: sheet.units })}.`,
      ],
    });
  if (isLength) {
    const unit: UnitId = /\bmm|milli/.test(words) ? 'mm' : 'in';
    return told(`${raw} of the travel is ${format({ valueSi: (percent / 100) * sheet.travelM, unit })}.`, {
      lines: [`The travel of ${tag} is ${format({ valueSi: sheet.travelM, unit })}.`],
    });
  }
  if (sheet.springHeldBy === 'no spring') return null;
  const range = { percent, rangeLow: sheet.benchSetLowPa, rangeHigh: sheet.benchSetHighPa };
  const signalPa = signalAtPercent({ ...range, reverse: isReverse(ask) });
  const ofRange = `${raw} of the bench set itself is ${pressure(signalAtPercent(range), ask)}.`;
  return told(`${pressure(signalPa, ask)} on the actuator for ${raw} open.`, {
    lines: [...(isReverse(ask) ? [ofRange] : []), ...benchSetLines(ask), 'Flow on the plug shifts it.'],
    source: SOURCES['S-02'].title,
    calculation: 'signal-at-percent',
  });
}

function atSignal({ valueSi, unit, raw }: Quantity, { words, ask }: On): ReplyTold | null {
  if (unitFor(unit).dimension !== 'pressure' || !TRAVEL_WORDS.test(words)) return null;
  const { sheet } = ask.job;
  if (sheet.springHeldBy === 'no spring') return null;
  const { openPercent } = expectedTravel({
    signal: valueSi,
    rangeLow: sheet.benchSetLowPa,
    rangeHigh: sheet.benchSetHighPa,
    airAction: sheet.airAction,
    ratedTravelM: sheet.travelM,
  });
  if (openPercent < 0 || openPercent > 100)
    return told(`${raw} is beyond the bench set: the stem rests at its end.`, { lines: benchSetLines(ask) });
  const lengthM = (openPercent / 100) * sheet.travelM;
  return told(`${format({ valueSi: openPercent, unit: '%' })} open at ${raw}, ${length(lengthM, ask)}.`, {
    lines: [...benchSetLines(ask), 'Friction shifts it a little: one way going up, the other coming down.'],
    source: SOURCES['S-02'].title,
    calculation: 'signal-travel',
  });
}

const isReverse = ({ job }: Ask): boolean => job.sheet.airAction === 'air-to-close';

function benchSetLines(ask: Ask): readonly string[] {
  const { sheet, tag } = ask.job;
  const set = `Bench set of ${tag}: ${pressure(sheet.benchSetLowPa, ask)} to ${pressure(sheet.benchSetHighPa, ask)} over ${length(sheet.travelM, ask)}, ${sheet.airAction.replaceAll('-', ' ')}.`;
  const signal = `A positioner is fitted: its signal of ${pressure(sheet.signalLowPa, ask)} to ${pressure(sheet.signalHighPa, ask)} is not the air on the actuator.`;
  return sheet.positioner === 'none' ? [set] : [set, signal];
}

function inOwn(
  valueSi: number,
  { dimension, ask }: { readonly dimension: Dimension; readonly ask: Ask },
): string {
  return format({ valueSi, unit: preferredUnit(dimension, ask.job.sheet.units) });
}
const pressure = (valueSi: number, ask: Ask) => inOwn(valueSi, { dimension: 'pressure', ask });
const length = (valueSi: number, ask: Ask) => inOwn(valueSi, { dimension: 'length', ask });
