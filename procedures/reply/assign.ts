import type { Given } from '../readings/given.ts';
import type { Ask } from './ask.ts';
import type { Item } from './items.ts';
import { givenOf, type Place, placesOf } from './places.ts';
import type { Fault } from './values.ts';

export interface Assigned {
  /** Every way in which all pieces find a place, each once. */
  readonly givens: readonly Given[];
  /** Why there is none. */
  readonly fault: Fault | null;
}

/** More ways than anybody would choose among. */
const WAYS_MAX = 400;

/**
 * All ways in which the pieces of a reply find their fields. Pieces of one kind stand in the order of the card's
 * fields: two pressures for two gauges are the first and the second.
 */
export function assign(items: readonly Item[], ask: Ask): Assigned {
  const found = new Map<string, Given>();
  let fault: Fault | null = null;
  for (const hinted of withHints(items)) {
    const placed = hinted.map(({ item, hint }) => placesOf(item, { ask, hint }));
    const failed = placed.find(({ places }) => places.length === 0);
    if (failed !== undefined) {
      fault ??= failed.fault;
      continue;
    }
    const refused = placed.find((one) => one.fault !== null)?.fault ?? null;
    const before = found.size;
    for (const ways of waysThrough(
      placed.map(({ places }) => places),
      { hinted, ask },
    )) {
      const given = givenOf(ways, ask);
      found.set(JSON.stringify(Object.entries(given).sort()), given);
    }
    if (found.size === before) fault ??= refused;
  }
  const givens = [...found.values()];
  return { givens, fault: givens.length > 0 ? null : (fault ?? tooMuch(items)) };
}

interface Hinted {
  readonly item: Item;
  readonly hint: string | null;
}

/** A name stands before its value, or behind it, all through one reply: both are tried; then each where it fits. */
function withHints(items: readonly Item[]): readonly (readonly Hinted[])[] {
  if (items.every(({ kind }) => kind !== 'hint')) return [items.map((item) => ({ item, hint: null }))];
  const before = hintsBefore(items);
  const mixed = before === undefined ? hintsAround(items) : undefined;
  return [before, hintsBefore(items.toReversed())?.toReversed(), mixed].filter(
    (one): one is Hinted[] => one !== undefined,
  );
}

/** `controller 100 %, 12 psi at the valve`: a name is for the number behind it, else for the one before it. */
function hintsAround(items: readonly Item[]): Hinted[] | undefined {
  const hinted: Hinted[] = [];
  let hint: string | null = null;
  for (const [at, item] of items.entries()) {
    if (item.kind !== 'hint') {
      hinted.push({ item, hint });
      hint = null;
    } else if (items[at + 1]?.kind === 'number') hint = item.field;
    else {
      const last = hinted.at(-1);
      if (last === undefined || last.item.kind !== 'number' || last.hint !== null) return undefined;
      hinted[hinted.length - 1] = { item: last.item, hint: item.field };
    }
  }
  return hinted;
}

/** Each hint for the piece that comes next; hints one behind the other must name one field. */
function hintsBefore(items: readonly Item[]): Hinted[] | undefined {
  const hinted: Hinted[] = [];
  let hint: string | null = null;
  for (const item of items) {
    if (item.kind === 'hint') {
      if (hint !== null && hint !== item.field) return undefined;
      hint = item.field;
    } else {
      hinted.push({ item, hint });
      hint = null;
    }
  }
  return hint === null ? hinted : undefined;
}

function waysThrough(
  all: readonly (readonly Place[])[],
  { hinted, ask }: { readonly hinted: readonly Hinted[]; readonly ask: Ask },
): readonly (readonly Place[])[] {
  let ways: (readonly Place[])[] = [[]];
  for (const places of all) {
    ways = ways.flatMap((way) =>
      places.filter((place) => mayFollow(way, { place, hinted, ask })).map((place) => [...way, place]),
    );
    // Where some were left out, one that is left would only look like the one that was meant.
    if (ways.length > WAYS_MAX) return [];
  }
  return ways;
}

/** One value a field; and pieces of one kind that nothing names stand in the order of the card. */
function mayFollow(
  way: readonly Place[],
  { place, hinted, ask }: { readonly place: Place; readonly hinted: readonly Hinted[]; readonly ask: Ask },
): boolean {
  const at = (name: string) => ask.fields.findIndex((field) => field.name === name);
  const sort = (name: string) => {
    const field = ask.fields[at(name)];
    return field?.type === 'quantity' ? field.dimension : (field?.type ?? '');
  };
  const isNumber = (name: string) => ask.fields[at(name)]?.type === 'quantity';
  const own = hinted[way.length];
  return way.every((before, index) => {
    if (before.field === place.field) return false;
    const other = hinted[index];
    const isFree = own?.hint === null && other?.hint === null && own.item.kind === other.item.kind;
    if (!isFree) return true;
    const isAlike =
      sort(before.field) === sort(place.field) ||
      (isNumber(before.field) && isNumber(place.field) && areAlike(own.item, other.item));
    return !isAlike || at(before.field) < at(place.field);
  });
}

/** Two numbers in one unit, or two without any. */
function areAlike(one: Item, other: Item): boolean {
  return one.kind === 'number' && other.kind === 'number' && unitOf(one.raw) === unitOf(other.raw);
}

function unitOf(raw: string): string {
  return raw.replace(/^[^\p{L}%"]*/u, '').toLowerCase();
}

function tooMuch(items: readonly Item[]): Fault {
  const said = items.map(({ raw }) => raw).join(' ');
  return {
    code: 'RPL-003',
    what: `“${said}” is more than this card asks for, or not all of it fits.`,
    next: 'Write one value for each field, with its unit, or with the name of the field before it.',
  };
}
