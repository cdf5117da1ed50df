import { describe, expect, it } from 'vitest';
import type { Inputs } from '../../../procedures/calculations/calculation-types.ts';
import { checkedValues } from '../../../procedures/calculations/checked-values.ts';
import { choice, numbers, optionalNumbers, usualNumbers } from '../../../procedures/calculations/specs.ts';
import { expectRefused } from './support.ts';

const inputs: Inputs = {
  ...numbers('travelM'),
  ...optionalNumbers('contactPa'),
  ...usualNumbers({ slope: 1 }),
  ...choice('flow', ['under', 'over']),
  fitted: { kind: 'yes-no', title: 'Fitted' },
  thread: { kind: 'text', title: 'Thread' },
  steps: { kind: 'rows', title: 'Steps', columns: numbers('signalPa') },
};
const good = { travelM: 0.02, flow: 'under', fitted: true, thread: '1/2-20', steps: [{ signalPa: 1 }] };
const changed = (change: object) => () => checkedValues({ inputs, values: { ...good, ...change } });

describe('values as they come', () => {
  it('get what is usual where they are blank, and nothing where that is allowed', () => {
    expect(checkedValues({ inputs, values: good })).toEqual({ ...good, contactPa: null, slope: 1 });
    expect(changed({ slope: null, contactPa: 5 })()).toMatchObject({ slope: 1, contactPa: 5 });
  });

  it('may say yes or no in words', () => {
    expect(changed({ fitted: 'false' })()).toMatchObject({ fitted: false });
    expect(changed({ fitted: 'true' })()).toMatchObject({ fitted: true });
  });

  it('are refused by name where they are missing, unknown or of the wrong kind', () => {
    expectRefused(changed({ travelM: null }), { code: 'CALC-001', name: 'travelM' });
    expectRefused(changed({ travelM: '0.02' }), { code: 'CALC-001', name: 'travelM' });
    expectRefused(changed({ travelM: 1e16 }), { code: 'CALC-002', name: 'travelM' });
    expectRefused(changed({ flow: ['under'] }), { code: 'CALC-005', name: 'flow' });
    expectRefused(changed({ flow: undefined }), { code: 'CALC-005', name: 'flow' });
    expectRefused(changed({ fitted: 1 }), { code: 'CALC-005', name: 'fitted' });
    expectRefused(changed({ thread: null }), { code: 'CALC-001', name: 'thread' });
    expectRefused(changed({ steps: { signalPa: 1 } }), { code: 'CALC-004', name: 'steps' });
    expectRefused(changed({ steps: [5] }), { code: 'CALC-004', name: 'steps' });
    expectRefused(changed({ steps: [{}] }), { code: 'CALC-001', name: 'signalPa' });
    expectRefused(changed({ steps: [{ signalPa: 1, luck: 7 }] }), { code: 'CALC-005', name: 'input' });
    expectRefused(changed({ toString: 7 }), { code: 'CALC-005', name: 'input' });
  });
});
