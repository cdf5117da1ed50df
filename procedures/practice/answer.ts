import type { Hub } from '../troubleshooting/check.ts';
import { type CheckId, checkOf } from '../troubleshooting/checks.ts';
import type { Evidence } from '../troubleshooting/engine/evidence.ts';
import { valveFactsOf } from '../troubleshooting/valve-facts.ts';
import { looksAtActuator } from './answers/actuator.ts';
import { looksAtAir } from './answers/air.ts';
import { looksAtBody } from './answers/body.ts';
import { looksFromControlRoom } from './answers/control-room.ts';
import { looksAtCylinder } from './answers/cylinder.ts';
import type { Looks, Said } from './answers/look.ts';
import { looksAtPositioner } from './answers/positioner.ts';
import { looksAtRig } from './answers/rig.ts';
import { looksAtSignal } from './answers/signal.ts';
import { looksAtStem } from './answers/stem.ts';
import { looksAtStroke } from './answers/stroke.ts';
import type { Random } from './random.ts';
import { kept, type SimulatedValve } from './simulated.ts';

/** Every check that the simulated valve answers. */
export const LOOKS: Looks = {
  ...looksFromControlRoom,
  ...looksAtSignal,
  ...looksAtAir,
  ...looksAtPositioner,
  ...looksAtActuator,
  ...looksAtCylinder,
  ...looksAtStroke,
  ...looksAtStem,
  ...looksAtBody,
  ...looksAtRig,
};

/** One look in so many is taken at the wrong thing or written down wrongly. Judgement. */
const SLIP_SHARE = 0.02;

/**
 * What a person would say who makes this check on the simulated valve: read on a gauge with its error and its
 * divisions, seen, heard, or not to be told.
 * @param of.hub  how the valve stands meanwhile: with the process on, or beside it
 * @throws Error for a check that such a valve does not have
 */
export function answerCheck(
  valve: SimulatedValve,
  of: { readonly check: CheckId; readonly hub: Hub; readonly random: Random },
): Evidence {
  if (of.random() < SLIP_SHARE) return { kind: 'answer', check: of.check, outcome: slip(of) };
  return evidence(of.check, seeCheck(valve, of));
}

/** What is there to be seen, heard and read at this check, by somebody who looks at the right thing. */
export function seeCheck(
  valve: SimulatedValve,
  of: { readonly check: CheckId; readonly hub: Hub; readonly random: Random },
): Said {
  const look = LOOKS[of.check];
  if (look === undefined) throw new Error(`the simulated valve has no answer to ${of.check}`);
  const facts = kept(valve, { key: 'facts', work: () => valveFactsOf(valve.build.frame.sheet) });
  return look({ valve, facts, hub: of.hub, random: of.random });
}

/** The same as evidence. */
export function evidence(check: CheckId, said: Said): Evidence {
  if ('cannotTell' in said) return { kind: 'cannot tell', check };
  if ('word' in said) return { kind: 'answer', check, outcome: said.word, gaugeAlive: true };
  const { value, readSigma } = said;
  return { kind: 'answer', check, value, readSigma, gaugeAlive: true };
}

function slip(of: { readonly check: CheckId; readonly random: Random }): string {
  const words = Object.keys(checkOf(of.check).outcomes);
  return words[Math.floor(of.random() * words.length)] ?? '';
}
