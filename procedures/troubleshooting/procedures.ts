import { noBlockValves, type ServedProcedure } from '../served-procedure.ts';
import { findTheFault } from './find-the-fault.ts';

/** Finding what is wrong. */
export const TROUBLESHOOTING: readonly ServedProcedure[] = [
  {
    definition: findTheFault,
    folder: 'troubleshooting',
    gear: ['signalGauge', 'checkGauge', 'regulator', 'supplyGauge', 'inletGauge', 'outletGauge'],
    whyNot: (sheet, place) =>
      place === 'bench'
        ? 'On the bench it has no loop to be complained of: check its stroke there.'
        : noBlockValves(sheet, place),
  },
];
