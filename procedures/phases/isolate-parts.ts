/** Fields and questions that the cards of an isolation share. */
import type { Field, QuantityField, Step, Way } from '../vocabulary.ts';

const PRESSURE = { type: 'quantity', dimension: 'pressure' } as const;
const phase = 'isolate';
const makeSafe = 'haltIsolating';

export function lockField(name: string): Field {
  return { name, label: 'Number of my lock', type: 'text', carried: true };
}

export function before(name: string, gauge: QuantityField['gauge']): QuantityField {
  return {
    ...PRESSURE,
    name,
    label: 'Gauge, while it is alive',
    carried: true,
    ...(gauge === undefined ? {} : { gauge }),
  };
}

export function after(name: string, gauge: QuantityField['gauge']): QuantityField {
  return {
    ...PRESSURE,
    name,
    label: 'Same gauge, now',
    optional: true,
    ...(gauge === undefined ? {} : { gauge }),
  };
}

const HOW_A_ZERO_COUNTS =
  'A zero counts on a gauge that this job saw alive there, with its uncertainty inside the limit; else watch the vent twice.';

export function notShown<const Id extends string>(
  title: string,
  {
    how = HOW_A_ZERO_COUNTS,
    choices,
  }: {
    readonly how?: string;
    readonly choices: Readonly<Record<string, { readonly label: string; readonly to: Id }>>;
  },
): Step<Id | 'haltIsolating'> {
  return {
    kind: 'question',
    phase,
    title,
    how,
    choices: { ...choices, stop: { label: 'Leave it and stop', to: makeSafe } },
    makeSafe,
  };
}

export function zeroWays<const Id extends string>(
  shown: Way<Id>,
  otherwise: Way<Id>,
): Readonly<Record<string, Way<Id>>> {
  return {
    shown,
    'not shown': otherwise,
    'gauge not seen alive': otherwise,
    'gauge too coarse': otherwise,
  };
}
