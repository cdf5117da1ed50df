/** What is missing beside something else, and names that stand twice. */
import type { FieldName } from '../field.ts';
import { labelOf } from '../fields.ts';
import type { ValveSheet } from '../sheet.ts';
import { HAIR, type Rule, wordsFor } from './rule.ts';

const POINTS = [
  'supplyPoint',
  'secondSupplyPoint',
  'electricalPoint',
  'inletPoint',
  'outletPoint',
  'bypassPoint',
] as const satisfies readonly FieldName[];

export const recordRules: readonly Rule[] = [
  {
    code: 'VAL-119',
    fields: ['tag', ...POINTS],
    says: (sheet) => {
      const named = (['tag', ...POINTS] as const).map((name) => ({ name, tag: sheet[name] }));
      const twice = named.find(
        ({ tag }, index) => tag !== null && named.findIndex((each) => each.tag === tag) < index,
      );
      if (twice === undefined) return null;
      const first = named.find(({ tag }) => tag === twice.tag);
      return `${twice.tag} is named as ${lower(first?.name ?? 'tag')} and as ${lower(twice.name)}: each has a tag of its own.`;
    },
  },
  {
    code: 'VAL-112',
    fields: ['positioner', 'positionerRisingSignalLoads', 'positionerRelays'],
    says: ({ positioner, positionerRisingSignalLoads: loads, positionerRelays: relays }) => {
      if (positioner === 'none')
        return loads === null && relays === null
          ? null
          : 'There is no positioner, but the sheet says how it loads.';
      if (loads !== null && relays !== null) return null;
      const missing = [
        loads === null ? 'what a rising signal loads' : '',
        relays === null ? 'its relays' : '',
      ];
      return `A positioner is fitted, but the sheet does not say ${missing.filter((each) => each !== '').join(' and ')}.`;
    },
  },
  {
    code: 'VAL-120',
    fields: ['processInletPa', 'processOutletPa', 'shutOffDropPa'],
    says: (sheet) => {
      const pressure = wordsFor(sheet, 'pressure');
      const { processInletPa, processOutletPa, shutOffDropPa } = sheet;
      const dropPa = processInletPa - processOutletPa;
      if (dropPa < 0)
        return `The inlet is at ${pressure(processInletPa)} and the outlet at ${pressure(processOutletPa)}: it would flow backwards.`;
      if (shutOffDropPa >= dropPa * (1 - HAIR)) return null;
      return `The drop in service is ${pressure(dropPa)}, more than the shut-off drop of ${pressure(shutOffDropPa)}.`;
    },
  },
  {
    code: 'VAL-131',
    fields: ['frictionMaxN', 'packingFrictionN'],
    says: (sheet) => {
      const { frictionMaxN, packingFrictionN } = sheet;
      if (frictionMaxN === null || packingFrictionN === null || packingFrictionN <= frictionMaxN * (1 + HAIR))
        return null;
      const force = wordsFor(sheet, 'force');
      return `The packing alone should cost ${force(packingFrictionN)}, and the friction may be ${force(frictionMaxN)} at most.`;
    },
  },
  withoutSource({ figure: 'seatLoadNPerM', source: 'seatLoadSource', what: 'The seat load' }),
  withoutSource({
    figure: 'packingFrictionN',
    source: 'packingFrictionSource',
    what: 'The packing friction',
  }),
];

function withoutSource(about: {
  readonly figure: 'seatLoadNPerM' | 'packingFrictionN';
  readonly source: 'seatLoadSource' | 'packingFrictionSource';
  readonly what: string;
}): Rule {
  return {
    code: 'VAL-123',
    fields: [about.figure, about.source],
    says: (sheet: ValveSheet) => {
      if (sheet[about.figure] === null || sheet[about.source] !== null) return null;
      return `${about.what} stands without the table or manual that it is from.`;
    },
  };
}

function lower(name: FieldName): string {
  return name === 'tag' ? 'the valve itself' : `the ${labelOf(name).toLowerCase()}`;
}
