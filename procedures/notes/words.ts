/** What a technician finds on a valve and where, in the words of the trade; whatever is not here goes in the sentence beside it. */

export interface Choice {
  readonly value: string;
  readonly label: string;
}

/** Common practice, no source. */
export const FOUND: readonly Choice[] = [
  { value: 'worn', label: 'Worn' },
  { value: 'scored', label: 'Scored or galled' },
  { value: 'eroded', label: 'Eroded or wire-drawn' },
  { value: 'corroded', label: 'Corroded or pitted' },
  { value: 'cracked', label: 'Cracked' },
  { value: 'bent', label: 'Bent' },
  { value: 'broken', label: 'Broken' },
  { value: 'torn', label: 'Torn or holed' },
  { value: 'hardened', label: 'Hard, dry or swollen' },
  { value: 'leaking', label: 'Leaking' },
  { value: 'loose', label: 'Loose' },
  { value: 'dirty', label: 'Dirt or deposits' },
  { value: 'plugged', label: 'Plugged' },
  { value: 'sticking', label: 'Sticking or tight' },
  { value: 'out of setting', label: 'Out of setting' },
  { value: 'wrong part', label: 'Wrong or missing part' },
  { value: 'wet air', label: 'Water or oil in the air' },
  { value: 'damaged in work', label: 'Damaged in this work' },
  { value: 'sound', label: 'Looked at, in good order' },
  { value: 'other', label: 'Other: see the words' },
];

/** From the air and the signal down to the body. Common practice, no source. */
export const WHERE: readonly Choice[] = [
  { value: 'seat', label: 'Seat ring' },
  { value: 'plug', label: 'Plug' },
  { value: 'plug stem', label: 'Plug stem' },
  { value: 'guide', label: 'Guide or cage' },
  { value: 'packing', label: 'Packing' },
  { value: 'packing box', label: 'Packing box, flange or studs' },
  { value: 'bellows', label: 'Bellows seal' },
  { value: 'body gasket', label: 'Gasket of body and bonnet' },
  { value: 'body', label: 'Body or bonnet' },
  { value: 'line flange', label: 'Line flange or its gasket' },
  { value: 'stem connector', label: 'Stem connector or scale' },
  { value: 'actuator stem', label: 'Actuator stem or its seal' },
  { value: 'diaphragm', label: 'Diaphragm or piston seal' },
  { value: 'spring', label: 'Actuator spring' },
  { value: 'adjuster', label: 'Spring adjuster' },
  { value: 'case', label: 'Diaphragm case or its bolts' },
  { value: 'handwheel', label: 'Handwheel' },
  { value: 'positioner', label: 'Positioner' },
  { value: 'feedback', label: 'Feedback arm, cam or linkage' },
  { value: 'relay', label: 'Relay, nozzle or flapper' },
  { value: 'converter', label: 'Signal converter' },
  { value: 'solenoid', label: 'Solenoid valve or limit switch' },
  { value: 'regulator', label: 'Filter or supply regulator' },
  { value: 'tubing', label: 'Tubing and fittings' },
  { value: 'wiring', label: 'Wiring or controller' },
  { value: 'other', label: 'Other: see the words' },
];

/** Nothing is wrong where this was found: it is no cause of anything. */
export const SOUND = 'sound';

/** @example sayFound({ found: 'worn', where: 'seat' }) // 'Seat ring: worn' */
export function sayFound({ found, where }: { readonly found: string; readonly where: string }): string {
  const first = where === 'other' ? 'Elsewhere' : labelOf(WHERE, where);
  const then = found === 'other' ? 'see the words' : lowered(labelOf(FOUND, found));
  return `${first}: ${then}`;
}

/** A word that a later release took off its list stands as it was stored. */
function labelOf(choices: readonly Choice[], value: string): string {
  return choices.find((one) => one.value === value)?.label ?? value;
}

function lowered(text: string): string {
  return `${text.slice(0, 1).toLowerCase()}${text.slice(1)}`;
}
