import { isUnitId, toSi } from '../calculations/units.ts';
import { unitWord } from '../readings/unit-words.ts';
import type { Ask } from './ask.ts';

/** The field that takes the output of the controller, in per cent of the signal. */
const FIELD = 'outputPercent';
const NUMBER = String.raw`(\d+(?:[.,]\d+)?)\s*(psi|kPa|bar)`;
const SOURCE = '(?:controller|output)';
/** `controller full`, `output is full`. */
const FULL = new RegExp(
  String.raw`\b(${SOURCE})(?:\s+(?:is|at|stands|says|gives))*\s+(?:full|flat out)\b`,
  'gi',
);
/** `controller 15 psi`, `output at 15 psi`. */
const BEHIND = new RegExp(
  String.raw`\b(${SOURCE})(?:\s+(?:is|at|gives|says|asks for|sends))*\s+${NUMBER}(?=[\s,;.]|$)`,
  'gi',
);
/** `15 psi from the controller`, and with `for` in front. */
const BEFORE = new RegExp(
  String.raw`(?:\bfor\s+)?${NUMBER}\s+(?:from|out of|at)\s+(?:the\s+)?controller\b`,
  'gi',
);

/**
 * What the controller sends, said as a pressure or as "full", in per cent of this valve's signal: what was understood is
 * shown in per cent before it counts. Only where the card asks for the output.
 *
 * @example outputAsPercent('12 psi at the valve for 15 psi from the controller', ask) // '12 psi at the valve output 100 %'
 */
export function outputAsPercent(text: string, { fields, job }: Pick<Ask, 'fields' | 'job'>): string {
  if (!fields.some(({ name }) => name === FIELD)) return text;
  const { signalLowPa, signalHighPa } = job.sheet;
  const percent = (number: string, unit: string): string | null => {
    const valueSi = pressurePa(number, unit);
    if (valueSi === null) return null;
    const of = (100 * (valueSi - signalLowPa)) / (signalHighPa - signalLowPa);
    return of >= 0 && of <= 100 ? `output ${Math.round(of * 10) / 10} %` : null;
  };
  return text
    .replaceAll(FULL, 'output 100 %')
    .replaceAll(BEHIND, (met, _, number: string, unit: string) => percent(number, unit) ?? met)
    .replaceAll(BEFORE, (met, number: string, unit: string) => percent(number, unit) ?? met);
}

function pressurePa(number: string, word: string): number | null {
  const meant = unitWord(word);
  const [unit] = meant.kind === 'units' ? meant.units : [];
  return unit === undefined || !isUnitId(unit)
    ? null
    : toSi({ value: Number(number.replace(',', '.')), unit });
}
