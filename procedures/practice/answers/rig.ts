import { bell } from '../random.ts';
import { type Looks, word } from './look.ts';

/** The test gear itself. */
export const looksAtRig: Looks = {
  gaugeAgainstGauge: ({ valve: { build }, random }) => {
    const off = Math.max(0, ...Object.values(build.gaugeOff).map((one) => Math.abs(one ?? 0)));
    return { value: Math.abs(100 * off + 0.4 * bell(random)), readSigma: 0.4 };
  },
  rigHold: ({ valve: { build }, random }) =>
    build.rigHoleM > 0
      ? { value: Math.min(100, 3 + 8 * (build.rigHoleM / 1e-4) ** 2), readSigma: 0.5 }
      : { value: Math.abs(0.4 * bell(random)), readSigma: 0.3 },
  rigBleed: ({ valve: { build } }) => word(build.rigStaysUp ? 'stays up' : 'follows'),
};
