import { factsOf, knownAtOpening } from '../../procedures/facts.ts';
import type { Json } from '../../procedures/json.ts';
import { chosenGear } from '../../procedures/test-gear/choice.ts';
import type { GearItem } from '../../procedures/test-gear/gear.ts';
import { rolesAt } from '../../procedures/test-gear/roles.ts';
import { asJson, revisionOf } from '../../procedures/vocabulary.ts';
import { Refusal } from '../../safety/refusal.ts';
import { type Gear, gearKind } from '../gear/gear-stream.ts';
import type { Read } from '../log/act.ts';
import { fingerprintOf } from '../log/chain.ts';
import { streamOf } from '../log/stream-kind.ts';
import type { Person } from '../people/person.ts';
import type { Services } from '../services.ts';
import { noSuchValve } from '../valves/valve-refusals.ts';
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
 * @throws Refusal OPN-001 to OPN-006
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
  const roles = rolesAt(opening.place, served.procedure.gear);
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
  const facts = factsOf(sheet, opening.place);
  const inputs = {
    id,
    tag,
    sheet,
    sheetRevision: revision,
    gear: chosenGear({
      roles: rolesAt(opening.place, served.procedure.gear),
      sheet,
      numbers,
      today: read.now.slice(0, 10),
      find: (number) => gearOf(read.state(gearKind, number)),
    }),
    facts,
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
        effects: { to: definition.start, sets: knownAtOpening(facts) } as unknown as Json,
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
  if (sheet === null) throw noSuchValve(tag);
  if (retired)
    throw refuse('OPN-002', `${tag} is retired.`, 'Choose another valve, or save its sheet anew first.');
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

function refuse(code: string, what: string, next: string): Refusal {
  return new Refusal({ kind: 'conflict', code, what, kept: 'No job was opened.', next });
}

function gearOf(gear: Gear): GearItem | null {
  return gear.retired ? null : gear.item;
}
