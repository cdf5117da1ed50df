import { backTargets } from '../actions/leave.ts';
import { fill } from '../say.ts';
import { whyOf } from '../why.ts';
import type { Ask } from './ask.ts';
import { COMMANDS } from './listened-for.ts';
import { optionsAt } from './options.ts';
import { type Choice, type Reply, type ReplyUnderstood, told } from './reply.ts';
import { plainText, wordsOf } from './words.ts';

type Command = keyof typeof COMMANDS;

const MAKE_SAFE_SAID = 'Make safe and stop';
const PARK_SAID = 'Park this job';

/** What a reply asks for besides answering the card; null where it asks for nothing of the kind. */
export function commandOf(text: string, ask: Ask): Reply | null {
  const said = saidOnce(plainText(text));
  const command = (Object.keys(COMMANDS) as Command[]).find((one) =>
    (COMMANDS[one] as readonly string[]).includes(said),
  );
  if (command === undefined) return backTo(text, ask);
  const meant = commandReply(command, ask);
  return orAnswer(meant, { text, command, ask });
}

/** @example saidOnce('stop stop stop') // 'stop' */
function saidOnce(said: string): string {
  return said.replace(/^(\S+)(?: \1)+$/, '$1');
}

function commandReply(command: Command, ask: Ask): Reply {
  switch (command) {
    case 'make-safe':
      return understood(
        { act: 'make-safe' },
        MAKE_SAFE_SAID,
        'The work stops, and the card that makes it safe comes next.',
      );
    case 'park':
      return understood(
        { act: 'park' },
        PARK_SAID,
        'Locks stay on. What was shown safe is shown again before hands go in.',
      );
    case 'back':
      return goBack(backChoices(ask).slice(0, 1));
    case 'not sure':
      return notSure(ask);
  }
}

/** Where the word is also the beginning of an answer of this card, both are offered. */
function orAnswer(
  meant: Reply,
  { text, command, ask }: { readonly text: string; readonly command: Command; readonly ask: Ask },
): Reply {
  const words = wordsOf(text);
  const match = optionsAt(words, ask.fields);
  if (match === null || match.wordCount < words.length) return meant;
  const answers = match.options.map(({ field, value }): Choice => {
    const asked = ask.fields.find(({ name }) => name === field);
    const label = asked?.type === 'choice' ? asked.choices.find((one) => one.value === value)?.label : '';
    const reply = `${asked?.label ?? field}: ${label ?? value}`;
    return { text: reply, reply };
  });
  const own = { 'make-safe': MAKE_SAFE_SAID, park: PARK_SAID, back: 'Go back', 'not sure': 'I am not sure' }[
    command
  ];
  return {
    kind: 'ambiguous',
    what: `“${text.trim()}” may answer this card, or mean something else.`,
    choices: [...answers, { text: own, reply: own }],
  };
}

interface Target {
  readonly step: string;
  readonly title: string;
}

/** Cards that it is safe to go back to, the nearest first. */
function backChoices({ job, around }: Ask): readonly Target[] {
  const { steps } = around.compiled.definition;
  return backTargets(job, around)
    .toReversed()
    .flatMap((step) => {
      const found = steps[step];
      return found === undefined ? [] : [{ step, title: fill(found.title, job) }];
    });
}

function backTo(text: string, ask: Ask): Reply | null {
  const [, wanted] = text.trim().match(/^(?:go\s+)?back\s+to\s*:?\s+(.+)$/is) ?? [];
  if (wanted === undefined) return null;
  const said = plainText(wanted);
  const all = backChoices(ask);
  const whole = all.filter(({ title }) => plainText(title) === said);
  const found = whole.length > 0 ? whole : all.filter(({ title }) => plainText(title).startsWith(said));
  if (found.length > 1 && whole.length === 0)
    return {
      kind: 'ambiguous',
      what: 'Back to which card?',
      choices: found.map(({ title }) => ({ text: title, reply: `Back to: ${title}` })),
    };
  return goBack(found.slice(0, 1));
}

function goBack([target]: readonly Target[]): Reply {
  if (target === undefined)
    return {
      kind: 'unknown',
      what: 'From this card there is no safe way back to that one.',
      next: 'Go on, or make safe and stop.',
    };
  return understood(
    { act: 'go-back', to: target.step },
    `Back to: ${target.title}`,
    'Everything since is kept, and is confirmed again on the way.',
  );
}

/** Nothing is counted for somebody who is not sure: they are told what there is. */
function notSure({ step, job, around }: Ask): Reply {
  const why = step === null ? '' : whyOf(step, { job, definition: around.compiled.definition });
  return told('Nothing is counted while you are not sure.', {
    lines: [
      ...(why === '' ? [] : [why]),
      'Look again, ask somebody who knows this valve, leave the job here for later, or make safe and stop.',
    ],
    choices: [
      { text: 'Where am I?', reply: 'where am I?' },
      { text: PARK_SAID, reply: PARK_SAID },
      { text: MAKE_SAFE_SAID, reply: MAKE_SAFE_SAID },
    ],
  });
}

function understood(act: ReplyUnderstood['act'], said: string, note: string): ReplyUnderstood {
  return { kind: 'understood', act, rows: [], said, notes: [note] };
}
