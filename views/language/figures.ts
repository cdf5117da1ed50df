import { LANGUAGES, type Language } from './language.ts';

/** Numbers, dates and unit words as a language writes them, in texts that hold nothing else or stand in a gap. */
export interface Figures {
  /** Every number and date of a text. */
  localised(text: string): string;
  /** Nothing but numbers, dates, unit signs and what joins them. */
  isFigures(text: string): boolean;
}

/** Digits with a point, alone: no tag, no address, no revision, no clause of a standard. */
const DECIMAL = /(?<![\p{L}\d.,:/_-]|\d\.)([-−+±]?\d+)\.(\d+)(?![\p{L}\d]|\.\d|-\d)/gu;
const DAY = /(?<![\w-])(\d{4})-(\d{2})-(\d{2})(?:[ T](\d{2}):(\d{2})(?::\d{2}(?:\.\d+)?Z?)?)?(?![\w-])/g;
/** Signs that stand behind numbers in every language, and what joins two numbers. */
const SIGN =
  /^(?:psig?|psia|kPa|MPa|mbar|bar|Pa|mm|cm|µm|m|mA|mV|V|A|Ω|ohm|Hz|°C|°F|K|N|kN|Nm|N·m|lbf|kg|g|lb|lbm|ft|ft-lb|in-lb|in2|in²|cm2|cm²|mm²|mL|mL\/min|L|L\/min|gal|scfh|scfm|m³\/h|Kv|Cv|s|min|h|d|%|UTC|lbf·ft|ft·lbf|N·m|lbf·in|kgf\/cm²|mmH₂O|inH₂O|in|x|×|\/|–|—|-|±|=|<|>|≤|≥|·|\+|,|;|\(|\))$/u;
const NUMBER = /^[([<>≤≥±]*[-−+±]?\d+(?:[.,/:]\d+)*(?:%|°|″|")?[)\],;.]*$/u;

export function figuresIn(language: Language): Figures {
  const { locale } = LANGUAGES[language];
  const point = new Intl.NumberFormat(locale).formatToParts(0.5).find(({ type }) => type === 'decimal');
  const comma = point?.value ?? '.';
  const date = new Intl.DateTimeFormat(locale, { dateStyle: 'medium', timeZone: 'UTC' });
  const day = (whole: string, year: string, month: string, of: string, hour?: string, minute?: string) => {
    const at = Date.UTC(Number(year), Number(month) - 1, Number(of));
    if (new Date(at).getUTCDate() !== Number(of)) return whole;
    const said = date.format(at);
    return hour === undefined ? said : `${said}, ${hour}:${minute}`;
  };
  return {
    localised: (text) => text.replace(DAY, day).replace(DECIMAL, `$1${comma}$2`),
    isFigures: (text) =>
      text
        .replace(DAY, '0')
        .split(/\s+/)
        .every((piece) => NUMBER.test(piece) || SIGN.test(piece.replace(/(?<=.)[,;.]$/, ''))),
  };
}
