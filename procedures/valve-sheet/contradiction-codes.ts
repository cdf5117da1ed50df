/**
 * What a valve sheet may say against itself. `stops`: the sheet is not saved, because a procedure that believed it
 * could hurt somebody, or because no figure can be worked out from it. The others are saved and shown, because the
 * sheet may be right and the rule too coarse, or because nothing worse than a poor prediction follows.
 */
export const CONTRADICTIONS = {
  'VAL-101': { stops: true, why: 'The plug would be lifted for seating by the wrong air, onto its seat.' },
  'VAL-102': { stops: true, why: 'People would stand where the valve moves on loss of air.' },
  'VAL-103': { stops: true, why: 'No stroke and no spring can be worked out.' },
  'VAL-104': { stops: true, why: 'No signal can be turned into a travel.' },
  'VAL-105': { stops: false, why: 'Predicted contact and seat load are off; no limit hangs on it.' },
  'VAL-106': { stops: true, why: 'The signal alone would pass what the case holds.' },
  'VAL-107': { stops: false, why: 'Test air is held to the rating, so only the usual margin is missing.' },
  'VAL-108': { stops: true, why: 'The supply alone would pass what the case holds.' },
  'VAL-109': { stops: false, why: 'At most 40 psi is put on the case whatever the supply is.' },
  'VAL-110': { stops: false, why: 'The full stroke cannot be shown, but no more air is given for it.' },
  'VAL-111': { stops: true, why: 'The force of the process on the plug would come out with the wrong sign.' },
  'VAL-112': { stops: false, why: 'Work on the positioner asks for them again at the valve.' },
  'VAL-113': { stops: false, why: 'The range was perhaps measured with another pressure drop.' },
  'VAL-114': { stops: true, why: 'No air would count as too much or too little.' },
  'VAL-115': { stops: false, why: 'The valve does not reach its end; nothing moves that should not.' },
  'VAL-116': { stops: false, why: 'Adjuster turns cannot be predicted; they are counted at the valve.' },
  'VAL-117': { stops: true, why: 'A stem that must never be turned would be turned.' },
  'VAL-118': { stops: true, why: 'The turns would take the whole lift away.' },
  'VAL-119': { stops: true, why: 'One lock would count for two energies.' },
  'VAL-120': { stops: false, why: 'The pressures may be those of another day.' },
  'VAL-121': { stops: false, why: 'The packing may be behind a cooling bonnet.' },
  'VAL-122': { stops: false, why: 'The drop may be rarer than the sheet says; the seat load is measured.' },
  'VAL-123': { stops: false, why: 'A figure without a source is used and marked as such.' },
  'VAL-124': { stops: false, why: 'A spring is judged by what is found when the case is open.' },
  'VAL-125': { stops: true, why: 'Hands would rest on a shut-off that nobody has judged.' },
  'VAL-126': { stops: true, why: 'A valve that passes would let poison out where people work.' },
  'VAL-127': { stops: false, why: 'The assessment may allow it; the signer is to see it.' },
  'VAL-128': { stops: true, why: 'A second feed without its cock would stay on while hands are in.' },
  'VAL-129': { stops: false, why: 'The volume is asked for again at the valve.' },
  'VAL-130': { stops: false, why: 'What is electrical is looked for at the valve all the same.' },
  'VAL-131': {
    stops: false,
    why: 'Friction is judged by its limit; new packing may pass it until it has settled.',
  },
} as const;

export type ContradictionCode = keyof typeof CONTRADICTIONS;
