import { judgeRows } from '../../../procedures/calculations/stroke-rows.ts';
import { fromSi, preferredUnit, unitFor } from '../../../procedures/calculations/units.ts';
import {
  type CycleFigures,
  cycleFigures,
  frictionVerdict,
  plannedPa,
  strokeInput,
} from '../../../procedures/cycle-verdict.ts';
import type { Job } from '../../../procedures/job.ts';
import { say } from '../../../procedures/say.ts';
import type { RowPlan } from '../../../procedures/vocabulary.ts';
import { strokeCurve } from '../../../views/pictures/stroke-curve.ts';

interface Cell {
  readonly text: string;
  readonly strong?: boolean;
  readonly boxed?: boolean;
  readonly now?: boolean;
  readonly off?: boolean;
}

export interface StrokeView {
  readonly table: {
    readonly caption: string;
    readonly hideCaption: boolean;
    readonly groups: readonly object[];
    readonly rows: readonly { readonly cells: readonly Cell[] }[];
    readonly notes: readonly string[];
  };
  /** Null while there is nothing to draw. */
  readonly curve: string | null;
}

const PERCENTS = [0, 25, 50, 75, 100];

interface StrokeShown {
  readonly step: string;
  readonly title: string;
  readonly form?: 'card' | 'record';
  /** Stroked by its own signal: settings are percent of the signal, and friction is not told by them. */
  readonly bySignal?: boolean;
}

/** The cycle as table and curve: the same rows, the band of the sheet, what is on the seat left out. */
export function strokeView(
  job: Job,
  { step, title, form = 'card', bySignal = false }: StrokeShown,
): StrokeView {
  const rows = job.tables[step] ?? [];
  const judged = rows.length === 0 ? [] : judgeRows(strokeInput(job, step));
  const scale = scaleOf(job, bySignal);
  const limit = job.sheet.errorTolerancePercent;
  const at = (percent: number, direction: 'up' | 'down') => {
    const wanted = plannedPa(job.sheet, { percent });
    const span = job.sheet.benchSetHighPa - job.sheet.benchSetLowPa;
    return judged.find((row) => row.direction === direction && Math.abs(row.signalPa - wanted) < 0.1 * span);
  };
  const next = nextPlan(job, step);
  const tableRows = PERCENTS.map((percent) => {
    const up = at(percent, 'up');
    const down = percent === 100 ? up : at(percent, 'down');
    const pair = (row: ReturnType<typeof at>, direction: 'up' | 'down'): readonly Cell[] => {
      const now = next?.percent === percent && next.direction === direction;
      if (row === undefined)
        return [
          { text: '', now },
          { text: '', off: true },
        ];
      const off =
        row.leftOut === 'on seat' ? 'seated' : row.leftOut === null ? signed(row.errorPercent) : 'stop';
      return [
        { text: row.openPercent.toFixed(1), strong: true },
        { text: off, off: true, boxed: row.leftOut === null && Math.abs(row.errorPercent) > limit },
      ];
    };
    const apart =
      up !== undefined && down !== undefined && percent !== 100
        ? Math.abs(down.openPercent - up.openPercent).toFixed(1)
        : '';
    const signalText = scale.of(plannedPa(job.sheet, { percent })).toFixed(1);
    return {
      cells: [
        { text: signalText },
        ...pair(up, 'up'),
        ...(percent === 100 ? [{ text: '' }, { text: 'turn', off: true }] : pair(down, 'down')),
        { text: apart, off: true },
      ],
    };
  });
  return {
    table: {
      caption: title,
      hideCaption: true,
      groups: [
        { label: 'signal', columns: [scale.label] },
        { label: 'going up', columns: ['read %', 'off %'] },
        { label: 'coming down', columns: ['read %', 'off %'] },
        { label: '', columns: ['apart %'] },
      ],
      rows: tableRows,
      notes: notesOf(job, judged),
    },
    curve: judged.length === 0 ? null : curveOf(job, { judged, step, title, form, bySignal }),
  };
}

/** The signal as it stands on the gauge, or in percent of its range. */
function scaleOf(
  { sheet }: Job,
  bySignal: boolean,
): { readonly label: string; readonly of: (valueSi: number) => number } {
  if (bySignal) return { label: '%', of: (percent) => percent };
  const unit = preferredUnit('pressure', sheet.units);
  return { label: unitFor(unit).label, of: (valueSi) => fromSi({ valueSi, unit }) };
}

type Judged = ReturnType<typeof judgeRows>;

function notesOf({ sheet }: Job, judged: Judged): readonly string[] {
  const anySeated = judged.some((row) => row.leftOut === 'on seat');
  return [
    'Off: what was read minus what is wanted.',
    `Boxed: outside the sheet's ${sheet.errorTolerancePercent} %.`,
    `Apart: at most ${sheet.hysteresisTolerancePercent} %.`,
    ...(anySeated ? ['Seated: at the contact or beyond it, so it is not judged.'] : []),
  ];
}

function curveOf(
  job: Job,
  { judged, step, title, form, bySignal }: Required<StrokeShown> & { readonly judged: Judged },
): string {
  const scale = scaleOf(job, bySignal);
  const signal = (valueSi: number) => Number(scale.of(valueSi).toFixed(3));
  const point = (row: Judged[number]) => ({ signal: signal(row.signalPa), travel: row.openPercent });
  const turn = judged.findIndex((row) => row.direction === 'down');
  const up = judged.slice(0, turn < 0 ? judged.length : turn);
  const down = turn < 0 ? [] : [...judged.slice(turn - 1, turn), ...judged.slice(turn)];
  const opens = job.sheet.airAction === 'air-to-open';
  const { benchSetLowPa, benchSetHighPa } = job.sheet;
  const figures = judged.length < 3 ? null : cycleFigures(job, { cycle: step, strokes: '' });
  return strokeCurve({
    title,
    goingUp: up.map(point),
    comingDown: down.map(point),
    wanted: [
      { signal: signal(benchSetLowPa), travel: opens ? 0 : 100 },
      { signal: signal(benchSetHighPa), travel: opens ? 100 : 0 },
    ],
    band: job.sheet.errorTolerancePercent,
    signalTicks: PERCENTS.map((percent) => signal(plannedPa(job.sheet, { percent }))),
    travelTicks: PERCENTS,
    words: {
      signalAxis: `signal, ${scale.label}`,
      travelAxis: 'travel, %',
      band: `band, ${job.sheet.errorTolerancePercent} % each way`,
      goingUp: 'going up',
      comingDown: 'coming down',
    },
    form,
    sentence:
      figures === null
        ? `${title}: ${judged.length} readings so far.`
        : `${title}: largest error ${signed(figures.errorWorstPercent)} %${bySignal ? '' : `, friction ${frictionWords(job, figures)}`}.`,
  });
}

function nextPlan(job: Job, step: string): RowPlan | undefined {
  if (job.step !== step) return undefined;
  const plans: readonly RowPlan[] = [
    ...PERCENTS.map((percent) => ({ percent, direction: 'up' as const, cycle: 1 })),
    ...[75, 50, 25, 0].map((percent) => ({ percent, direction: 'down' as const, cycle: 1 })),
  ];
  return plans[(job.tables[step] ?? []).length];
}

/** Friction, spring and verdict in three cells, each with how it was got. */
export function findings(job: Job, figures: CycleFigures): readonly object[] {
  const { sheet } = job;
  const packing =
    sheet.packingFrictionN === null
      ? 'What this packing should cost is not on the sheet.'
      : `Packing of this size and kind: ${say({ valueSi: sheet.packingFrictionN, dimension: 'force', units: sheet.units })}.`;
  const words = { inside: 'inside', outside: 'outside', 'too close': 'too close for this gauge' } as const;
  return [
    {
      label: 'friction, from the gap',
      value: frictionWords(job, figures),
      mark: sheet.frictionMaxN === null ? '' : mark(frictionVerdict(figures, sheet)),
      text: `each way${frictionLimit(sheet)}. ${packing}`,
    },
    springFinding(job, figures),
    {
      label: 'largest error',
      value: `${signed(figures.errorWorstPercent)} %`,
      mark: figures.errorVerdict === 'too close' ? 'too-close' : figures.errorVerdict,
      text: `${words[figures.errorVerdict]}; limit ${sheet.errorTolerancePercent} %, gauge and indicator give ${figures.errorUncertaintyPercent.toFixed(1)} % either way`,
    },
    {
      label: 'hysteresis and dead band',
      value:
        figures.hysteresisPercent === null ? 'not to be told' : `${figures.hysteresisPercent.toFixed(1)} %`,
      mark: mark(figures.hysteresisVerdict),
      text: `limit ${sheet.hysteresisTolerancePercent} %`,
    },
    {
      label: 'repeatability at mid-range',
      value:
        figures.repeatabilityPercent === null ? 'not read' : `${figures.repeatabilityPercent.toFixed(1)} %`,
      mark: mark(figures.repeatabilityVerdict),
      text: `limit ${sheet.repeatabilityTolerancePercent} %`,
    },
  ];
}

/** Where the spring stands, friction taken out. */
export function springFinding(job: Job, figures: CycleFigures): object {
  return { label: 'spring, from the middle', ...springWords(job, figures) };
}

/** A shift that the gauge cannot tell from none has no direction. */
function springWords(
  { sheet }: Job,
  { benchSetShiftPa, benchSetShiftUncertaintyPa }: CycleFigures,
): { readonly value: string; readonly text: string } {
  const text = 'against the bench set of the sheet';
  if (benchSetShiftPa === null) return { value: 'not to be told', text };
  const words = (valueSi: number) => say({ valueSi, dimension: 'pressure', units: sheet.units });
  const size = Math.abs(benchSetShiftPa);
  const give = benchSetShiftUncertaintyPa ?? 0;
  const way = size <= give ? '' : benchSetShiftPa > 0 ? ' high' : ' low';
  return { value: `${words(size)}${way}`, text: `${text}, give or take ${words(give)}` };
}

function mark(verdict: CycleFigures['hysteresisVerdict']): string {
  return verdict === null ? 'none' : verdict === 'too close' ? 'too-close' : verdict;
}

function frictionLimit({ frictionMaxN: valueSi, units }: Job['sheet']): string {
  return valueSi === null ? '' : `; limit ${say({ valueSi, dimension: 'force', units })}`;
}

function frictionWords(job: Job, figures: CycleFigures): string {
  if (figures.frictionN === null) return 'not to be told';
  return say({ valueSi: figures.frictionN, dimension: 'force', units: job.sheet.units });
}

function signed(percent: number): string {
  const text = Math.abs(percent).toFixed(1);
  return percent < -0.05 ? `\u2212${text}` : percent > 0.05 ? `+${text}` : text;
}
