import type { ValveFacts } from '../valve-facts.ts';
import { type Model, modelOf } from './model.ts';

/** Models kept; the oldest goes first. */
const KEPT = 32;

const MODELS = new Map<string, Model>();

/**
 * The model of one valve, worked out once for the same facts: it depends on nothing else.
 * @example modelOfValve(facts) === modelOfValve({ ...facts }) // true
 */
export function modelOfValve(facts: ValveFacts): Model {
  // Which gauges are fitted says what a check costs, not what may be so.
  const key = JSON.stringify({ ...facts, gaugesFitted: [] });
  const known = MODELS.get(key);
  MODELS.delete(key);
  const model = known ?? modelOf(facts);
  MODELS.set(key, model);
  if (MODELS.size > KEPT) {
    const [oldest] = MODELS.keys();
    if (oldest !== undefined) MODELS.delete(oldest);
  }
  return model;
}
