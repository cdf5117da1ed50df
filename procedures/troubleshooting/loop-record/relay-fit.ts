import { besideTriangle } from './curve-fit.ts';
import { type HalfPeriod, halfPeriodsOf, leftBeside, withShape } from './half-periods.ts';

/** Where the switch is felt within a half period, and how slow the process is beside it: a grid that is fine enough for three figures. */
const TURNS: readonly number[] = Array.from({ length: 19 }, (_, n) => n / 20);
const LAGS: readonly number[] = [0.05, 0.1, 0.2, 0.4, 0.8, 1.6];

/**
 * Relay or sine: a sticking valve acts on the process as a relay does, so that the error goes in pieces of
 * exponentials, or in triangles where the process is slow. All three shapes are fitted to each half period.
 *
 * @param values  process value less its set point, about zero
 * @returns (E_sine - E_relay or triangle) / (E_sine + E_relay or triangle), from -1 to 1; null without a half period
 * @source Rossi and Scali, Journal of Process Control 15 (2005) 505: above 0.21 sticks, below -0.21 does not (from memory)
 */
export function relayFitIndex(values: readonly number[]): number | null {
  let [sine, relay, triangle] = [0, 0, 0];
  for (const half of withShape(halfPeriodsOf(values))) {
    sine += leftBeside(half, (at) => Math.sin(Math.PI * at));
    triangle += besideTriangle(half);
    relay += bestRelay(half);
  }
  const other = Math.min(relay, triangle);
  return sine + other > 0 ? (sine - other) / (sine + other) : null;
}

function bestRelay(half: HalfPeriod): number {
  let best = Number.POSITIVE_INFINITY;
  for (const turn of TURNS)
    for (const lag of LAGS) best = Math.min(best, leftBeside(half, relayShape({ turn, lag })));
  return best;
}

/** A lag of first order, pushed one way until the turn and the other way after it, at zero at both ends. */
function relayShape({ turn, lag }: { readonly turn: number; readonly lag: number }): (at: number) => number {
  const peak = 1 - Math.exp(-turn / lag);
  const left = Math.exp(-(1 - turn) / lag);
  const below = (peak * left) / (1 - left);
  return (at) =>
    at < turn ? 1 - Math.exp(-at / lag) : -below + (peak + below) * Math.exp(-(at - turn) / lag);
}
