import type { Requirement } from './requirement.ts';

/** What law and practice ask before hands go in. */
export const ENERGY_ISOLATION: readonly Requirement[] = [
  {
    id: 'EI-01',
    text: 'A procedure shall state its use, how it isolates, who locks and how it is tried, and shall not be served without.',
    source: '29 CFR 1910.147(c)(4)(ii)(A) to (D)',
  },
  {
    id: 'EI-02',
    text: 'The order prepare, shut down, isolate and lock, relieve, verify, work shall hold wherever the machine stands.',
    source: '29 CFR 1910.147(d)(1) to (d)(6)',
  },
  {
    id: 'EI-03',
    text: 'Whoever isolates shall be told each energy with its size, hazard and control first; a missing size shall be written down.',
    source: '29 CFR 1910.147(d)(1)',
  },
  {
    id: 'EI-04',
    text: 'No air shall be let off and no block valve shut before the process is set up for the valve to move.',
    source: '29 CFR 1910.147(d)(2); for a control valve common practice, no source',
  },
  {
    id: 'EI-05',
    text: 'Each point that the work stands on shall be locked and recorded by itself: with one of two missing, the work shall be refused.',
    source: '29 CFR 1910.147(d)(3), isolation of every energy isolating device needed',
  },
  {
    id: 'EI-06',
    text: 'A lock or tag shall be hung with its number by a person who may hang it at that moment, and the point shall count as shut under it.',
    source: '29 CFR 1910.147(d)(4)(i) to (iii)',
  },
  {
    id: 'EI-07',
    text: 'A point shall be locked and its energy shown safe in two entries, never in one.',
    source: '29 CFR 1910.147(d)(5)(i)',
  },
  {
    id: 'EI-08',
    text: 'What can build up again shall be read again before hands go in once its proof is old.',
    source: '29 CFR 1910.147(d)(5)(ii); the hours are common practice, no source',
  },
  {
    id: 'EI-09',
    text: 'An energy shall be shown safe by a reading, an observation twice, or how it was done; a bare yes shall not count.',
    source: '29 CFR 1910.147(d)(6); method and value are common practice, no source',
  },
  {
    id: 'EI-10',
    text: 'Nothing shall be restored before tools are out, parts shut and people clear, after the last work.',
    source: '29 CFR 1910.147(e)(1), (2)(i)',
  },
  {
    id: 'EI-11',
    text: 'No block valve shall be opened before people were told, after the locks came off.',
    source: '29 CFR 1910.147(e)(2)(ii)',
  },
  {
    id: 'EI-12',
    text: 'A lock shall come off by its owner; in their absence only by a supervisor who says how it is known, how they were tried to be reached, who tells them and why; the owner shall read it.',
    source: '29 CFR 1910.147(e)(3); the parts of the exception are common practice, no source',
  },
  {
    id: 'EI-13',
    text: 'Air that is put on shall void what was shown of it, and hands shall wait for a new live-to-zero reading.',
    source: '29 CFR 1910.147(f)(1)(i) to (v)',
  },
  {
    id: 'EI-14',
    text: 'Held air shall last only as long as its act: nothing else is opened under it, and it ends with its time.',
    source: 'guidance on 29 CFR 1910.147(f)(1); the time is common practice, no source',
  },
  {
    id: 'EI-15',
    text: 'Everybody on a job shall have a lock of their own on each of its points and stand in a live list; nothing shall be put back while one of those locks is on.',
    source: '29 CFR 1910.147(f)(3)(ii)(A) to (D)',
  },
  {
    id: 'EI-16',
    text: 'Whoever joins a job shall be shown its readings, and shall say whether they tried it themselves or rest on them.',
    source:
      'OSHA interpretation letter, 27 July 2023, answer 1; trying it oneself stays open: common practice, no source',
  },
  {
    id: 'EI-17',
    text: 'A job shall be handed over in one act of both people, the incoming locks on before the others come off, and its readings shall be repeated.',
    source: '29 CFR 1910.147(f)(4); repeated readings are common practice, no source',
  },
  {
    id: 'EI-18',
    text: 'Every procedure shall be inspected each year by somebody who does not usually do it.',
    source: '29 CFR 1910.147(c)(6), as summarised',
    notBuilt:
      'It belongs to the audit: the officer’s pages show the jobs that an inspection would rest on, and no page records the inspection itself yet.',
  },
  {
    id: 'EI-19',
    text: 'A tag alone shall be refused on a point that takes a lock, unless a supervisor has given the reason, which the tag carries.',
    source: '29 CFR 1910.147(c)(2), (c)(3), as summarised',
  },
  {
    id: 'EI-20',
    text: 'Work on what is electrical shall name the law of its own that it is done by.',
    source: '29 CFR 1910.147(a)(1)(ii)',
  },
  {
    id: 'EI-21',
    text: 'The energies of a job shall cover supply, what is stored and what acts from outside; each shall be shown or recorded absent.',
    source: 'ISO 14118:2017, scope',
  },
  {
    id: 'EI-22',
    text: 'Air that returns, a controller that moves and a positioner that tries itself shall be named as hazards.',
    source: 'EN 1037, clause 3, as reproduced; the list for a valve is common practice, no source',
  },
  {
    id: 'EI-23',
    text: 'A command of the control system shall never count as an isolation.',
    source: 'EN 1037, contents list; the ranking is common practice, no source',
  },
  {
    id: 'EI-24',
    text: 'A line shut off by one valve that nobody has tried shall be refused without a named risk assessment.',
    source: 'HSE HSG253, 2nd ed. 2006, categories of isolation, as summarised',
  },
  {
    id: 'EI-25',
    text: 'A poisonous fluid shall be shut off by positive isolation, unless a named assessment says why not.',
    source: 'HSE HSG253, 2nd ed. 2006, paragraphs 95 to 98, as summarised',
  },
  {
    id: 'EI-26',
    text: 'One block and a bleed shall be flagged for every fluid that can hurt.',
    source: 'HSE HSG253, 2nd ed. 2006, paragraph 120, as summarised',
  },
  {
    id: 'EI-27',
    text: 'Each side of the process shall be shown by two readings, the second after it stood shut in.',
    source: 'common practice, no source',
  },
  {
    id: 'EI-28',
    text: 'The isolation of the process shall be watched while work goes on: an old reading shall be made again.',
    source: 'HSE HSG253, stages of an isolation; from memory',
  },
  {
    id: 'EI-29',
    text: 'What is guidance shall be called guidance on every page, never law.',
    source: 'HSE HSG253, 2nd ed. 2006, front page',
  },
  {
    id: 'EI-30',
    text: 'The valve that is worked on shall never be named as its own isolation.',
    source: 'common practice, no source',
  },
  {
    id: 'EI-40',
    text: 'Air tubing, regulator and positioner shall come off only with bypass, air, kept air and electrical shown.',
    source: 'common practice, no source',
  },
  {
    id: 'EI-41',
    text: 'An electric cover shall be opened only without air and dead; a pneumatic one by its own act, bypassed and hands clear.',
    source: 'common practice, no source',
  },
  {
    id: 'EI-42',
    text: 'The adjuster shall be backed off after bypass and air, with the tubing off and the process shown.',
    source: 'common practice, no source',
  },
  {
    id: 'EI-43',
    text: 'The stem connector shall be released only with air, kept air and process shown, the weight hung and the spring free.',
    source: 'common practice, no source',
  },
  {
    id: 'EI-44',
    text: 'A yoke nut or a connector under a preloaded spring shall be undone on held air, and the actuator lifted with the air off again.',
    source: 'manuals of two diaphragm actuators',
  },
  {
    id: 'EI-45',
    text: 'A case shall be opened after its adjuster wherever there is one, and short bolts before long where the case holds the spring.',
    source: 'manuals of three diaphragm actuators; the adjuster is common practice, no source',
  },
  {
    id: 'EI-46',
    text: 'A cylinder shall be opened only with no air at either end.',
    source: 'manual of a spring-return actuator, appendix A',
  },
  {
    id: 'EI-47',
    text: 'An actuator shall be lifted only with air, process and electrical shown, hung, its spring shut in or released.',
    source: 'common practice, no source',
  },
  {
    id: 'EI-48',
    text: 'A live gland shall be tightened by an act of its own, which no locked valve can be on.',
    source: 'common practice, no source',
  },
  {
    id: 'EI-49',
    text: 'Packing shall be loosened only with air, process, residue and temperature shown.',
    source: 'common practice, no source',
  },
  {
    id: 'EI-50',
    text: 'A bonnet joint shall be broken only after what the packing asks, with the spring shut in or released.',
    source: 'common practice, no source',
  },
  {
    id: 'EI-51',
    text: 'Trim shall come out only after all that the bonnet asks, and a fresh gas test.',
    source: 'common practice, no source',
  },
  {
    id: 'EI-52',
    text: 'A valve shall leave its line only where the shut-off is good enough for its fluid.',
    source: 'common practice, no source',
  },
  {
    id: 'EI-53',
    text: 'Test air shall go on a shut valve, alone, with nothing else that can move the stem.',
    source: 'common practice, no source',
  },
  {
    id: 'EI-54',
    text: 'Test pressure shall go on the body between locked block valves, and count as live afterwards.',
    source: 'common practice, no source',
  },
  {
    id: 'EI-55',
    text: 'The block valves shall come before the bypass is shut, with the locks off and the return signed.',
    source: 'common practice, no source',
  },
];
