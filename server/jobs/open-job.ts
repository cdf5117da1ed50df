import { factsOf } from '../../procedures/facts.ts';
import type { Json } from '../../procedures/json.ts';
import type { GearItem } from '../../procedures/test-gear/gear.ts';
import { GEAR_ROLES, type GearRole, rolesAt } from '../../procedures/test-gear/roles.ts';
import { asJson, revisionOf } from '../../procedures/vocabulary.ts';
import { Refusal } from '../../safety/refusal.ts';
import { type Gear, gearKind } from '../gear/gear-stream.ts';
import type { Read } from '../log/act.ts';
import { fingerprintOf } from '../log/chain.ts';
import { streamOf } from '../log/stream-kind.ts';
import type { Person } from '../people/person.ts';
import type { Services } from '../services.ts';
import { valveKind } from '../valves/valve-stream.ts';
import { type Catalogue, procedureKind, type Served } from './catalogue.ts';
import { jobKind } from './job-stream.ts';

export interface Opening {
  readonly services: Services;
  readonly catalogue: Catalogue;
  readonly requestId: string;
  readonly person: Person;
  readonly screen: string;
  readonly tag: string;
  readonly procedure: string;
  readonly place: 'bench' | 'line';
  /** Number of the gear chosen for each role. */
  readonly gear: Readonly<Record<string, string>>;
}

/**
 * Opens a job: one active job a valve, on the definition, sheet and gear as they are now.
 * @returns the job's number
 * @throws Refusal OPN-001 to OPN-004
 */
export async function openJob(opening: Opening): Promise<string> {
  const { services, catalogue, tag } = opening;
  const served = catalogue.current(opening.procedure);
  if (served === undefined)
    throw refuse(
      'OPN-001',
      `There is no procedure "${opening.procedure}".`,
      'Choose one that the valve offers.',
    );
  const roles = rolesAt(opening.place);
  const numbers = Object.fromEntries(roles.map((role) => [role, (opening.gear[role] ?? '').trim()]));
  const id = await freeNumber(services);
  const gearStreams = [...new Set(Object.values(numbers).filter((number) => number !== ''))].map((number) =>
    streamOf('gear', number),
  );
  const opened = await services.log.act({
    requestId: opening.requestId,
    fingerprint: fingerprintOf({ tag, procedure: opening.procedure, place: opening.place, gear: numbers }),
    person: opening.person.id,
    screen: opening.screen,
    streams: [
      streamOf('job', id),
      streamOf('valve', tag),
      streamOf('procedure', served.hash),
      ...gearStreams,
    ],
    decide: (read) => decide(read, { opening, served, id, numbers }),
  });
  return (opened as { readonly job: string }).job;
}

interface Deciding {
  readonly opening: Opening;
  readonly served: Served;
  readonly id: string;
  readonly numbers: Readonly<Record<string, string>>;
}

/** What opening means, with the log held still: the valve is free, the procedure fits, the gear is in date. */
function decide(read: Read, { opening, served, id, numbers }: Deciding) {
  const { tag } = opening;
  const { sheet, revision } = freeValve(read, { opening, id });
  const offer = opening.catalogue
    .offers(sheet)
    .find((one) => one.id === opening.procedure && one.place === opening.place);
  if (offer?.because != null)
    throw refuse('OPN-004', offer.because, 'Choose a procedure that fits the valve.');
  const { definition } = served.compiled;
  const inputs = {
    id,
    tag,
    sheet,
    sheetRevision: revision,
    gear: chosen(rolesAt(opening.place), {
      numbers,
      today: read.now.slice(0, 10),
      find: (number) => gearOf(read.state(gearKind, number)),
    }),
    facts: factsOf(sheet, opening.place),
    procedure: definition.id,
    procedureRevision: revisionOf(definition),
    definitionHash: served.hash,
  } as unknown as Json;
  const bare = { outcome: {}, effects: {} };
  const stored = read.place(procedureKind, served.hash) > 0;
  const storing = {
    stream: streamOf('procedure', served.hash),
    kind: 'procedure-stored',
    inputs: asJson(definition),
    ...bare,
  };
  return {
    entries: [
      ...(stored ? [] : [storing]),
      {
        stream: streamOf('job', id),
        kind: 'job-opened',
        inputs,
        outcome: {},
        effects: { to: definition.start },
      },
      { stream: streamOf('valve', tag), kind: 'job-taken-on', inputs: { job: id }, ...bare },
    ],
    answer: { job: id },
  };
}

/** The valve, if it is there and no other job has it. */
function freeValve(read: Read, { opening, id }: Pick<Deciding, 'opening' | 'id'>) {
  const { tag } = opening;
  if (read.place(jobKind, id) !== 0)
    throw refuse('OPN-005', 'Another job was opened at this moment.', 'Send it again.');
  const { sheet, revision, retired, openJob: taken } = read.state(valveKind, tag);
  if (sheet === null || retired)
    throw refuse('OPN-002', `There is no valve ${tag}.`, 'Choose a valve of the list.');
  if (taken !== null)
    throw refuse('OPN-003', `Job ${taken} is open on ${tag}.`, 'Go on with that one, or close it first.');
  return { sheet, revision };
}

/** Jobs are numbered 1, 2, 3; a number taken meanwhile is refused in the act itself. */
async function freeNumber({ log }: Services): Promise<string> {
  let number = 1;
  for (let after: { sort: string; id: string } | undefined; ; ) {
    const page = await log.summaries('job', { limit: 500, ...(after === undefined ? {} : { after }) });
    for (const line of page) number = Math.max(number, Number(line.id) + 1);
    const last = page.at(-1);
    if (page.length < 500 || last === undefined) return String(number);
    after = { sort: last.sort, id: last.id };
  }
}

function chosen(
  roles: readonly GearRole[],
  {
    numbers,
    today,
    find,
  }: {
    readonly numbers: Readonly<Record<string, string>>;
    readonly today: string;
    readonly find: (number: string) => GearItem | null;
  },
): Readonly<Record<string, GearItem>> {
  const wrong: Record<string, string> = {};
  const gear: Record<string, GearItem> = {};
  for (const role of roles) {
    const number = numbers[role] ?? '';
    const item = number === '' ? null : find(number);
    if (item === null) wrong[role] = `Choose a ${GEAR_ROLES[role].kind}.`;
    else if (item.kind !== GEAR_ROLES[role].kind)
      wrong[role] = `${number} is a ${item.kind}; a ${GEAR_ROLES[role].kind} is wanted.`;
    else if (item.dueOn < today) wrong[role] = `${number} was due for calibration on ${item.dueOn}.`;
    else gear[role] = item;
  }
  if (gear.supplyGauge !== undefined && gear.supplyGauge.number === gear.signalGauge?.number)
    wrong.supplyGauge = 'Supply pressure needs a gauge of its own.';
  if (gear.checkGauge !== undefined && gear.checkGauge.number === gear.signalGauge?.number)
    wrong.checkGauge = 'The second gauge is another one than the first.';
  if (Object.keys(wrong).length > 0) {
    throw new Refusal({
      kind: 'unreadable',
      code: 'OPN-006',
      what: 'The test gear does not fit yet.',
      kept: 'Your choices still stand.',
      next: 'Choose the gear named.',
      fields: wrong,
    });
  }
  return gear;
}

function refuse(code: string, what: string, next: string): Refusal {
  return new Refusal({ kind: 'conflict', code, what, kept: 'No job was opened.', next });
}

function gearOf(gear: Gear): GearItem | null {
  return gear.retired ? null : gear.item;
}
