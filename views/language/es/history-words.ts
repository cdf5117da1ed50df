import type { Catalogue } from '../patterns.ts';

/** Histories of valves and of the plant, trends and intervals. */
export const historyWords = {
  '100: at its limit': '100: en su límite',
  '; the history is no longer than that': '; el historial no es más largo',
  'Batch or serial number of a part': 'Número de lote o de serie de una pieza',
  'Covers the drift at about 95 %': 'Cubre la deriva en torno al 95 %',
  'Covers the value at about 95 %': 'Cubre el valor en torno al 95 %',
  'Gear that readings of this job rest on and that was found wrong since':
    'Instrumentos en que se apoyan lecturas de este trabajo y que se encontraron mal después',
  History: 'Historial',
  'How many the trend runs over': 'Sobre cuántos corre la tendencia',
  'It drifts': 'Deriva',
  'It is expected to leave {1} on {2}, at the earliest {3}, at the latest {4} (95 %).':
    'Se espera que pase {1} el {2}, como pronto el {3}, como tarde el {4} (95 %).',
  'It is not expected to leave its limits.': 'No se espera que salga de sus límites.',
  'Its sheet has no limit for it.': 'Su ficha no tiene límite para ello.',
  'No drift can be told': 'No se distingue deriva',
  'No interval is proposed yet: below stands what is wanting.':
    'Todavía no se propone intervalo: abajo está lo que falta.',
  'No interval is proposed: that wants five readings over more than a year; there are {1} over {2}.':
    'No se propone intervalo: hacen falta cinco lecturas en más de un año; hay {1} en {2}.',
  'Of a part': 'De una pieza',
  'Proposed from its history, not the usual interval of the plant':
    'Propuesto por su historial, no el intervalo usual de la planta',
  'Proposed: the next check within {1} of the last, by {2}{3}.':
    'Propuesto: la próxima comprobación en {1} desde la última, por {2}{3}.',
  'Proposed: the next check within {1} of the last.':
    'Propuesto: la próxima comprobación en {1} desde la última.',
  'Read since the valve was last set: the trend runs over these':
    'Leídas desde el último ajuste: la tendencia corre sobre estas',
  'Seat leakage': 'Fuga del asiento',
  'Spring against bench set': 'Resorte frente al ajuste de banco',
  'The next check is due now.': 'La próxima comprobación toca ahora.',
  'The next check is due now: {1} lies within what the line may be.':
    'La próxima comprobación toca ahora: {1} cae dentro de lo que puede ser la recta.',
  'The quantity that comes to its limit first': 'La magnitud que llega antes a su límite',
  'The shortest that any of the quantities proposes': 'El más corto que propone alguna magnitud',
  'Timed by hand, give or take not known: it is shown, and no trend runs over it.':
    'Medido a mano, sin margen conocido: se muestra, y ninguna tendencia corre sobre él.',
  'What people found on closed jobs, and what finding a fault ended with':
    'Lo que se encontró en trabajos cerrados, y en qué acabó la búsqueda de fallos',
  'What was found and what was put in on its closed jobs, the oldest first':
    'Lo encontrado y lo puesto en sus trabajos cerrados, primero lo más antiguo',
  'Whole months, from 1 to 120.': 'Meses enteros, de 1 a 120.',
  'a minute': 'por minuto',
  'as usual': 'como de costumbre',
  'at most {1} {2} either way': 'como mucho {1} {2} a cada lado',
  'at once': 'de inmediato',
  'by its history': 'por su historial',
  'control chart method: the interval ends at the early end of the date of leaving (95 %), and is never longer than the history':
    'método de carta de control: el intervalo acaba en el extremo temprano de la fecha de salida (95 %), y nunca es más largo que el historial',
  'its limit of {1} {2}': 'su límite de {1} {2}',
  'no limit on the sheet': 'sin límite en la ficha',
  'no, read before it was last set': 'no, leída antes del último ajuste',
  'plan a check': 'planificar una comprobación',
  'spring against bench set': 'resorte frente al ajuste de banco',
  '{1} months': '{1} meses',
  '{1} of {2} valves were checked': 'se comprobaron {1} de {2} válvulas',
  '{1} since it was last set: too few for a trend.':
    '{1} desde el último ajuste: muy pocas para una tendencia.',
  '{1} within one day: too close together for a trend.':
    '{1} en un mismo día: demasiado juntas para una tendencia.',
  '{1}, history': '{1}, historial',
  '{1}: {2} readings{3}. {4}': '{1}: {2} lecturas{3}. {4}',
  '{1}: {2} {3} a year, give or take {4} (95 %), from {5}.':
    '{1}: {2} {3} al año, más o menos {4} (95 %), de {5}.',
  'seat leakage, bubbles': 'fuga del asiento, burbujas',
  'the sheet, without a source': 'la ficha, sin fuente',
  'What the sheet expects of it; no limit': 'Lo que la ficha espera de ello; no es un límite',
  '{1} is what its packing should cost: an expectation, no limit. From: {2}.':
    '{1} es lo que debería costar su empaquetadura: una expectativa, no un límite. De: {2}.',
  'no limit on the sheet; {1} {2} expected': 'sin límite en la ficha; se espera {1} {2}',
  'How it stands shut': 'Cómo está cerrada',
  'How it stands open': 'Cómo está abierta',
  'What holds the valve at both ends of its travel, term by term; null without a spring':
    'Lo que retiene la válvula en ambos extremos de su carrera, término a término; null sin resorte',
} as const satisfies Catalogue;
