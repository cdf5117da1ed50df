import type { Catalogue } from '../patterns.ts';

/** What the screen of a job says of lines, holds, energies and strokes. */
export const jobWords = {
  ', bypass recorded': ', bypass registrado',
  ', friction {1}': ', fricción {1}',
  ', {1} absent': ', {1} ausentes',
  ', {1} with another check first': ', {1} con otra comprobación antes',
  ': {1} would have to stand otherwise': ': {1} tendría que estar de otro modo',
  '; the way there is counted in': '; contado el camino hasta allí',
  'A flapper over its nozzle, twice. Square: the light goes out all round at once. Not square: light stays on one side.':
    'Una paleta sobre su boquilla, dos veces. A escuadra: la luz desaparece por todo el borde a la vez. Fuera de escuadra: queda luz en un lado.',
  'A relay in section. Supply air passes the restriction on its way to the nozzle; the clean-out plunger stands in line with the restriction, its wire just above the hole. The flapper lies over the nozzle. The gauge on the output of the relay is the proof.':
    'Un relé en sección. El aire de suministro pasa por la restricción camino de la boquilla; el émbolo de limpieza está en línea con la restricción, su alambre justo encima del orificio. La paleta está sobre la boquilla. El manómetro en la salida del relé es la prueba.',
  'A supervisor signs this.': 'Esto lo firma un supervisor.',
  'Adjuster backed off, it turns freely by hand': 'Ajustador aflojado, gira libre con la mano',
  'Air above its limit': 'Aire por encima de su límite',
  'Another job was opened at this moment.': 'En este momento se abrió otro trabajo.',
  'Another line of this job was written by {1}': 'Otra línea de este trabajo la escribió {1}',
  'Answer the card above.': 'Responda a la tarjeta de arriba.',
  'Answer the open card of that job again.': 'Responda otra vez a la tarjeta abierta de ese trabajo.',
  'Answer the open card.': 'Responda a la tarjeta abierta.',
  'Apart: at most {1} %.': 'Separación: como mucho {1} %.',
  'As left: {1} % off at most, limit {2}.': 'Como se dejó: {1} % de desviación como mucho, límite {2}.',
  'At most 400 letters.': '400 letras como máximo.',
  'Both stand as they were; nothing was opened.': 'Ambos siguen como estaban; no se abrió nada.',
  'Cannot be told apart from outside any more: {1}. {2}': 'Desde fuera ya no se pueden distinguir: {1}. {2}',
  'Case port open to the air': 'Puerto de la caja abierto al aire',
  'Checks, the best for its minutes first': 'Comprobaciones, primero la mejor por sus minutos',
  'Choose a job on the shift list.': 'Elija un trabajo en la lista del turno.',
  'Choose a procedure that fits the valve.': 'Elija un procedimiento que convenga a la válvula.',
  'Choose another valve, or save its sheet anew first.':
    'Elija otra válvula, o guarde antes de nuevo su ficha.',
  'Choose one that the valve offers.': 'Elija uno que ofrezca la válvula.',
  'Cock {1} shut, vented': 'Llave {1} cerrada, venteada',
  'Do this check': 'Hacer esta comprobación',
  'Due today or late': 'Vence hoy o está atrasado',
  'Due within the next seven days': 'Vence en los próximos siete días',
  'Fit the gauge': 'Montar el manómetro',
  'Give the valve back in the job before, then open this procedure from its start.':
    'Devuelva la válvula en el trabajo anterior y abra después este procedimiento desde su comienzo.',
  'Give the valve back, and look on in service': 'Devolver la válvula, y seguir mirando en servicio',
  'Go on from its own card.': 'Siga desde su propia tarjeta.',
  'Go on while it is looked at; the job does not close before':
    'Seguir mientras se mira; el trabajo no se cierra antes',
  'Go on with that one, or close it first.': 'Siga con ese, o ciérrelo primero.',
  'Go on without the witness, who was told and may come until {1} UTC':
    'Seguir sin el testigo, que fue avisado y puede venir hasta las {1} UTC',
  'Handed over to {1}, their locks on': 'Entregado a {1}, con sus candados puestos',
  'Here and now; the check that proves it comes next.':
    'Aquí y ahora; después viene la comprobación que lo demuestra.',
  'How many those are in all': 'Cuántos son en total',
  'Inside the limits of the sheet, with the gauge counted in.':
    'Dentro de los límites de la ficha, contando el manómetro.',
  'Isolate the valve': 'Aislar la válvula',
  'It does not repeat: nothing else can be trusted. Tight packing is the first thing to look at.':
    'No se repite: de nada más se puede uno fiar. Lo primero que hay que mirar es una empaquetadura apretada.',
  'It has to {1} up to {2}.': 'Tiene que {1} hasta {2}.',
  'It is made {1}.': 'Se hace {1}.',
  'It is not served any more.': 'Ya no se sirve.',
  'Job {1} is open on {2}.': 'El trabajo {1} está abierto en {2}.',
  'Job {1} stands on another valve or place.': 'El trabajo {1} está en otra válvula o lugar.',
  'Known from elsewhere': 'Se sabe por otra parte',
  'Let off evenly by the long bolts': 'Soltado por igual con los pernos largos',
  'Likely causes after {1} {2}': 'Causas probables después de {1} {2}',
  'Line off at the case, ends capped': 'Línea quitada de la caja, extremos tapados',
  'Line {1}, {2} {3}: {4}': 'Línea {1}, {2} {3}: {4}',
  'Locks of {1} taken off in their absence: {2}': 'Candados de {1} quitados en su ausencia: {2}',
  'Locks taken off in their owner’s absence, the job at':
    'Candados quitados en ausencia de su dueño, el trabajo en',
  'Look again': 'Mirar otra vez',
  'Loop in manual and tagged, remote writes and tests blocked':
    'Lazo en manual y etiquetado, escrituras remotas y pruebas bloqueadas',
  'Mend it now': 'Arreglarlo ahora',
  'Mended on the spot': 'Arreglado en el sitio',
  'Name it, and the valve goes back. It has its own procedure, opened after this job.':
    'Nómbrela, y la válvula vuelve. Tiene su propio procedimiento, que se abre después de este trabajo.',
  'Name it, and the valve goes back. The repair is planned.':
    'Nómbrela, y la válvula vuelve. La reparación se planifica.',
  'Name the act: {1}.': 'Nombre el acto: {1}.',
  'Name the cause, and stop checking': 'Nombrar la causa y dejar de comprobar',
  'Name the line by its number.': 'Nombre la línea por su número.',
  'Next check': 'Próxima comprobación',
  'No cause of the list explains what was read{1}. Read it again on another gauge, and look for what is not on the list.':
    'Ninguna causa de la lista explica lo leído{1}. Léalo otra vez en otro manómetro, y busque lo que no está en la lista.',
  'No job was opened.': 'No se abrió ningún trabajo.',
  'No reading under it.': 'Sin ninguna lectura debajo.',
  'No supervisor of this site may sign: one who had no hand in this work is wanted.':
    'Ningún supervisor de esta planta puede firmar: hace falta uno que no haya intervenido en este trabajo.',
  'None connected': 'Ninguno conectado',
  'None hang on this job': 'En este trabajo no hay ninguno puesto',
  'None here': 'Aquí no hay',
  'Not fit: {1}': 'No sirve: {1}',
  'Not looked at yet': 'Todavía sin mirar',
  'Not shown safe: {1}.': 'No demostrado seguro: {1}.',
  'Nothing more: it says that this was looked at and accepted': 'Nada más: dice que esto se miró y se aceptó',
  'Nothing more: it says that this was seen, and how it was found':
    'Nada más: dice que esto se vio, y cómo se encontró',
  'Nothing more: it takes the work as left': 'Nada más: acepta el trabajo como se dejó',
  'Nothing of yours was written.': 'No se escribió nada suyo.',
  'Nothing of yours was written; what you typed is still here.':
    'No se escribió nada suyo; lo que escribió sigue aquí.',
  'Nothing was counted.': 'No se contó nada.',
  'Nothing was written.': 'No se escribió nada.',
  'Of all that may be done now it leads to a cured valve in the fewest minutes.':
    'De todo lo que se puede hacer ahora, es lo que lleva a una válvula curada en menos minutos.',
  'Of all that may be done now it tells most for its minutes.':
    'De todo lo que se puede hacer ahora, es lo que más dice por sus minutos.',
  "Off: read less wanted. Boxed: outside the sheet's {1} %.":
    'Desvío: leído menos pedido. Recuadrado: fuera del {1} % de la ficha.',
  'Oldest reading {1} minutes.': 'Lectura más antigua: {1} minutos.',
  'One departure': 'Una desviación',
  'One regulator in the hand, at most': 'Un regulador en la mano, como mucho',
  'Open the job from the plan itself.': 'Abra el trabajo desde el propio plan.',
  'Outside the limits of the sheet.': 'Fuera de los límites de la ficha.',
  'Packing of this size and kind: {1}.': 'Empaquetadura de este tamaño y tipo: {1}.',
  'Passed without its witness': 'Se pasó sin su testigo',
  'Plan {1} is other work than this.': 'El plan {1} es otro trabajo que este.',
  'Prove the repair': 'Demostrar la reparación',
  'Put the valve on its bypass': 'Pasar la válvula a su bypass',
  'READ AGAIN, DIFFERS': 'LEÍDO OTRA VEZ, DIFIERE',
  'Read again by a second person': 'Leído otra vez por una segunda persona',
  'Read again, and the two readings differ': 'Leído otra vez, y las dos lecturas difieren',
  'Recorded absent by {1} at {2}': 'Registrado ausente por {1} a las {2}',
  'Review sent back': 'Revisión devuelta',
  'Say which line you had seen last.': 'Diga qué línea había visto la última.',
  'Seated: at the contact or beyond it, so it is not judged.':
    'Asentada: en el contacto o más allá, así que no se juzga.',
  'Send it again.': 'Envíelo otra vez.',
  'Sent back for good: the valve is left as it is. Make safe and stop.':
    'Devuelto para siempre: la válvula queda como está. Deje seguro y pare.',
  'Set {1} {2}. Read the travel.': 'Ponga {1} {2}. Lea la carrera.',
  'Signal air': 'Aire de señal',
  'Signature by radio confirmed': 'Firma por radio confirmada',
  'Signature by radio denied': 'Firma por radio negada',
  'Since it came to where it stands': 'Desde que llegó a donde está',
  'Somebody else signs.': 'Firma otra persona.',
  'Stop checking: repair': 'Dejar de comprobar: reparar',
  'Test air': 'Aire de prueba',
  'The job before does not go on in this procedure.': 'El trabajo anterior no sigue en este procedimiento.',
  'The people whom it names sign this.': 'Esto lo firman las personas que nombra.',
  'The review accepts this': 'La revisión acepta esto',
  'The same, in words': 'Lo mismo, en palabras',
  'The wait is over': 'La espera ha terminado',
  'The witness signs that this was seen': 'El testigo firma que esto se vio',
  'There is no job {1}.': 'No hay ningún trabajo {1}.',
  'There is no procedure "{1}".': 'No hay ningún procedimiento "{1}".',
  'This procedure does not go on from there{1}.': 'Este procedimiento no sigue desde ahí{1}.',
  'This step was answered by {1}': 'A este paso respondió {1}',
  'To be read again by a second person first: {1}.':
    'Una segunda persona tiene que leerlo otra vez primero: {1}.',
  'Too close for this gauge: a finer one may tell.':
    'Demasiado justo para este manómetro: uno más fino puede distinguirlo.',
  'Too few readings to judge.': 'Demasiado pocas lecturas para juzgar.',
  'Valve is out of the line': 'La válvula está fuera de la línea',
  'Vented at its own port: cracked twice, no flow':
    'Venteado en su propio puerto: entreabierto dos veces, sin flujo',
  'Vented behind the relay: cracked twice, no flow':
    'Venteado detrás del relé: entreabierto dos veces, sin flujo',
  'What this packing should cost is not on the sheet.':
    'La ficha no dice cuánto debería costar esta empaquetadura.',
  'What would tell, once isolated: {1}.': 'Lo que lo diría, una vez aislada: {1}.',
  'What you type is kept in this browser until it is counted.':
    'Lo que escribe queda en este navegador hasta que cuenta.',
  'Witness point': 'Punto de presencia',
  'You acknowledged part of this work.': 'Usted dio por visto parte de este trabajo.',
} as const satisfies Catalogue;
