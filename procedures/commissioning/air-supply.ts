import { yesNo } from '../phases/common.ts';
import { CONSENT_SAFE_AT, consentControl, lookIsOver, takeForLook } from '../phases/consent-only.ts';
import { readSupply, supplyWrong } from '../phases/own-stroke.ts';
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
      choices: {
        port: { label: 'On a gauge port with its cock shut', to: 'supplyRead' },
        there: { label: 'A gauge that is in date is there already', to: 'supplyRead' },
        none: { label: 'There is no such port: leave it', to: 'nextPerson', reason: true },
      },
      makeSafe,
    },
    supplyRead: readSupply({
      phase: 'air',
      ways: {
        inside: { to: 'supplyMoving' },
        low: { to: 'supplyOut' },
        high: { to: 'supplyOut' },
        'no range': { to: 'supplyMoving' },
      },
      makeSafe,
    }),
    supplyOut: supplyWrong({
      phase: 'air',
      again: 'supplyRead',
      goOn: 'supplyMoving',
      leave: 'nextPerson',
      makeSafe,
    }),
    supplyMoving: {
      kind: 'reading',
      phase: 'air',
      title: 'Watch the supply while the operator moves the valve a little',
      how: 'As far as the process allows, hands out of the yoke. A supply that sags starves the valve just when it has to move.',
      action: 'readGauge',
      asks: [
        {
          name: 'supplyLowestPa',
          label: 'Lowest reading while it moved',
          type: 'quantity',
          dimension: 'pressure',
          gauge: 'supplyGauge',
          optional: true,
        },
        yesNo('supplyHolds', 'It stays in its range, and comes back at once'),
      ],
      judge: { rule: 'allYes', with: { fields: 'supplyHolds' } },
      ways: { yes: { to: 'blowDown' }, no: { to: 'supplySags' } },
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
    blowDown: {
      kind: 'reading',
      phase: 'air',
      title: 'Drain the filter of the air set into the rag, a little',
      how: 'The operator agrees first: the supply dips. A float drain that never spits may be stuck.',
      action: 'blowAirLineDown',
      caution: {
        word: 'warning',
        hazard: 'Oil, water and scale leave the drain at line pressure.',
        consequence: 'They can blind.',
        avoid: 'Goggles on, face away, a quarter turn at most.',
      },
      do: ['Hold the rag under the drain.', 'Drain for a breath, no longer.', 'Look at the rag.'],
      asks: [
        {
          name: 'drainCame',
          label: 'What came out',
          type: 'choice',
          choices: [
            { value: 'clean', label: 'Air, and the rag is dry and clean' },
            { value: 'water', label: 'Water' },
            { value: 'oil', label: 'Oil' },
            { value: 'dirt', label: 'Rust, scale or desiccant dust' },
          ],
        },
      ],
      judge: { rule: 'oneOf', with: { field: 'drainCame', good: 'clean' } },
      ways: { yes: { to: 'nextPerson' }, no: { to: 'airDirty' } },
      makeSafe,
    },
    airDirty: {
      kind: 'question',
      phase: 'air',
      title: 'The air is not clean',
      how: 'Water freezes and rusts, oil swells seals and gums restrictions, dust plugs nozzles. It comes again until its source is found: dryer, drains upstream, a new pipe that was not blown out.',
      choices: {
        again: { label: 'Drain it once more', to: 'blowDown' },
        leave: {
          label: 'Written down for filter, dryer and the neighbours on this branch',
          to: 'nextPerson',
          reason: true,
        },
      },
      makeSafe,
    },
    ...lookIsOver(),
  },
});
