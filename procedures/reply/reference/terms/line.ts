import { PRACTICE, type Term, term } from '../term.ts';

/** Where the valve stands, what flows through it, and what its sheet allows. */
export const LINE_TERMS: readonly Term[] = [
  term('case-rating', {
    words: ['case rating', 'pressure on the case', 'maximum pressure', 'max pressure', 'rating of the case'],
    says: 'The most air that the actuator case is built for. Test air stays below it: the highest signal and 5 psi, where that is less. A blank rating counts as 40 psi.',
    numbers: [{ label: 'case rating', sheet: 'caseRatingPa', dimension: 'pressure' }, 'testAirLimit'],
    source: PRACTICE,
  }),
  term('tolerances', {
    words: ['tolerance', 'tolerances', 'allowed', 'limits of the sheet'],
    says: 'What its sheet allows. A reading too near its limit is judged too close, not inside.',
    numbers: [
      { label: 'error at most', sheet: 'errorTolerancePercent', dimension: 'percent' },
      { label: 'hysteresis at most', sheet: 'hysteresisTolerancePercent', dimension: 'percent' },
      { label: 'repeatability at most', sheet: 'repeatabilityTolerancePercent', dimension: 'percent' },
      { label: 'each end of the bench set within', sheet: 'benchSetTolerancePa', dimension: 'pressure' },
    ],
    source: PRACTICE,
    calculation: 'verdict',
  }),
  term('process', {
    words: ['process fluid', 'fluid', 'medium', 'in the pipe', 'in the line', 'process pressure', 'process'],
    says: 'What stands at the valve. It can be behind the plug and in the body when a drain shows nothing.',
    numbers: [
      { label: 'fluid', sheet: 'processFluid', dimension: 'text' },
      { label: 'what it does to people', sheet: 'fluidHarm', dimension: 'text' },
      { label: 'inlet', sheet: 'processInletPa', dimension: 'pressure' },
      { label: 'outlet', sheet: 'processOutletPa', dimension: 'pressure' },
    ],
    source: PRACTICE,
  }),
  term('temperature', {
    words: ['temperature', 'hot', 'how hot', 'process temperature', 'too hot'],
    says: 'The body stays hot long after the flow has stopped. Measure it before hands go near.',
    numbers: [{ label: 'process', sheet: 'processTemperatureC', dimension: 'temperature' }, 'safeTouch'],
    source: PRACTICE,
  }),
  term('location', {
    words: ['where is the valve', 'location', 'where does it stand', 'where to find it'],
    says: 'Where the sheet says it is. Read its tag before the first tool.',
    numbers: [
      { label: 'place', sheet: 'location', dimension: 'text' },
      { label: 'service', sheet: 'service', dimension: 'text' },
    ],
    source: PRACTICE,
  }),
  term('supply-cock', {
    words: ['supply cock', 'cock', 'which cock', 'air cock'],
    says: 'The cock that shuts the air of this valve off. Read its label before turning it; another feed has a cock of its own.',
    numbers: ['supplyPoint'],
    source: PRACTICE,
  }),
  term('inlet-valve', {
    words: ['inlet valve', 'inlet block valve', 'upstream block valve'],
    says: 'The block valve on the side that the process comes from.',
    numbers: ['inletPoint'],
    source: PRACTICE,
  }),
  term('outlet-valve', {
    words: ['outlet valve', 'outlet block valve', 'downstream block valve'],
    says: 'The block valve on the side that the process goes to. Pressure may stand behind it too.',
    numbers: ['outletPoint'],
    source: PRACTICE,
  }),
  term('rings', {
    words: ['packing rings', 'rings', 'how many rings', 'number of rings'],
    says: 'How many rings of packing the sheet gives. Count the ones that come out: one left behind is the usual leak.',
    numbers: [
      { label: 'rings', sheet: 'packingRings', dimension: 'text' },
      { label: 'kind', sheet: 'packingKind', dimension: 'text' },
    ],
    source: PRACTICE,
  }),
  term('spring-force', {
    words: ['spring force', 'force of the spring', 'spring energy', 'spring'],
    says: 'The spring stays loaded with the air gone. It is let out by its long bolts or its adjuster, never by the case.',
    numbers: ['energySpring'],
    source: PRACTICE,
    calculation: 'spring-energy',
  }),
  term('live', {
    words: ['live', 'energy', 'energies'],
    says: 'Live is what can hurt and is not yet made safe: spring, air, process, electricity, weight, heat. It stays live until a reading or a look has shown otherwise.',
    source: PRACTICE,
  }),
];
