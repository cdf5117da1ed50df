/** How far a figure may be leaned on. */
export type SourceKind = 'published' | 'derived' | 'common practice' | 'memory';

export interface Source {
  readonly title: string;
  readonly kind: SourceKind;
  /** What of it stands behind the figures here, and what does not. */
  readonly note: string;
}

/** Every reference that a calculation names, by the id that stands in its docstring. */
export const SOURCES = {
  'S-01': {
    title: 'NIST Special Publication 811, appendix B: conversion factors',
    kind: 'published',
    note: 'Factors follow from the exact definitions of inch, pound and standard gravity; water columns at a temperature have the printed digits only.',
  },
  'S-02': {
    title: 'IEC 60381-1 and IEC 60382: analogue current and pneumatic signals',
    kind: 'published',
    note: '4-20 mA, 20-100 kPa and 3-15 psi read in public texts; clause numbers from memory.',
  },
  'S-03': {
    title: 'NAMUR NE 43: signal levels for a failed transmitter',
    kind: 'memory',
    note: '3.6, 3.8, 20.5 and 21 mA from memory.',
  },
  'S-04': {
    title: 'ISA-51.1 and IEC 61298-2: performance terms and their tests',
    kind: 'memory',
    note: 'List of terms and order of tests read; wording of the definitions from memory.',
  },
  'S-05': {
    title: 'ISA-75.25.01 and IEC 60534-9: step response of control valves',
    kind: 'memory',
    note: 'T63 and T86 counted from the input step, dead time included.',
  },
  'S-06': {
    title: 'Static force balance of a spring and diaphragm actuator with constant effective area',
    kind: 'derived',
    note: 'Hooke and pressure times area; signs checked against published allowable shut-off tables.',
  },
  'S-07': {
    title: 'Seating of the plug by turns of its stem',
    kind: 'common practice',
    note: 'The rule of direction is common practice, no source; the figures follow from S-06 and the thread.',
  },
  'S-08': {
    title: 'JCGM 106:2012: the role of measurement uncertainty in conformity assessment',
    kind: 'published',
    note: 'Guarded acceptance and the ball-bearing example read through an open library; inputs of clause 7 from memory.',
  },
  'S-09': {
    title: 'JCGM 100:2008: guide to the expression of uncertainty in measurement',
    kind: 'published',
    note: 'Divisors of the usual distributions, combination, coverage factor.',
  },
  'S-10': {
    title: 'IEC 60534-2-4: inherent flow characteristics and rangeability',
    kind: 'memory',
    note: 'Equal percentage as R to the power (lift minus 1); a real trim follows within its own tolerance.',
  },
  'S-11': {
    title:
      'Test uncertainty ratio and guard bands, as an open library of a US national laboratory tests them',
    kind: 'published',
    note: 'Multipliers of the tolerance by root sum of squares, one U, RP-10 and managed 2 % read there.',
  },
  'S-12': {
    title: 'Test rules for control valves in Chinese practice',
    kind: 'published',
    note: 'Instrument error below a quarter of the limit, basic error and rated-travel deviation read in public test notes.',
  },
  'S-13': {
    title: 'Valve Sizing Reference Guide (2008), table 17: allowable pressure drops of unbalanced trim',
    kind: 'published',
    note: 'Entries read; area, friction and seat loads recovered by fitting all legible entries, which they reproduce to the last digit.',
  },
  'S-14': {
    title: 'Typical packing friction, one page of a valve reference manual',
    kind: 'published',
    note: 'Stem size, packing and pressure class read; at standard gland torque.',
  },
  'S-15': {
    title: 'ASME PVS2017-3518: friction of valve stem packing',
    kind: 'published',
    note: 'Formula read.',
  },
  'S-16': {
    title: 'Seat loads of a control-valve handbook family',
    kind: 'memory',
    note: 'Not read; about twice the figures of S-13.',
  },
  'S-17': {
    title: 'ASME B1.1: unified inch screw threads',
    kind: 'memory',
    note: '1/4, 1/2, 3/4 and 7/8 in fine threads read, the others from memory; area formulas read.',
  },
  'S-18': {
    title: 'IEC 60534-2-1:2011 and ISA-75.01.01: flow capacity of control valves',
    kind: 'published',
    note: 'Equations and marked constants read in open library code; worked examples 1, 2 and 4 reproduced; the other constants checked by conversion of units.',
  },
  'S-19': {
    title: 'ANSI/FCI 70-2: control valve seat leakage',
    kind: 'published',
    note: 'Class table, US class V form and class VI table to 8 in read in public reproductions; larger ports from a sister standard.',
  },
  'S-20': {
    title: 'IEC 60534-4 and GB/T 4213-92: inspection and routine testing of control valves',
    kind: 'published',
    note: 'Class fractions, class V, class VI, IV-S2 and the interpolation note read in a public reproduction; the power of ten of IV-S1 and the simplified gas form from memory.',
  },
  'S-21': {
    title: 'ANSI/FCI 70-2 (2003 on): class V with air',
    kind: 'memory',
    note: '4.7 standard ml/min for each inch of orifice at 50 psi, not read.',
  },
  'S-22': {
    title: 'Variable-area meter: balance of the weight and drag of its float',
    kind: 'derived',
    note: 'Flow at the scale state goes with the root of the gas density.',
  },
  'S-23': {
    title: 'US 40 CFR 1065.644: leak rate from a pressure decay',
    kind: 'published',
    note: 'Balance and the inputs of its example read (vacuum side, where the sign is the other way round).',
  },
  'S-24': {
    title: 'ISO 6358: flow rate characteristics of pneumatic components',
    kind: 'memory',
    note: 'Flow law from memory, widely published; density of air at ANR 1.185 kg/m³ with 65 % humidity.',
  },
  'S-25': {
    title: 'Isentropic flow of an ideal gas through a nozzle',
    kind: 'published',
    note: 'Critical pressures checked against an open library and a tutorial of an orifice maker.',
  },
  'S-26': {
    title: 'Nozzle and flapper, incompressible textbook form',
    kind: 'memory',
    note: 'From memory; the order of size of the gap agrees with a public instrumentation note.',
  },
  'S-27': {
    title: 'ASME B40.100: pressure gauges',
    kind: 'published',
    note: 'Grades 4A to A read in public pages; B, C and D from memory.',
  },
  'S-28': {
    title: 'EN 837-1: pressure gauges',
    kind: 'published',
    note: 'Class figures read in public pages; the list of classes from memory.',
  },
  'S-29': {
    title: 'Chinese verification rule for general pressure gauges',
    kind: 'published',
    note: 'Wider limit in the last tenth of the scale read.',
  },
  'S-30': {
    title: 'Torque of a bolted joint by nut factor',
    kind: 'memory',
    note: 'T = K D F is universal; the ranges of K are from memory.',
  },
  'S-31': {
    title: 'ASME PCC-1-2013: guidelines for pressure boundary bolted flange joint assembly',
    kind: 'published',
    note: 'Table 1 read; percentages of the passes read in public procedures, the ranges of the legacy pattern from memory.',
  },
  'S-32': {
    title: 'One-page gland torque method of a packing maker, 1996',
    kind: 'published',
    note: 'Formula and stresses read; inch-pounds.',
  },
  'S-33': {
    title: 'ASME PCC-2-2008, article 5.1, appendix II: stored energy of a pressure test',
    kind: 'published',
    note: 'Equations and constants read; later editions number the article 501, and one reproduction doubles the explosive in the distance.',
  },
  'S-34': {
    title: 'NIST Statistical Reference Datasets: linear regression, data set Norris',
    kind: 'published',
    note: 'Data and certified values read in public test suites that carry them.',
  },
  'S-35': {
    title: 'Fieller 1954: interval of a ratio, for where a fitted line meets a value',
    kind: 'memory',
    note: 'Formula from memory; its coverage is tried on made series.',
  },
  'S-36': {
    title: 'ILAC-G24 / OIML D 10: intervals of calibration, control chart method',
    kind: 'memory',
    note: 'That the interval follows from the drift calculated is from memory; the cap by the length of the history is a rule of this code.',
  },
} as const satisfies Readonly<Record<string, Source>>;

export type SourceId = keyof typeof SOURCES;
