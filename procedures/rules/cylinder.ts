import { soapPressurePa } from '../overhaul-figures.ts';
import type { Rule } from './rule.ts';

/** Handwheel and equalising valve stand for air operation: what is left in for hand operation looks like a broken cylinder. */
export const forAirRule: Rule = {
  outcomes: ['for air', 'equaliser open', 'handwheel in'],
  params: [],
  judge({ words }) {
    const outcome = () => {
      if (words.equaliserStands === 'open') return 'equaliser open';
      return words.handwheelStands === 'in' ? 'handwheel in' : 'for air';
    };
    return { outcome: outcome(), figures: {} };
  },
};

/** Test air on one end of a cylinder, the other open: where it comes out says what leaks. */
export const blowByRule: Rule = {
  outcomes: ['tight', 'passes', 'rod seal', 'end cap', 'equaliser', 'too little air'],
  params: [],
  judge({ job: { sheet }, readings, words }) {
    const air = readings.cylinderPa;
    const wantedPa = soapPressurePa(sheet);
    const shortPa = wantedPa - (air?.valueSi ?? 0);
    const figures = { wantedPa, shortPa };
    const outcome = () => {
      if (words.equaliserShutNow !== 'yes') return 'equaliser';
      if (words.openEndAir === 'flow') return 'passes';
      if (words.rodSealAir === 'flow') return 'rod seal';
      if (words.capAir === 'flow') return 'end cap';
      // What the regulator cannot hold up leaks somewhere, even where nobody saw a bubble.
      return shortPa > Math.max(2 * (air?.uncertaintySi ?? 0), wantedPa / 10) ? 'too little air' : 'tight';
    };
    return { outcome: outcome(), figures };
  },
};

/** What the opened cylinder shows; what new seals do not cure is told first. */
export const cylinderLookRule: Rule = {
  outcomes: ['seals', 'bore', 'rod', 'joint loose', 'nothing found'],
  params: [],
  judge({ words }) {
    const outcome = () => {
      if (words.boreFound !== 'smooth') return 'bore';
      if (words.rodFound !== 'bright') return 'rod';
      if (words.pistonNut !== 'tight') return 'joint loose';
      return words.sealsFound === 'sound' ? 'nothing found' : 'seals';
    };
    return { outcome: outcome(), figures: {} };
  },
};

/** The stroke that one end of the cylinder makes, against the travel of the sheet. */
export const strokeMadeRule: Rule = {
  outcomes: ['whole', 'short'],
  params: [],
  judge({ job: { sheet }, readings }) {
    const made = readings.strokeMadeM;
    const madeM = made?.valueSi ?? 0;
    const leastM = (1 - sheet.errorTolerancePercent / 100) * sheet.travelM;
    const madePercent = (100 * madeM) / sheet.travelM;
    const outcome = madeM + (made?.uncertaintySi ?? 0) >= leastM ? 'whole' : 'short';
    return { outcome, figures: { madePercent, leastM } };
  },
};
