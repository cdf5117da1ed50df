/** How test gear comes in by tables. */
import type { Json } from '../../procedures/json.ts';
import { gearTable as form, type GearRow } from '../../procedures/test-gear/gear-table.ts';
import { gearText } from '../../procedures/test-gear/gear-text.ts';
import { streamOf } from '../log/stream-kind.ts';
import { changed, type RowLooked, type TableKind } from '../tables/table-kind.ts';
import { type Gear, gearKind } from './gear-stream.ts';

export const gearTable: TableKind<GearRow> = {
  form,
  /** 2,000 pieces with long notes. */
  bytesMax: 2 * 1024 * 1024,
  keptAs: 'gear-table',
  codes: { cells: 'GEA-006', other: 'GEA-007' },
  kept: 'No test gear was changed',
  beside: ({ item }) => [{ kind: gearKind, id: item.number }],
  look: (standing, { item }) => {
    const gear = standing.state(gearKind, item.number);
    return { ...changeOf(gear, item), stands: [gear.revision, gear.retired] };
  },
  draft: ({ item }) => ({
    stream: streamOf(gearKind.kind, item.number),
    kind: 'gear-saved',
    inputs: { item } as unknown as Json,
    outcome: {},
    effects: {},
  }),
};

function changeOf(gear: Gear, item: GearRow['item']): Pick<RowLooked, 'change' | 'says'> {
  const before = gear.item;
  if (before === null) return { change: 'new', says: [] };
  const [was, is] = [gearText(before), gearText(item)];
  const says = changed((Object.keys(is) as (keyof typeof is)[]).map((name) => [name, was[name], is[name]]));
  const wrong = gear.wrong.at(-1);
  // A table of last month must not bring back what was found wrong since and not calibrated again.
  if (gear.retired && wrong !== undefined && item.calibratedOn <= wrong.foundOn)
    return {
      change: 'stays out of use',
      says: [
        `Found wrong on ${wrong.foundOn}, and not calibrated since. Save it on its own page once it is right.`,
      ],
    };
  if (gear.retired) return { change: 'taken back into use', says };
  return { change: says.length === 0 ? 'unchanged' : 'changed', says };
}
