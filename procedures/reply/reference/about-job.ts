import { fill } from '../../say.ts';
import { straightWay } from '../../straight-way.ts';
import { whyOf } from '../../why.ts';
import type { Ask } from '../ask.ts';
import { type ReplyTold, told } from '../reply.ts';
import { plainText } from '../words.ts';

type About = (ask: Ask) => ReplyTold;

const ABOUT: readonly { readonly asked: readonly string[]; readonly answer: About }[] = [
  {
    asked: ['where am i', 'where are we', 'which step', 'what step', 'what step is this', 'where is the job'],
    answer: where,
  },
  {
    asked: [
      'what is left',
      "what's left",
      'what is next',
      "what's next",
      'how much is left',
      'what is still to do',
      'how many steps are left',
      'what comes next',
      'how long',
    ],
    answer: left,
  },
  {
    asked: [
      'why do i do this',
      'why do i have to do this',
      'why do we do this',
      'what is the point',
      'why',
      'why this',
      'why this step',
      'why is this',
      'what for',
      'what is this for',
    ],
    answer: why,
  },
  {
    asked: [
      'what now',
      'what do i do',
      'what does it want',
      'what is wanted',
      'what to do',
      'what can i write',
      'what can i say',
    ],
    answer: wants,
  },
  {
    asked: [
      'can i skip this',
      'can i skip this step',
      'may i skip this',
      'do i have to do this',
      'skip this',
      'can we skip this',
      'can i leave this out',
    ],
    answer: skip,
  },
  {
    asked: ['which valve', 'what valve', 'which valve is this', 'what valve is this'],
    answer: valve,
  },
];

/** What is asked of this job itself; null where it is asked of something else. */
export function aboutJob(question: string, ask: Ask): ReplyTold | null {
  const said = plainText(question);
  return ABOUT.find(({ asked }) => asked.includes(said))?.answer(ask) ?? null;
}

function where({ job, around, step }: Ask): ReplyTold {
  const { definition } = around.compiled;
  const way = straightWay(definition, job.facts);
  const at = way.indexOf(job.step);
  const phase = definition.phases.find(({ id }) => id === step?.phase)?.title ?? '';
  const count = at < 0 ? 'off the straight way' : `step ${at + 1} of ${way.length}`;
  return told(`${job.tag}, job ${job.id}: ${step === null ? 'no card is open' : fill(step.title, job)}.`, {
    lines: [
      `${definition.title}, ${phase === '' ? '' : `${phase}, `}${count}. ${job.answers.length} lines are kept.`,
    ],
  });
}

function left({ job, around }: Ask): ReplyTold {
  const { definition } = around.compiled;
  const way = straightWay(definition, job.facts);
  const passed = Math.max(-1, ...job.answers.map(({ step }) => way.indexOf(step)));
  const at = way.includes(job.step) ? way.indexOf(job.step) : passed;
  const rest = way.slice(at + 1).flatMap((id) => definition.steps[id] ?? []);
  const holds = rest.filter(({ kind }) => kind === 'hold').length;
  const phases = [...new Set(rest.map(({ phase }) => phase))].flatMap(
    (id) => definition.phases.find((phase) => phase.id === id)?.title ?? [],
  );
  if (rest.length === 0) return told('This is the last card, if nothing gives trouble.', { lines: [] });
  const heading =
    rest.length === 1
      ? 'One step is left after this card, if nothing gives trouble.'
      : `${rest.length} steps are left after this card, if nothing gives trouble.`;
  return told(heading, {
    lines: [
      `Through: ${phases.join(', ')}.`,
      holds === 0
        ? 'No hold is among them.'
        : `${holds} of them ${holds === 1 ? 'is a hold' : 'are holds'}: another person signs.`,
    ],
  });
}

function why({ step, job, around }: Ask): ReplyTold {
  const says = step === null ? '' : whyOf(step, { job, definition: around.compiled.definition });
  const caution = step?.caution;
  return told(says === '' ? 'This card gives no reason of its own.' : says, {
    lines:
      caution === undefined
        ? []
        : [`${fill(caution.hazard, job)} ${fill(caution.consequence, job)} ${fill(caution.avoid, job)}`],
  });
}

const WANTS: Readonly<Record<Ask['kind'], string>> = {
  fields: 'This card asks for:',
  question: 'This card asks for one answer:',
  done: 'Write done when it is done.',
  hold: 'This card is signed by name and PIN, or sent back. A reply cannot sign it.',
  'prove-again': 'What has lapsed is shown again, one walk round:',
  blocked: 'This card cannot be answered now: it says why.',
  none: 'No card of this job is open.',
};

function wants(ask: Ask): ReplyTold {
  const lines = ask.fields.map((field) => {
    const among = field.type === 'choice' ? `: ${field.choices.map(({ label }) => label).join(' / ')}` : '';
    return `${field.label}${among}${field.optional ? ' (may stay blank)' : ''}`;
  });
  return told(WANTS[ask.kind], { lines: [...lines, 'Also: back, park, stop, not sure, or a question.'] });
}

function skip({ step, job, around }: Ask): ReplyTold {
  const says = step === null ? '' : whyOf(step, { job, definition: around.compiled.definition });
  return told('No step is skipped: no way on leads past this card.', {
    lines: [
      ...(says === '' ? [] : [says]),
      'Where it cannot be done, answer the card so, park the job, or make safe and stop.',
    ],
  });
}

function valve({ job }: Ask): ReplyTold {
  const { sheet, facts } = job;
  const place = facts.place === 'bench' ? 'on the bench' : 'in the line';
  return told(`${job.tag}, ${sheet.service}, ${sheet.location}.`, {
    lines: [`${sheet.airAction.replaceAll('-', ' ')}, ${place}, valve sheet revision ${job.sheetRevision}.`],
  });
}
