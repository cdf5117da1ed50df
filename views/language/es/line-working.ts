import type { Catalogue } from '../patterns.ts';

/** Why a folded line has its number; cards that are entered together. */
export const lineWorking = {
  Allowed: 'Permitido',
  'Allowed by the class': 'Permitido por la clase',
  'Bubbles allowed in a minute': 'Burbujas permitidas por minuto',
  'Bubbles in a minute': 'Burbujas por minuto',
  'Change between the two readings': 'Cambio entre las dos lecturas',
  Clearance: 'Holgura',
  'Clearance allowed': 'Holgura permitida',
  'Contact that the turns should give': 'Contacto que deben dar las vueltas',
  'Dead band': 'Banda muerta',
  'Difference of the two gauges': 'Diferencia de los dos manómetros',
  Expected: 'Esperado',
  'Fall allowed': 'Caída permitida',
  'Fall by a leak': 'Caída por fuga',
  'Fall by temperature': 'Caída por temperatura',
  'Friction each way': 'Fricción en cada sentido',
  'Friction: area × half the gap between the signal going up and coming down, at one travel.':
    'Fricción: área × la mitad de la separación entre la señal al subir y al bajar, en una misma carrera.',
  'From the middle to either': 'Del punto medio a cada uno',
  'Gauge and scale may be wrong by': 'Manómetro y escala pueden errar en',
  'Held against what the class of the seat allows, with what gauge and watch may be wrong by.':
    'Se compara con lo que permite la clase del asiento, contando lo que pueden errar manómetro y reloj.',
  Leak: 'Fuga',
  'Least supply wanted': 'Suministro mínimo necesario',
  Lift: 'Apertura',
  Limit: 'Límite',
  'Limit for safe': 'Límite para darla por segura',
  'One of these cards is said to be done before the card above it.':
    'Una de estas tarjetas figura como hecha antes que la tarjeta de encima.',
  'Plug moved by': 'El obturador se movió',
  'Read on the body': 'Leído en el cuerpo',
  'Run-out': 'Excentricidad',
  'Sag of the supply': 'Caída del suministro',
  'Seat contact at': 'Contacto con el asiento a',
  'Seat load that the class needs': 'Carga de asiento que exige la clase',
  'Shift of the spring': 'Desplazamiento del resorte',
  'Shown safe where the reading, with all that the gauge may be wrong by, is at most this limit.':
    'Queda demostrada segura cuando la lectura, con todo lo que puede errar el manómetro, no pasa de este límite.',
  'Signal that the turns are worth': 'Señal que valen las vueltas',
  'Steady where the change is at most what the gauge may be wrong by.':
    'Estable cuando el cambio no pasa de lo que puede errar el manómetro.',
  Supply: 'Suministro',
  'Swing of the pressure': 'Oscilación de la presión',
  'The change of signal that turns the stem round, in percent of its span.':
    'El cambio de señal que invierte el sentido del vástago, en por ciento de su intervalo.',
  'The contact before, and what the turns move it by: spring rate × turns × pitch / area.':
    'El contacto anterior y lo que lo mueven las vueltas: constante del resorte × vueltas × paso / área.',
  'The fall may be wrong by': 'La caída puede errar en',
  'The first is kept': 'Se guarda la primera',
  'The first {1} are kept': 'Se guardan las {1} primeras',
  'The gap may be wrong by': 'La separación puede errar en',
  'The gauge may be wrong by': 'El manómetro puede errar en',
  'The largest of the differences between wanted and read travel. Inside only where it stays within the limit with all that gauge and scale may be wrong by.':
    'La mayor de las diferencias entre la carrera pedida y la leída. Está dentro solo si no pasa del límite con todo lo que pueden errar manómetro y escala.',
  'The leak may be wrong by': 'La fuga puede errar en',
  'The middle of the signal where the plug leaves its seat and where it touches it.':
    'El punto medio entre la señal a la que el obturador deja el asiento y la señal a la que lo toca.',
  'The middle of up and down, against the bench set of the sheet.':
    'El punto medio entre subida y bajada, frente al ajuste de banco de la ficha.',
  'The shift may be wrong by': 'El desplazamiento puede errar en',
  'These cards are not entered together: one of them is read, signed or warned about by itself.':
    'Estas tarjetas no se escriben juntas: una de ellas se lee, se firma o se advierte por separado.',
  'They agree where the difference is at most what both may be wrong by together.':
    'Coinciden cuando la diferencia no pasa de lo que ambos pueden errar juntos.',
  'Torque wanted': 'Par necesario',
  Turns: 'Vueltas',
  Wanted: 'Necesario',
  'What fell, less what the temperature took.': 'Lo que cayó, menos lo que se llevó la temperatura.',
  'Why this number': 'Por qué este número',
  'Write the times in the order of the cards, or leave out what you do not remember.':
    'Escriba las horas en el orden de las tarjetas, o deje en blanco lo que no recuerde.',
  'the reason': 'el motivo',
  '{1} of {2}, each a line of its own; the rest was not counted.':
    '{1} de {2}, cada una en su propia línea; el resto no se contó.',
} as const satisfies Catalogue;
