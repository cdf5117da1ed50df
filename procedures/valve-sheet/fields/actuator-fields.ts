import { POSSIBLE, type Section } from '../field.ts';

const UP_OR_DOWN = [
  { value: 'down', label: 'down' },
  { value: 'up', label: 'up' },
] as const;

export const valveSection: Section = {
  id: 'valve',
  title: 'Valve',
  fields: [
    { kind: 'tag', name: 'tag', label: 'Tag', required: true, help: 'As on the plate, for example FV-214.' },
    { kind: 'text', name: 'service', label: 'Service', required: true, help: 'What it does in the plant.' },
    { kind: 'text', name: 'location', label: 'Where it stands', required: true },
    {
      kind: 'choice',
      name: 'units',
      label: 'Units',
      help: 'What its people read it in. A number may still be written with another unit.',
      choices: [
        { value: 'us', label: 'psi, in, lbf, Cv' },
        { value: 'si', label: 'kPa, mm, N, Kv' },
      ],
    },
  ],
};

export const movesSection: Section = {
  id: 'moves',
  title: 'Which way it moves',
  fields: [
    {
      kind: 'choice',
      name: 'plugCloses',
      label: 'Plug closes moving',
      choices: UP_OR_DOWN,
      help: 'Decides which way the stem is turned for seating.',
    },
    {
      kind: 'choice',
      name: 'airMovesStem',
      label: 'Air moves the stem',
      choices: UP_OR_DOWN,
      help: 'Air above the diaphragm pushes it down, air below lifts it up.',
    },
    {
      kind: 'choice',
      name: 'airAction',
      label: 'Air action on the plate',
      blank: 'not on the plate: work it out',
      choices: [
        { value: 'air-to-open', label: 'air to open' },
        { value: 'air-to-close', label: 'air to close' },
      ],
    },
    {
      kind: 'choice',
      name: 'failPosition',
      label: 'On loss of air it',
      blank: 'not on the plate: work it out',
      choices: [
        { value: 'shut', label: 'shuts' },
        { value: 'open', label: 'opens' },
        { value: 'stays', label: 'stays where it is' },
      ],
    },
  ],
};

export const actuatorSection: Section = {
  id: 'actuator',
  title: 'Actuator and spring',
  fields: [
    {
      kind: 'choice',
      name: 'actuatorKind',
      label: 'Actuator',
      choices: [
        { value: 'diaphragm', label: 'diaphragm' },
        { value: 'piston', label: 'piston' },
      ],
    },
    {
      kind: 'choice',
      name: 'springHeldBy',
      label: 'Spring held by',
      help: 'Held by the case: it is loaded until the last case bolt is off.',
      choices: [
        { value: 'adjuster', label: 'an adjuster' },
        { value: 'case', label: 'the case' },
        { value: 'no spring', label: 'no spring' },
      ],
    },
    {
      kind: 'quantity',
      name: 'effectiveAreaM2',
      label: 'Effective area',
      dimension: 'area',
      possible: POSSIBLE.area,
      required: true,
      help: 'Of the diaphragm at mid travel, or of the piston.',
    },
    {
      kind: 'quantity',
      name: 'travelM',
      label: 'Rated travel',
      dimension: 'length',
      possible: POSSIBLE.travel,
      required: true,
    },
    {
      kind: 'quantity',
      name: 'benchSetLowPa',
      label: 'Bench set, low end',
      dimension: 'pressure',
      possible: POSSIBLE.air,
      required: true,
      help: 'Where the stem starts to move with no process on.',
    },
    {
      kind: 'quantity',
      name: 'benchSetHighPa',
      label: 'Bench set, high end',
      dimension: 'pressure',
      possible: POSSIBLE.air,
      required: true,
      help: 'Where it has made its full travel with no process on.',
    },
    {
      kind: 'quantity',
      name: 'springRateNPerM',
      label: 'Spring rate',
      dimension: 'forcePerLength',
      possible: POSSIBLE.springRate,
      help: 'Blank: worked out from bench set, travel and area.',
    },
    {
      kind: 'quantity',
      name: 'caseRatingPa',
      label: 'Case rating',
      dimension: 'pressure',
      possible: { ...POSSIBLE.air, atLeastSi: 1e4 },
      help: 'Blank: at most 40 psi is put on the case (common practice, no source).',
    },
    {
      kind: 'yes or no',
      name: 'handwheel',
      label: 'Handwheel',
      help: 'A handwheel that is not neutral hides the true travel.',
    },
    {
      kind: 'yes or no',
      name: 'volumeTank',
      label: 'Tank or booster',
      help: 'Keeps air after the supply is shut.',
    },
    {
      kind: 'quantity',
      name: 'tankVolumeM3',
      label: 'Volume of the tank',
      dimension: 'volume',
      possible: POSSIBLE.volume,
      help: 'Blank: no tank, or not known.',
    },
    {
      kind: 'yes or no',
      name: 'lockUp',
      label: 'Lock-up relay',
      help: 'Shuts the actuator’s air in when the supply fails.',
    },
    {
      kind: 'quantity',
      name: 'actuatorMassKg',
      label: 'Weight of the actuator',
      dimension: 'mass',
      possible: POSSIBLE.mass,
      help: 'What the lifting gear must hold. Blank: not known.',
    },
  ],
};

export const signalSection: Section = {
  id: 'signal',
  title: 'Signal and supply',
  fields: [
    {
      kind: 'quantity',
      name: 'signalLowPa',
      label: 'Signal, low end',
      dimension: 'pressure',
      possible: POSSIBLE.air,
      required: true,
      help: 'Of this valve’s own part of the range where it is split.',
    },
    {
      kind: 'quantity',
      name: 'signalHighPa',
      label: 'Signal, high end',
      dimension: 'pressure',
      possible: POSSIBLE.air,
      required: true,
    },
    {
      kind: 'quantity',
      name: 'installedLowPa',
      label: 'Range with the process on, low end',
      dimension: 'pressure',
      possible: POSSIBLE.air,
      help: 'Blank: not known.',
    },
    {
      kind: 'quantity',
      name: 'installedHighPa',
      label: 'Range with the process on, high end',
      dimension: 'pressure',
      possible: POSSIBLE.air,
      help: 'Blank: not known.',
    },
    {
      kind: 'quantity',
      name: 'supplyLowPa',
      label: 'Supply to the valve, at least',
      dimension: 'pressure',
      possible: POSSIBLE.air,
      help: 'Behind its own regulator. Blank: not known.',
    },
    {
      kind: 'quantity',
      name: 'supplyHighPa',
      label: 'Supply to the valve, at most',
      dimension: 'pressure',
      possible: POSSIBLE.air,
      help: 'Behind its own regulator. Blank: not known.',
    },
    {
      kind: 'quantity',
      name: 'secondSupplyHighPa',
      label: 'Second supply, at most',
      dimension: 'pressure',
      possible: POSSIBLE.air,
      help: 'Another feed, for booster, solenoid or positioner. Blank: there is none.',
    },
    {
      kind: 'choice',
      name: 'positioner',
      label: 'Positioner',
      choices: [
        { value: 'none', label: 'none' },
        { value: 'pneumatic', label: 'pneumatic' },
        { value: 'electropneumatic', label: 'electropneumatic' },
      ],
    },
    {
      kind: 'choice',
      name: 'positionerRisingSignalLoads',
      label: 'Rising signal loads',
      blank: 'no positioner, or not known',
      choices: [
        { value: 'top', label: 'the top' },
        { value: 'bottom', label: 'the bottom' },
      ],
    },
    {
      kind: 'choice',
      name: 'positionerRelays',
      label: 'Relays in the positioner',
      blank: 'no positioner, or not known',
      choices: [
        { value: 'one', label: 'one' },
        { value: 'one an end', label: 'one an end' },
      ],
    },
  ],
};
