/** Air against air: signal, bench set, supply and what the case holds. */
import { BLANK_CASE_RATING_PA, MARGIN_OVER_SIGNAL_PA, testAirLimit } from '../../../safety/limits.ts';
import type { ValveSheet } from '../sheet.ts';
import { HAIR, type Rule, wordsFor } from './rule.ts';

/** The lower end must be below the upper; where one is blank nothing is said. */
function order(ends: {
  readonly code: Rule['code'];
  readonly low: 'signalLowPa' | 'benchSetLowPa' | 'supplyLowPa' | 'installedLowPa';
  readonly high: 'signalHighPa' | 'benchSetHighPa' | 'supplyHighPa' | 'installedHighPa';
  readonly what: string;
  readonly mayMeet?: true;
}): Rule {
  return {
    code: ends.code,
    fields: [ends.low, ends.high],
    says: (sheet) => {
      const [lowPa, highPa] = [sheet[ends.low], sheet[ends.high]];
      if (lowPa === null || highPa === null || lowPa < highPa * (1 - HAIR)) return null;
      if (ends.mayMeet && lowPa === highPa) return null;
      const pressure = wordsFor(sheet, 'pressure');
      return `${ends.what} begins at ${pressure(lowPa)} and ends at ${pressure(highPa)}: the low end must be the lower.`;
    },
  };
}

export const airRules: readonly Rule[] = [
  order({ code: 'VAL-103', low: 'benchSetLowPa', high: 'benchSetHighPa', what: 'The bench set' }),
  order({ code: 'VAL-104', low: 'signalLowPa', high: 'signalHighPa', what: 'The signal' }),
  order({ code: 'VAL-114', low: 'supplyLowPa', high: 'supplyHighPa', what: 'The supply', mayMeet: true }),
  order({
    code: 'VAL-114',
    low: 'installedLowPa',
    high: 'installedHighPa',
    what: 'The range with the process on',
  }),
  {
    code: 'VAL-106',
    fields: ['caseRatingPa', 'signalHighPa'],
    says: (sheet) => {
      if (held(sheet) >= sheet.signalHighPa * (1 - HAIR)) return null;
      const pressure = wordsFor(sheet, 'pressure');
      return `The signal goes up to ${pressure(sheet.signalHighPa)}, ${rated(sheet)}.`;
    },
  },
  {
    code: 'VAL-107',
    fields: ['caseRatingPa', 'signalHighPa'],
    says: (sheet) => {
      const wantedPa = sheet.signalHighPa + MARGIN_OVER_SIGNAL_PA;
      if (held(sheet) >= wantedPa * (1 - HAIR)) return null;
      const pressure = wordsFor(sheet, 'pressure');
      return `The usual margin over the signal asks for test air up to ${pressure(wantedPa)}, ${rated(sheet)}.`;
    },
  },
  {
    code: 'VAL-108',
    fields: ['caseRatingPa', 'supplyHighPa'],
    says: (sheet) => {
      const { caseRatingPa, supplyHighPa } = sheet;
      if (caseRatingPa === null || supplyHighPa === null || supplyHighPa <= caseRatingPa * (1 + HAIR))
        return null;
      return `The supply goes up to ${wordsFor(sheet, 'pressure')(supplyHighPa)}, ${rated(sheet)}.`;
    },
  },
  {
    code: 'VAL-109',
    fields: ['caseRatingPa', 'supplyHighPa'],
    says: (sheet) => {
      const { caseRatingPa, supplyHighPa } = sheet;
      if (caseRatingPa !== null || (supplyHighPa ?? 0) <= BLANK_CASE_RATING_PA * (1 + HAIR)) return null;
      return `The supply goes up to ${wordsFor(sheet, 'pressure')(supplyHighPa ?? 0)}, ${rated(sheet)}. Read the rating off the plate.`;
    },
  },
  {
    code: 'VAL-110',
    fields: ['benchSetHighPa', 'signalHighPa', 'caseRatingPa'],
    says: (sheet) => {
      const { limitPa, because } = testAirLimit(sheet);
      if (sheet.benchSetHighPa <= limitPa * (1 + HAIR)) return null;
      const pressure = wordsFor(sheet, 'pressure');
      return `Full travel needs ${pressure(sheet.benchSetHighPa)}, and test air is held to ${pressure(limitPa)} by the ${because}.`;
    },
  },
  {
    code: 'VAL-115',
    fields: ['benchSetLowPa', 'benchSetHighPa', 'signalLowPa', 'signalHighPa', 'positioner'],
    says: (sheet) => {
      // A positioner gives whatever air it takes.
      if (
        sheet.positioner !== 'none' ||
        sheet.benchSetHighPa <= sheet.signalHighPa + sheet.benchSetTolerancePa
      )
        return null;
      const pressure = wordsFor(sheet, 'pressure');
      return `Full travel needs ${pressure(sheet.benchSetHighPa)}, and without a positioner the signal ends at ${pressure(sheet.signalHighPa)}.`;
    },
  },
  {
    code: 'VAL-115',
    fields: ['supplyLowPa', 'signalHighPa', 'benchSetHighPa'],
    says: (sheet) => {
      const { supplyLowPa } = sheet;
      const needPa = sheet.positioner === 'none' ? sheet.signalHighPa : sheet.benchSetHighPa;
      if (supplyLowPa === null || supplyLowPa >= needPa * (1 - HAIR)) return null;
      const pressure = wordsFor(sheet, 'pressure');
      const what = sheet.positioner === 'none' ? 'The signal goes up to' : 'Full travel needs';
      return `${what} ${pressure(needPa)}, and the supply may be as low as ${pressure(supplyLowPa)}.`;
    },
  },
];

/** What the case holds, blank rating included. */
function held({ caseRatingPa }: ValveSheet): number {
  return caseRatingPa ?? BLANK_CASE_RATING_PA;
}

function rated(sheet: ValveSheet): string {
  const pressure = wordsFor(sheet, 'pressure');
  return sheet.caseRatingPa === null
    ? `and with no rating on the sheet at most ${pressure(BLANK_CASE_RATING_PA)} is put on the case (common practice)`
    : `and the case is rated ${pressure(sheet.caseRatingPa)}`;
}
