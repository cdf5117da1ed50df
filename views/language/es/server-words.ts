import type { Catalogue } from '../patterns.ts';

/** Banners, refusals and titles of the server. */
export const serverWords = {
  '"{1}" is no text, no number and no list of these': '"{1}" no es texto, ni número, ni lista de ellos',
  '(demo: nothing of it is true)': '(demostración: nada de ello es verdad)',
  ', and all PINs were voided': ', y se anularon todos los PIN',
  ', and more than are listed': ', y más de los que se listan',
  ', and {1} that you may not sign': ', y {1} que usted no puede firmar',
  '; a tag alone: {1}': '; solo una etiqueta: {1}',
  '; put back': '; restablecido',
  '; stays shut': '; sigue cerrado',
  'A PIN has digits only.': 'Un PIN solo tiene cifras.',
  'A page number, from 1.': 'Un número de página, desde 1.',
  'A supervisor signs by role; the safety officer audits signatures and gives none.':
    'Un supervisor firma por su función; el responsable de seguridad audita firmas y no da ninguna.',
  'A tag alone allowed for job {1}: {2}': 'Permitida solo una etiqueta para el trabajo {1}: {2}',
  'A technician, supervisor or engineer who still works here hangs it.':
    'Lo pone un técnico, supervisor o ingeniero que siga trabajando aquí.',
  'Add another supervisor or engineer first.': 'Añada primero otro supervisor o ingeniero.',
  'Another line was written while your card was open: what you wrote was meant for that card.':
    'Se escribió otra línea mientras su tarjeta estaba abierta: lo que escribió era para esa tarjeta.',
  'Another screen is called "{1}".': 'Otra pantalla se llama "{1}".',
  'Ask another supervisor or engineer.': 'Pídalo a otro supervisor o ingeniero.',
  'Ask another supervisor.': 'Pídalo a otro supervisor.',
  'Ask the {1} to do it.': 'Pídalo a {1}.',
  'At least {1} digits.': 'Al menos {1} cifras.',
  'At most 64 characters.': '64 caracteres como máximo.',
  'At most {1} characters.': '{1} caracteres como máximo.',
  'At most {1} digits.': '{1} cifras como máximo.',
  'At most {1} points at once.': '{1} puntos de una vez como máximo.',
  'By radio': 'Por radio',
  'Check the address, or start again from the first page.':
    'Compruebe la dirección, o empiece otra vez desde la primera página.',
  'Choose a reading that stands.': 'Elija una lectura que valga.',
  'Choose one of the list of procedures.': 'Elija uno de la lista de procedimientos.',
  'Choose one of: {1}.': 'Elija uno de: {1}.',
  'Choose one on the list of the practice bench.': 'Elija uno en la lista del banco de prácticas.',
  'Choose your own PIN with it first, on the page "First sign-in".':
    'Elija primero con él su propio PIN, en la página “Primera entrada”.',
  'Digits in a row are guessed first. Choose others.':
    'Las cifras seguidas se adivinan primero. Elija otras.',
  'Each takes their locks off and leaves it.': 'Cada uno quita sus candados y sale.',
  'Form for {1}': 'Formulario para {1}',
  'Give it a name that tells them apart.': 'Dele un nombre que las distinga.',
  'Go back to the list.': 'Vuelva a la lista.',
  'Go on with its open card.': 'Siga con su tarjeta abierta.',
  'Go to {1} and scan or read its label.': 'Vaya a {1} y escanee o lea su rótulo.',
  'Hand it over, or give the valve back: then they come off.':
    'Entréguelo, o devuelva la válvula: entonces se quitan.',
  'Hand the job over, or leave it.': 'Entregue el trabajo, o salga de él.',
  'Hang a lock. Where none can be had, a supervisor writes the reason on the page of the point first.':
    'Ponga un candado. Donde no se pueda, un supervisor escribe antes el motivo en la página del punto.',
  'Have one drawn.': 'Haga que se sortee uno.',
  'Hysteresis and dead band': 'Histéresis y banda muerta',
  'It holds a year, and years of birth are guessed first. Choose another.':
    'Contiene un año, y los años de nacimiento se adivinan primero. Elija otro.',
  'It holds characters that cannot be seen. Type it again.':
    'Contiene caracteres que no se ven. Escríbalo otra vez.',
  'It is a number of this site. Choose another.': 'Es un número de esta planta. Elija otro.',
  'It is no list of points with texts.': 'No es una lista de puntos con textos.',
  'It reads as a date, and dates are guessed first. Choose another.':
    'Se lee como una fecha, y las fechas se adivinan primero. Elija otro.',
  'Job {1} of the bench belongs to no exercise.': 'El trabajo {1} del banco no pertenece a ningún ejercicio.',
  'Join once it is locked.': 'Únase cuando esté bloqueado.',
  'Judged otherwise than the figures do': 'Juzgado de otro modo que las cifras',
  'Load the page again and enter it there.': 'Cargue otra vez la página e introdúzcalo allí.',
  'Load the page again and send it once.': 'Cargue otra vez la página y envíelo una sola vez.',
  'Load the page again if they need another code.': 'Cargue otra vez la página si hace falta otro código.',
  'Lock of {1} for job {2} taken off{3}': 'Candado de {1} para el trabajo {2} quitado{3}',
  'Locked now': 'Bloqueado ahora',
  'Look at the card as it stands now.': 'Mire la tarjeta como está ahora.',
  'Look at the card that is open now, then write again.':
    'Mire la tarjeta que está abierta ahora y escriba otra vez.',
  'Look at the open card.': 'Mire la tarjeta abierta.',
  'Look at who is on it.': 'Mire quién está en él.',
  'Look at who is on the job.': 'Mire quién está en el trabajo.',
  'Look in the list of people.': 'Mire en la lista de personas.',
  'Look in the list of points.': 'Mire en la lista de puntos.',
  'Look into it': 'Averiguarlo',
  'Make the work safe and stop. Tell the safety officer and whoever looks after the server: fault {1}.':
    'Deje el trabajo seguro y pare. Avise al responsable de seguridad y a quien cuida del servidor: fallo {1}.',
  'Make the work safe and stop. Write readings on paper, and tell the safety officer.':
    'Deje el trabajo seguro y pare. Escriba las lecturas en papel y avise al responsable de seguridad.',
  'Many people choose this one, and so it is guessed first. Choose another.':
    'Muchas personas eligen este, y por eso se adivina primero. Elija otro.',
  'Name a cause first, or give up on the job’s page.':
    'Nombre primero una causa, o ríndase en la página del trabajo.',
  'Name and PIN do not belong together.': 'El nombre y el PIN no van juntos.',
  'Name and PIN sign together.': 'Nombre y PIN firman juntos.',
  'Name at least two cards.': 'Nombre al menos dos tarjetas.',
  'No encryption: whoever is on this network can read PINs.':
    'Sin cifrado: quien esté en esta red puede leer los PIN.',
  'No exercise was set.': 'No se preparó ningún ejercicio.',
  'No hold is open on this job that may be signed by radio.':
    'En este trabajo no hay abierto ningún punto de espera que se pueda firmar por radio.',
  'No lock of theirs hangs for this job.': 'Ningún candado suyo está puesto para este trabajo.',
  'No, a tag is all that it takes': 'No, solo admite una etiqueta',
  'Nobody does this for themselves.': 'Nadie hace esto para sí mismo.',
  'Nobody else could then add people or give a new code.':
    'Después nadie más podría añadir personas ni dar un código nuevo.',
  'Nobody is signed in at this screen.': 'En esta pantalla no hay nadie con sesión.',
  'Nobody names themselves, and who is not named cannot be taken off.':
    'Nadie se nombra a sí mismo, y a quien no está nombrado no se le puede quitar.',
  'Nobody of that id works here.': 'Aquí no trabaja nadie con ese id.',
  'Nobody with the id {1} works here.': 'Aquí no trabaja nadie con el id {1}.',
  'Not confirmed as recorded. Nothing confirmed before is lost.':
    'No confirmado como registrado. Nada confirmado antes se ha perdido.',
  'Nothing is known of a point {1}.': 'Nada se sabe de un punto {1}.',
  'Nothing was recorded in your name.': 'No se registró nada a su nombre.',
  'Nothing was recorded. What you typed stands in the form.':
    'No se registró nada. Lo que escribió está en el formulario.',
  'Nothing was recorded: until two people have looked into it, pages can be read and nothing is written.':
    'No se registró nada: hasta que dos personas lo hayan averiguado, las páginas se leen y no se escribe nada.',
  'Nothing was signed.': 'No se firmó nada.',
  'Nothing was told.': 'No se dijo nada.',
  'One field is not right.': 'Un campo no está bien.',
  'Only an engineer or a technician of this site is named as competent to sign.':
    'Solo un ingeniero o un técnico de esta planta se nombra competente para firmar.',
  'Open the one that stands at the valve.': 'Abra el que está en la válvula.',
  'Open {1} and enter it there. A program sends the header "Origin: {2}".':
    'Abra {1} e introdúzcalo allí. Un programa envía la cabecera "Origin: {2}".',
  'Point table': 'Tabla de puntos',
  'Put it right and send it again.': 'Corríjalo y envíelo otra vez.',
  'Put the value right and send it again.': 'Corrija el valor y envíelo otra vez.',
  'Read again': 'Leer otra vez',
  'Read everything out again, with the new code.': 'Lea todo otra vez en voz alta, con el código nuevo.',
  'Read it again as it stands now, then sign.': 'Léalo otra vez como está ahora, y firme después.',
  'Read the number of your own lock.': 'Lea el número de su propio candado.',
  'Read the rule and tick it: without it nothing can be signed.':
    'Lea la regla y márquela: sin ella no se puede firmar nada.',
  'Read why': 'Leer por qué',
  'Read-only: the log is not the one that was here before. {1} Make the work safe and stop.':
    'Solo lectura: la bitácora no es la que estaba aquí antes. {1} Deje el trabajo seguro y pare.',
  'Repeated digits are guessed first. Choose others.':
    'Las cifras repetidas se adivinan primero. Elija otras.',
  'Row {1}: {2}': 'Fila {1}: {2}',
  'Say where the screen stands: "valve shop, bench 2".':
    'Diga dónde está la pantalla: "taller de válvulas, banco 2".',
  'Scan or write the number of your lock.': 'Escanee o escriba el número de su candado.',
  'Send application/x-www-form-urlencoded or application/json.':
    'Envíe application/x-www-form-urlencoded o application/json.',
  'Send less at once.': 'Envíe menos de una vez.',
  'Send only: {1}.': 'Envíe solo: {1}.',
  'Sign in, in another tab if need be, and send it again.':
    'Entre, si hace falta en otra pestaña, y envíelo otra vez.',
  'Sign in. An engineer or supervisor adds people.':
    'Entre. Las personas las añade un ingeniero o supervisor.',
  'Sign in. The page then offers you what you typed.': 'Entre. La página le ofrece después lo que escribió.',
  Signal: 'Señal',
  'Somebody is called "{1}" already.': 'Ya hay alguien que se llama "{1}".',
  'Something is wrong in the server.': 'Algo va mal en el servidor.',
  'Something that you typed was not sent, because your sign-in had ended.':
    'Algo que escribió no se envió, porque su sesión había terminado.',
  'Start again from the first page.': 'Empiece otra vez desde la primera página.',
  'Stay at this step. Tell whoever looks after the server: fault {1}.':
    'Quédese en este paso. Avise a quien cuida del servidor: fallo {1}.',
  Style: 'Estilo',
  'Take it up first, then hand it over.': 'Retómelo primero, y después entréguelo.',
  'Tell them apart, with a number for example.': 'Distíngalos, por ejemplo con un número.',
  'That is no page of this server.': 'Esa no es una página de este servidor.',
  'That is not the label of {1}.': 'Ese no es el rótulo de {1}.',
  'That is the one-time code, not a PIN.': 'Ese es el código de un solo uso, no un PIN.',
  'That is too many at once.': 'Son demasiadas de una vez.',
  'That line cannot be corrected.': 'Esa línea no se puede corregir.',
  'That name looks like one that the server gives by itself.':
    'Ese nombre parece uno de los que da el servidor por sí mismo.',
  'The PIN that the person chose with it stands.': 'El PIN que la persona eligió con él vale.',
  'The code still holds.': 'El código sigue valiendo.',
  'The code that this form gave has been used.': 'El código que dio este formulario ya se usó.',
  'The code that was read back is not the one that this screen showed.':
    'El código que se leyó de vuelta no es el que mostró esta pantalla.',
  'The content cannot be read: {1}.': 'El contenido no se puede leer: {1}.',
  'The content is larger than {1} KiB.': 'El contenido pasa de {1} KiB.',
  'The content is neither a form nor JSON.': 'El contenido no es ni formulario ni JSON.',
  'The field {1} is given more than once.': 'El campo {1} está más de una vez.',
} as const satisfies Catalogue;
