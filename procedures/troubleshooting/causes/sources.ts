/** What the weights rest on. No open table gives shares per fault: the sources support the order, not the number. */
export const BASIS = {
  judgement: 'judgement',
  loops:
    'judgement; Ind. Eng. Chem. Res. 44 (2005) 6708: 20 to 30 % of loops swing from valve friction, a third of controllers perform acceptably',
  leaks: 'judgement; PMC7398137: leakage is the most common fault of pneumatic valves',
  rubber:
    'judgement; US Navy training manual 14115: rubber diaphragms and stem seals fail far more often than other parts',
  dirtyAir:
    'judgement; US NRC Information Notice 81-38: water, oil and rust in the air stop air-operated valves',
  nozzles:
    'judgement; Lessons in Industrial Instrumentation (CC BY): plugged nozzle high, plugged restriction low output',
} as const;
