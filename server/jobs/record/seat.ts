import { preferredUnit, unitFor } from '../../../procedures/calculations/units.ts';
import type { Guarded } from '../../../procedures/cycle-verdict.ts';
import type { Job } from '../../../procedures/job.ts';
import { say } from '../../../procedures/say.ts';
import { seatingFigures, seatLoadN, turnDirection } from '../../../procedures/seating.ts';
import { number, numberOf, type Result, unjudged, verdictWords } from './result-row.ts';
import type { JobRecord } from './schema.ts';

/** Contact, seat load and lift: what the turns of the plug stem are for. */
export function seatResults(job: Job): Result[] {
  const { sheet, figures } = job;
  const units = {
    pressure: preferredUnit('pressure', sheet.units),
    force: preferredUnit('force', sheet.units),
    length: preferredUnit('length', sheet.units),
  };
  const foundPa = numberOf(figures.contactFound?.contactPa);
  const leftPa = numberOf(figures.contactLeft?.contactPa);
  const needN = sheet.seatLoadNPerM === null ? null : sheet.seatLoadNPerM * Math.PI * sheet.portDiameterM;
  const loads = [foundPa, leftPa].map((contactPa) => (contactPa === null ? null : seatLoadN(job, contactPa)));
  const [foundN = null, leftN = null] = loads;
  const uncertaintyN = sheet.effectiveAreaM2 * (job.readings.contactLeavesPa?.uncertaintySi ?? 0);
  const [foundLoad, leftLoad] = loads.map((loadN) => loadVerdict({ loadN, needN, uncertaintyN }));
  const lift = (contactAfterPa: number | null) =>
    contactAfterPa === null
      ? ''
      : number(seatingFigures(job, { contactAfterPa }).liftLeftM, { unit: units.length });
  const expectedPa = numberOf(figures.contactLeft?.expectedContactPa);
  return [
    {
      ...unjudged(`contact with the seat, ${unitFor(units.pressure).label}`),
      asFound: number(foundPa, { unit: units.pressure }),
      asLeft: number(leftPa, { unit: units.pressure }),
      verdict:
        expectedPa === null ? '' : `${number(expectedPa, { unit: units.pressure })} expected after the turns`,
    },
    {
      label: `seat load from the signal, ${unitFor(units.force).label}`,
      asFound: number(foundN, { unit: units.force }),
      asLeft: number(leftN, { unit: units.force }),
      foundOutside: foundLoad === 'outside',
      leftOutside: leftLoad === 'outside',
      limit: needN === null ? '' : `${number(needN, { unit: units.force })} or more`,
      verdict:
        needN === null
          ? 'what this seat wants is not on the sheet'
          : verdictWords(foundLoad ?? null, leftLoad ?? null),
    },
    {
      ...unjudged(`lift from seat to full travel, ${unitFor(units.length).label}`),
      asFound: lift(foundPa),
      asLeft: lift(leftPa),
      verdict: foundPa === null ? '' : `rated travel ${number(sheet.travelM, { unit: units.length })}`,
    },
  ];
}

function loadVerdict({
  loadN,
  needN,
  uncertaintyN,
}: {
  readonly loadN: number | null;
  readonly needN: number | null;
  readonly uncertaintyN: number;
}): Guarded | null {
  if (loadN === null || needN === null) return null;
  if (loadN - uncertaintyN >= needN) return 'inside';
  return loadN + uncertaintyN < needN ? 'outside' : 'too close';
}

/** How often the plug stem and the adjuster were turned, which way, and whether the contact came where it should. */
export function turnsOf(job: Job): JobRecord['turns'] {
  const { sheet, readings, figures } = job;
  const of = (valueSi: number, dimension: 'turns' | 'pressure') =>
    say({ valueSi, dimension, units: sheet.units });
  const turned = readings.turnsMade;
  const wound = readings.adjusterTurnsMade;
  const left = figures.contactLeft;
  const [contactPa, expectedPa, allowedPa] = [left?.contactPa, left?.expectedContactPa, left?.allowedPa].map(
    numberOf,
  );
  return [
    ...(turned === undefined
      ? []
      : [
          {
            label: 'plug stem turned',
            value: `${of(turned.valueSi, 'turns')} of ${sheet.stemThread}, screwed ${turnDirection(sheet)}`,
          },
        ]),
    ...(typeof contactPa === 'number' && typeof expectedPa === 'number' && typeof allowedPa === 'number'
      ? [
          {
            label: 'contact after it',
            value: `${of(contactPa, 'pressure')} found, ${of(expectedPa, 'pressure')} expected, ${of(allowedPa, 'pressure')} allowed either way`,
          },
        ]
      : []),
    ...(wound === undefined
      ? []
      : [
          {
            label: 'spring adjuster wound',
            value: `${of(wound.valueSi, 'turns')}${sheet.adjusterThread === null ? '' : ` of ${sheet.adjusterThread}`}`,
          },
        ]),
  ];
}
