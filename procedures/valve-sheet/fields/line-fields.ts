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
      kind: 'tag',
      name: 'supplyPoint',
      label: 'Supply cock',
      required: true,
      help: 'Tag of the point where its air is locked off.',
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
