import type { Job, Answer as Line } from '../../job.ts';
import { type CheckId, isCheckId } from '../checks.ts';
import type { Answer, Evidence, Proof } from '../engine/evidence.ts';
import { OPENING_IDS, type OpeningId, openingEvidence } from '../openings.ts';
import { REPAIR_IDS, type RepairId, repairOf } from '../repairs.ts';
import type { ValveFacts } from '../valve-facts.ts';
import { seenBefore } from './seen-before.ts';

/**
 * The evidence of a job: the fold of its answered cards, from the figures that each stored when it was decided. A
 * ranking is no part of it.
 */
export function evidenceOf(
  job: Pick<Job, 'answers'> & Partial<Pick<Job, 'lastTime' | 'openedAt'>>,
  facts: ValveFacts,
): readonly Evidence[] {
  const lines = job.answers.filter((one, at) => !one.superseded && !isOlderRecord(job.answers, at));
  const proofs = new Map<number, Proved>();
  lines.forEach((line, at) => {
    const repair = mended(line);
    const proof = repair === null ? null : proofAfter(lines, { at, repair });
    if (proof !== null) proofs.set(at, proof);
  });
  const spent = new Set([...proofs.values()].map(({ at }) => at));
  return lines.flatMap((line, at): readonly Evidence[] => {
    if (line.step === SAME_TROUBLE.step)
      return line.outcome === SAME_TROUBLE.choice && job.lastTime
        ? seenBefore(job.lastTime, job.openedAt ?? '')
        : [];
    if (line.figures.evidence === 'first line') return firstLine(line, facts);
    const repair = mended(line);
    const proof = proofs.get(at);
    if (repair !== null && proof !== undefined) {
      const { check, cured } = proof;
      const soundBefore = readSoundBefore(lines, { at, check });
      return [{ kind: 'repaired', repair, cured, proof: { check, soundBefore } }];
    }
    return spent.has(at) ? [] : checkAnswer(line);
  });
}

/** Of several records of one loop the newest alone counts: they are no witnesses of each other. */
function isOlderRecord(answers: Job['answers'], at: number): boolean {
  const isRecord = (one: Line | undefined) => one?.figures.check === LOOP_RECORD && !one.superseded;
  return isRecord(answers[at]) && answers.slice(at + 1).some(isRecord);
}

const LOOP_RECORD: CheckId = 'loopRecord';

/** Where the technician says whether what an earlier job did counts. */
const SAME_TROUBLE = { step: 'sameTrouble', choice: 'same' } as const;

/** Repairs that were made on the spot, with the check that proved each, in order. */
export function mendsIn(answers: Job['answers']): readonly {
  readonly repair: RepairId;
  readonly proof: { readonly check: CheckId; readonly sound: boolean } | null;
}[] {
  const lines = answers.filter((one) => !one.superseded);
  return lines.flatMap((line, at) => {
    const repair = mended(line);
    if (repair === null) return [];
    const proof = proofAfter(lines, { at, repair });
    return [{ repair, proof: proof === null ? null : { check: proof.check, sound: proof.cured } }];
  });
}

/** The repair that was made and whose proof has not been looked at yet. */
export function repairToProve(job: Pick<Job, 'answers'>): RepairId | null {
  const lines = job.answers.filter((one) => !one.superseded);
  const at = lines.findLastIndex((line) => mended(line) !== null);
  const repair = at < 0 ? null : mended(lines[at]);
  return repair === null || proofAfter(lines, { at, repair }) !== null ? null : repair;
}

function mended(line: Line | undefined): RepairId | null {
  if (line?.figures.evidence !== 'mended') return null;
  return REPAIR_IDS.find((id) => id === line.figures.repair) ?? null;
}

interface Proved {
  readonly at: number;
  readonly check: CheckId;
  readonly cured: boolean;
}

/** The first answer, before another repair, to a check that proves this one. */
function proofAfter(
  lines: readonly Line[],
  of: { readonly at: number; readonly repair: RepairId },
): Proved | null {
  for (let at = of.at + 1; at < lines.length && mended(lines[at]) === null; at += 1) {
    const line = lines[at];
    const [answer] = line === undefined ? [] : checkAnswer(line);
    if (answer?.kind === 'answer' && repairOf(of.repair).proof.includes(answer.check))
      return { at, check: answer.check, cured: isSound(line) };
  }
  return null;
}

/** What the last answer to this check before the repair was; null where there was none. */
function readSoundBefore(
  lines: readonly Line[],
  of: { readonly at: number; readonly check: CheckId },
): Proof['soundBefore'] {
  const last = lines
    .slice(0, of.at)
    .findLast((line) => checkAnswer(line).some((one) => one.kind === 'answer' && one.check === of.check));
  return last === undefined ? null : isSound(last);
}

const isSound = (line: Line | undefined): boolean => line?.figures.sound === 'yes';

function firstLine({ words, figures }: Line, facts: ValveFacts): readonly Answer[] {
  const opening = OPENING_IDS.find((id): id is OpeningId => id === words.symptom);
  const said = opening === undefined ? [] : openingEvidence(facts, opening);
  const read = (['valveAgainstCommand', 'travelAgainstOutput'] as const).flatMap((check): Answer[] => {
    const [value, readSigma] = [figures[`${check}Value`], figures[`${check}Sigma`]];
    return typeof value === 'number' && typeof readSigma === 'number'
      ? [{ kind: 'answer', check, value, readSigma, gauge: 'first line', doubt: FIRST_LINE_DOUBT }]
      : [];
  });
  return [...said, ...read];
}

/** What is passed on by word of mouth before anybody looked is wrong so much more often: judgement. */
const FIRST_LINE_DOUBT = 0.1;

function checkAnswer({ figures }: Line): readonly Evidence[] {
  const { evidence, check, found, value, readSigma, gauge } = figures;
  if (evidence !== 'check' || typeof check !== 'string' || !isCheckId(check)) return [];
  if (found === 'cannot tell' || found === 'skip') return [{ kind: found, check }];
  return [
    {
      kind: 'answer',
      check,
      ...(typeof found === 'string' ? { outcome: found } : {}),
      ...(typeof value === 'number' ? { value } : {}),
      ...(typeof readSigma === 'number' ? { readSigma } : {}),
      ...(typeof gauge === 'string' ? { gauge } : {}),
      gaugeAlive: figures.gaugeAlive === 'yes',
    },
  ];
}

/** Gauges that were fitted while the job was on its bypass. */
export function gaugesFittedIn(job: Pick<Job, 'answers'>): readonly string[] {
  return job.answers
    .filter((one) => !one.superseded && one.figures.evidence === 'gauge fitted')
    .flatMap(({ figures }) => (typeof figures.point === 'string' ? [figures.point] : []));
}
