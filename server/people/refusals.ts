import { Refusal } from '../../safety/refusal.ts';

export function nameInUse(name: string): Refusal {
  return new Refusal({
    kind: 'conflict',
    code: 'PPL-005',
    what: `Somebody is called "${name}" already.`,
    kept: 'What you typed stands in the form; nothing was recorded.',
    next: 'Tell them apart, with a number for example.',
    fields: { name: 'This name is in use.' },
  });
}

export function nobodyOfThatId(id: string): Refusal {
  return new Refusal({
    kind: 'not-found',
    code: 'PPL-006',
    what: `Nobody with the id ${id} works here.`,
    kept: 'Nothing was recorded.',
    next: 'Look in the list of people.',
  });
}

export function codeIsUsed(): Refusal {
  return new Refusal({
    kind: 'conflict',
    code: 'PPL-007',
    what: 'The code that this form gave has been used.',
    kept: 'The PIN that the person chose with it stands.',
    next: 'Load the page again if they need another code.',
  });
}

export function alreadySetUp(): Refusal {
  return new Refusal({
    kind: 'conflict',
    code: 'PPL-008',
    what: 'This site is set up already.',
    kept: 'Nothing was recorded.',
    next: 'Sign in. An engineer or supervisor adds people.',
  });
}

export function notYourself(): Refusal {
  return new Refusal({
    kind: 'not-allowed',
    code: 'PPL-009',
    what: 'Nobody does this for themselves.',
    kept: 'Nothing was recorded.',
    next: 'Ask another supervisor or engineer.',
  });
}

export function lastWhoAdds(): Refusal {
  return new Refusal({
    kind: 'conflict',
    code: 'PPL-012',
    what: 'Nobody else could then add people or give a new code.',
    kept: 'Nothing was recorded.',
    next: 'Add another supervisor or engineer first.',
  });
}

export function thatIsTheCode(): Refusal {
  return new Refusal({
    kind: 'not-allowed',
    code: 'PPL-004',
    what: 'That is the one-time code, not a PIN.',
    kept: 'The code still holds.',
    next: 'Choose your own PIN with it first, on the page "First sign-in".',
  });
}
