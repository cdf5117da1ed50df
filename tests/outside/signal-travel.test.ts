import {
  convertSignal,
  expectedTravel,
  percentOfRange,
  relativeFlowCoefficient,
  signalAtPercent,
  splitRange,
} from '../../procedures/calculations/signal-travel.ts';
import { each, type Given, inNamedUnits, runCases } from './cases.ts';

const ranges = {
  '3-15 psi': { low: 3, high: 15 },
  '3-9 psi': { low: 3, high: 9 },
  '9-15 psi': { low: 9, high: 15 },
} as const;

/** `air-to-close 3-15 psi` and `reverse 3-9 psi` mean the same kind of valve. */
function valve(name: string, words: string) {
  const range = Object.entries(ranges).find(([text]) => words.endsWith(text))?.[1];
  if (range === undefined) throw new Error(`no range in ${words}`);
  const airAction = /^(air-to-close|reverse) /.test(words)
    ? ('air-to-close' as const)
    : ('air-to-open' as const);
  return { name, rangeLow: range.low, rangeHigh: range.high, airAction };
}

function percent(given: Given) {
  const unit = ['psi', 'mA', 'kPa', 'bar'].find((one) => given.has(`signal_${one}`));
  const read = percentOfRange({
    signal: given.si(`signal_${unit}`),
    rangeLow: given.si(`range_low_${unit}`),
    rangeHigh: given.si(`range_high_${unit}`),
  });
  if (given.has('clamp')) given.notNeeded('clamp');
  return { percent: read.percent };
}

function pair(given: Given) {
  const [a, b] = splitRange({
    signal: given.number('signal_psi'),
    valves: [valve('A', given.text('valve_A')), valve('B', given.text('valve_B'))],
  });
  return {
    valve_A_percent_open: a?.openPercentClamped ?? null,
    valve_B_percent_open: b?.openPercentClamped ?? null,
  };
}

function travel(given: Given) {
  const { openPercent, travelM } = expectedTravel({
    signal: given.si('signal_mA'),
    rangeLow: given.si('range_low_mA'),
    rangeHigh: given.si('range_high_mA'),
    airAction: given.text('action') === 'direct' ? 'air-to-open' : 'air-to-close',
    ratedTravelM: given.si('rated_travel_mm'),
  });
  return { percent_travel: openPercent, ...inNamedUnits({ travel_mm: travelM }) };
}

function converted(given: Given) {
  const signalPa = given.si('signal_psi');
  return inNamedUnits({ signal_kPa: signalPa, signal_bar: signalPa });
}

function subrange(given: Given) {
  const { percentClamped } = percentOfRange({
    signal: given.si('signal_mA'),
    rangeLow: given.si('valve_range_low_mA'),
    rangeHigh: given.si('valve_range_high_mA'),
  });
  return { percent_clamped: percentClamped };
}

function characteristic(given: Given) {
  return {
    relative_flow_coefficient: relativeFlowCoefficient({
      characteristic: given.text('characteristic') === 'linear' ? 'linear' : 'equal percentage',
      rangeability: given.number('rangeability'),
      relativeTravel: given.number('relative_travel'),
    }),
  };
}

runCases('signal-travel', {
  ...each(['sig-r01', 'sig-r02', 'sig-r03', 'sig-r04', 'sig-r05', 'sig-r06', 'sig-r21'], percent),
  'sig-r07': (given) => {
    const { percent: flowPercent } = percentOfRange({
      signal: given.si('flow_gpm'),
      rangeLow: given.si('flow_low_gpm'),
      rangeHigh: given.si('flow_high_gpm'),
    });
    const signalPa = signalAtPercent({
      percent: flowPercent,
      rangeLow: given.si('range_low_psi'),
      rangeHigh: given.si('range_high_psi'),
    });
    return { percent: flowPercent, ...inNamedUnits({ signal_psi: signalPa }) };
  },
  ...each(['sig-r08', 'sig-r09', 'sig-r10', 'sig-r11', 'sig-r20'], pair),
  ...each(['sig-r12', 'sig-r13'], converted),
  'sig-r14': (given) => {
    const signal = given.si('pressure_kPa');
    const psi = 6894.757293168361;
    return {
      percent_on_20_100_kPa: percentOfRange({ signal, rangeLow: 20000, rangeHigh: 100000 }).percent,
      percent_on_3_15_psi: percentOfRange({ signal, rangeLow: 3 * psi, rangeHigh: 15 * psi }).percent,
    };
  },
  ...each(['sig-r15', 'sig-r16'], travel),
  'sig-r17': (given) => ({
    out_psi: convertSignal({
      signal: given.si('signal_mA'),
      inLow: given.si('in_low_mA'),
      inHigh: given.si('in_high_mA'),
      outLow: given.number('out_low_psi'),
      outHigh: given.number('out_high_psi'),
    }),
  }),
  ...each(['sig-r18', 'sig-r19'], subrange),
  ...each(['sig-r22', 'sig-r23'], characteristic),
});
