import type { StrokeCurve } from './stroke-curve.ts';
import type { ValveSection } from './valve-section.ts';

/** Invented valves and strokes that the style page shows and the tests of the whole page draw. */
const lockedOut: ValveSection = {
  id: 'valve',
  sentence: 'FV-214 in section: shut, every energy shown safe, the plant live beyond the locks.',
  plugCloses: 'down',
  airMovesStem: 'up',
  flow: 'under',
  actuatorKind: 'diaphragm',
  springHeldBy: 'adjuster',
  device: 'I/P',
  positioner: false,
  openFraction: 0,
  supply: 'safe',
  signal: 'safe',
  spring: 'contained',
  inlet: 'safe',
  outlet: 'safe',
  signalLine: 'capped',
  supplyCock: { shut: true, lock: '14' },
  inletCock: { shut: true, lock: '15' },
  outletCock: { shut: true, lock: '16' },
  inletDrain: { shut: false },
  outletDrain: { shut: false },
  bypass: { shut: false },
  tags: [
    { letter: 'A', name: 'Supply air', state: 'locked', value: '0 psi', proof: 'was 62, T1 09:19' },
    { letter: 'B', name: 'Signal air', state: 'capped', value: '0.0 psi', proof: 'was 7.4, T1 09:24' },
    { letter: 'C', name: 'Spring', state: 'contained', proof: 'adjuster 31.0 mm' },
    { letter: 'D', name: 'Process, inlet side', state: 'locked', value: '0 psi', proof: 'was 88, T1 09:05' },
    { letter: 'E', name: 'Process, outlet side', state: 'locked', value: '0 psi', proof: 'was 41, T1 09:11' },
    { letter: 'F', name: 'Bypass', state: 'open', value: '117 gpm', proof: 'never an isolation' },
  ],
  words: { open: '100 open', shut: '0 shut', travel: 'travel', travelValue: '0.0 %' },
};

const onTestAir: ValveSection = {
  ...lockedOut,
  sentence: 'The valve at half travel on held test air, the process locked.',
  openFraction: 0.5,
  signal: 'held',
  signalLine: 'test gauge',
  tags: lockedOut.tags.map((tag) =>
    tag.letter === 'B'
      ? { letter: 'B', name: 'Test air', state: 'held', value: '9.0 psi', proof: 'in hand, G-07' }
      : tag,
  ),
  words: { ...lockedOut.words, travelValue: '50 %' },
};

const inService: ValveSection = {
  ...lockedOut,
  sentence: 'The valve in service at half travel: air, spring and process live, the bypass shut.',
  openFraction: 0.5,
  supply: 'live',
  signal: 'live',
  spring: 'loaded',
  inlet: 'live',
  outlet: 'live',
  signalLine: 'joined',
  supplyCock: { shut: false },
  inletCock: { shut: false },
  outletCock: { shut: false },
  inletDrain: { shut: true },
  outletDrain: { shut: true },
  bypass: { shut: true },
  tags: [
    { letter: 'A', name: 'Supply air', state: 'live', value: '60 psi', proof: 'gauge G-03 in line' },
    { letter: 'B', name: 'Signal air', state: 'live', value: '9.0 psi', proof: 'gauge G-07' },
    { letter: 'C', name: 'Spring', state: 'loaded', proof: 'adjuster 28.5 mm' },
    { letter: 'D', name: 'Process, inlet side', state: 'live', value: '88 psi', proof: 'PI-214A' },
    { letter: 'E', name: 'Process, outlet side', state: 'live', value: '41 psi', proof: 'PI-214B' },
    { letter: 'F', name: 'Bypass', state: 'shut', proof: 'tried by hand, 13:04' },
  ],
  words: { ...lockedOut.words, travelValue: '50 %' },
};

/** Where the spring alone holds the valve. */
function withoutAir({ plugCloses, airMovesStem }: Pick<ValveSection, 'plugCloses' | 'airMovesStem'>) {
  const airOpens = (plugCloses === 'down') === (airMovesStem === 'up');
  return {
    openFraction: airOpens ? 0 : 1,
    words: { ...lockedOut.words, travelValue: airOpens ? '0.0 %' : '100.0 %' },
  };
}

/** All four valves with each filling, flow both ways, then the kinds of actuator that stand beside them. */
export const VALVE_EXAMPLES: readonly { readonly name: string; readonly valve: ValveSection }[] = [
  ...(['down', 'up'] as const).flatMap((plugCloses) =>
    (['up', 'down'] as const).flatMap((airMovesStem) =>
      [lockedOut, onTestAir, inService].map((filling, at) => ({
        name: `plug closes ${plugCloses}, air moves the stem ${airMovesStem}, ${['locked', 'test air', 'in service'][at]}`,
        valve: {
          ...filling,
          ...(at === 0 ? withoutAir({ plugCloses, airMovesStem }) : {}),
          id: `valve-${plugCloses}-${airMovesStem}-${at}`,
          plugCloses,
          airMovesStem,
          flow: at === 2 && plugCloses === 'up' ? ('over' as const) : filling.flow,
        },
      })),
    ),
  ),
  {
    name: 'positioner, spring held by the case and released, proof lost',
    valve: {
      ...lockedOut,
      id: 'valve-positioner',
      springHeldBy: 'case',
      spring: 'released',
      positioner: true,
      device: 'POS',
      outlet: 'live',
      tags: lockedOut.tags.map((tag) => {
        if (tag.letter === 'C') return { ...tag, state: 'released', proof: '11 turns, T3 09:02' };
        return tag.letter === 'E'
          ? { ...tag, state: 'prove-again', value: '', proof: 'drain dribbles, 10:12' }
          : tag;
      }),
    },
  },
  {
    name: 'piston without a spring, no bypass, open',
    valve: {
      ...inService,
      id: 'valve-piston',
      actuatorKind: 'piston',
      springHeldBy: 'no spring',
      spring: 'absent',
      bypass: null,
      openFraction: 1,
      airMovesStem: 'down',
      tags: [
        ...inService.tags.filter(({ letter }) => letter !== 'C' && letter !== 'F'),
        { letter: 'G', name: 'Trapped air', state: 'absent', proof: 'T1 08:41' },
      ],
    },
  },
];

function points(...pairs: readonly (readonly [signal: number, travel: number])[]) {
  return pairs.map(([signal, travel]) => ({ signal, travel }));
}

const asFound: StrokeCurve = {
  title: 'Stroke, as found',
  goingUp: points([3, 0], [6, 18.3], [9, 43.1], [12, 67.8], [15, 93.2]),
  comingDown: points([15, 93.2], [12, 75.2]),
  uncounted: { signal: 9, travel: 50, direction: 'down', text: '9 psi, 50 %' },
  wanted: [
    { signal: 3, travel: 0 },
    { signal: 15, travel: 100 },
  ],
  band: 5,
  signalTicks: [3, 6, 9, 12, 15],
  travelTicks: [0, 25, 50, 75, 100],
  friction: { travel: 72, fromSignal: 12.5, toSignal: 11.62, value: '0.88 psi', word: 'apart' },
  words: {
    signalAxis: 'signal, psi',
    travelAxis: 'travel, %',
    band: 'band, 5 % each way',
    goingUp: 'going up',
    comingDown: 'coming down',
  },
  sentence: 'Travel over signal as found: going up it lies below the band, coming down inside it.',
};

export const CURVE_EXAMPLES: readonly StrokeCurve[] = [
  asFound,
  {
    title: 'Stroke, as left',
    form: 'record',
    goingUp: points([3, 13.4], [4.6, 13.4], [6, 21.9], [9, 46.8], [12, 71.7], [15, 96.9]),
    comingDown: points([15, 96.9], [12, 78.6], [9, 53.4], [6, 28.3], [3, 13.4]),
    wanted: asFound.wanted,
    band: 5,
    signalTicks: asFound.signalTicks,
    travelTicks: asFound.travelTicks,
    seat: { travel: 13.4, untilSignal: 4.6, word: 'seated' },
    words: asFound.words,
    sentence: 'Travel over signal as left: inside the band, seated below 4.6 psi.',
  },
  {
    title: 'Air to close, kPa',
    goingUp: points([20, 100], [40, 81], [60, 57], [80, 32], [100, 7]),
    comingDown: points([100, 7], [80, 25], [60, 50], [40, 75], [20, 99]),
    wanted: [
      { signal: 20, travel: 100 },
      { signal: 100, travel: 0 },
    ],
    band: 5,
    signalTicks: [20, 40, 60, 80, 100],
    travelTicks: asFound.travelTicks,
    friction: { travel: 50, fromSignal: 65.6, toSignal: 60, value: '5.6 kPa', word: 'apart' },
    words: { ...asFound.words, signalAxis: 'signal, kPa' },
    sentence: 'Travel over signal of an air-to-close valve: travel falls as the signal rises.',
  },
];
