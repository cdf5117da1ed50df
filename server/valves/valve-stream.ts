import type { Json } from '../../procedures/json.ts';
import { type LoggedSheet, wholeSheet } from '../../procedures/valve-sheet/later-fields.ts';
import type { ValveSheet } from '../../procedures/valve-sheet/sheet.ts';
import type { StreamKind } from '../log/stream-kind.ts';

/** One valve: its newest sheet, and the job that has it. */
export interface Valve {
  readonly sheet: ValveSheet | null;
  /** The texts that the sheet was read from, by field; a blank field that stands for something is not among them. */
  readonly typed: Readonly<Record<string, string>>;
  /** Counts the saves, from 1. */
  readonly revision: number;
  readonly retired: boolean;
  readonly openJob: string | null;
  /** The newest job that was closed or stopped. */
  readonly lastJob: string | null;
}

/** What a save stores: the sheet in SI, and beside it the texts as they were typed. */
export interface SheetSaved {
  readonly sheet: LoggedSheet;
  readonly typed: Readonly<Record<string, string>>;
}

export const valveKind: StreamKind<Valve> = {
  kind: 'valve',
  initial: { sheet: null, typed: {}, revision: 0, retired: false, openJob: null, lastJob: null },
  evolve: (valve, entry) => {
    switch (entry.kind) {
      case 'valve-sheet-saved': {
        const { sheet, typed } = entry.inputs as unknown as SheetSaved;
        return { ...valve, sheet: wholeSheet(sheet), typed, revision: valve.revision + 1, retired: false };
      }
      case 'valve-retired':
        return { ...valve, retired: true };
      case 'job-taken-on':
        return { ...valve, openJob: (entry.inputs as { readonly job: string }).job };
      case 'job-left':
        return { ...valve, openJob: null, lastJob: valve.openJob };
      default:
        return valve;
    }
  },
  summarise: ({ sheet, revision, retired, openJob }, id) =>
    sheet === null ? null : { sort: id, body: { sheet, revision, retired, openJob } as unknown as Json },
};
