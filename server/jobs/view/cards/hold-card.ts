import { situationNow } from '../../../../procedures/actions/move.ts';
import { noticeLeftS } from '../../../../procedures/actions/points.ts';
import {
  notReadAgain,
  openDepartures,
  openFindings,
  rowsToReadAgain,
  unshown,
  workBefore,
} from '../../../../procedures/hold.ts';
import { fill, sayFigure } from '../../../../procedures/say.ts';
import type { HoldStep } from '../../../../procedures/vocabulary.ts';
import { ACTION_CLASSES } from '../../../../safety/action-classes.ts';
import { SIGN_OFF_HOURS } from '../../../../safety/limits.ts';
import { DISPOSITIONS, mayNotSign, workByRadio } from '../../../../safety/sign-off.ts';
import { checkNumber } from '../../../log/check-number.ts';
import { sayNote } from '../../notes/words.ts';
import { departuresOf } from '../departures.ts';
import { holdNumber } from '../scale.ts';
import { clock, short } from '../words.ts';
import { bareCard, type CardInput, type CardView } from './card.ts';
import { type EvidenceView, evidenceView, restsOn } from './hold-evidence.ts';

interface Option {
  readonly value: string;
  readonly label: string;
  readonly selected?: boolean;
}

export interface HoldCard extends CardView {
  readonly hold: string;
  readonly point: HoldStep<string>['point'];
  readonly criterion: string;
  /** What a signature here means, as the heading over it. */
  readonly means: string;
  readonly evidence: EvidenceView;
  readonly unshown: readonly string[];
  /** Why nobody can sign now, though somebody may. */
  readonly waitsFor: string;
  /** Lines that a second person has to read again before it can be signed. */
  readonly secondReadings: readonly { readonly place: number }[];
  readonly departures: readonly { readonly text: string }[];
  readonly allows: readonly { readonly label: string; readonly text: string; readonly strong?: string }[];
  readonly people: readonly Option[];
  /** Named as competent, for when no supervisor can come. */
  readonly seconds: readonly Option[];
  readonly dispositions: readonly Option[];
  readonly byRadio: boolean;
  readonly waivers: readonly Option[];
  /** What may go on before it is signed, and when; blank at a hold. */
  readonly goOn: string;
  readonly noticeLeftS: number;
  readonly shownDigest: string;
  readonly nonce: string;
  readonly check: string;
}

/** Cards are told apart by the kind of their step. */
export function isHoldCard(card: CardView | null): card is HoldCard {
  return card?.kind === 'hold';
}

export const POINT_WORDS = { hold: 'Hold', witness: 'Witness point', review: 'Review' } as const;

/** Evidence energy by energy, what the signature would allow, and who may give it. */
export function holdCard(step: HoldStep<string>, input: CardInput): HoldCard {
  const { job, around } = input;
  const { definition } = around.compiled;
  const { hold, of } = holdNumber(job, definition, job.step);
  const name = POINT_WORDS[step.point];
  return {
    ...bareCard(step, input),
    hold: hold > 0 ? `${name} ${hold} of ${of}` : name,
    point: step.point,
    criterion: fill(step.criterion, job),
    means: MEANS[step.point],
    evidence: evidenceView(step, input),
    unshown: unshown(step, { ...job, situation: situationNow(job, around.nowMs) }),
    waitsFor: waitsFor(step, input),
    secondReadings: secondReadings(step, input),
    departures: departureLines(input),
    allows: allowed(step, input),
    ...whoMay(step, input),
    dispositions: Object.entries(DISPOSITIONS).map(([value, label]) => ({ value, label })),
    ...goingOn(step, input),
    shownDigest: around.shownDigest,
    nonce: input.nonce,
    check: checkNumber(around.shownDigest),
    act: `Sign ${hold > 0 ? `${name.toLowerCase()} ${hold}` : `the ${name.toLowerCase()}`} on ${job.tag}`,
  };
}

function whoMay(
  step: HoldStep<string>,
  { job, around, people, competent }: CardInput,
): Pick<HoldCard, 'people' | 'seconds' | 'waivers' | 'byRadio'> {
  const work = workBefore(job, around.compiled.definition);
  const option = ({ id, name }: { readonly id: string; readonly name: string }) => ({
    value: id,
    label: name,
  });
  const mayBeSecond = (person: CardInput['people'][number]) =>
    mayNotSign({ ...person, competent: competent.includes(person.id) }, { ...work, way: 'second person' }) ===
    null;
  const hadAHand = [...work.performers, ...work.acknowledgers];
  const mayWaive = ({ id, role }: CardInput['people'][number]) =>
    role === step.waivedBy && !hadAHand.includes(id);
  return {
    people: people.filter((person) => mayNotSign(person, work) === null).map(option),
    seconds: people.filter(mayBeSecond).map(option),
    waivers: step.waivedBy === undefined ? [] : people.filter(mayWaive).map(option),
    byRadio: step.point === 'hold' && workByRadio(step.allows) !== null,
  };
}

function goingOn(step: HoldStep<string>, { job, around }: CardInput): Pick<HoldCard, 'goOn' | 'noticeLeftS'> {
  const noticeS = step.noticeS ?? 0;
  if (step.point === 'hold') return { goOn: '', noticeLeftS: 0 };
  if (step.point === 'review')
    return { goOn: 'Go on while it is looked at; the job does not close before', noticeLeftS: 0 };
  const until = clock(new Date(Date.parse(job.arrivedAt) + noticeS * 1000).toISOString());
  return {
    goOn: `Go on without the witness, who was told and may come until ${until} UTC`,
    noticeLeftS: noticeLeftS(job, { noticeS, nowMs: around.nowMs }),
  };
}

function waitsFor(step: HoldStep<string>, { job }: CardInput): string {
  const once = notReadAgain(step, job);
  const back = job.signing.sentBack.findLast((one) => one.step === job.step && one.acceptedAt === null);
  if (back?.disposition === 'leave')
    return 'Sent back for good: the valve is left as it is. Make safe and stop.';
  return once.length === 0 ? '' : `To be read again by a second person first: ${once.join(', ')}.`;
}

function secondReadings(step: HoldStep<string>, { job }: CardInput): HoldCard['secondReadings'] {
  const places = rowsToReadAgain(step, job).map(({ note }) => note?.place ?? 0);
  return [...new Set(places)].map((place) => ({ place }));
}

/** What did not go the straight way since the last hold, as its signer has to know it. */
function departureLines({ job, around }: CardInput): HoldCard['departures'] {
  const open = openDepartures(job, around.compiled.definition).map(({ answer }) => answer.place);
  const found = openFindings(job).map(({ place, at, person, note }) => ({
    text: `Line ${place}, ${short(person)} ${clock(at)}: ${[sayNote(note), note.words].filter((text) => text !== '').join('. ')}`,
  }));
  const departed = departuresOf(job, around.compiled)
    .filter(({ place }) => open.includes(place))
    .map(({ place, at, person, what, now, reason }) => ({
      text: [`Line ${place}, ${short(person)} ${clock(at)}: ${what}`, now, reason]
        .filter((text) => text !== '')
        .join('. '),
    }));
  return [...departed, ...found];
}

const MEANS = {
  hold: 'The signature allows this, and nothing else',
  witness: 'The witness signs that this was seen',
  review: 'The review accepts this',
} as const;

/** What a signature is that allows no further work. */
const ALLOWS_NOTHING = {
  hold: 'Nothing more: it takes the work as left',
  witness: 'Nothing more: it says that this was seen, and how it was found',
  review: 'Nothing more: it says that this was looked at and accepted',
} as const;

function allowed(step: HoldStep<string>, { job, around }: CardInput): HoldCard['allows'] {
  const locks = Object.values(job.locks).map((lock) => lock.lock);
  const until = new Date(around.nowMs + SIGN_OFF_HOURS * 3_600_000).toISOString();
  const work = step.allows.map((action) => ACTION_CLASSES[action].name).join('; ');
  const air = step.allows.includes('strokeByTestAir');
  return [
    { label: 'work', text: work === '' ? ALLOWS_NOTHING[step.point] : work },
    ...(air
      ? [{ label: 'air', text: 'One regulator in the hand, at most', strong: sayFigure('testAirLimit', job) }]
      : []),
    {
      label: 'locks',
      text:
        locks.length === 0
          ? 'None hang on this job'
          : `${locks.join(', ')} ${step.allows.includes('restoreProcess') ? 'come off in order' : 'stay on'}`,
    },
    ...(step.allows.length > 0
      ? [{ label: 'until', text: `${clock(until)} UTC, or the end of the shift if that is earlier` }]
      : []),
    { label: 'provided', text: fill(step.criterion, job) },
    {
      label: 'rests on',
      text: `${restsOn(step, { job })}, check ${checkNumber(around.shownDigest)}`,
    },
  ];
}
