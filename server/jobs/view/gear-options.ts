import { type GearFaultCode, gearFaults } from '../../../procedures/test-gear/fit.ts';
import type { GearItem } from '../../../procedures/test-gear/gear.ts';
import { rangeText } from '../../../procedures/test-gear/gear-text.ts';
import type { GearRole } from '../../../procedures/test-gear/roles.ts';
import { wantedOf } from '../../../procedures/test-gear/wanted.ts';
import type { ValveSheet } from '../../../procedures/valve-sheet/sheet.ts';

export interface Choosing {
  readonly inUse: readonly GearItem[];
  readonly sheet: ValveSheet;
  /** YYYY-MM-DD */
  readonly today: string;
  readonly chosen: string | readonly string[] | undefined;
}

/** A list is no place for a sentence: whoever chooses gear that does not fit is told the whole of it. */
const BRIEF: { readonly [C in GearFaultCode]?: string } = {
  'GEA-102': 'out of date',
  'GEA-103': 'scale too short',
  'GEA-104': 'does not bleed down',
  'GEA-106': 'coarse for the tolerance',
  'GEA-107': 'due soon',
  'GEA-108': 'wide scale',
};

const GROUPS = ['Fits', 'Fits, with a caution', 'Does not fit'] as const;

/**
 * Gear of the right kind for a list to choose from: what fits first, then what fits with a caution, and what does not
 * with its reason, so that nobody looks for it in vain. Number and scale stand first, as they do on the gear.
 *
 * @example gearOptions('signalGauge', choosing)[0]?.label // 'G-07, 0 to 30 psi, due 2027-09-27'
 */
export function gearOptions(role: GearRole, { inUse, sheet, today, chosen }: Choosing) {
  const wanted = wantedOf(role, sheet);
  const options = inUse
    .filter(({ kind }) => kind === wanted.kind)
    .map((item) => {
      const faults = gearFaults(item, { wanted, today });
      const stopping = faults.filter(({ stops }) => stops);
      const [group, told] =
        stopping.length > 0 ? ([2, stopping] as const) : ([faults.length > 0 ? 1 : 0, faults] as const);
      const against = told.map(({ code, what }) => BRIEF[code] ?? what).join(', ');
      const plain = plainLabel(item);
      return {
        value: item.number,
        selected: chosen === item.number,
        group: GROUPS[group],
        label: against === '' ? plain : `${plain}: ${against}`,
      };
    });
  return GROUPS.flatMap((group) => options.filter((option) => option.group === group));
}

function plainLabel(item: GearItem): string {
  const { number, dueOn, note } = item;
  return `${number}, ${rangeText(item)}, due ${dueOn}${note === '' ? '' : `, ${note}`}`;
}
