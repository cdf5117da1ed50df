import { describe, expect, test } from 'vitest';
import {
  CONTRADICTIONS,
  type ContradictionCode,
} from '../../../procedures/valve-sheet/contradiction-codes.ts';
import { contradictionsOf, stoppingIn } from '../../../procedures/valve-sheet/contradictions.ts';
import { fieldNamed } from '../../../procedures/valve-sheet/fields.ts';
import { aSheet, aSheetOf } from '../../builders/sheets.ts';

type Texts = Readonly<Record<string, string>>;

/** Each code with a sheet that provokes it, and what the sentence must say. */
const PROVOKED: readonly (readonly [ContradictionCode, Texts, string])[] = [
  [
    'VAL-101',
    { airAction: 'air-to-close', failPosition: 'open' },
    'A plug that closes moving down and air that moves the stem up make it air to open, but the plate says air to close.',
  ],
  [
    'VAL-102',
    { failPosition: 'open' },
    'With a spring, a valve that is air to open shuts on loss of air, but the sheet says that it opens.',
  ],
  [
    'VAL-102',
    { actuatorKind: 'piston', springHeldBy: 'no spring', adjusterThread: '', failPosition: 'shut' },
    'With no spring and no tank, a valve that is air to open stays where it is on loss of air',
  ],
  [
    'VAL-103',
    { benchSetLowPa: '15', benchSetHighPa: '3' },
    'The bench set begins at 15 psi and ends at 3 psi',
  ],
  ['VAL-103', { benchSetLowPa: '15' }, 'the low end must be the lower'],
  [
    'VAL-104',
    { signalLowPa: '15 psi', signalHighPa: '3 psi' },
    'The signal begins at 15 psi and ends at 3 psi',
  ],
  [
    'VAL-105',
    { springRateNPerM: '1800' },
    'A spring of 1800 lbf/in does not give this bench set: 12 psi on 100 in² over 0.75 in is 1600 lbf/in.',
  ],
  [
    'VAL-106',
    { caseRatingPa: '14', supplyLowPa: '', supplyHighPa: '' },
    'The signal goes up to 15 psi, and the case is rated 14 psi.',
  ],
  [
    'VAL-106',
    { caseRatingPa: '', signalHighPa: '45', supplyLowPa: '', supplyHighPa: '' },
    'The signal goes up to 45 psi, and with no rating on the sheet at most 40 psi is put on the case (common practice).',
  ],
  [
    'VAL-107',
    { caseRatingPa: '18', supplyLowPa: '', supplyHighPa: '' },
    'The usual margin over the signal asks for test air up to 20 psi, and the case is rated 18 psi.',
  ],
  ['VAL-108', { supplyHighPa: '60' }, 'The supply goes up to 60 psi, and the case is rated 50 psi.'],
  ['VAL-109', { caseRatingPa: '', supplyHighPa: '60' }, 'Read the rating off the plate.'],
  [
    'VAL-110',
    {
      benchSetLowPa: '10',
      benchSetHighPa: '22',
      positioner: 'pneumatic',
      positionerRisingSignalLoads: 'bottom',
      positionerRelays: 'one',
      supplyLowPa: '',
      supplyHighPa: '',
    },
    'Full travel needs 22 psi, and test air is held to 20 psi by the signal and margin.',
  ],
  ['VAL-111', { stemDiameterM: '1' }, 'The stem is 1 in and the port 1 in: the stem must be the thinner.'],
  ['VAL-111', { balanceSealDiameterM: '0.9' }, 'The balance seal is 0.9 in and the port 1 in'],
  ['VAL-112', { positioner: 'pneumatic' }, 'does not say what a rising signal loads and its relays.'],
  [
    'VAL-112',
    { positioner: 'pneumatic', positionerRelays: 'one' },
    'does not say what a rising signal loads.',
  ],
  ['VAL-112', { positionerRelays: 'one' }, 'There is no positioner'],
  [
    'VAL-113',
    { installedLowPa: '6', installedHighPa: '15' },
    'A bench set of 3 psi to 15 psi becomes 2.21 psi to 15 psi at most with the process under the plug, and the sheet says 6 psi to 15 psi.',
  ],
  ['VAL-113', { installedLowPa: '3', installedHighPa: '18' }, 'the sheet says 3 psi to 18 psi'],
  ['VAL-114', { supplyLowPa: '25', supplyHighPa: '20' }, 'The supply begins at 25 psi and ends at 20 psi'],
  [
    'VAL-114',
    { installedLowPa: '15', installedHighPa: '3' },
    'The range with the process on begins at 15 psi',
  ],
  [
    'VAL-115',
    { benchSetLowPa: '4', benchSetHighPa: '16' },
    'without a positioner the signal ends at 15 psi.',
  ],
  ['VAL-115', { supplyLowPa: '12' }, 'The signal goes up to 15 psi, and the supply may be as low as 12 psi.'],
  ['VAL-116', { adjusterThread: '' }, 'the adjuster’s thread is not on the sheet'],
  [
    'VAL-116',
    { springHeldBy: 'case' },
    'An adjuster thread 5/8-18 is on the sheet, but no adjuster holds the spring.',
  ],
  [
    'VAL-117',
    { bellowsSeal: 'yes' },
    'The sheet wants 2 turns of a stem that is never turned: it has a bellows seal.',
  ],
  ['VAL-117', { stemPinned: 'yes' }, 'it has a pinned stem'],
  ['VAL-118', { seatingTurns: '15' }, '15 turns of 1/2-20 are 0.75 in, and the whole travel is 0.75 in.'],
  [
    'VAL-119',
    { outletPoint: 'HV-214A' },
    'HV-214A is named as the inlet block valve and as the outlet block valve',
  ],
  ['VAL-119', { supplyPoint: 'FV-214' }, 'FV-214 is named as the valve itself and as the supply cock'],
  [
    'VAL-120',
    { processOutletPa: '100' },
    'The inlet is at 88 psi and the outlet at 100 psi: it would flow backwards.',
  ],
  [
    'VAL-120',
    { shutOffDropPa: '40' },
    'The drop in service is 47 psi, more than the shut-off drop of 40 psi.',
  ],
  [
    'VAL-121',
    { processTemperatureC: '500' },
    'The process is at 500 °F; PTFE packing stands about 449.6 °F.',
  ],
  [
    'VAL-125',
    { processIsolation: 'block only' },
    'shut off by one valve that is not tried, and no risk assessment is named.',
  ],
  [
    'VAL-126',
    { fluidHarm: 'toxic' },
    'The fluid can poison, and the line is shut off by two valves and a bleed without a risk assessment.',
  ],
  [
    'VAL-126',
    { fluidHarm: 'toxic', processIsolation: '' },
    'shut off by nothing that the sheet names without a risk assessment.',
  ],
  [
    'VAL-127',
    { processIsolation: 'block and bleed' },
    'The fluid can burn or freeze, and the line is shut off by one valve and a bleed: in general no final isolation on live plant.',
  ],
  [
    'VAL-128',
    { secondSupplyHighPa: '60' },
    'A second feed of 60 psi is on the sheet, and no cock that shuts it.',
  ],
  [
    'VAL-131',
    { frictionMaxN: '40' },
    'The packing alone should cost 50 lbf, and the friction may be 40 lbf at most.',
  ],
  ['VAL-129', { volumeTank: 'yes' }, 'A tank is fitted, but not how much it holds.'],
  ['VAL-129', { tankVolumeM3: '1' }, 'There is no tank'],
  ['VAL-130', { electricalPoint: 'EB-1' }, 'A breaker EB-1 is named'],
  [
    'VAL-130',
    {
      positioner: 'electropneumatic',
      positionerRisingSignalLoads: 'bottom',
      positionerRelays: 'one',
    },
    'but no voltage is on the sheet.',
  ],
  [
    'VAL-122',
    { shutOffDropPa: '400' },
    'At a drop of 400 psi the process pushes the plug open with 314 lbf, and the spring holds it with 250 lbf.',
  ],
  [
    'VAL-122',
    { airMovesStem: 'down', airAction: '', failPosition: '', supplyLowPa: '16', shutOffDropPa: '150' },
    'and a supply of 16 psi holds it with 50 lbf.',
  ],
  ['VAL-123', { seatLoadSource: '' }, 'The seat load stands without the table or manual that it is from.'],
  ['VAL-123', { packingFrictionSource: '' }, 'The packing friction stands without'],
  [
    'VAL-124',
    { springHeldBy: 'no spring', adjusterThread: '', failPosition: '' },
    'has nothing that moves it back',
  ],
];

describe('a sheet that contradicts itself', () => {
  const each = PROVOKED.map(([code, texts, says]) => ({ code, texts, says }));
  test.each(each)('$code: $says', ({ code, texts, says }) => {
    const told = contradictionsOf(aSheetOf(texts)).filter((each) => each.code === code);
    expect(told.map(({ what }) => what).join(' ')).toContain(says);
    expect(told.every(({ stops }) => stops === CONTRADICTIONS[code].stops)).toBe(true);
    for (const name of told.flatMap(({ fields }) => fields)) expect(fieldNamed(name)?.name).toBe(name);
  });

  test('every code is provoked, and says why it stops or not', () => {
    expect(new Set(PROVOKED.map(([code]) => code))).toEqual(new Set(Object.keys(CONTRADICTIONS)));
    expect(Object.values(CONTRADICTIONS).filter(({ why }) => why.length < 20)).toEqual([]);
  });

  test('one that stops keeps it from being saved; the rest are told when it is mended', () => {
    const both = aSheetOf({ failPosition: 'open', seatLoadSource: '' });
    expect(contradictionsOf(both).map(({ code }) => code)).toEqual(['VAL-102']);
    expect(stoppingIn(contradictionsOf(both))).not.toEqual([]);
    const mended = contradictionsOf({ ...both, failPosition: 'shut' });
    expect(mended.map(({ code }) => code)).toEqual(['VAL-123']);
    expect(stoppingIn(mended)).toEqual([]);
  });
});

describe('a sheet that agrees with itself', () => {
  test.each([
    ['down', 'up', 'air-to-open', 'shut'],
    ['down', 'down', 'air-to-close', 'open'],
    ['up', 'up', 'air-to-close', 'open'],
    ['up', 'down', 'air-to-open', 'shut'],
  ])(
    'plug closes %s, air moves the stem %s: %s, %s on loss of air',
    (plugCloses, airMovesStem, airAction, failPosition) => {
      const sheet = aSheetOf({ plugCloses, airMovesStem, airAction, failPosition });
      expect(contradictionsOf(sheet)).toEqual([]);
      expect(
        contradictionsOf(aSheetOf({ plugCloses, airMovesStem, airAction: '', failPosition: '' })),
      ).toEqual([]);
    },
  );

  test('figures a hair apart, as two units round them, are no contradiction', () => {
    expect(
      contradictionsOf(aSheetOf({ caseRatingPa: '137.8951458633672 kPa', supplyHighPa: '20 psi' })),
    ).toEqual([]);
  });

  test('a spring rate within a tenth of the bench set is none', () => {
    expect(contradictionsOf(aSheetOf({ springRateNPerM: '1759' }))).toEqual([]);
    expect(contradictionsOf(aSheetOf({ springRateNPerM: '1441' }))).toEqual([]);
    expect(contradictionsOf(aSheetOf({ springRateNPerM: '1761' })).map(({ code }) => code)).toEqual([
      'VAL-105',
    ]);
  });

  test('a piston without a spring may be driven by kept air', () => {
    const sheet = aSheet({
      actuatorKind: 'piston',
      springHeldBy: 'no spring',
      failPosition: 'shut',
      volumeTank: true,
      tankVolumeM3: 0.02,
      adjusterThread: null,
      adjusterThreadPitchM: null,
      springRateNPerM: null,
    });
    expect(contradictionsOf(sheet)).toEqual([]);
  });

  test('a range with the process on between bench set and worst case is none', () => {
    expect(contradictionsOf(aSheetOf({ installedLowPa: '2.6', installedHighPa: '15' }))).toEqual([]);
  });
});

describe('How the line is shut off', () => {
  const codes = (texts: Texts) => contradictionsOf(aSheetOf(texts)).map(({ code }) => code);

  test('by one valve that nobody tried is refused until its risk assessment is named (EI-24)', () => {
    expect(codes({ processIsolation: 'block only' })).toEqual(['VAL-125']);
    expect(stoppingIn(contradictionsOf(aSheetOf({ processIsolation: 'block only' })))).not.toEqual([]);
    const named = contradictionsOf(
      aSheetOf({ fluidHarm: 'none', processIsolation: 'block only', isolationReference: 'RA-12' }),
    );
    expect(named).toEqual([]);
  });

  test('must be by a blank where the fluid can poison, unless an assessment says why not (EI-25)', () => {
    for (const processIsolation of ['', 'block and bleed', 'double block and bleed']) {
      const lesser = contradictionsOf(aSheetOf({ fluidHarm: 'toxic', processIsolation }));
      expect(lesser.map(({ code }) => code)).toContain('VAL-126');
      expect(stoppingIn(lesser)).not.toEqual([]);
    }
    expect(codes({ fluidHarm: 'toxic', processIsolation: 'positive' })).toEqual([]);
    expect(
      codes({
        fluidHarm: 'toxic',
        processIsolation: 'double block and bleed',
        isolationReference: 'RA-12',
      }),
    ).toEqual([]);
  });

  test('by one block and a bleed is flagged for every fluid that can hurt, and for no other (EI-26)', () => {
    for (const fluidHarm of ['scalding', 'corrosive', 'flammable'])
      expect(codes({ fluidHarm, processIsolation: 'block and bleed' })).toEqual(['VAL-127']);
    expect(codes({ fluidHarm: 'none', processIsolation: 'block and bleed' })).toEqual([]);
  });

  test('is never by the valve that is worked on, nor by one tag for two points (EI-30)', () => {
    for (const point of [
      'supplyPoint',
      'secondSupplyPoint',
      'electricalPoint',
      'inletPoint',
      'outletPoint',
    ]) {
      const own = contradictionsOf(aSheetOf({ [point]: 'FV-214' }));
      expect(
        own.map(({ code }) => code),
        point,
      ).toContain('VAL-119');
      expect(stoppingIn(own), point).not.toEqual([]);
    }
  });
});
