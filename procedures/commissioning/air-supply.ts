import { blowAirSetDown } from '../phases/blow-down.ts';
import { STEM_MOVES, yesNo } from '../phases/common.ts';
import { CONSENT_SAFE_AT, consentControl, lookIsOver, takeForLook } from '../phases/consent-only.ts';
import { supplyFirst } from '../phases/own-stroke.ts';
import { procedure } from '../vocabulary.ts';

const makeSafe = 'haltLook' as const;

/** Pressure and quality of the air at a valve in service. */
export const airSupply = procedure({
  id: 'air-supply',
  title: 'Air supply at the valve',
  energyControl: consentControl(
    'To read the supply of a valve in service, still and while it moves, and to see what its air carries.',
  ),
  revisions: [
    { letter: 'A', date: '2026-11-25', change: 'First issue.' },
    {
      letter: 'B',
      date: '2026-11-26',
      change: 'A supply that the air set does not give leads on by name to the job on the air set.',
    },
    {
      letter: 'C',
      date: '2026-11-26',
      change:
        'The lowest supply while the valve moves is read and held against its range. The operator says yes to the blow-down by itself.',
    },
    {
      letter: 'D',
      date: '2026-11-26',
      change:
        'Where a card is answered no, the next one says how it is put right and what else may be done: none leaves only a stop.',
    },
    { letter: 'E', date: '2026-11-26', change: 'Cards that gave no reason say why they stand open.' },
    {
      letter: 'F',
      date: '2026-11-26',
      change: 'The card that watches the supply warns that the valve moves.',
    },
  ],
  phases: [
    { id: 'ready', title: 'Get ready' },
    { id: 'air', title: 'Air' },
    { id: 'return', title: 'Back to the operator' },
  ],
  start: 'needs',
  safe: CONSENT_SAFE_AT,
  steps: {
    ...takeForLook({
      title: 'Get ready to read the air of {tag}',
      bring: ['Bring a supply gauge of your own, with its fitting.', 'Bring goggles and a clean white rag.'],
      next: 'gaugeThere',
    }),
    gaugeThere: {
      kind: 'question',
      phase: 'air',
      title: 'Where your gauge goes',
      how: 'A gauge port with a cock of its own takes it without moving the valve. A port without a cock is under pressure: it waits for an isolated job.',
      why: 'A gauge at the header says nothing of what reaches the valve.',
      choices: {
        port: { label: 'On a gauge port with its cock shut', to: 'supplyRead' },
        there: { label: 'A gauge that is in date is there already', to: 'supplyRead' },
        none: { label: 'There is no such port: leave it', to: 'nextPerson', reason: true },
      },
      makeSafe,
    },
    ...supplyFirst({ phase: 'air', next: 'supplyMoving', makeSafe }),
    supplyMoving: {
      kind: 'reading',
      phase: 'air',
      title: 'Watch the supply while the operator moves the valve a little',
      how: 'As far as the process allows. Wanted all the while: {supplyWantedLow} at least, {supplyWantedBecause}. A supply that sags starves the valve just when it has to move.',
      action: 'readGauge',
      caution: STEM_MOVES,
      asks: [
        {
          name: 'supplyLowestPa',
          label: 'Lowest reading while it moved',
          type: 'quantity',
          dimension: 'pressure',
          gauge: 'supplyGauge',
          optional: true,
        },
        yesNo('supplyComesBack', 'It comes back at once when the valve stands'),
      ],
      judge: { rule: 'supplyMoving' },
      ways: { holds: { to: 'blowDown' }, sags: { to: 'supplySags' }, 'not read': { to: 'supplyNotMoved' } },
      makeSafe,
    },
    supplyNotMoved: {
      kind: 'question',
      phase: 'air',
      title: 'The supply was not read while the valve moved',
      how: 'Standing still, a choked air set looks like a good one.',
      choices: {
        again: { label: 'Read it', to: 'supplyMoving' },
        leave: { label: 'The process does not let it move: go on', to: 'blowDown', reason: true },
      },
      makeSafe,
    },
    supplySags: {
      kind: 'question',
      phase: 'air',
      title: 'The supply sags while the valve moves',
      how: 'A filter that is full, a regulator too small, a tube too thin or too long, a cock that is not wide open, other users on the same branch.',
      choices: {
        cock: { label: 'The cock was not wide open: watch it again', to: 'supplyMoving' },
        goOn: { label: 'Look at the filter next', to: 'blowDown' },
        leave: { label: 'Write it down for the air set, and stop here', to: 'nextPerson', reason: true },
      },
      makeSafe,
    },
    ...blowAirSetDown({
      phase: 'air',
      next: 'nextPerson',
      makeSafe,
      dirty: {
        label: 'Written down for filter, dryer and the neighbours; the job on the air set comes next',
        reason: true,
        comesNext: 'air-set',
      },
    }),
    ...lookIsOver(),
  },
});
