/** A valve in service that is looked at and read: the operator's consent, nothing opened, nothing moved by us. */
import type { EnergyControl, Step } from '../vocabulary.ts';
import { OPERATOR, yesNo } from './common.ts';
import { putRight } from './finding.ts';

export function consentControl(use: string): EnergyControl {
  return {
    use,
    isolation: 'None: the valve stays in service, and nothing of it is opened or moved by hand.',
    locks: 'None are hung, and a lock that hangs is left alone. Local rules and the site permit come first.',
    verification: 'The operator says yes before anything is touched, and once more when it is over.',
  };
}

export const CONSENT_SAFE_AT = ['haltLook'] as const;

type Own = 'lockedByOthers' | 'notAgreed' | 'needs' | 'noLock' | 'consent' | 'haltLook' | 'notStarted';

/** Needs, a look for locks, and consent. */
export function takeForLook<const Next extends string>({
  title,
  bring,
  next,
}: {
  readonly title: string;
  readonly bring: readonly string[];
  readonly next: Next;
}): Readonly<Record<Own, Step<Own | Next | 'nextPerson'>>> {
  return {
    needs: {
      kind: 'instruction',
      phase: 'ready',
      title,
      why: 'What is missing is fetched later, with the work half done and the valve out of use.',
      do: [
        'Read the maker’s manual for this valve: it outranks this card.',
        ...bring,
        'Have the site permit in hand: local rules and the site lockout come first.',
      ],
      next: { to: 'noLock' },
      makeSafe: 'notStarted',
    },
    noLock: {
      kind: 'reading',
      phase: 'ready',
      title: 'Look whether anybody has locked {tag} or works on it',
      why: 'A lock is somebody’s life: what it holds is not touched.',
      asks: [yesNo('notLocked', 'No lock and no tag hangs on its points, nobody works on it')],
      judge: { rule: 'allYes', with: { fields: 'notLocked' } },
      ways: { yes: { to: 'consent' }, no: { to: 'lockedByOthers' } },
      makeSafe: 'notStarted',
    },
    lockedByOthers: putRight<Own>({
      phase: 'ready',
      title: 'Somebody has locked {tag}, or works on it',
      how: 'Only the owner takes a lock off. Find out who it is and how long it takes.',
      again: ['They are done, and their lock is off: look again', 'noLock'],
      stop: ['They work on: come back later', 'notStarted'],
      makeSafe: 'notStarted',
    }),
    consent: {
      kind: 'reading',
      phase: 'ready',
      title: 'Ask the operator before anything is touched',
      how: 'Say what will be read and what could happen: a valve may twitch when somebody leans on its tubing.',
      why: 'The operator answers for the process, and must know why the valve may twitch.',
      asks: [
        { name: 'operator', label: OPERATOR, type: 'text' },
        yesNo('consentGiven', 'The operator agrees, and knows who is at the valve'),
      ],
      judge: { rule: 'allYes', with: { fields: 'consentGiven' } },
      ways: { yes: { to: next, sets: { consent: 'given' } }, no: { to: 'notAgreed' } },
      makeSafe: 'notStarted',
    },
    notAgreed: putRight<Own>({
      phase: 'ready',
      title: 'The operator does not agree',
      how: 'Ask when it suits, and what may not be touched meanwhile.',
      again: ['Agreed now: write it down', 'consent'],
      stop: ['Not now: come back later', 'notStarted'],
      makeSafe: 'notStarted',
    }),
    haltLook: {
      kind: 'question',
      phase: 'ready',
      title: 'Stopped: hands off, the valve is in service',
      choices: {
        goOn: { label: 'Go on: ask the operator again', to: 'consent' },
        leave: { label: 'Leave it so', to: 'nextPerson' },
      },
      makeSafe: 'haltLook',
    },
    notStarted: {
      kind: 'end',
      phase: 'ready',
      title: 'Stopped before anything was touched',
      closes: 'stopped',
    },
  } as Readonly<Record<Own, Step<Own | Next | 'nextPerson'>>>;
}

type Back = 'notAsBefore' | 'nextPerson' | 'tellOver' | 'done';

/** Word to the next person, and to the operator. */
export function lookIsOver(): Readonly<Record<Back, Step<Back | 'haltLook'>>> {
  const phase = 'return';
  return {
    nextPerson: {
      kind: 'reading',
      phase,
      title: 'Write down what the next person wants to know',
      why: 'Whoever opens the next job on this valve reads it first.',
      asks: [{ name: 'nextNotes', label: 'What was found, what to watch', type: 'text' }],
      judge: { rule: 'record' },
      ways: { kept: { to: 'tellOver' } },
      makeSafe: 'haltLook',
    },
    tellOver: {
      kind: 'reading',
      phase,
      title: 'Tell the operator that it is over, and what was found',
      why: 'Until then the operator keeps the process ready for you.',
      asks: [
        { name: 'takenBackBy', label: OPERATOR, type: 'text' },
        yesNo('toldOver', 'The operator knows, and the valve controls as before'),
      ],
      judge: { rule: 'allYes', with: { fields: 'toldOver' } },
      ways: { yes: { to: 'done', sets: { consent: 'none' } }, no: { to: 'notAsBefore' } },
      makeSafe: 'haltLook',
    },
    notAsBefore: {
      kind: 'question',
      phase,
      title: 'The valve does not control as before, or the operator was not reached',
      how: 'What was touched goes back: gauge cocks, tubing leaned on, a cover. The operator hears of it before anybody goes away.',
      choices: {
        again: { label: 'Put right, or reached: tell them again', to: 'tellOver' },
        fault: {
          label: 'The operator knows that it does not; its fault is looked for next',
          to: 'done',
          sets: { consent: 'none' },
          reason: true,
          comesNext: 'find-the-fault',
        },
      },
      makeSafe: 'haltLook',
    },
    done: { kind: 'end', phase, title: 'The valve was looked at', closes: 'done' },
  };
}
