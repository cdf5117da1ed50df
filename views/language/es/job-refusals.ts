import type { Catalogue } from '../patterns.ts';

/** What an act on a job is refused with. */
export const jobRefusals = {
  '"{1}" is not an answer here.': '"{1}" no es una respuesta aquí.',
  'A correction wants its reason.': 'Una corrección necesita su motivo.',
  'A hold is signed by a supervisor.': 'Un punto de espera lo firma un supervisor.',
  'A hold is signed or sent back, not answered.':
    'Un punto de espera se firma o se devuelve, no se responde.',
  'A hold is signed or sent back.': 'Un punto de espera se firma o se devuelve.',
  'A job is not handed over to oneself.': 'Un trabajo no se entrega a uno mismo.',
  'A judgement is overridden with another one and with the reason for it.':
    'Un juicio se sustituye por otro, con su motivo.',
  'A waiver wants its reason.': 'Una exención necesita su motivo.',
  'Answer the card as it stands.': 'Responda a la tarjeta como está.',
  'Answer the card.': 'Responda a la tarjeta.',
  'Ask a supervisor to review it on the page "To sign".':
    'Pida a un supervisor que la revise en la página “Por firmar”.',
  'Ask a supervisor who had no hand in this work.':
    'Pida a un supervisor que no haya intervenido en este trabajo.',
  'Ask for a signature.': 'Pida una firma.',
  'Ask one of them to strike it, and say why.': 'Pida a uno de ellos que la tache, y diga por qué.',
  'Ask somebody else to read it.': 'Pida a otra persona que lo lea.',
  'Ask somebody who did none of this work to sign.':
    'Pida que firme alguien que no hizo nada de este trabajo.',
  'Ask them to.': 'Pídaselo.',
  'At most {1} letters.': '{1} letras como máximo.',
  'Choose a line that stands.': 'Elija una línea que valga.',
  'Choose a note that stands.': 'Elija una nota que valga.',
  'Choose a reading.': 'Elija una lectura.',
  'Choose a row that stands.': 'Elija una fila que valga.',
  'Choose one of those on the card.': 'Elija una de las que están en la tarjeta.',
  'Choose one of the two.': 'Elija una de las dos.',
  'Choose the gear for it and open it: this job closes with the same line.':
    'Elija los instrumentos para él y ábralo: este trabajo se cierra con la misma línea.',
  'Choose what is done about it: {1}.': 'Elija qué se hace al respecto: {1}.',
  'Choose what was found.': 'Elija qué se encontró.',
  'Choose where it was found.': 'Elija dónde se encontró.',
  'Every row of this table has been read.': 'Todas las filas de esta tabla están leídas.',
  'From this card "{1}" leads nowhere.': 'Desde esta tarjeta "{1}" no lleva a ninguna parte.',
  'From this card there is no safe way back to that one.':
    'Desde esta tarjeta no hay camino seguro de vuelta a esa.',
  'Go on to the next card.': 'Pase a la tarjeta siguiente.',
  'Go on with the open card.': 'Siga con la tarjeta abierta.',
  'Hang the lock, then write its number.': 'Ponga el candado y escriba después su número.',
  'Hang your locks and join the job first, or have it handed over to you.':
    'Ponga sus candados y únase primero al trabajo, o haga que se lo entreguen.',
  'Have a second person read the gauge again, on the line of the reading.':
    'Haga que una segunda persona lea otra vez el manómetro, en la línea de la lectura.',
  'Have it signed, or make safe and park.': 'Hágalo firmar, o deje seguro y en pausa.',
  'Held air is not proved again from memory.': 'El aire sostenido no se demuestra otra vez de memoria.',
  'It is not as it was left.': 'No está como se dejó.',
  'Locks on, caps on, case shut, nothing moved':
    'Candados puestos, tapones puestos, caja cerrada, nada se movió',
  'Look at the page "To sign".': 'Mire la página “Por firmar”.',
  'Make safe and stop, then have the hold signed again.':
    'Deje seguro y pare, y haga firmar otra vez el punto de espera.',
  'Make safe and stop, then isolate it again.': 'Deje seguro y pare, y después aíslelo otra vez.',
  'Make safe and stop, then set and read it afresh.':
    'Deje seguro y pare, y después póngalo y léalo de nuevo.',
  'Make safe and stop. A new job begins with what is to be done.':
    'Deje seguro y pare. Un trabajo nuevo empieza con lo que hay que hacer.',
  'Name the incoming person.': 'Nombre a la persona que llega.',
  'No flow, both times': 'Sin flujo, ambas veces',
  'No hold is open on this job.': 'En este trabajo no hay ningún punto de espera abierto.',
  'No note stands on that line.': 'En esa línea no hay ninguna nota.',
  'No signature by radio is open there.': 'Ahí no hay ninguna firma por radio abierta.',
  'Nobody has named this person as competent to sign where no supervisor can come.':
    'Nadie ha nombrado a esta persona competente para firmar donde no puede venir ningún supervisor.',
  'Not at zero: {1}.': 'No está a cero: {1}.',
  'Nothing is chosen.': 'No se eligió nada.',
  'Nothing on this card has to be proved again.': 'En esta tarjeta no hay nada que demostrar otra vez.',
  'Nothing was sent.': 'No se envió nada.',
  'Nothing was signed; the try is in the log.': 'No se firmó nada; el intento está en la bitácora.',
  'Nothing was written; what you typed is still there.': 'No se escribió nada; lo que escribió sigue ahí.',
  'Only the judgement of a stroke is overridden.': 'Solo se juzga de otro modo el juicio de una carrera.',
  'Only the person who was heard confirms a signature by radio.':
    'Una firma por radio solo la confirma la persona a la que se oyó.',
  'Open a new job for this valve.': 'Abra un trabajo nuevo para esta válvula.',
  'Open its record.': 'Abra su registro.',
  'People told again, by role': 'Personas avisadas otra vez, por función',
  'Prove it again on this card, or make safe and stop.':
    'Demuéstrelo otra vez en esta tarjeta, o deje seguro y pare.',
  'Read by one person only: {1}.': 'Leído por una sola persona: {1}.',
  'Read the card again, then sign.': 'Lea otra vez la tarjeta y firme después.',
  'Read the new card below, then go on from there.': 'Lea abajo la tarjeta nueva y siga desde ahí.',
  'Read what is missing.': 'Lea lo que falta.',
  'Say it in words.': 'Dígalo en palabras.',
  'Say whether it was read alone or together.': 'Diga si se leyó a solas o juntos.',
  'Send it back, or have it shown again.': 'Devuélvalo, o haga que se demuestre otra vez.',
  'Set the signal that the card names, or write the one on the gauge if it is near.':
    'Ponga la señal que nombra la tarjeta, o escriba la del manómetro si está cerca.',
  'Take the job up again first.': 'Retome primero el trabajo.',
  'That is not the code that was read back on this hold.':
    'Ese no es el código que se leyó de vuelta en este punto de espera.',
  'That line has no reading of a gauge.': 'Esa línea no tiene ninguna lectura de un manómetro.',
  'That review is not open.': 'Esa revisión no está abierta.',
  'That row belongs to an earlier reading of this table.':
    'Esa fila pertenece a una lectura anterior de esta tabla.',
  'The incoming person has no lock on each point.': 'La persona que llega no tiene candado en cada punto.',
  'The job stands on no lock of theirs.': 'El trabajo no se apoya en ningún candado suyo.',
  'The locks of this job are not yours.': 'Los candados de este trabajo no son suyos.',
  'The owner of each lock takes it off. Where the owner is away, a supervisor can.':
    'El dueño de cada candado lo quita. Si el dueño está ausente, puede un supervisor.',
  'The signature by radio stays unconfirmed.': 'La firma por radio sigue sin confirmar.',
  'The signature over this work has lapsed.': 'La firma sobre este trabajo ha caducado.',
  'The step "{1}" is not the open one.': 'El paso "{1}" no es el que está abierto.',
  'The wait is not over: {1} s are left.': 'La espera no ha terminado: quedan {1} s.',
  'The wait is not over: 1 s is left.': 'La espera no ha terminado: queda 1 s.',
  'The witness was told and has {1} s left to come.': 'El testigo fue avisado y le quedan {1} s para venir.',
  'The work goes on in the procedure "{1}", with everything as it stands.':
    'El trabajo sigue en el procedimiento "{1}", con todo como está.',
  'Their owner hands the job over.': 'Su dueño entrega el trabajo.',
  'They take their locks off and leave the job, or have it handed over; they join again once it is locked.':
    'Quitan sus candados y salen del trabajo, o hacen que se entregue; se unen otra vez cuando esté bloqueado.',
  'This answer departs from the sheet and wants its reason.':
    'Esta respuesta se aparta de la ficha y necesita su motivo.',
  'This hold is never signed by radio: spring, case or line is opened after it.':
    'Este punto de espera nunca se firma por radio: después se abre resorte, caja o línea.',
  'This hold is never waived.': 'Este punto de espera nunca se exime.',
  'This hold is signed by the people whom it names.':
    'Este punto de espera lo firman las personas que nombra.',
  'This hold was sent back for good: the valve is left as it is.':
    'Este punto de espera se devolvió para siempre: la válvula queda como está.',
  'This is not the code.': 'Este no es el código.',
  'This is waived by the {1}.': 'Esto lo exime {1}.',
  'This job does not close yet: {1} open.': 'Este trabajo no se cierra todavía: {1} sin cerrar.',
  'This job has ended.': 'Este trabajo ha terminado.',
  'This job is closed: a supervisor or an engineer strikes its notes.':
    'Este trabajo está cerrado: sus notas las tacha un supervisor o un ingeniero.',
  'This job is not parked.': 'Este trabajo no está en pausa.',
  'This job stands as it was; its locks are on.':
    'Este trabajo sigue como estaba; sus candados están puestos.',
  'This step was answered by {1}{2}, while your card was open.':
    'A este paso respondió {1}{2}, mientras su tarjeta estaba abierta.',
  'Too little was read: there is nothing to override.':
    'Se leyó demasiado poco: no hay nada que juzgar de otro modo.',
  'Wait for somebody who sees it, or make safe and park.':
    'Espere a alguien que lo vea, o deje seguro y en pausa.',
  'Wait, or have it signed.': 'Espere, o hágalo firmar.',
  'Wait, then go on.': 'Espere y después siga.',
  'What goes back says what is missing and what is done about it.':
    'Lo que se devuelve dice qué falta y qué se hace al respecto.',
  'What you typed is still there.': 'Lo que escribió sigue ahí.',
  'What you were shown is no longer what stands.': 'Lo que se le mostró ya no es lo que hay.',
  'Whoever acknowledged part of this work since the last hold does not sign it.':
    'Quien dio por visto parte de este trabajo desde el último punto de espera no lo firma.',
  'Whoever did or recorded part of this work since the last hold does not sign it.':
    'Quien hizo o registró parte de este trabajo desde el último punto de espera no lo firma.',
  'Whoever read it first does not read it again.': 'Quien lo leyó primero no lo lee otra vez.',
  'Without a supervisor on the spot a hold is signed with the reason why none can come.':
    'Sin un supervisor en el lugar, un punto de espera se firma con el motivo por el que ninguno puede venir.',
  'Write how many, a whole number from 1 to {1}.': 'Escriba cuántas, un número entero de 1 a {1}.',
  'Write the code that you heard. If you heard another one, or none, say that you did not give it.':
    'Escriba el código que oyó. Si oyó otro, o ninguno, diga que no lo dio.',
  'Write why it is waived.': 'Escriba por qué se exime.',
  'Write why no supervisor can come.': 'Escriba por qué no puede venir ningún supervisor.',
  'Write why.': 'Escriba por qué.',
  'Yes, seen by me now': 'Sí, visto por mí ahora',
  'You have no lock of your own on {1}.': 'Usted no tiene ningún candado propio en {1}.',
  'a review is': 'hay una revisión',
  'acknowledged it': 'lo dio por visto',
  'at {1} UTC': 'a las {1} UTC',
  'did the work': 'hizo el trabajo',
  'lock removed': 'candado quitado',
  'not enough readings': 'lecturas insuficientes',
  'somebody else': 'otra persona',
  '{1} is not restored: {2} ({3}).': '{1} no se restablece: {2} ({3}).',
  '{1} is not the setting of this row.': '{1} no es el ajuste de esta fila.',
  '{1} reviews are': 'hay {1} revisiones',
  '{1} would have no lock on {2}.': '{1} no tendría ningún candado en {2}.',
  '{1}, gauge reads': '{1}, el manómetro marca',
  '{1}: vent cracked and watched twice': '{1}: venteo entreabierto y observado dos veces',
} as const satisfies Catalogue;
