import type { ActionClass } from '../../safety/action-classes.ts';
import type { OpenStep } from '../vocabulary.ts';
import { isVerb } from './verbs.ts';

/** How the lines of a card are written: one act each, its condition first, nothing to do inside a warning. */
export function sentenceFaults(id: string, step: OpenStep): readonly string[] {
  const lines = 'do' in step ? (step.do ?? []) : [];
  return [
    ...lines.flatMap((line) => lineFaults(id, line)),
    ...cautionFaults(id, step),
    ...labelFaults(id, step),
  ];
}

/** "Shut it; vent it" and "Shut it and vent it" are two acts. */
function lineFaults(id: string, line: string): readonly string[] {
  const second = /(?:;| and(?: then)?) (\w+)/gi;
  const acts = [...line.matchAll(second)].filter(([, word]) => isVerb(capital(word ?? '')));
  const condition = /.+\b(?:if|when|unless)\b/i.test(line) && !/^(?:If|When)\b/.test(line);
  const mixed = /\band\b/i.test(line) && /\bor\b/i.test(line);
  return [
    ...(acts.length > 0 || line.includes(';') ? [`${id}: two acts in "${line}"`] : []),
    ...(condition ? [`${id}: the condition stands behind its act in "${line}"`] : []),
    ...(mixed ? [`${id}: "and" and "or" mixed in "${line}"`] : []),
  ];
}

/** What the hazard is and what it does hold no act; how to avoid it is what ANSI Z535 has a panel say last. */
function cautionFaults(id: string, { caution }: OpenStep): readonly string[] {
  if (caution === undefined) return [];
  return [caution.hazard, caution.consequence]
    .filter((text) => isVerb(text.split(' ')[0] ?? ''))
    .map((text) => `${id}: an act inside a ${caution.word}: "${text}"`);
}

/** Acts at a point of the site, which carries a label. */
const AT_A_POINT: readonly ActionClass[] = ['shutSupply', 'shutBlockValves', 'restoreSupply', 'shutBypass'];

function labelFaults(id: string, step: OpenStep): readonly string[] {
  if (step.action === undefined || !AT_A_POINT.includes(step.action)) return [];
  const asks = step.kind === 'reading' ? step.asks : [];
  const lines = 'do' in step ? (step.do ?? []) : [];
  const named = [step.title, step.how ?? '', ...lines].some((text) => /\{\w*(?:Point|tag)\}/.test(text));
  const read = asks.some((field) => field.type === 'text' && field.mustBe !== undefined);
  return named || read ? [] : [`${id}: the point that is worked is not named as on its label`];
}

function capital(word: string): string {
  return word.slice(0, 1).toUpperCase() + word.slice(1).toLowerCase();
}
