import type { Catalogue } from '../patterns.ts';

/** What the reply line answers: what it understood, what it could not, where the job stands. */
export const replyLine = {
  'The card takes: {1}.': 'La tarjeta admite: {1}.',
  '(may stay blank)': '(puede quedar en blanco)',
  '(still wanted: {1})': '(todavía falta: {1})',
  'A hold is not answered here: no reply can sign it.':
    'A un punto de espera no se responde aquí: ninguna respuesta puede firmarlo.',
  'A positioner is fitted: its signal of {1} to {2} is not the air on the actuator.':
    'Lleva posicionador: su señal de {1} a {2} no es el aire del actuador.',
  'Also: back, park, stop, not sure, or a question.':
    'También: atrás, dejarlo para luego, parar, no estoy seguro, o una pregunta.',
  Answer: 'Respuesta',
  'Ask a question here, go back, park the job, or make safe and stop.':
    'Haga aquí una pregunta, vuelva atrás, deje el trabajo en pausa, o deje seguro y pare.',
  'Ask somebody who knows, or look in the maker’s manual.':
    'Pregunte a alguien que lo sepa, o mire en el manual del fabricante.',
  'Back to which card?': '¿Atrás, a qué tarjeta?',
  'Bench set of {1}: {2} to {3} over {4}, {5}.':
    'Ajuste de banco de {1}: de {2} a {3} en una carrera de {4}, {5}.',
  'Every row of this table is written.': 'Cada fila de esta tabla está escrita.',
  'Friction shifts it a little: one way going up, the other coming down.':
    'La fricción lo desplaza un poco, subiendo hacia un lado y bajando hacia el otro.',
  'Go back': 'Volver atrás',
  'I am not sure': 'No estoy seguro',
  'It explains {1} terms by their names, such as bench set, seating turns, hysteresis or test air, and says where you are and what is left.':
    'Explica {1} términos por su nombre, como ajuste de banco, vueltas de asiento, histéresis o aire de prueba, y dice dónde está usted y qué falta.',
  'It is signed on the card above, by name and PIN, by somebody who had no hand in this work, or sent back.':
    'Se firma en la tarjeta de arriba, con nombre y PIN, por alguien que no intervino en este trabajo, o se devuelve.',
  'It strokes from 0 to 100 %, {1}.': 'Recorre de 0 a 100 %, {1}.',
  'Look again, ask somebody who knows this valve, leave the job here for later, or make safe and stop.':
    'Mire otra vez, pregunte a alguien que conozca esta válvula, deje el trabajo aquí para luego, o deje seguro y pare.',
  'No card of this job is open.': 'Ninguna tarjeta de este trabajo está abierta.',
  'No hold is among them.': 'Entre ellos no hay ningún punto de espera.',
  'No step is skipped: no way on leads past this card.':
    'Ningún paso se salta: ningún camino sigue sin pasar por esta tarjeta.',
  'No term is spelled so. Is one of these meant?':
    'Ningún término se escribe así. ¿Quiere decir uno de estos?',
  'Nothing is counted while you are not sure.': 'Nada cuenta mientras usted no esté seguro.',
  'None of this is a reading or an answer.': 'Nada de esto es una lectura ni una respuesta.',
  'On {1}: {2}.': 'En {1}: {2}.',
  'One field is named twice.': 'Un campo está nombrado dos veces.',
  'Park this job': 'Poner este trabajo en pausa',
  'Read it again, and write the one number that stands there.':
    'Léalo otra vez y escriba el único número que hay ahí.',
  Reason: 'Motivo',
  'Set {1}, {2}.': 'Ponga {1}, {2}.',
  'Several things are called that. Which one?': 'Varias cosas se llaman así. ¿Cuál?',
  'The built-in reference does not know “{1}”.': 'La referencia incluida no conoce “{1}”.',
  'The card names another: go there and read its label.':
    'La tarjeta nombra otra: vaya allí y lea su etiqueta.',
  'The sheet wants {1} % there. Write what you read, not what is wanted.':
    'La ficha pide ahí {1} %. Escriba lo que lee, no lo que se pide.',
  'The time is over.': 'El tiempo ha terminado.',
  'The travel of {1} is {2}.': 'La carrera de {1} es {2}.',
  'The work stops, and the card that makes it safe comes next.':
    'El trabajo se detiene, y sigue la tarjeta que lo deja seguro.',
  'This card asks for one answer:': 'Esta tarjeta pide una respuesta:',
  'This card asks for:': 'Esta tarjeta pide:',
  'This card cannot be answered now: it says why.':
    'A esta tarjeta no se puede responder ahora: ella dice por qué.',
  'This card does not ask for it.': 'Esta tarjeta no lo pide.',
  'This card gives no reason of its own.': 'Esta tarjeta no da un motivo propio.',
  'This card is read on no gauge.': 'Esta tarjeta no se lee en ningún manómetro.',
  'This card is read on:': 'Esta tarjeta se lee en:',
  'This card is signed by name and PIN, or sent back. A reply cannot sign it.':
    'Esta tarjeta se firma con nombre y PIN, o se devuelve. Una respuesta no puede firmarla.',
  'This card waits {1} s.': 'Esta tarjeta espera {1} s.',
  'This is more than the case may have: shut the regulator and vent first. Counting it stops the work.':
    'Es más de lo que puede tener la caja: primero cierre el regulador y ventee. Si cuenta, el trabajo se detiene.',
  'This is the last card, if nothing gives trouble.': 'Esta es la última tarjeta, si nada da problemas.',
  'This is too long to be read.': 'Es demasiado largo para leerlo.',
  'This job has: {1}.': 'Este trabajo tiene: {1}.',
  'What has lapsed is shown again, one walk round:':
    'Lo que ha caducado se demuestra otra vez, en una vuelta:',
  'Where it cannot be done, answer the card so, park the job, or make safe and stop.':
    'Si no se puede hacer, contéstelo así en la tarjeta, deje el trabajo en pausa, o deje seguro y pare.',
  'Where you read on another one of this job, write `on` and its number behind the reading.':
    'Si leyó en otro de este trabajo, escriba detrás de la lectura “en” y su número.',
  'Flow on the plug shifts it.': 'El flujo sobre el obturador lo desplaza.',
  'Worked out with the exact size of both units.': 'Calculado con el tamaño exacto de ambas unidades.',
  'Write a reading or an answer, or ask a question.':
    'Escriba una lectura o una respuesta, o haga una pregunta.',
  'Write at most {1} letters.': 'Escriba como mucho {1} letras.',
  'Write done when it is done, or ask a question.': 'Escriba “hecho” cuando esté hecho, o haga una pregunta.',
  'Write done when it is done.': 'Escriba “hecho” cuando esté hecho.',
  'Write each reading by itself, with the name of its field before it.':
    'Escriba cada lectura por separado, con el nombre de su campo delante.',
  'Write it another way, or answer on the card.': 'Escríbalo de otro modo, o responda en la tarjeta.',
  'Write it once.': 'Escríbalo una vez.',
  'Write one value for each field, with its unit, or with the name of the field before it.':
    'Escriba un valor por campo, con su unidad o con el nombre del campo delante.',
  'Write the name of the field before each value, or answer on the card.':
    'Escriba el nombre del campo delante de cada valor, o responda en la tarjeta.',
  'Write what it reads, with its unit.': 'Escriba lo que marca, con su unidad.',
  'Write what the card asks for, or ask a question.': 'Escriba lo que pide la tarjeta, o haga una pregunta.',
  'Where am I?': '¿Dónde estoy?',
  'are holds': 'son puntos de espera',
  'coming down': 'bajando',
  'error at most': 'error como mucho',
  'going up': 'subiendo',
  'hysteresis at most': 'histéresis como mucho',
  'is a hold': 'es un punto de espera',
  'no card is open': 'ninguna tarjeta está abierta',
  'off the straight way': 'fuera del camino recto',
  'the lock that hangs on {1}': 'el candado puesto en {1}',
  '{1} is beyond the bench set: the stem rests at its end.':
    '{1} queda fuera del ajuste de banco: el vástago está en su extremo.',
  '{1} is past this valve’s travel.': '{1} pasa de la carrera de esta válvula.',
  '{1} of the bench set itself is {2}.': '{1} del propio ajuste de banco son {2}.',
  '{1} of the travel is {2}.': '{1} de la carrera son {2}.',
  '{1} of them {2}: another person signs.': 'De ellos, {1} {2}: firma otra persona.',
  '{1} of this job': '{1} de este trabajo',
  '{1} on the actuator for {2} open.': '{1} en el actuador para {2} de apertura.',
  '{1} open at {2}, {3}.': '{1} de apertura con {2}, {3}.',
  '{1} rows, each a line of its own, entered together.':
    '{1} filas, cada una con su propia línea, escritas juntas.',
  '{1} s of it are left.': 'Quedan {1} s.',
  '1 s of it is left.': 'Queda 1 s.',
  '{1} steps are left after this card, if nothing gives trouble.':
    'Después de esta tarjeta quedan {1} pasos, si nada da problemas.',
  '{1}, {2}, valve sheet revision {3}.': '{1}, {2}, ficha de válvula revisión {3}.',
  '{1}, {2}{3}. {4} lines are kept.': '{1}, {2}{3}. Quedan guardadas {4} líneas.',
  '“{1}” is more than this card asks for, or not all of it fits.':
    '“{1}” es más de lo que pide esta tarjeta, o no todo encaja.',
  '“{1}” is not understood on this card.': '“{1}” no se entiende en esta tarjeta.',
  '“{1}” may answer this card, or mean something else.':
    '“{1}” puede responder a esta tarjeta o querer decir otra cosa.',
  '“{1}” may be a range or two readings.': '“{1}” puede ser un intervalo o dos lecturas.',
  '“{1}” may mean {2} different things on this card.':
    '“{1}” puede significar {2} cosas distintas en esta tarjeta.',
  '“{1}” may mean:': '“{1}” puede significar:',
  '“{1}” says that it was not read for certain.': '“{1}” dice que no se leyó con certeza.',
} as const satisfies Catalogue;
