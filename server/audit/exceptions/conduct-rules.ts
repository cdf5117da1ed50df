/** Rules about who wrote and signed what, when, and where. */
import { CONDITIONS, type ConditionId, LOCK_IDS } from '../../../safety/conditions.ts';
import { type AuditedJob, type Exception, exception, type JobLine } from './exception.ts';

/** Reading what a hold rests on takes longer than this; common practice, no source. */
const SECONDS = 20;
const SHIFT_HOURS = 12;
const HOUR_MS = 3_600_000;
/** A clock that a time server sets goes back by less. */
const CLOCK_SLACK_MS = 2000;

export function oneScreen({ lines }: AuditedJob): readonly Exception[] {
  return lines.flatMap((line, at) => {
    const before = lines[at - 1];
    if (line.kind !== 'hold-signed' || before === undefined || before.person === line.person) return [];
    const betweenS = (Date.parse(line.at) - Date.parse(before.at)) / 1000;
    if (before.screen !== line.screen || betweenS > SECONDS) return [];
    const what = `${betweenS.toFixed(0)} s at ${line.screen}`;
    return [{ ...exception('oneScreen', line, what), lines: [before.place, line.place] }];
  });
}

export function seldom({ lines }: AuditedJob): readonly Exception[] {
  return lines.flatMap((line) => {
    const { signature, reason = '' } = line.inputs;
    const why = signature?.why ?? '';
    if (line.kind === 'hold-waived' || line.kind === 'not-witnessed')
      return [exception('waived', line, reason || why)];
    if (line.kind === 'overridden') return [exception('overridden', line, reason)];
    if (line.kind !== 'hold-signed' || signature === undefined) return [];
    if (signature.radio !== null) return [exception('byRadio', line, `heard by ${signature.radio.heardBy}`)];
    return signature.way === 'second person' ? [exception('secondPerson', line, why)] : [];
  });
}

export function writtenLate({ lines }: AuditedJob): readonly Exception[] {
  return lines.flatMap((line) => {
    const { late } = line.inputs;
    if (late === undefined || late === null) return [];
    const hours = (Date.parse(line.at) - Date.parse(late.claimedAt)) / HOUR_MS;
    return [exception('writtenLate', line, `${hours.toFixed(1)} h later: ${late.reason}`)];
  });
}

export function overdueGauge({ opened, lines }: AuditedJob): readonly Exception[] {
  const due = new Map(Object.values(opened.gear).map((item) => [item?.number ?? '', item?.dueOn ?? '']));
  return lines.flatMap((line) => {
    const late = [...new Set((line.inputs.readings ?? []).map(({ gauge }) => gauge ?? ''))].filter(
      (gauge) => {
        const day = due.get(gauge) ?? '';
        return day !== '' && day < line.at.slice(0, 10);
      },
    );
    return late.length === 0
      ? []
      : [exception('overdueGauge', line, `${late.join(', ')}, due ${due.get(late[0] ?? '')}`)];
  });
}

/** A verdict is a line of its own without readings that has figures: what was worked out from the lines before. */
function isVerdict({ kind, inputs, outcome }: JobLine): boolean {
  const figures = Object.keys(outcome.figures ?? {}).length;
  return kind === 'step-answered' && figures > 0 && (inputs.readings ?? []).length === 0;
}

export function correctedLater({ lines }: AuditedJob): readonly Exception[] {
  return lines.flatMap((line) => {
    const { corrects } = line.inputs;
    if (line.kind !== 'corrected' || corrects === undefined) return [];
    const verdict = lines.find((one) => one.place > corrects && one.place < line.place && isVerdict(one));
    if (verdict === undefined) return [];
    const what = `line ${corrects}, after the verdict of line ${verdict.place}: ${line.inputs.reason ?? ''}`;
    return [{ ...exception('correctedLater', line, what), lines: [corrects, verdict.place, line.place] }];
  });
}

export function clockMoved({ lines }: AuditedJob): readonly Exception[] {
  return lines.flatMap((line, at) => {
    const before = lines[at - 1];
    if (before === undefined) return [];
    const backMs = Date.parse(before.at) - Date.parse(line.at);
    if (backMs <= CLOCK_SLACK_MS) return [];
    return [
      {
        ...exception('clockMoved', line, `back by ${(backMs / 1000).toFixed(0)} s`),
        lines: [before.place, line.place],
      },
    ];
  });
}

/** @param now for locks that are still on */
export function lockOverShift({ lines }: AuditedJob, now: string): readonly Exception[] {
  const on = new Map<ConditionId, JobLine>();
  const found: Exception[] = [];
  const check = (id: ConditionId, until: { readonly at: string; readonly words: string }): void => {
    const hung = on.get(id);
    on.delete(id);
    if (hung === undefined) return;
    const hours = (Date.parse(until.at) - Date.parse(hung.at)) / HOUR_MS;
    const { lock, point } = hung.effects.locks?.[id] ?? { lock: '', point: '' };
    const what = `${CONDITIONS[id].name}, ${lock} at ${point}: ${hours.toFixed(1)} h${until.words}`;
    if (hours > SHIFT_HOURS) found.push(exception('lockOverShift', hung, what));
  };
  for (const line of lines) {
    const { locks = {}, status } = line.effects;
    const off = { at: line.at, words: '' };
    for (const id of LOCK_IDS.filter((one) => locks[one] !== undefined)) {
      if (locks[id] === null) check(id, off);
      else if (!on.has(id)) on.set(id, line);
    }
    if (status === 'closed') for (const id of [...on.keys()]) check(id, off);
  }
  for (const id of [...on.keys()]) check(id, { at: now, words: ', and still on' });
  return found;
}
