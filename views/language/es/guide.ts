import type { Catalogue } from '../patterns.ts';

/** The quick guide for paper, and the tour of the practice bench. */
export const guide = {
  'Quick guide': 'Guía rápida',
  'Prints on one sheet, A4 or Letter.': 'Se imprime en una hoja, A4 o Carta.',
  'All of help': 'Toda la ayuda',
  'One card at a time': 'Una tarjeta a la vez',
  'The warning first, then each line. The newest card stands at the end; answered ones fold to a line and open again.':
    'Primero la advertencia, luego cada línea. La tarjeta más nueva está al final; las respondidas se pliegan a una línea y se vuelven a abrir.',
  'a card': 'una tarjeta',
  write: 'escribir',
  'A reading as on the gauge, with its unit: 9 psi, 12.1 mm, 12,1 mm, 50 %.':
    'Una lectura tal como en el manómetro, con su unidad: 9 psi, 12.1 mm, 12,1 mm, 50 %.',
  '“Why this step” stands on the card. Ask for a number at the foot: the answer leads to its working.':
    '“Por qué este paso” está en la tarjeta. Pregunte por un número al pie: la respuesta lleva a su desarrollo.',
  wrong: 'equivocado',
  'Open the answered line and correct it. The first value is kept, with your reason.':
    'Abra la línea respondida y corríjala. El primer valor queda guardado, con su motivo.',
  'The reply line': 'La línea de respuesta',
  'In any order: “9 psi 50”, “50 % @ 0.6 bar”, “3/8" 9 psi”. It shows what it understood; nothing counts before “Count it”.':
    'En cualquier orden: “9 psi 50”, “50 % @ 0.6 bar”, “3/8" 9 psi”. Muestra lo que entendió; nada cuenta antes de “Registrar”.',
  'never read': 'no se lee',
  '“About 50 %” and “48 to 52” are refused: read again, write one number.':
    '“Unos 50 %” y “de 48 a 52” se rechazan: lea otra vez y escriba un solo número.',
  words: 'palabras',
  'done, yes, no, back, park, stop, not sure, or the beginning of an answer.':
    'hecho, sí, no, atrás, dejarlo para luego, parar, no estoy seguro, o el comienzo de una respuesta.',
  questions: 'preguntas',
  'what is bench set? how many turns? what pressure at 50 %? which gauge? why?':
    '¿qué es el ajuste de banco? ¿cuántas vueltas? ¿qué presión a 50 %? ¿qué manómetro? ¿por qué?',
  'Scan a tag, a lock or a gauge: it is told, or it fills its field.':
    'Lea con el escáner una identificación, un candado o un manómetro: se dice qué es, o llena su campo.',
  'It can hurt. Nobody’s hands go there.': 'Puede herir. Nadie pone ahí las manos.',
  held: 'sujeto con aire',
  'Test air in your own hand, read twice and steady. It ends at the next change of air.':
    'Aire de prueba en su propia mano, leído dos veces y estable. Termina con el siguiente cambio de aire.',
  'made safe': 'hecho seguro',
  'Locked, tagged, and shown by a gauge that this job saw alive, or by a vent watched twice.':
    'Bloqueado, etiquetado y demostrado por un manómetro que este trabajo vio vivo, o por un venteo observado dos veces.',
  lapsed: 'caducado',
  'After a pause or a shift: one walk round shows it again.':
    'Después de una pausa o de un turno: una vuelta lo demuestra otra vez.',
  'Stopping and signing': 'Parar y firmar',
  'not sure': 'no está seguro',
  'Write “not sure”. Nothing is counted.': 'Escriba “no estoy seguro”. Nada cuenta.',
  stop: 'parar',
  '“Make safe and stop” stands under every card and always works.':
    '“Dejar seguro y parar” está debajo de cada tarjeta y siempre funciona.',
  park: 'poner en pausa',
  'Locks stay on. The next person is told how you left it.':
    'Los candados quedan puestos. A la siguiente persona se le dice cómo lo dejó usted.',
  'Somebody who had no hand in the work signs, with name and PIN. Never share a PIN.':
    'Firma alguien que no intervino en el trabajo, con nombre y PIN. Nunca comparta un PIN.',
  'Nothing is kept. Write on paper; send the same form again when it is back.':
    'Nada se guarda. Escriba en papel; envíe otra vez el mismo formulario cuando vuelva.',
  'Quick guide, one sheet for paper': 'Guía rápida, una hoja para papel',
  'Tour of the practice bench': 'Recorrido por el banco de prácticas',
  'First time here?': '¿Primera vez aquí?',
  'Five stops show how a job runs, in about three minutes. Nothing of it touches a real job.':
    'Cinco paradas muestran cómo va un trabajo, en unos tres minutos. Nada de ello toca un trabajo real.',
  Tour: 'Recorrido',
  'Take the tour': 'Hacer el recorrido',
  'Not now, and not again': 'Ahora no, ni otra vez',
  'Stops of the tour': 'Paradas del recorrido',
  'stop {1} of {2}': 'parada {1} de {2}',
  'One card, one thing': 'Una tarjeta, una cosa',
  'A job is a row of cards. The open card stands at the end; what you answered folds to a line above it and opens again.':
    'Un trabajo es una fila de tarjetas. La abierta está al final; lo que usted respondió se pliega a una línea encima y se vuelve a abrir.',
  'The warning stands before the act. “Why this step” says what it is for.':
    'La advertencia está antes del acto. “Por qué este paso” dice para qué es.',
  'Readings as on the gauge': 'Lecturas como en el manómetro',
  'Write what you read, with its unit, in the card or in the reply line at the foot. It shows what it understood, and waits for you:':
    'Escriba lo que leyó, con su unidad, en la tarjeta o en la línea de respuesta al pie. Muestra lo que entendió, y le espera:',
  Signal: 'Señal',
  Travel: 'Carrera',
  '“About 50 %” is not taken. Read again, and write one number.':
    '“Unos 50 %” no se acepta. Lea otra vez y escriba un solo número.',
  'What can hurt': 'Lo que puede herir',
  'Beside the card stands the valve with a tag for each energy: live, held, or made safe, by whom and shown how.':
    'Al lado de la tarjeta está la válvula con una etiqueta por energía: viva, sujeta o hecha segura, por quién y cómo se demostró.',
  'A step that needs an energy made safe does not open before it is shown.':
    'Un paso que necesita una energía hecha segura no se abre antes de que se demuestre.',
  'Somebody else signs': 'Firma otra persona',
  'At a hold nobody passes until another person has seen the readings and signed. On the bench a supervisor is played for you.':
    'En un punto de espera nadie pasa hasta que otra persona haya visto las lecturas y firmado. En el banco hay un supervisor simulado.',
  'Stop at any time': 'Pare cuando quiera',
  '“Make safe and stop” and “Park” stand under every card. Write “not sure” and nothing is counted. The bench touches no real job: try it there.':
    '“Dejar seguro y parar” y “Poner en pausa” están debajo de cada tarjeta. Escriba “no estoy seguro” y nada cuenta. El banco no toca ningún trabajo real: pruébelo ahí.',
  '“Help” stands at the top of every page, with a quick guide for paper.':
    '“Ayuda” está arriba en cada página, con una guía rápida para papel.',
  'One stop back': 'Una parada atrás',
  'Next stop': 'Parada siguiente',
  'Try it on the bench': 'Probarlo en el banco',
  'Leave the tour': 'Dejar el recorrido',
} as const satisfies Catalogue;
