/** What two runs of the same work must have in common: everything in the log but times and ids. */
import type { SiteLog } from '../../server/log/site-log.ts';
import type { LogEntry } from '../../server/store/store.ts';

/** Fields that hold a time, a place in the whole chain, or a digest that these go into. */
const TIMED: readonly string[] = ['at', 'seq', 'untilMs', 'shownDigest', 'nonce'];

export interface ComparableEntry {
  readonly stream: string;
  readonly place: number;
  readonly kind: string;
  readonly person: string | null;
  readonly inputs: unknown;
  readonly outcome: unknown;
  readonly effects: unknown;
}

/** The entries of a job, its valve and the points that it locked, from the job's opening on, in the order of the chain. */
export async function comparableJob(log: SiteLog, id: string): Promise<readonly ComparableEntry[]> {
  const opened = (await log.entriesOf(`job:${id}`)).at(0);
  if (opened === undefined) throw new Error(`there is no job ${id}`);
  const { tag, sheet } = opened.inputs as unknown as {
    readonly tag: string;
    readonly sheet: Readonly<Record<string, unknown>>;
  };
  const points = ['supplyPoint', 'inletPoint', 'outletPoint', 'bypassPoint'].flatMap((name) =>
    typeof sheet[name] === 'string' ? [`point:${sheet[name]}`] : [],
  );
  const streams = [`job:${id}`, `valve:${tag}`, ...points];
  const entries = (await Promise.all(streams.map((stream) => log.entriesOf(stream)))).flat();
  return entries
    .filter(({ seq }) => seq >= opened.seq)
    .sort((one, other) => one.seq - other.seq)
    .map((entry) => comparable(entry, id));
}

function comparable(entry: LogEntry, id: string): ComparableEntry {
  const { stream, place, kind, person, inputs, outcome, effects } = entry;
  const isJob = stream === `job:${id}`;
  return {
    stream: isJob ? 'job' : stream,
    place: isJob ? place : 0,
    kind,
    person,
    inputs: without(inputs, id),
    outcome: without(outcome, id),
    effects: without(effects, id),
  };
}

/** The same without times, and with the number of the job taken out. */
function without(value: unknown, id: string): unknown {
  if (Array.isArray(value)) return value.map((item) => without(item, id));
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(
    Object.entries(value)
      .filter(([name]) => !TIMED.includes(name))
      .map(([name, item]) => [
        name,
        (name === 'job' || name === 'id') && item === id ? 'the job' : without(item, id),
      ]),
  );
}
