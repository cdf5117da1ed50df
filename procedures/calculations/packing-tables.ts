import type { SourceId } from './sources.ts';

export type Packing = 'ptfe-single' | 'ptfe-double' | 'graphite';
export type PressureClass = '150' | '300' | '600' | '900' | '1500' | '2500';

export interface PackingFrictionRow {
  readonly stemIn: number;
  readonly ptfeSingleLbf: number;
  readonly ptfeDoubleLbf: number;
  readonly graphiteLbf: Readonly<Partial<Record<PressureClass, number>>>;
}

export interface PackingFrictionTable {
  readonly title: string;
  readonly source: SourceId;
  readonly note: string;
  /** As printed: inches and pound-force. */
  readonly rows: readonly PackingFrictionRow[];
}

/**
 * Typical packing friction, by table. A packing's friction belongs to its maker and its gland torque: the valve sheet
 * chooses a table or states a figure of its own; no calculation takes one by itself.
 */
export const PACKING_FRICTION_TABLES = {
  'reference-manual': {
    title: 'Typical packing friction, one page of a valve reference manual',
    source: 'S-14',
    note: 'At standard gland torque; a typical figure, not a limit.',
    rows: [
      row({ stemIn: 0.3125, ptfe: [20, 30], graphite: {} }),
      row({ stemIn: 0.375, ptfe: [38, 56], graphite: { 150: 125, 300: 190, 600: 250, 900: 320, 1500: 380 } }),
      row({
        stemIn: 0.5,
        ptfe: [50, 75],
        graphite: { 150: 180, 300: 230, 600: 320, 900: 410, 1500: 500, 2500: 590 },
      }),
      row({ stemIn: 0.625, ptfe: [63, 95], graphite: { 150: 218, 300: 290, 600: 400 } }),
      row({
        stemIn: 0.75,
        ptfe: [75, 112.5],
        graphite: { 150: 350, 300: 440, 600: 660, 900: 880, 1500: 1100, 2500: 1320 },
      }),
      row({
        stemIn: 1,
        ptfe: [100, 150],
        graphite: { 300: 610, 600: 850, 900: 1060, 1500: 1300, 2500: 1540 },
      }),
      row({
        stemIn: 1.25,
        ptfe: [120, 180],
        graphite: { 300: 800, 600: 1100, 900: 1400, 1500: 1700, 2500: 2040 },
      }),
      row({
        stemIn: 2,
        ptfe: [200, 300],
        graphite: { 300: 1225, 600: 1725, 900: 2250, 1500: 2750, 2500: 3245 },
      }),
    ],
  },
} as const satisfies Readonly<Record<string, PackingFrictionTable>>;

export type PackingFrictionTableId = keyof typeof PACKING_FRICTION_TABLES;

function row(of: {
  readonly stemIn: number;
  readonly ptfe: readonly [number, number];
  readonly graphite: PackingFrictionRow['graphiteLbf'];
}): PackingFrictionRow {
  const [ptfeSingleLbf, ptfeDoubleLbf] = of.ptfe;
  return { stemIn: of.stemIn, ptfeSingleLbf, ptfeDoubleLbf, graphiteLbf: of.graphite };
}
