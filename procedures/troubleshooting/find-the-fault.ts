import { airLimits } from '../phases/air-limits.ts';
import { CYLINDER_BACK, CYLINDER_FRONT, CYLINDER_LIMITS } from '../phases/cylinder-words.ts';
import { giveBack } from '../phases/give-back.ts';
import { isolate } from '../phases/isolate.ts';
import { onlyWhere } from '../phases/only-where.ts';
import { ontoBypass } from '../phases/onto-bypass.ts';
import { isolatedControl, SAFE_AT } from '../phases/overhaul-frame.ts';
import { readyRig } from '../phases/ready-rig.ts';
import { alsoOnCylinder } from '../phases/reword.ts';
import { type Definition, procedure, type Step } from '../vocabulary.ts';
import type { Hub } from './check.ts';
import { CYLINDER_BETWEEN, lookOver, returned, testAir } from './steps/between-hubs.ts';
import { type AtHub, checkCards } from './steps/check-cards.ts';
import { CYLINDER_NEEDS, front } from './steps/front.ts';
import { goesOnCards, RIG_AWAY } from './steps/goes-on.ts';
import { HUB_STEP, hubCard, mendCards, nameCard } from './steps/hub-cards.ts';
import { nameStepId } from './steps/hub-choices.ts';

const AT: Readonly<Record<Hub, AtHub>> = {
  'in service': {
    hub: 'in service',
    phase: 'service',
    back: HUB_STEP['in service'],
    lookOver: HUB_STEP['in service'],
    makeSafe: 'haltService',
  },
  bypassed: {
    hub: 'bypassed',
    phase: 'onBypass',
    back: HUB_STEP.bypassed,
    lookOver: 'lookOver',
    makeSafe: 'haltBypass',
  },
  isolated: {
    hub: 'isolated',
    phase: 'isolated',
    back: HUB_STEP.isolated,
    lookOver: HUB_STEP.isolated,
    makeSafe: 'haltIsolating',
  },
};

function hubs(): Readonly<Record<string, Step>> {
  const [service, bypass, isolated] = [AT['in service'], AT.bypassed, AT.isolated];
  return {
    [service.back]: hubCard(service, { ways: { name: nameStepId('in service'), bypass: 'consent' } }),
    ...checkCards(service),
    ...mendCards(service),
    [nameStepId('in service')]: nameCard(service, 'serviceBack'),
    [bypass.back]: hubCard(bypass, {
      ways: {
        name: nameStepId('bypassed'),
        fitGauge: 'fitGauge',
        isolate: 'knowEnergies',
        giveBack: 'undoBypass',
      },
    }),
    ...lookOver(bypass),
    ...checkCards(bypass),
    ...mendCards(bypass),
    [nameStepId('bypassed')]: nameCard(bypass, 'undoBypass'),
    ...goesOnCards('bypassed', 'undoBypass'),
    [isolated.back]: hubCard(isolated, {
      ways: { name: RIG_AWAY, giveBack: 'backCheck' },
      testAir: 'holdTestAir',
    }),
    ...checkCards(isolated),
    ...testAir(isolated),
    [nameStepId('isolated')]: nameCard(isolated, 'backCheck'),
    ...goesOnCards('isolated', 'backCheck'),
  };
}

/** Shared phases that join the hubs; a valve on the bench has no loop to be complained of. */
function steps(): Readonly<Record<string, Step>> {
  const all = {
    ...readyRig<string>({ next: { bench: 'shutInlet', line: 'shutInlet' }, stopped: 'haltBypass' }),
    ...ontoBypass<string>({ next: 'lookOver', notStarted: 'afterReturn' }),
    ...isolate<string>({ next: 'isolated', giveBack: { bench: 'backCheck', line: 'backCheck' } }),
    ...airLimits<string>({ connect: 'connectAir', signAgain: 'holdTestAir', giveBack: 'disconnectAir' }),
    ...giveBack<string>({ done: 'afterReturn', isolateAgain: 'shutInlet' }),
    ...front(HUB_STEP['in service']),
    ...hubs(),
    ...returned(),
  };
  const said = alsoOnCylinder<Readonly<Record<string, Step>>>(all, {
    ...CYLINDER_FRONT,
    ...CYLINDER_LIMITS,
    ...CYLINDER_BACK,
    ...CYLINDER_BETWEEN,
    needs: CYLINDER_NEEDS,
  });
  return onlyWhere(said, { fact: 'place', is: 'line', start: 'needs' });
}

/** A complaint followed to its cause with the fewest safe checks; what opens the valve is left to its own procedures. */
export const findTheFault: Definition = procedure<string>({
  id: 'find-the-fault',
  title: 'Find the fault',
  energyControl: isolatedControl(
    'To find which of controller, tubing, positioner, actuator, packing or trim is at fault. In service and on the bypass nothing of the valve is opened; behind locks it is moved by test air, and a positioner may be taken off.',
  ),
  revisions: [
    { letter: 'A', date: '2026-11-25', change: 'First issue.' },
    {
      letter: 'B',
      date: '2026-11-25',
      change: 'From bypass and locks the valve may go back with nothing named, to look on in service.',
    },
    {
      letter: 'C',
      date: '2026-11-26',
      change:
        'Say of a controller output whether it works below a fifth: a valve near its seat is too large.',
    },
    {
      letter: 'D',
      date: '2026-11-26',
      change:
        'Mark both tubes of a cylinder before they come off; answer the clean-out plunger as a check by itself before anything counts as mended. Where a card is answered no, the next one says how it is put right and what else may be done: none leaves only a stop. Upload a record of the loop as a table, where there is one: it says whether the valve sticks.',
    },
    {
      letter: 'E',
      date: '2026-11-26',
      change:
        'A spring on a piston is set by its adjuster or its maker’s manual; no bench set is asked for there.',
    },
    {
      letter: 'F',
      date: '2026-11-26',
      change:
        'Behind locks a repair that wants them goes on as its own job: locks, isolation and readings go along. Numbers alone may be the first line.',
    },
    {
      letter: 'G',
      date: '2026-11-26',
      change: 'Hands stay out of the yoke while the air is bled off.',
    },
    {
      letter: 'H',
      date: '2026-11-26',
      change:
        'On the bypass a repair that is made there goes on as its own job: loop, bypass and readings go along. A repair that no procedure makes on this valve is not led to one. A valve that comes back: the card after the complaint says what was found and done last time, and asks whether it is the same trouble.',
    },
    {
      letter: 'J',
      date: '2026-11-26',
      change:
        'Soap tests at the stem say first that it may move: fingers stay outside the yoke. A handwheel is felt with the output held where no air is on the actuator, and goes back to neutral. Where this job has put the loop in manual, the mode of before counts. A card that takes numbers asks for them before the words. Cylinder gauges that part without the stem, a cock that is shut in the air and an uncoupled stem that drags have words of their own: a parted rod, a positioner without air and a scored bore are told so. From the bypass positioner and converter calibration go on as their own jobs, and so does the one on indicator and coupling. There is no letter I: it reads as a one.',
    },
    {
      letter: 'K',
      date: '2026-11-26',
      change:
        'A gauge on the nozzle, and whether a cover may come off with air on, are asked only where a positioner is fitted. Of a kinked tube it is said whether it lies on the way to the valve or behind the positioner. Cards that gave no reason say why they stand open.',
    },
    {
      letter: 'L',
      date: '2026-11-26',
      change:
        'Eye protection on, and hands outside the yoke, wherever air is let off. Stay on the radio with the operator while the bypass is shut. Hands and tools out of the yoke before the loop is given back. Loosen a joint until it hisses before a positioner comes off for the bench. A supply anywhere in the range of the sheet is as it should be.',
    },
  ],
  phases: [
    { id: 'complaint', title: 'The complaint' },
    { id: 'service', title: 'In service' },
    { id: 'bypass', title: 'Onto the bypass' },
    { id: 'onBypass', title: 'On the bypass' },
    { id: 'ready', title: 'Get ready to isolate' },
    { id: 'isolate', title: 'Take off line' },
    { id: 'isolated', title: 'Isolated' },
    { id: 'asFound', title: 'Air limits' },
    { id: 'airAway', title: 'Air away' },
    { id: 'return', title: 'Return to service' },
  ],
  start: 'needs',
  onlyWhere: { place: 'line' },
  safe: [...SAFE_AT, 'haltService'],
  steps: steps(),
});
