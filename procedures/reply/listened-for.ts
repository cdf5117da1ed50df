/** What people write and the reply line listens for, as it comes: none of it stands on a screen. */

/** Words that mean the same act on every card, in the languages of the screen (common practice, no source). */
export const COMMANDS = {
  back: ['back', 'go back', 'previous', 'one back', 'last card', 'atrás', 'volver'],
  'make-safe': [
    'stop',
    'make safe',
    'make safe and stop',
    'halt',
    'stop work',
    'stop now',
    'stop it',
    'please stop',
    'stop please',
    'stop the work',
    'stop the job',
    'emergency',
    'make it safe',
    'abort',
    'parar',
    'pare',
    'dejar seguro',
    'dejar seguro y parar',
  ],
  park: ['park', 'park it', 'park this job', 'leave', 'leave it', 'leave it for later', 'later', 'pause'],
  'not sure': [
    'not sure',
    'unsure',
    'i am not sure',
    "i'm not sure",
    'i does not know',
    'does not know',
    'no idea',
    'no clue',
    'i cannot tell',
    'cannot tell',
    'i cannot read it',
    'cannot read it',
    'i cannot see it',
    'cannot see it',
    'dunno',
    'i dunno',
    'does not remember',
    'help',
    'maybe',
    'no sé',
    'no lo sé',
    'no estoy seguro',
    'no estoy segura',
  ],
} as const;

/** What says that a plain card is done (common practice, no source). */
export const DONE = [
  'done',
  'all done',
  'it is done',
  'yes',
  'ok',
  'okay',
  'ready',
  'finished',
  'confirmed',
  'agree',
  'go on',
  'next',
];
/** Before a number, these say that it was not read (common practice, no source). */
export const HEDGES =
  'about|around|approx|approximately|roughly|nearly|almost|circa|ca|over|under|above|below|more than|less than|at least|at most|up to|some|say|maybe|perhaps|probably|possibly|likely|guess|think|should|supposed|would|must|or|ish|between|not|no wait|yesterday|earlier|estimated'.split(
    '|',
  );
