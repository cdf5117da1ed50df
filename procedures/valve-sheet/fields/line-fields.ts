import { POSSIBLE, type Section } from '../field.ts';

const PRACTICE = 'common practice, no source';

export const tolerancesSection: Section = {
  id: 'tolerances',
  title: 'Tolerances',
  fields: [
    {
      kind: 'quantity',
      name: 'errorTolerancePercent',
      label: 'Error, each way',
      dimension: 'percent',
      possible: POSSIBLE.tolerance,
      usual: { text: '5 %', mark: PRACTICE },
      help: 'Of rated travel.',
    },
    {
      kind: 'quantity',
      name: 'hysteresisTolerancePercent',
      label: 'Hysteresis and dead band',
      dimension: 'percent',
      possible: POSSIBLE.tolerance,
      usual: { text: '10 %', mark: PRACTICE },
      help: 'Of rated travel.',
    },
    {
      kind: 'quantity',
      name: 'repeatabilityTolerancePercent',
      label: 'Repeatability',
      dimension: 'percent',
      possible: POSSIBLE.tolerance,
      usual: { text: '2 %', mark: PRACTICE },
      help: 'Of rated travel, several strokes to the same signal.',
    },
    {
      kind: 'quantity',
      name: 'benchSetTolerancePa',
      label: 'Bench set, each end',
      dimension: 'pressure',
      possible: POSSIBLE.airTolerance,
      usual: { text: '0.25 psi', mark: PRACTICE },
    },
    {
      kind: 'quantity',
      name: 'frictionMaxN',
      label: 'Friction each way, at most',
      dimension: 'force',
      possible: { aboveSi: 0, atMostSi: POSSIBLE.force.atMostSi },
      help: 'Of the whole stem, as a stroke reads it. Blank: no limit.',
    },
    {
      kind: 'quantity',
      name: 'strokeOpenMaxS',
      label: 'Time to open, at most',
      dimension: 'time',
      possible: POSSIBLE.strokeTime,
      help: 'From end to end on its own air. Blank: no limit.',
    },
    {
      kind: 'quantity',
      name: 'strokeShutMaxS',
      label: 'Time to shut, at most',
      dimension: 'time',
      possible: POSSIBLE.strokeTime,
      help: 'From end to end on its own air. Blank: no limit.',
    },
  ],
};

export const lineSection: Section = {
  id: 'line',
  title: 'The line it stands in',
  fields: [
    { kind: 'text', name: 'processFluid', label: 'Fluid', required: true },
    {
      kind: 'quantity',
      name: 'processInletPa',
      label: 'Inlet pressure',
      dimension: 'pressure',
      possible: POSSIBLE.process,
      required: true,
    },
    {
      kind: 'quantity',
      name: 'processOutletPa',
      label: 'Outlet pressure',
      dimension: 'pressure',
      possible: POSSIBLE.process,
      required: true,
    },
    {
      kind: 'quantity',
      name: 'processTemperatureC',
      label: 'Temperature',
      dimension: 'temperature',
      possible: POSSIBLE.temperature,
      required: true,
    },
    {
      kind: 'choice',
      name: 'fluidHarm',
      label: 'Fluid can',
      help: 'The worst of them.',
      choices: [
        { value: 'none', label: 'do no harm' },
        { value: 'scalding', label: 'burn or freeze' },
        { value: 'corrosive', label: 'eat skin' },
        { value: 'flammable', label: 'catch fire' },
        { value: 'toxic', label: 'poison' },
      ],
    },
    {
      kind: 'choice',
      name: 'processIsolation',
      label: 'Line is shut off by',
      blank: 'not known',
      help: 'On the worse side. By the categories of published guidance (HSG253): I, II, II with care, III.',
      choices: [
        { value: 'positive', label: 'a blank, or pipe taken off' },
        { value: 'double block and bleed', label: 'two valves and a bleed' },
        { value: 'block and bleed', label: 'one valve and a bleed' },
        { value: 'block only', label: 'one valve, not tried' },
      ],
    },
    {
      kind: 'text',
      name: 'isolationReference',
      label: 'Risk assessment',
      help: 'Number of the one that a lesser shut-off rests on.',
    },
    {
      kind: 'yes or no',
      name: 'heatTracing',
      label: 'Tracing or jacket',
      help: 'Keeps the body hot after the process is gone.',
    },
    {
      kind: 'count',
      name: 'electricalV',
      label: 'Highest voltage on it, V',
      atMost: 1000,
      help: 'Positioner, solenoid, switches, heating. Blank: nothing electrical.',
    },
    {
      kind: 'yes or no',
      name: 'tripFunction',
      label: 'Part of a trip',
      help: 'A safety function that is bridged while it is worked on.',
    },
    {
      kind: 'tag',
      name: 'supplyPoint',
      label: 'Supply cock',
      required: true,
      help: 'Tag of the point where its air is locked off.',
    },
    {
      kind: 'tag',
      name: 'secondSupplyPoint',
      label: 'Cock of the second feed',
      help: 'Blank: there is no second feed.',
    },
    {
      kind: 'tag',
      name: 'electricalPoint',
      label: 'Breaker',
      help: 'Blank: nothing electrical, or unplugged at the valve.',
    },
    { kind: 'tag', name: 'inletPoint', label: 'Inlet block valve', help: 'Blank: the line has none.' },
    { kind: 'tag', name: 'outletPoint', label: 'Outlet block valve', help: 'Blank: the line has none.' },
    {
      kind: 'tag',
      name: 'bypassPoint',
      label: 'Bypass valve',
      help: 'Blank: the line has none. A bypass is never an isolation.',
    },
  ],
};

export const notesSection: Section = {
  id: 'notes',
  title: 'For the next person',
  fields: [
    {
      kind: 'long text',
      name: 'notes',
      label: 'Notes',
      help: 'What is not obvious: where the cock hides, what was left as it is.',
    },
  ],
};
