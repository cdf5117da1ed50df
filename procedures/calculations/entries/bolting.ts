import { boltCircle, boltTorqueNm, crossPattern, nutFactor, pcc1Torque, torquePasses } from '../bolting.ts';
import { calculation } from '../calculation.ts';
import type { Calculation } from '../calculation-types.ts';
import { GLAND_METHODS, type GlandMethodId, glandTorque } from '../gland.ts';
import { choice, numbers, results, told } from '../specs.ts';

const GLANDS = Object.keys(GLAND_METHODS) as GlandMethodId[];

export const BOLTING_CALCULATIONS: readonly Calculation[] = [
  calculation({
    id: 'bolt-torque',
    title: 'Torque for the load of one bolt',
    topic: 'bolting',
    inputs: numbers('nutFactor', 'boltDiameterM', 'boltLoadN'),
    outputs: results('torqueNm'),
    answers: ['torqueNm'],
    equation: 'T = K · D · F',
    validity:
      'Load of one bolt, not of all. The load scatters by about 30 %; a dry factor on greased threads overloads.',
    sources: ['S-30'],
    example: { nutFactor: 0.2, boltDiameterM: 0.016, boltLoadN: 50000 },
    run: (values) => ({ torqueNm: boltTorqueNm(values) }),
  }),
  calculation({
    id: 'nut-factor',
    title: 'Nut factor that a torque and a load stand for',
    topic: 'bolting',
    inputs: numbers('torqueNm', 'boltDiameterM', 'boltLoadN'),
    outputs: results('nutFactor'),
    answers: ['nutFactor'],
    equation: 'K = T/(D · F)',
    validity: 'Load of one bolt, not of all.',
    sources: ['S-30'],
    example: { torqueNm: 160, boltDiameterM: 0.016, boltLoadN: 50000 },
    run: (values) => ({ nutFactor: nutFactor(values) }),
  }),
  calculation({
    id: 'torque-passes',
    title: 'Passes in which a joint is tightened',
    topic: 'bolting',
    inputs: { ...numbers('finalTorqueNm'), ...choice('scheme', ['30/60/100', 'PCC-1']) },
    outputs: {
      passes: {
        kind: 'rows',
        title: 'Passes',
        dimension: null,
        columns: { ...told('word', 'name', 'pattern'), ...results('lowNm', 'highNm') },
      },
    },
    answers: ['passes'],
    equation: 'share of the final torque in each pass',
    validity: 'A re-torque after the first heating is a pass of its own and is not in the list.',
    sources: ['S-31'],
    example: { finalTorqueNm: 150, scheme: '30/60/100' },
    run: (values) => ({ passes: torquePasses(values) }),
  }),
  calculation({
    id: 'cross-pattern',
    title: 'Order in which the bolts of a circle are tightened',
    topic: 'bolting',
    inputs: numbers('bolts', 'circleDiameterM'),
    outputs: {
      ...told('list', 'order'),
      circle: {
        kind: 'rows',
        title: 'Bolts on their circle',
        dimension: null,
        columns: results('bolt', 'rightM', 'upM', 'rank'),
      },
    },
    answers: ['order'],
    equation: 'opposite bolts in turn, then the pair square to them; the next four as far off as can be',
    validity:
      'Numbered clockwise from the top. Several orders are good; this is the usual one (common practice).',
    sources: [],
    example: { bolts: 8, circleDiameterM: 0.2 },
    run: (values) => ({ order: crossPattern(values), circle: boltCircle(values) }),
  }),
  calculation({
    id: 'flange-bolt-torque',
    title: 'Printed torque of flange bolts',
    topic: 'bolting',
    inputs: numbers('boltDiameterM'),
    outputs: results('nonCoatedNm', 'coatedNm'),
    answers: ['nonCoatedNm', 'coatedNm'],
    equation: 'read from the table',
    validity: 'Low-alloy bolts at 50 ksi on the root area; sizes of the table only.',
    sources: ['S-31'],
    example: { boltDiameterM: 0.01905 },
    run: pcc1Torque,
  }),
  calculation({
    id: 'gland-torque',
    title: 'Packing gland: load and nut torque',
    topic: 'bolting',
    inputs: {
      ...choice('method', GLANDS),
      ...choice('packing', ['die-formed graphite set', 'braided']),
      ...numbers('boreDiameterM', 'stemDiameterM', 'systemPa', 'bolts', 'boltDiameterM'),
    },
    outputs: {
      ...results('packingAreaM2', 'packingStressPa', 'glandForceN', 'boltLoadN', 'torquePerBoltNm'),
      ...told('word', 'stressSetBy'),
    },
    answers: ['torquePerBoltNm'],
    equation: 'F = π/4 · (bore² − stem²) · stress; T = K · F · bolt diameter/bolts',
    validity:
      'The stresses belong to one maker’s sets; the maker’s torque for the packing at hand outranks it.',
    sources: ['S-32'],
    example: {
      method: 'one-page-1996',
      packing: 'braided',
      boreDiameterM: 0.0254,
      stemDiameterM: 0.0127,
      systemPa: 4000000,
      bolts: 2,
      boltDiameterM: 0.0095,
    },
    run: glandTorque,
  }),
];
