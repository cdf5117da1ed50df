import { randomInt } from 'node:crypto';
import type { DemoPerson } from '../pages/set-up.ts';
import { pinFault } from '../people/pin-rules.ts';
import type { Services } from '../services.ts';
import { DEMO_VALVES } from './demo-valves.ts';

/** By role; several, because nobody signs off their own work. */
const PEOPLE: readonly Pick<DemoPerson, 'name' | 'role'>[] = [
  { name: 'Technician 1', role: 'technician' },
  { name: 'Technician 2', role: 'technician' },
  { name: 'Supervisor 1', role: 'supervisor' },
  { name: 'Supervisor 2', role: 'supervisor' },
  { name: 'Safety officer 1', role: 'safety-officer' },
  { name: 'Engineer 1', role: 'engineer' },
];

export const DEMO_SCREEN = 'demo plant';

/** Adds the people of the demo plant. @returns them with their PINs, which are told here and kept nowhere */
export async function addDemoPeople({ people, settings, newId }: Services): Promise<readonly DemoPerson[]> {
  const known = DEMO_VALVES.flatMap(({ tag = '' }) => tag.match(/\d+/g) ?? []);
  // Each in their turn, and so in this order; hashed side by side.
  const adding = PEOPLE.map(async ({ name, role }) => {
    const pin = newPin({ digits: settings.pinDigitsMin, known: [...known, ...(name.match(/\d+/g) ?? [])] });
    const by = { requestId: newId(), person: null, screen: DEMO_SCREEN };
    const { id } = await people.addWithPin({ name, role, pin }, by);
    return { id, name, role, pin };
  });
  return await Promise.all(adding);
}

const TRIES_MAX = 1000;

/** Digits at random that are not among those guessed first. */
function newPin({ digits, known }: { readonly digits: number; readonly known: readonly string[] }): string {
  for (let tries = 0; tries < TRIES_MAX; tries += 1) {
    const pin = Array.from({ length: digits }, () => randomInt(10)).join('');
    if (pinFault(pin, { digitsMin: digits, known }) === null) return pin;
  }
  throw new Error(`No PIN of ${digits} digits passed the rules in ${TRIES_MAX} tries.`);
}
