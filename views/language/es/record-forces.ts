import type { Catalogue } from '../patterns.ts';

/** What holds a valve shut, what came through its seat, and readings in doubt. */
export const recordForces = {
  ', with no air on the case': ', sin aire en la cámara',
  ', with {1} on the case': ', con {1} en la cámara',
  ': NOT HELD SHUT': ': NO SE MANTIENE CERRADA',
  '; counted, by the table of bubbles': '; contado, por la tabla de burbujas',
  '; measured to {1} either way': '; medido con ± {1}',
  'Force balance, shut': 'Balance de fuerzas, cerrada',
  'Worked out from the valve sheet, with the friction named here; not measured with the process on. Plus pushes towards the seat.':
    'Calculado con la hoja de la válvula y la fricción indicada aquí; no medido con el proceso presente. Más empuja hacia el asiento.',
  'air less spring, towards the seat': 'aire menos resorte, hacia el asiento',
  'as found {1}': 'como se encontró {1}',
  'as left {1}': 'como se dejó {1}',
  'friction, against closing': 'fricción, contra el cierre',
  'in doubt': 'en duda',
  'left on the seat': 'queda en el asiento',
  'not known, and not counted': 'desconocida y no contada',
  'not on the sheet': 'no está en la hoja',
  'of this packing by the sheet': 'de esta empaquetadura según la hoja',
  'process on the shut plug': 'proceso sobre el obturador cerrado',
  'seat leakage, bubbles a minute': 'fuga del asiento, burbujas por minuto',
  'seat leakage, {1}': 'fuga del asiento, {1}',
  'spring, towards the seat': 'resorte, hacia el asiento',
  'the plug leaves its seat at': 'el obturador deja su asiento a',
  'the plug meets its seat at': 'el obturador toca su asiento a',
  'too close for this gauge': 'demasiado cerca para este manómetro',
  'wanted by the seat': 'lo que pide el asiento',
  '{1} found wrong since': '{1} se encontró mal después',
  '{1} in doubt': '{1} en duda',
  '{1}, with {2} across it': '{1}, con {2} de diferencia',
} as const satisfies Catalogue;
