import type { Surroundings } from '../../procedures/actions/action.ts';
import type { Job } from '../../procedures/job.ts';
import type { Output } from '../../procedures/practice/bench/gauges.ts';
import type { GaugePicture } from '../../views/pictures/gauge.ts';
import type { KeptList } from '../log/kept-list.ts';
import type { SiteLog } from '../log/site-log.ts';
import type { WordSearch } from '../log/word-search.ts';
import type { Services } from '../services.ts';

/** What stands beside a card on the practice bench: what the simulated valve shows. */
export interface BenchPanel {
  readonly heading: string;
  readonly lines: readonly string[];
  readonly gauges: readonly GaugePicture[];
  readonly rows: readonly BenchRow[];
  /** Where the gauges follow the controller output. */
  readonly output: { readonly percent: number; readonly address: string } | null;
  /** Where a record of the loop is to be had as a table; blank where the card asks for none. */
  readonly table: string;
  /** What the bench's supervisor may be asked for; blank where nothing waits for a signature. */
  readonly sign: string;
  /** Where the truth is told; blank while it is hidden. */
  readonly result: string;
}

export interface BenchRow {
  /** The field that takes it. */
  readonly name: string;
  readonly label: string;
  readonly text: string;
  /** As it is entered. */
  readonly entry: string;
  /** It stands on a gauge as well. */
  readonly hasGauge: boolean;
}

export interface BenchAsked {
  readonly job: Job;
  readonly around: Surroundings;
  readonly output?: Output | undefined;
}

/** A valve of the plant that a fault may be looked for on. */
export interface BenchValve {
  readonly tag: string;
  readonly service: string;
  /** What drives it, by its sheet, in the words that are shown. */
  readonly kind: readonly string[];
  /** Tag, service, place and kind in small letters. */
  readonly words: string;
}

/** The part of the services that only the practice bench has. */
export interface BenchSide {
  /** The log of the real site, read for the sheets of its valves alone. */
  readonly real: Pick<SiteLog, 'state'>;
  /** Valves of the plant that are practised on. */
  readonly valves: KeptList<BenchValve>;
  readonly valvesByWords: WordSearch<BenchValve>;
  beside(of: BenchAsked): Promise<BenchPanel>;
}

/** The way from the real site to its practice bench. */
export interface PracticeDoor {
  /** The bench with its own database, opened when it is first asked for. */
  site(): Services;
  close(): Promise<void>;
}
