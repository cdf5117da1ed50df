import { CalcError } from './calc-error.ts';
import { ABOVE_ZERO, oneOf, refuseOutside } from './checks.ts';
import { convert } from './units.ts';

/**
 * Torque that loads one bolt.
 *
 * Shape: three numbers in, a torque out. T = K · D · F
 * Valid: the load of one bolt, not of all. K scatters, and the load with it by about 30 %; a dry K on greased threads
 *   overloads by up to 40 %.
 * @param nutFactor      K; above 0, at most 1
 * @param boltDiameterM  nominal; above 0
 * @param boltLoadN      of one bolt; 0 or more
 * @returns torque in N·m
 * @throws CalcError CALC-001 or CALC-002 by the name of the input
 * @source [S-30] torque and nut factor
 * @example boltTorqueNm({ nutFactor: 0.2, boltDiameterM: 0.016, boltLoadN: 50000 }) // 160
 */
export function boltTorqueNm(input: {
  readonly nutFactor: number;
  readonly boltDiameterM: number;
  readonly boltLoadN: number;
}): number {
  const { nutFactor, boltDiameterM, boltLoadN } = input;
  refuseOutside({ nutFactor }, { above: 0, atMost: 1 });
  refuseOutside({ boltDiameterM }, ABOVE_ZERO);
  refuseOutside({ boltLoadN }, { atLeast: 0 });
  return nutFactor * boltDiameterM * boltLoadN;
}

/**
 * Nut factor that a torque and a load stand for.
 *
 * Shape: three numbers in, one out. K = T/(D · F)
 * Valid: as boltTorqueNm.
 * @param torqueNm       0 or more
 * @param boltDiameterM  above 0
 * @param boltLoadN      above 0
 * @returns nut factor
 * @throws CalcError CALC-001 or CALC-002 by the name of the input
 * @source [S-30] torque and nut factor
 * @example nutFactor({ torqueNm: 160, boltDiameterM: 0.016, boltLoadN: 50000 }) // 0.2
 */
export function nutFactor(input: {
  readonly torqueNm: number;
  readonly boltDiameterM: number;
  readonly boltLoadN: number;
}): number {
  const { torqueNm, boltDiameterM, boltLoadN } = input;
  refuseOutside({ torqueNm }, { atLeast: 0 });
  refuseOutside({ boltDiameterM, boltLoadN }, ABOVE_ZERO);
  return torqueNm / (boltDiameterM * boltLoadN);
}

export type PassScheme = '30/60/100' | 'PCC-1';

export interface TorquePass {
  readonly name: string;
  readonly lowNm: number;
  readonly highNm: number;
  readonly pattern: 'by hand' | 'crosswise' | 'around';
}

/** Share of the final torque in each crosswise pass; a range where the scheme gives one. */
const SCHEMES: Readonly<Record<PassScheme, readonly (readonly [number, number])[]>> = {
  '30/60/100': [
    [0.3, 0.3],
    [0.6, 0.6],
    [1, 1],
  ],
  'PCC-1': [
    [0.2, 0.3],
    [0.5, 0.7],
    [1, 1],
  ],
};

/**
 * The passes in which a joint is tightened.
 *
 * Shape: final torque and scheme in, passes out: snug, three crosswise, one or more around until no nut moves.
 * Valid: a re-torque after the first heating is a pass of its own and is not in the list.
 * @param finalTorqueNm  above 0
 * @param scheme         30/60/100 or PCC-1
 * @returns passes in order, each with its torque (a range where the scheme gives one) and pattern
 * @throws CalcError CALC-001 or CALC-002 by the name of the input; CALC-005 if the scheme is unknown
 * @source [S-31] percentages read in public procedures; PCC-1 ranges from memory
 * @example torquePasses({ finalTorqueNm: 150, scheme: '30/60/100' })[2]
 *   // { name: 'pass 2', lowNm: 90, highNm: 90, pattern: 'crosswise' }
 */
export function torquePasses(input: {
  readonly finalTorqueNm: number;
  readonly scheme: PassScheme;
}): readonly TorquePass[] {
  const { finalTorqueNm } = input;
  refuseOutside({ finalTorqueNm }, ABOVE_ZERO);
  const scheme = oneOf<PassScheme>({ name: 'scheme', value: input.scheme, choices: ['30/60/100', 'PCC-1'] });
  const crosswise = SCHEMES[scheme].map(([low, high], at): TorquePass => {
    return {
      name: `pass ${at + 1}`,
      lowNm: low * finalTorqueNm,
      highNm: high * finalTorqueNm,
      pattern: 'crosswise',
    };
  });
  const check: TorquePass = { name: 'check', lowNm: finalTorqueNm, highNm: finalTorqueNm, pattern: 'around' };
  return [{ name: 'snug', lowNm: 0, highNm: 0, pattern: 'by hand' }, ...crosswise, check];
}

/** As many bolts as a large body flange has. */
const MOST_BOLTS = 96;

/**
 * The order in which the bolts of a circle are tightened crosswise.
 *
 * Shape: a count in, bolt numbers out. Numbered clockwise; opposite bolts in turn. Where the count divides by four, each
 *   pair is followed by the pair square to it, and the next four begin as far from them as can be.
 * Valid: even counts from 4 on. Several orders are good; this is the usual one. For 12: 1 7 4 10, 2 8 5 11, 3 9 6 12.
 * @param bolts  even, from 4 to 96
 * @returns bolt numbers in the order of tightening
 * @throws CalcError CALC-001 or CALC-002 by the name of the input
 * @source common practice, no source: the cross pattern; 4, 8 and 12 bolts as shops print it, 16 to 24 from memory
 * @example crossPattern({ bolts: 8 }) // [1, 5, 3, 7, 2, 6, 4, 8]
 * @example crossPattern({ bolts: 12 }) // [1, 7, 4, 10, 2, 8, 5, 11, 3, 9, 6, 12]
 */
export function crossPattern({ bolts }: { readonly bolts: number }): readonly number[] {
  refuseOutside({ bolts }, { atLeast: 4, atMost: MOST_BOLTS });
  if (bolts % 2 !== 0) {
    throw new CalcError({ code: 'CALC-002', name: 'bolts', value: bolts, range: 'an even count', unit: '' });
  }
  const half = bolts / 2;
  const quarter = bolts / 4;
  if (Number.isInteger(quarter)) {
    return startsOfFours(quarter).flatMap((at) => [at, at + half, at + quarter, at + half + quarter]);
  }
  return halvingOrder(half).flatMap((at) => [at + 1, at + 1 + half]);
}

/** Bolts 1 to n in the order in which the fours begin: steps of half a quarter, so that neighbours are never next. */
function startsOfFours(count: number): number[] {
  const step = Math.max(1, Math.floor(count / 2));
  if (count % 2 === 1) return Array.from({ length: count }, (_, at) => ((at * step) % count) + 1);
  return Array.from({ length: count }, (_, at) => Math.floor(at / 2) + (at % 2) * step + 1);
}

/** Places 0 to n − 1 so that each next one falls as far as can be into the largest gap: 0, n/2, n/4, 3n/4 … */
function halvingOrder(count: number): number[] {
  let bits = 0;
  while (2 ** bits < count) bits++;
  const reversed = Array.from({ length: 2 ** bits }, (_, at) => {
    let turned = 0;
    for (let bit = 0; bit < bits; bit++) if (at & (1 << bit)) turned += 2 ** (bits - 1 - bit);
    return turned;
  });
  return reversed.filter((at) => at < count);
}

/**
 * Place of each bolt on its circle, for a drawing.
 *
 * Shape: a count and a diameter in, points out; bolt 1 at the top, the others clockwise.
 * @param bolts            even, from 4 to 96
 * @param circleDiameterM  above 0
 * @returns for each bolt its number, place from the middle (right and up positive) and rank in the cross pattern
 * @throws CalcError CALC-001 or CALC-002 by the name of the input
 * @source none: geometry, with the cross pattern
 * @example boltCircle({ bolts: 4, circleDiameterM: 0.2 })[1] // { bolt: 2, rightM: 0.1, upM: 0, rank: 3 }
 */
export function boltCircle(input: { readonly bolts: number; readonly circleDiameterM: number }): readonly {
  readonly bolt: number;
  readonly rightM: number;
  readonly upM: number;
  readonly rank: number;
}[] {
  const { bolts, circleDiameterM } = input;
  refuseOutside({ circleDiameterM }, ABOVE_ZERO);
  const order = crossPattern({ bolts });
  return Array.from({ length: bolts }, (_, at) => {
    const angle = (2 * Math.PI * at) / bolts;
    return {
      bolt: at + 1,
      rightM: (circleDiameterM / 2) * Math.sin(angle),
      upM: (circleDiameterM / 2) * Math.cos(angle),
      rank: order.indexOf(at + 1) + 1,
    };
  });
}

/**
 * Torques printed for flange bolts at 50 ksi on the root area [S-31]: foot-pounds, coarse thread up to 1 in, 8 threads
 * an inch above. One K does not reproduce them: they are looked up.
 */
export const PCC1_TORQUES = [
  { boltIn: 0.5, nonCoatedFtLbf: 60, coatedFtLbf: 45 },
  { boltIn: 0.625, nonCoatedFtLbf: 120, coatedFtLbf: 90 },
  { boltIn: 0.75, nonCoatedFtLbf: 210, coatedFtLbf: 160 },
  { boltIn: 0.875, nonCoatedFtLbf: 350, coatedFtLbf: 250 },
  { boltIn: 1, nonCoatedFtLbf: 500, coatedFtLbf: 400 },
  { boltIn: 1.125, nonCoatedFtLbf: 750, coatedFtLbf: 550 },
  { boltIn: 1.25, nonCoatedFtLbf: 1050, coatedFtLbf: 800 },
  { boltIn: 1.5, nonCoatedFtLbf: 1800, coatedFtLbf: 1400 },
  { boltIn: 2, nonCoatedFtLbf: 4500, coatedFtLbf: 3400 },
] as const;

/**
 * Printed flange-bolt torque for a bolt size.
 *
 * Shape: a bolt in, two torques out.
 * Valid: low-alloy bolts, 50 ksi on the root area; other loads in proportion are the reader's affair.
 * @param boltDiameterM  within 0.2 mm of a row; above 0
 * @returns torque of non-coated and of coated bolts in N·m
 * @throws CalcError CALC-001 or CALC-002 by the name of the input; CALC-005 if the size is not in the table
 * @source [S-31] table 1
 * @example pcc1Torque({ boltDiameterM: 0.01905 }) // { nonCoatedNm: 284.7218, coatedNm: 216.9309 }
 */
export function pcc1Torque({ boltDiameterM }: { readonly boltDiameterM: number }): {
  readonly nonCoatedNm: number;
  readonly coatedNm: number;
} {
  refuseOutside({ boltDiameterM }, ABOVE_ZERO);
  const boltIn = convert({ value: boltDiameterM, from: 'm', to: 'in' });
  const row = PCC1_TORQUES.find((one) => Math.abs(one.boltIn - boltIn) <= 0.008);
  if (row === undefined) {
    const range = `one of ${PCC1_TORQUES.map((one) => `${one.boltIn} in`).join(', ')}`;
    throw new CalcError({ code: 'CALC-005', name: 'boltDiameterM', value: boltDiameterM, range, unit: '' });
  }
  return {
    nonCoatedNm: convert({ value: row.nonCoatedFtLbf, from: 'lbf.ft', to: 'N.m' }),
    coatedNm: convert({ value: row.coatedFtLbf, from: 'lbf.ft', to: 'N.m' }),
  };
}
