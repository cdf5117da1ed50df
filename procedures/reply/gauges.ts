import { measures, unitWord } from '../readings/unit-words.ts';
import type { Ask } from './ask.ts';
import type { Item } from './items.ts';

/** The gauge of one field names that field; of several, it tells nothing; any other is a tag of its own. */
export function gaugeOf(
  item: Item,
  { job, fields, at }: Pick<Ask, 'job' | 'fields'> & { readonly at: number },
): Item {
  if (item.kind !== 'tag' || item.known.kind !== 'gauge') return item;
  const { tag } = item.known;
  const own = fields.filter(
    (field) =>
      field.type === 'quantity' && field.gauge !== undefined && job.gear[field.gauge]?.number === tag,
  );
  const [only, ...more] = own;
  if (only === undefined) return item;
  return more.length === 0
    ? { kind: 'hint', raw: item.raw, field: only.name }
    : { kind: 'soft', raw: item.raw, at };
}

type NumberItem = Extract<Item, { kind: 'number' }>;
type GaugeItem = Extract<Item, { kind: 'tag' }>;

/** Another gauge belongs to the number before it where it can show that, else to the one behind it. */
export function withGauges(items: readonly Item[], { job }: Pick<Ask, 'job'>): readonly Item[] {
  const all: Item[] = [];
  let waiting: GaugeItem | null = null;
  for (const item of items) {
    const last = all.at(-1);
    if (item.kind === 'tag' && item.known.kind === 'gauge') {
      if (last?.kind === 'number' && last.gauge === undefined && canShow(item, { number: last, job }))
        all[all.length - 1] = { ...last, gauge: item.known.tag };
      else if (waiting === null) waiting = item;
      else all.push(item);
    } else if (waiting !== null && item.kind === 'number' && canShow(waiting, { number: item, job })) {
      all.push({ ...item, gauge: waiting.known.tag });
      waiting = null;
    } else {
      if (waiting !== null) all.push(waiting);
      waiting = null;
      all.push(item);
    }
  }
  return waiting === null ? all : [...all, waiting];
}

function canShow(
  { known }: GaugeItem,
  { number, job }: { readonly number: NumberItem; readonly job: Ask['job'] },
): boolean {
  const gear = known.role === undefined ? undefined : job.gear[known.role];
  const meant = unitWord(number.raw.replace(/^[^\p{L}%"]*/u, ''));
  if (gear === undefined || number.bare || meant.kind !== 'units') return true;
  const shown = gear.dimension === 'length' ? (['length', 'percent'] as const) : [gear.dimension];
  return meant.units.some((unit) => measures(unit, shown));
}
