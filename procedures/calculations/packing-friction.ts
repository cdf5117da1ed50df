import { CalcError } from './calc-error.ts';
import { ABOVE_ZERO, FRACTION, oneOf, refuseOutside, ZERO_OR_MORE } from './checks.ts';
import {
  PACKING_FRICTION_TABLES,
  type Packing,
  type PackingFrictionRow,
  type PackingFrictionTable,
  type PackingFrictionTableId,
  type PressureClass,
} from './packing-tables.ts';
import type { SourceId } from './sources.ts';
import { convert, toSi } from './units.ts';

export interface TabledFriction {
  readonly frictionN: number;
  readonly printedLbf: number;
  readonly table: string;
  readonly source: SourceId;
}

/**
 * Typical packing friction from the table that the valve sheet names.
 *
 * Shape: table, stem, packing and (for graphite) pressure class in; a force out, with the figure as printed.
 * Valid: stem sizes of the table only, nothing is interpolated; a typical figure, not a limit.
 * @param table          id of the table
 * @param stemDiameterM  within 0.2 mm of a row; above 0
 * @param packing        ptfe-single, ptfe-double or graphite
 * @param pressureClass  of the valve; only graphite needs it
 * @returns friction one way in N, printed figure, title and source of the table
 * @throws CalcError CALC-001 or CALC-002 by the name of the input; CALC-005 if table, stem, packing or class is not in
 *   the list
 * @source [S-14] by the table named
 * @example packingFriction({ table: 'reference-manual', stemDiameterM: 0.0127, packing: 'graphite', pressureClass: '300' }).frictionN // 1023.091
 */
export function packingFriction(input: {
  readonly table: PackingFrictionTableId;
  readonly stemDiameterM: number;
  readonly packing: Packing;
  readonly pressureClass?: PressureClass | null;
}): TabledFriction {
  const ids = Object.keys(PACKING_FRICTION_TABLES) as PackingFrictionTableId[];
  const table: PackingFrictionTable =
    PACKING_FRICTION_TABLES[oneOf({ name: 'table', value: input.table, choices: ids })];
  const row = rowFor({ table, stemDiameterM: input.stemDiameterM });
  const printedLbf = printed({ row, packing: input.packing, pressureClass: input.pressureClass ?? null });
  return {
    frictionN: toSi({ value: printedLbf, unit: 'lbf' }),
    printedLbf,
    table: table.title,
    source: table.source,
  };
}

/**
 * Packing friction from the stress in the packing.
 *
 * Shape: five numbers in, a force out. F = π · d · H · S · μ · Y
 * Valid: rings set, even stress over the height; Y is commonly 0.5.
 * @param stemDiameterM       above 0
 * @param packingHeightM      set height of the rings; above 0
 * @param packingStressPa     axial; 0 or more
 * @param frictionFactor      μ of packing on stem; from 0 to 1
 * @param radialToAxialRatio  Y; from 0 to 1
 * @returns friction one way in N
 * @throws CalcError CALC-001 or CALC-002 by the name of the input
 * @source [S-15] stem packing friction
 * @example packingFrictionByStress({ stemDiameterM: 0.0127, packingHeightM: 0.03175, packingStressPa: 10342136,
 *   frictionFactor: 0.1, radialToAxialRatio: 0.5 }) // 655.0547
 */
export function packingFrictionByStress(input: {
  readonly stemDiameterM: number;
  readonly packingHeightM: number;
  readonly packingStressPa: number;
  readonly frictionFactor: number;
  readonly radialToAxialRatio: number;
}): number {
  const { stemDiameterM, packingHeightM, packingStressPa, frictionFactor, radialToAxialRatio } = input;
  refuseOutside({ stemDiameterM, packingHeightM }, ABOVE_ZERO);
  refuseOutside({ packingStressPa }, ZERO_OR_MORE);
  refuseOutside({ frictionFactor, radialToAxialRatio }, FRACTION);
  return Math.PI * stemDiameterM * packingHeightM * packingStressPa * frictionFactor * radialToAxialRatio;
}

function rowFor(of: {
  readonly table: PackingFrictionTable;
  readonly stemDiameterM: number;
}): PackingFrictionRow {
  const { stemDiameterM } = of;
  refuseOutside({ stemDiameterM }, ABOVE_ZERO);
  const stemIn = convert({ value: stemDiameterM, from: 'm', to: 'in' });
  const row = of.table.rows.find((one) => Math.abs(one.stemIn - stemIn) <= 0.008);
  if (row !== undefined) return row;
  const sizes = of.table.rows.map((one) => `${one.stemIn} in`).join(', ');
  throw new CalcError({
    code: 'CALC-005',
    name: 'stemDiameterM',
    value: stemDiameterM,
    range: `one of ${sizes}`,
    unit: '',
  });
}

function printed(of: {
  readonly row: PackingFrictionRow;
  readonly packing: Packing;
  readonly pressureClass: PressureClass | null;
}): number {
  const packing = oneOf({
    name: 'packing',
    value: of.packing,
    choices: ['ptfe-single', 'ptfe-double', 'graphite'],
  });
  if (packing === 'ptfe-single') return of.row.ptfeSingleLbf;
  if (packing === 'ptfe-double') return of.row.ptfeDoubleLbf;
  const classes = Object.keys(of.row.graphiteLbf);
  const lbf = of.pressureClass === null ? undefined : of.row.graphiteLbf[of.pressureClass];
  if (lbf !== undefined) return lbf;
  const range =
    classes.length === 0 ? 'no class: this stem has no graphite figure' : `one of ${classes.join(', ')}`;
  throw new CalcError({ code: 'CALC-005', name: 'pressureClass', value: of.pressureClass, range, unit: '' });
}
