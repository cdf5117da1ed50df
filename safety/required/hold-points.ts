import type { Requirement } from './requirement.ts';

/** What the quality trade asks of a hold, and of the writing of a procedure. */
export const HOLD_POINTS: readonly Requirement[] = [
  {
    id: 'HP-01',
    text: 'A hold shall stop work until whoever may signs it, whatever is sent, from any screen, once or many times.',
    source: '10 CFR 50 appendix B, criterion X',
  },
  {
    id: 'HP-02',
    text: 'A witness shall be told and may come; work shall go on without them only once the time to come is over, and both shall be kept.',
    source: 'guides to inspection and test plans, as quoted by others',
  },
  {
    id: 'HP-03',
    text: 'A review shall stop no work, and a job shall not close as done with one open.',
    source:
      'guides to inspection and test plans, as quoted by others; that it does not close: common practice, no source',
  },
  {
    id: 'HP-04',
    text: 'The kind of a point shall stand in the definition that a job is pinned to, where no live job can change it.',
    source: '10 CFR 50 appendix B, criterion X',
  },
  {
    id: 'HP-05',
    text: 'A point shall say when it is acceptable, or its procedure shall not be served.',
    source: '10 CFR 50 appendix B, criterion V',
  },
  {
    id: 'HP-06',
    text: 'The sign-off that first break, opening and return want shall be given by a signed hold and by nothing else.',
    source:
      'guides to inspection and test plans, as quoted by others; the places: common practice, no source',
  },
  {
    id: 'HP-07',
    text: 'Nobody shall sign work that they did or recorded since the last hold, whatever their role.',
    source: '10 CFR 50 appendix B, criterion X',
  },
  {
    id: 'HP-08',
    text: 'A point that names who signs it shall be signed by them and by no other supervisor.',
    source: '10 CFR 50 appendix B, criterion X',
  },
  {
    id: 'HP-09',
    text: 'A hold shall be kept with who looked, what was seen of each energy, the result, and what is done about a refusal.',
    source: '10 CFR 50 appendix B, criterion XVII',
  },
  {
    id: 'HP-10',
    text: 'A refused hold shall keep work stopped and say what is done about it, and a signature that accepts it after all shall stand beside the refusal.',
    source: '10 CFR 50 appendix B, criterion XV and XVI',
  },
  {
    id: 'HP-11',
    text: 'How each hold of a job stands shall be seen on its page and in its print.',
    source: '10 CFR 50 appendix B, criterion XIV',
  },
  {
    id: 'HP-12',
    text: 'A hold shall be waived only by the role that its definition names, with a reason, before work goes past, never over an isolation, and each shall be counted.',
    source: 'common practice, no source, after ASME NQA-1 as remembered',
  },
  {
    id: 'HP-13',
    text: 'A signature shall name the definition, the revision and the job that it is over, and fit no other.',
    source: '10 CFR 50 appendix B, criterion VI; the pinning: common practice, no source',
  },
  {
    id: 'HP-14',
    text: 'A gauge past its due day shall not be read for a job.',
    source: '10 CFR 50 appendix B, criterion XII',
  },
  {
    id: 'HP-15',
    text: 'Records shall be found by valve, job, person and date.',
    source: '10 CFR 50 appendix B, criterion XVII',
  },
  {
    id: 'HP-16',
    text: 'Whoever worked on or signed a job shall not mark it as audited.',
    source: '10 CFR 50 appendix B, criterion XVIII',
  },
  {
    id: 'HP-17',
    text: 'What a release rests on shall lead to the person who gave it.',
    source: 'common practice, no source, after ISO 9001:2015 8.6 as remembered',
  },
  {
    id: 'HP-18',
    text: 'A reading that a second person takes shall say whether alone or together, and whoever reads alone shall not be shown the first reading.',
    source: 'common practice, no source, after DOE-HDBK-1028-2009 as remembered',
  },
  {
    id: 'HP-19',
    text: 'A hold shall not be signed before the work in front of it has come to it.',
    source: 'common practice, no source',
  },
  {
    id: 'HP-20',
    text: 'Whoever signs shall be shown each reading against its limit, its age, and what departed since the last hold.',
    source: 'OWASP Transaction Authorization cheat sheet, 1.1; what is shown: common practice, no source',
  },
  {
    id: 'HP-21',
    text: 'From every hold a job shall be parked or made safe, and nobody shall sign for themselves because no supervisor is there.',
    source: 'common practice, no source',
  },
  {
    id: 'HP-22',
    text: 'An action line shall tell one act.',
    source: 'INL/EXT-16-39808, by excerpts, 2.2.2; one act: common practice, no source',
  },
  {
    id: 'HP-23',
    text: 'An action line shall begin with a verb of a closed list, each with one meaning.',
    source: 'common practice, no source, after DOE-STD-1029 as remembered',
  },
  {
    id: 'HP-24',
    text: 'A caution shall stand on the card of its step, before what it guards.',
    source: 'Applying Human Factors to Procedure Writing, part C, rule 2',
  },
  {
    id: 'HP-25',
    text: 'A caution shall tell no act besides how to avoid the hazard.',
    source: 'Applying Human Factors to Procedure Writing, part C, rule 3; how to avoid: ANSI Z535',
  },
  {
    id: 'HP-26',
    text: 'Each signal word shall have one look, unlike the others and not by colour alone.',
    source: 'Applying Human Factors to Procedure Writing, part C, rule 1',
  },
  {
    id: 'HP-27',
    text: 'A note about damage shall tell no act either.',
    source: 'common practice, no source',
  },
  {
    id: 'HP-28',
    text: 'A condition shall stand before its act, and "and" and "or" shall not stand in one line.',
    source: 'common practice, no source',
  },
  {
    id: 'HP-29',
    text: 'A text shall hold no bare number and no vague word: limits are named quantities with their unit.',
    source: '10 CFR 50 appendix B, criterion V; the words: common practice, no source',
  },
  {
    id: 'HP-30',
    text: 'A card that works a point of the site shall name it as on its label, or have the label read.',
    source: 'common practice, no source',
  },
  {
    id: 'HP-31',
    text: 'No step shall be out of reach or lead nowhere, and a way back shall be open only where the plant can stand so.',
    source: 'common practice, no source; rounds are not counted: each asks again what it needs',
  },
  {
    id: 'HP-32',
    text: 'What cannot be undone shall want a signature before it, whatever its procedure says.',
    source: 'common practice, no source, after DOE-HDBK-1028-2009 as remembered',
  },
  {
    id: 'HP-33',
    text: 'A procedure shall begin with what is needed, listed and taken in hand.',
    source: 'INL/EXT-16-39808, by excerpts, 2.2.11; the list: common practice, no source',
  },
  {
    id: 'HP-34',
    text: 'A revision that nobody has tried on a job who did not write it shall say so on every page of its jobs and on their print.',
    source: 'common practice, no source, after NUREG-0899 as remembered',
  },
  {
    id: 'HP-35',
    text: 'A step that is left out as not applicable shall want a reason and a second person.',
    source: 'common practice, no source',
    notBuilt:
      'does not apply because no step can be left out: what does not fit a valve is another branch, by a fact of its sheet',
  },
  {
    id: 'HP-36',
    text: 'Procedure, revision, job and place in it shall be in view at every scroll position, on the narrowest screen too.',
    source: 'INL/EXT-16-39808, by excerpts, 2.2.11',
  },
  {
    id: 'HP-37',
    text: 'A job shall stand at the same card on every screen and after every reload, with what was done told in words.',
    source: 'common practice, no source, after NUREG-0700 as remembered',
  },
  {
    id: 'HP-38',
    text: 'Ways that were not taken shall be marked so.',
    source: 'INL/EXT-16-39808, by excerpts, 2.5.1 and 2.1.6',
  },
  {
    id: 'HP-39',
    text: 'An earlier reading shall stay in sight, with who read it and when.',
    source: 'INL/EXT-16-39808, by excerpts, 2.1.6',
  },
  {
    id: 'HP-40',
    text: 'All steps of a procedure shall be looked at, ahead and back, without acting.',
    source: 'common practice, no source',
  },
  {
    id: 'HP-41',
    text: 'A supervisor shall judge a stroke otherwise than its figures only with a reason, both judgements kept and marked in print; that an energy is gone shall be overridden by nobody.',
    source: 'common practice, no source, after NUREG/CR-6634 as remembered',
  },
  {
    id: 'HP-42',
    text: 'No card shall answer itself.',
    source: 'common practice, no source',
  },
  {
    id: 'HP-43',
    text: 'The right component shall be confirmed by the tag read off it before what can hurt, and a wrong one refused and kept.',
    source: 'INL/EXT-16-39808, by excerpts; critical acts only: common practice, no source',
  },
  {
    id: 'HP-44',
    text: 'The lines of a job shall stand in the order of the log, corrections where they were made.',
    source: 'common practice, no source',
  },
  {
    id: 'HP-45',
    text: 'Of two answers to one card one shall count, and the other screen shall be told who was quicker, at once and without anything moving under a hand that types.',
    source: 'common practice, no source',
  },
  {
    id: 'HP-46',
    text: 'The record of a job shall print at any card with what is open left blank.',
    source:
      'common practice, no source, after NUREG/CR-6634 as remembered; carrying a paper copy back by two people has no page of its own, a line written later says so',
  },
  {
    id: 'HP-47',
    text: 'A screen whose link is lost shall say so within five seconds, and what is sent from an old card shall be refused with what was kept.',
    source: 'common practice, no source',
  },
  {
    id: 'HP-48',
    text: 'A procedure that is changed shall leave open jobs on their own revision.',
    source: '10 CFR 50 appendix B, criterion VI',
  },
  {
    id: 'HP-49',
    text: 'After an interruption what was shown safe shall be shown again before hands go in.',
    source: 'common practice, no source',
  },
];
