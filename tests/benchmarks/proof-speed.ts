/** The gate that every served procedure passes: the proof by itself, and all of it with the machines and what is read in the texts. */
import { faultsOf } from '../../procedures/check.ts';
import { compile, forwardMachine } from '../../procedures/compile.ts';
import { everyFacts } from '../../procedures/facts.ts';
import { factsUsed } from '../../procedures/facts-used.ts';
import { handingFaults } from '../../procedures/handing-on.ts';
import { proverOf } from '../../procedures/proof-graph.ts';
import { PROCEDURES } from '../../procedures/served.ts';
import { atMostMs, best, type Ratio, told } from './ratio.ts';

const ROUNDS = 15;

export async function measureProof(): Promise<Ratio> {
  const gate = async () => {
    const all = PROCEDURES.map(({ definition }) => compile(definition));
    if ([...all.flatMap(faultsOf), ...handingFaults(all)].length > 0) throw new Error('A procedure fails.');
  };
  const first = await best(1, gate);
  const machines = PROCEDURES.map(({ definition }) => ({
    definition,
    machine: forwardMachine(definition),
    standings: everyFacts(factsUsed(definition)),
  }));
  const proofs = await best(ROUNDS, () => {
    for (const { definition, machine, standings } of machines) {
      const proveUnder = proverOf(machine, definition);
      for (const facts of standings) proveUnder(facts);
    }
  });
  const whole = await best(ROUNDS, gate);
  return {
    what: `proof of ${PROCEDURES.length} procedures under ${machines.flatMap(({ standings }) => standings).length} standings of the facts`,
    ...atMostMs(50, proofs.cpuMs),
    from: `${told(proofs)}; the whole gate with machines and texts ${told(whole)}, the first time in a process ${told(first)}`,
  };
}
