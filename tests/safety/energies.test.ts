import { describe, expect, test } from 'vitest';
import { CONDITIONS, ENERGY_IDS } from '../../safety/conditions.ts';
import { ENERGIES, proofAgeMs, rowFaults } from '../../safety/energies.ts';

const HOUR_MS = 3_600_000;
const MINUTE_MS = 60_000;

describe('The energies of a valve', () => {
  test('come from supply, from what is stored and from outside, and each can be recorded absent (EI-21)', () => {
    const from = (where: string) => ENERGY_IDS.filter((id) => ENERGIES[id]?.comesFrom === where);
    expect(from('supply')).toEqual(['supplyAir', 'secondSupply', 'signalAir', 'electrical']);
    expect(from('outside')).toEqual(['processInlet', 'processOutlet', 'safetyFunction', 'commands']);
    expect(from('stored')).toEqual([
      'spring',
      'trappedAir',
      'lockUpAir',
      'oppositeAir',
      'temperature',
      'weight',
      'residue',
    ]);
    for (const id of ENERGY_IDS) expect(CONDITIONS[id].states, id).toContain('absent');
  });

  test('say each what it does, how it is controlled and how it is shown (EI-03)', () => {
    expect(rowFaults()).toEqual([]);
    expect(Object.keys(ENERGIES).sort()).toEqual([...ENERGY_IDS].sort());
    const { spring: _, ...without } = ENERGIES;
    expect(rowFaults(without)).toEqual(['spring has no row']);
    const blank = { ...ENERGIES, weight: { ...ENERGIES.weight, hazard: ' ' } } as typeof ENERGIES;
    expect(rowFaults(blank)).toEqual(['weight has no hazard']);
  });

  test('name as hazards the air that returns, a controller that moves and a positioner that tries itself (EI-22)', () => {
    const hazard = ENERGIES.commands?.hazard ?? '';
    for (const word of ['air that returns', 'controller', 'calibrates itself', 'part-stroke test'])
      expect(hazard).toContain(word);
  });
});

describe('A proof', () => {
  test('ages where the energy can build up again behind its lock, and only there (EI-08)', () => {
    const ageing = ENERGY_IDS.filter((id) => proofAgeMs(id, 'isolated') !== null);
    expect(ENERGY_IDS.filter((id) => !ageing.includes(id))).toEqual([
      'spring',
      'weight',
      'electrical',
      'commands',
    ]);
    for (const id of ageing) expect(proofAgeMs(id, 'isolated'), id).toBe(4 * HOUR_MS);
  });

  test('that air is held lasts half an hour, a gas test one hour (EI-14)', () => {
    expect(proofAgeMs('signalAir', 'held')).toBe(30 * MINUTE_MS);
    expect(proofAgeMs('gasTest', 'fresh')).toBe(60 * MINUTE_MS);
    expect(proofAgeMs('plug', 'off seat')).toBeNull();
  });
});
