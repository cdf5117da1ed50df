import { toSi } from '../calculations/units.ts';
import type { Ask } from './ask.ts';

/** Fields of the card that takes a complaint with its first numbers. */
const OUTPUT = 'outputPercent';
const TRAVEL = 'openedM';

const NUMBER = String.raw`(\d+(?:[.,]\d+)?)`;
/** `OP 75 %`, `op=75`: the output of a controller is always read in per cent (common practice, no source). */
const OP = new RegExp(String.raw`\bop\s*(?:is|at|=|:)?\s*${NUMBER}\s*%?(?=[\s,;]|$)`, 'gi');
/** `valve at 45 %`, `pos 20 %`, `valve only 40 % open`. */
const STANDS = new RegExp(
  String.raw`\b(?:the\s+)?(?:valve|stem|pos|position)(?:\s+(?:is|at|stands|only|still))*\s*[=:]?\s*${NUMBER}\s*%(?:\s+open)?(?=[\s,;.]|$)`,
  'gi',
);
/** `stuck at 30 %`: where a valve is stuck is where its stem stands. */
const STUCK_AT = new RegExp(String.raw`\bstuck\s+at\s+${NUMBER}\s*%(?:\s+open)?`, 'gi');
/** `signal 15 mA`, `controller at 12 mA`, `12 mA out`. */
const CURRENT = new RegExp(
  String.raw`\b(?:(?:controller|output|signal|current)(?:\s+(?:is|at|says|gives))*\s*[=:]?\s*)?${NUMBER}\s*mA(?:\s+out|\s+from\s+the\s+controller)?(?=[\s,;.]|$)`,
  'gi',
);

/** `the operator says that`: who told it stands in the field of its own. */
const TOLD_BY =
  /^\s*(?:the\s+)?(?:operator|board|board\s+operator|control\s+room)\s+(?:says|said|reports|reported)(?:\s+that)?\s+/i;
/** `the valve sticks`: every complaint is of the valve. */
const OF_THE_VALVE =
  /^\s*(?:the\s+)?valve\s+(?:is\s+)?(?=(?:stick|jump|hunt|hunting|slow|pass|leak|swing|oscillat|moves|does\s+not\s+(?:shut|move)))/i;
/** `sticks near shut`: where it does so is no reading. */
const NEAR_AN_END =
  /(?<=\b(?:stick(?:s|ing|y)|jump(?:s|ing)|jerky|hunt(?:s|ing)|stiction)\b[^,;.\d]*)\s+near\s+(?:the\s+seat|shut|closed|open)(?=\s*(?:[,;.]|$))/i;
/** `will not open past 60 %`, `only opens to 60 %`: it moves part way, and stands there. */
const PART_WAY = new RegExp(
  String.raw`\b(?:it\s+)?(?:(?:will\s+not|won't|wont|does\s+not)\s+(?:open|go)\s+(?:past|beyond|further\s+than)|only\s+opens\s+to|opens\s+only\s+to)\s+${NUMBER}\s*%`,
  'gi',
);
/** `at full output`, `air at the valve 12 psi`. */
const FULL_OUTPUT = /\b(?:at\s+)?full\s+output\b/i;
const AIR_AT_THE_VALVE = /\bair\s+(?=at\s+the\s+valve\b)/i;

/** Signals that a whole current stands for (common practice, no source); of a part of one nobody knows which current. */
const WHOLE_SIGNALS_PA = [
  [toSi({ value: 3, unit: 'psi' }), toSi({ value: 15, unit: 'psi' })],
  [toSi({ value: 6, unit: 'psi' }), toSi({ value: 30, unit: 'psi' })],
  [20_000, 100_000],
  [40_000, 200_000],
] as const;
const LOW_MA = 4;
const SPAN_MA = 16;
const NEAR_PA = 1_000;

/**
 * A first line as it comes over the radio, in the words that the card reads: current as per cent of the signal, OP as
 * the output, where the valve stands as its travel. What was understood is shown before it counts.
 *
 * @example firstLineSaid('OP 75 %, valve 20 %', ask) // 'output 75 %, stem 20 %'
 */
export function firstLineSaid(text: string, { fields, job }: Pick<Ask, 'fields' | 'job'>): string {
  const asks = (name: string) => fields.some((field) => field.name === name);
  if (!asks(OUTPUT) || !asks(TRAVEL)) return text;
  const plain = text
    .replace(TOLD_BY, '')
    .replace(OF_THE_VALVE, '')
    .replace(NEAR_AN_END, '')
    .replace(FULL_OUTPUT, 'output 100 %')
    .replace(AIR_AT_THE_VALVE, '');
  const { signalLowPa, signalHighPa } = job.sheet;
  const isWhole = WHOLE_SIGNALS_PA.some(
    ([low, high]) => Math.abs(low - signalLowPa) < NEAR_PA && Math.abs(high - signalHighPa) < NEAR_PA,
  );
  const withOutput = once(once(plain, { of: OP, as: (number) => `output ${number} %` }), {
    of: CURRENT,
    as: (current) => (isWhole && !OUTPUT_SAID.test(plain) ? asOutput(current) : null),
  });
  const partWay = once(withOutput, { of: PART_WAY, as: (number) => `part way, stem ${number} %` });
  return once(once(partWay, { of: STUCK_AT, as: (number) => `stuck, stem ${number} %` }), {
    of: STANDS,
    as: (number) => `stem ${number} %`,
  });
}

/** An output that is said in per cent already. */
const OUTPUT_SAID = new RegExp(String.raw`\b(?:controller|output|op)\b[^,;]*?${NUMBER}\s*%`, 'i');

/** Said once it is put in other words; of two nobody knows which is meant, and the text stays as it is. */
function once(text: string, { of, as }: { readonly of: RegExp; as(number: string): string | null }): string {
  const met = [...text.matchAll(of)];
  const [only] = met;
  if (only === undefined || met.length > 1) return text;
  const said = as(only[1] ?? '');
  return said === null ? text : text.replace(only[0], said);
}

function asOutput(current: string): string | null {
  const percent = (100 * (Number(current.replace(',', '.')) - LOW_MA)) / SPAN_MA;
  return percent >= 0 && percent <= 100 ? `output ${Math.round(percent * 10) / 10} %` : null;
}
