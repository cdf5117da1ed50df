import type { Job } from '../../../procedures/job.ts';
import { FIGURES, type FigureName } from '../../../procedures/quantities.ts';
import { fill, say, sayFigure } from '../../../procedures/say.ts';
import { springRateOf } from '../../../procedures/valve-sheet/derived.ts';
import type { ConditionId } from '../../../safety/conditions.ts';
import type { EnergyTag } from '../../../views/pictures/energy-tag.ts';
import { stateWord } from '../../../views/pictures/marks.ts';
import {
  type Cock,
  type Filling,
  type SpringState,
  type ValveSection,
  valveSection,
} from '../../../views/pictures/valve-section.ts';
import { deviceOf } from '../../valves/sheet-drawing.ts';
import { drawnOn, type EnergyView, energyView } from './energies.ts';

export interface Drawing {
  readonly svg: string;
  readonly facts: readonly { readonly label: string; readonly value: string }[];
}

interface Shown {
  readonly nowMs: number;
  /** Says the states in the language of whoever looks, since a longer word wants more room. */
  readonly say?: (text: string) => string;
}

const asItIs = (text: string): string => text;

/** The valve from its sheet, with every energy's tag where the energy sits and the stem where it was last read. */
export function drawing(job: Job, { nowMs, say = asItIs }: Shown): Drawing {
  const energies = drawnOn(job).map((condition) => energyView(condition, { job, nowMs }));
  return { svg: valveSection(section(job, { energies, say })), facts: facts(job) };
}

function section(
  job: Job,
  { energies, say }: { readonly energies: readonly EnergyView[]; readonly say: (text: string) => string },
): ValveSection {
  const { sheet } = job;
  const of = (condition: ConditionId) => energies.find((one) => one.condition === condition);
  const bench = job.facts.place === 'bench';
  const openFraction = openFractionOf(job);
  const shut = (condition: ConditionId): Cock | null => {
    if (bench) return null;
    const lock = of(condition)?.lock ?? null;
    return lock === null ? { shut: false } : { shut: true, lock };
  };
  const drain = (condition: ConditionId): Cock | null =>
    bench ? null : { shut: of(condition)?.state !== 'locked' };
  return {
    id: 'valve',
    sentence: sentence(job, energies),
    plugCloses: sheet.plugCloses,
    airMovesStem: sheet.airMovesStem,
    flow: sheet.flow,
    actuatorKind: sheet.actuatorKind,
    springHeldBy: sheet.springHeldBy,
    device: bench ? '' : deviceOf(sheet),
    positioner: sheet.positioner !== 'none',
    openFraction,
    supply: filling(of('supplyAir')),
    signal: filling(of('signalAir')),
    spring: sheet.springHeldBy === 'no spring' ? 'absent' : springState(of('spring')),
    inlet: filling(of('processInlet')),
    outlet: filling(of('processOutlet')),
    signalLine: signalLine(job),
    supplyCock: shut('supplyAir'),
    inletCock: shut('processInlet'),
    outletCock: shut('processOutlet'),
    inletDrain: drain('processInlet'),
    outletDrain: drain('processOutlet'),
    bypass: bench || job.facts.bypassLine === 'none' ? null : { shut: of('bypass')?.state === 'shut' },
    tags: energies.filter((one) => one.state !== 'absent').map((one) => said(tag(one), say)),
    words: {
      open: '100 open',
      shut: '0 shut',
      travel: 'travel',
      travelValue: travelWords(job, openFraction),
    },
  };
}

function tag(view: EnergyView): EnergyTag {
  const { letter, name, state } = view;
  // The adjuster's height is no proof by itself: it stands with who looked, and leaves the state its room.
  if (view.condition === 'spring' && view.is !== null)
    return { letter, name, state, proof: `adjuster ${view.is}` };
  const value = view.condition === 'bypass' ? '' : (view.is ?? '');
  return { letter, name, state, value, proof: view.proof };
}

/** What has to fit on the tag is said before it is drawn. */
function said(one: EnergyTag, say: (text: string) => string): EnergyTag {
  return { ...one, word: say(stateWord(one.state)), ...(one.proof && { proof: say(one.proof) }) };
}

function filling(view: EnergyView | undefined): Filling {
  if (view === undefined || view.state === 'absent') return 'absent';
  if (view.state === 'held') return 'held';
  return view.state === 'locked' || view.state === 'capped' ? 'safe' : 'live';
}

function springState(view: EnergyView | undefined): SpringState {
  const state = view?.state;
  return state === 'contained' || state === 'released' || state === 'absent' ? state : 'loaded';
}

function signalLine({ situation }: Job): ValveSection['signalLine'] {
  if (situation.states.testAir === 'connected') return 'test gauge';
  return situation.states.controllerLine === 'connected' ? 'joined' : 'capped';
}

/** Where the stem was last read, else where the spring puts it without air, or half way while the process runs. */
function openFractionOf(job: Job): number {
  const travelM = newestTravelM(job);
  if (travelM !== null) return travelM / job.sheet.travelM;
  const noAir = job.situation.states.signalAir !== 'live';
  return noAir ? (job.sheet.failPosition === 'open' ? 1 : 0) : 0.5;
}

function newestTravelM(job: Job): number | null {
  if (job.situation.states.testAir !== 'connected') return null;
  for (const answer of job.answers.toReversed()) {
    const travel = answer.readings.find(
      (reading) => reading.field === 'travelM' || reading.field === 'heldTravelM',
    );
    if (travel !== undefined) return travel.valueSi;
  }
  return null;
}

function travelWords(job: Job, openFraction: number): string {
  return newestTravelM(job) === null ? 'not read' : `${(100 * openFraction).toFixed(0)} %`;
}

function sentence(job: Job, energies: readonly EnergyView[]): string {
  const states = energies.map(({ name, state }) => `${name}: ${stateWord(state).toLowerCase()}`).join('; ');
  return (
    fill(
      `{tag} in section: plug closes moving ${job.sheet.plugCloses}, air moves the stem {airMoves}, {airAction}. `,
      job,
    ) + states
  );
}

const ENDS_OF_SPRING: readonly FigureName[] = ['benchSetLow', 'benchSetHigh'];
/** A spring on a piston has the same two ends, and no bench that it is set on. */
const ENDS_ON_PISTON: { readonly [F in FigureName]?: string } = {
  benchSetLow: 'begins to move at',
  benchSetHigh: 'has moved at',
};
const ENDS_OF_SIGNAL: readonly FigureName[] = ['signalLow', 'signalHigh'];

/** Where nothing but air moves the stem there is no bench set and no spring: the signal's ends stand in their place. */
function facts(job: Job): Drawing['facts'] {
  const hasSpring = job.sheet.springHeldBy !== 'no spring';
  const names: readonly FigureName[] = [
    'airAction',
    'failPosition',
    ...(hasSpring ? ENDS_OF_SPRING : ENDS_OF_SIGNAL),
    'travel',
    'stemThread',
    'testAirLimit',
  ];
  const onPiston = job.sheet.actuatorKind === 'piston' ? ENDS_ON_PISTON : {};
  const rows = names.map((name) => ({
    label: onPiston[name] ?? FIGURES[name].label,
    value: sayFigure(name, job),
  }));
  if (!hasSpring) return [...rows, { label: 'spring', value: 'none' }];
  const springRate = say({
    valueSi: springRateOf(job.sheet),
    dimension: 'forcePerLength',
    units: job.sheet.units,
  });
  return [...rows, { label: 'spring', value: springRate }];
}
