import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  liquidChoking,
  liquidFlow,
  liquidKv,
  valveReynolds,
} from '../../../procedures/calculations/liquid-flow.ts';
import {
  between,
  expectClose,
  expectMonotone,
  expectRefused,
  refusesEachNonNumber,
  refusesOrAnswers,
} from './support.ts';

const water = { relativeDensity: 1, vapourPaAbs: 2340, criticalPaAbs: 22064e3, recoveryFl: 0.9 };
const good = { kv: 63, inletPaAbs: 1e6, outletPaAbs: 2e5, ...water };
const fittings = { valveM: 0.05, pipeInM: 0.08, pipeOutM: 0.1 };

describe('a liquid through a valve', () => {
  it('of Kv 1 at 1 bar is one cubic metre an hour', () => {
    const { flowM3PerS } = liquidFlow({ ...good, kv: 1, inletPaAbs: 1.2e6, outletPaAbs: 1.1e6 });
    expectClose(flowM3PerS * 3600, 1);
  });

  it('flows faster with more drop, until it chokes', () => {
    expectMonotone({
      of: (outletPaAbs) => liquidFlow({ ...good, outletPaAbs }).flowM3PerS,
      from: 0,
      to: 9e5,
      rises: false,
    });
    const choked = (outletPaAbs: number) => liquidFlow({ ...good, recoveryFl: 0.6, outletPaAbs });
    expect(choked(1e5).choked).toBe(true);
    expect(choked(1e5).flowM3PerS).toBe(choked(5e4).flowM3PerS);
  });

  it('and the coefficient that passes it are each other’s inverse, with and without reducers', () => {
    fc.assert(
      fc.property(between(0.1, 90), between(0.3, 1), fc.boolean(), (kv, recoveryFl, reduced) => {
        const input = { ...good, recoveryFl, fittings: reduced ? fittings : null };
        const { flowM3PerS } = liquidFlow({ ...input, kv });
        expectClose(liquidKv({ ...input, flowM3PerS }).kv, kv, 1e-8);
      }),
      { numRuns: 40 },
    );
  });

  it('that the reducers alone do not pass is refused', () => {
    expectRefused(() => liquidKv({ ...good, flowM3PerS: 10, fittings }), {
      code: 'CALC-006',
      name: 'flowM3PerS',
    });
  });

  it('that boils before the valve is refused', () => {
    expectRefused(
      () => liquidChoking({ inletPaAbs: 2000, vapourPaAbs: 2340, criticalPaAbs: 22064e3, recoveryFl: 0.9 }),
      {
        code: 'CALC-006',
        name: 'inletPaAbs',
      },
    );
  });

  it('of impossible figures is refused by name', () => {
    expectRefused(() => liquidFlow({ ...good, outletPaAbs: 1e6 }), { code: 'CALC-003', name: 'inletPaAbs' });
    expectRefused(() => liquidFlow({ ...good, recoveryFl: 1.1 }), { code: 'CALC-002', name: 'recoveryFl' });
    expectRefused(() => liquidFlow({ ...good, vapourPaAbs: 23e6 }), {
      code: 'CALC-003',
      name: 'criticalPaAbs',
    });
    refusesEachNonNumber(liquidFlow, good);
    refusesOrAnswers(liquidFlow, { ...good, fittings });
    refusesOrAnswers(liquidChoking, {
      inletPaAbs: 1e6,
      vapourPaAbs: 2340,
      criticalPaAbs: 22064e3,
      recoveryFl: 0.9,
    });
  });
});

describe('the valve Reynolds number', () => {
  const flow = {
    flowM3PerS: 0.1,
    viscosityM2PerS: 3e-7,
    kv: 165,
    recoveryFl: 0.9,
    styleModifierFd: 0.46,
    valveM: 0.15,
  };

  it('falls with viscosity, and below 10 000 the flow is not turbulent', () => {
    expectMonotone({
      of: (viscosityM2PerS) => valveReynolds({ ...flow, viscosityM2PerS }).reynolds,
      from: 1e-7,
      to: 1e-2,
      rises: false,
    });
    expect(valveReynolds({ ...flow, viscosityM2PerS: 1e-3 }).turbulent).toBe(false);
    expect(valveReynolds(flow).turbulent).toBe(true);
  });

  it('of impossible figures is refused by name', () => {
    refusesEachNonNumber(valveReynolds, flow);
    refusesOrAnswers(valveReynolds, flow);
  });
});
