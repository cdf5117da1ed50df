import { PRACTICE, type Term, term } from '../term.ts';

/** What keeps hands whole. */
export const SAFETY_TERMS: readonly Term[] = [
  term('hold-point', {
    words: ['hold point', 'hold', 'sign off', 'signature', 'who signs', 'who can sign'],
    says: 'Nobody passes until each energy is shown safe and another person, who had no hand in the work, signs or sends back. A reply cannot sign it.',
    source: PRACTICE,
  }),
  term('bypass', {
    words: ['bypass', 'bypass valve'],
    says: 'The way round the valve that keeps the process going. It isolates nothing: it is a record, never an isolation.',
    numbers: ['bypassPoint'],
    source: PRACTICE,
  }),
  term('isolation-point', {
    words: ['isolation point', 'isolation points', 'block valve', 'block valves', 'where is it isolated'],
    says: 'A cock, block valve or breaker with a tag, where a lock is hung. Its state belongs to the site, not to one job.',
    numbers: ['supplyPoint', 'inletPoint', 'outletPoint'],
    source: PRACTICE,
  }),
  term('locked-tagged-tried', {
    words: [
      'locked tagged tried',
      'lockout',
      'lock and tag',
      'lock',
      'tried',
      'lockout tagout',
      'locked out',
    ],
    says: 'An energy is safe when its point is locked and tagged, and a reading or an observation has shown that nothing is left. The lock is taken off by whoever hung it.',
    source: PRACTICE,
  }),
  term('zero', {
    words: ['safe limit', 'zero', 'counts as zero', 'no pressure', 'how low', 'shown safe'],
    says: 'A zero counts on a gauge that this job saw alive there, with its uncertainty inside the limit; otherwise the vent is cracked and watched twice.',
    numbers: ['supplySafeLimit', 'signalSafeLimit', 'processSafeLimit'],
    source: PRACTICE,
  }),
  term('held', {
    words: ['held', 'held air', 'held test air', 'hold the air'],
    says: 'Test air from one regulator in your hand, the controller line off and capped, the pressure read twice and steady. It ends at the next change of air.',
    numbers: ['testAirLimit'],
    source: PRACTICE,
  }),
  term('park', {
    words: ['parking', 'park a job', 'parked'],
    says: 'The job waits as it stands: locks stay on. What was shown safe is shown again before hands go in.',
    source: PRACTICE,
  }),
  term('make-safe', {
    words: ['make safe and stop', 'making safe', 'stopping'],
    says: 'Stops the work and takes the way to safe. It is open on every card, and nothing can stand against it.',
    source: PRACTICE,
  }),
];
