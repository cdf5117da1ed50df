import type { Catalogue } from '../patterns.ts';

/** The page of help. */
export const help = {
  'A job that is open at several screens moves at all of them. What you are typing stays where it is, and you are told who answered.':
    'Un trabajo abierto en varias pantallas avanza en todas. Lo que usted está escribiendo se queda donde está, y se le dice quién respondió.',
  'A page that says “Not done” also says what was kept and what to do next. Nothing was recorded.':
    'Una página que dice “No se hizo” dice también qué queda guardado y qué hacer después. No se registró nada.',
  'A supervisor or engineer gives you a new code at “People”.':
    'Un supervisor o ingeniero le da un código nuevo en “Personas”.',
  'At the foot of a job: readings in any order (“9 psi 50 %”), the beginning of an answer, done, back, park, stop, not sure, or a question (“what is bench set?”). It shows what it understood; nothing counts before “Count it”. It signs no hold.':
    'Al pie de un trabajo: lecturas en cualquier orden (“9 psi 50 %”), el comienzo de una respuesta, hecho, atrás, dejarlo para luego, parar, no estoy seguro, o una pregunta (“¿qué es el ajuste de banco?”). Muestra lo que entendió; nada cuenta antes de “Registrar”. No firma ningún punto de espera.',
  'Each by itself, with its working; filled from a valve sheet where you name one. Nothing is recorded.':
    'Cada uno por separado, con su desarrollo; se rellena con una ficha de válvula si usted nombra una. No se registra nada.',
  'Every page as JSON, described here': 'Cada página como JSON, descrita aquí',
  'Local codes, the site’s permit and lockout system and the maker’s manual come before anything on this screen.':
    'Las normas locales, el permiso y el sistema de bloqueo de la planta y el manual del fabricante van antes que cualquier cosa de esta pantalla.',
  'Nothing is kept until it is back. Write on paper, then send the same form again: it is never recorded twice.':
    'Nada se guarda hasta que vuelva. Escriba en papel y luego envíe otra vez el mismo formulario: nunca se registra dos veces.',
  'PIN forgotten': 'PIN olvidado',
  'Park, or make safe. Where a supervisor has named a second competent person, they may sign with the reason; some holds may be read out by radio. Both are counted.':
    'Ponga en pausa o deje seguro. Donde un supervisor nombró a una segunda persona competente, esta puede firmar con el motivo; algunos puntos de espera se pueden leer por radio. Ambas cosas se cuentan.',
  'Somebody who had no hand in the work signs it with name and PIN, at this screen or from their own list “To sign”. A page is signed once, within a quarter of an hour.':
    'Lo firma con nombre y PIN alguien que no intervino en el trabajo, en esta pantalla o desde su propia lista “Por firmar”. Una página se firma una sola vez, dentro de un cuarto de hora.',
  'The only supervisor or engineer forgot the PIN: whoever looks after the server lets them in at its own console, and everybody reads of it.':
    'El único supervisor o ingeniero olvidó el PIN: quien cuida del servidor le deja entrar desde la consola, y todos lo leen.',
  'Wait for the time that the page says, go to a screen where you have signed in before, or ask for a new code. Others can sign meanwhile.':
    'Espere el tiempo que dice la página, vaya a una pantalla donde ya haya entrado antes, o pida un código nuevo. Los demás pueden firmar mientras tanto.',
  'Where a page says so, a PIN can be read on the network. Whoever looks after the server names a certificate for it.':
    'Donde una página lo dice, un PIN se puede leer en la red. Quien cuida del servidor le da un certificado.',
  'With your name or id and your PIN. No PIN yet: with the one-time code, at “First sign-in”.':
    'Con su nombre o id y su PIN. Si todavía no tiene PIN: con el código de un solo uso, en “Primera entrada”.',
  'Works as a keyboard in the reply line: the tag of a valve or a point, the number of a lock or a gauge.':
    'Hace de teclado en la línea de respuesta: la identificación de una válvula o de un punto, el número de un candado o de un manómetro.',
  'Write them as on the gauge, with the unit: 9 psi, 12.1 mm, 12,1 mm, 50 %.':
    'Escríbalas como en el manómetro, con la unidad: 9 psi, 12,1 mm, 12.1 mm, 50 %.',
  'a hold': 'un punto de espera',
  calculations: 'cálculos',
  'for programs': 'para programas',
  'make safe': 'dejar seguro',
  'no encryption': 'sin cifrado',
  'nobody left': 'no queda nadie',
  'nobody to sign': 'nadie para firmar',
  'not done': 'no se hizo',
  'on paper': 'en papel',
  'other screens': 'otras pantallas',
  readings: 'lecturas',
  'reply line': 'línea de respuesta',
  scanner: 'escáner',
  'server away': 'servidor ausente',
  'sign in': 'entrar',
  'too many tries': 'demasiados intentos',
  '“Make safe and stop” stands under every step of a job and always works.':
    '“Dejar seguro y parar” está debajo de cada paso de un trabajo y siempre funciona.',
  '“Procedures” prints each one for a valve as a form. Entered afterwards, each card takes the time at which it was read; a wait and a signature too, and whoever signed proves it here by PIN.':
    '“Procedimientos” imprime cada uno para una válvula como formulario. Introducido después, cada tarjeta toma la hora en que se leyó; también una espera y una firma, y quien firmó lo prueba aquí con su PIN.',
} as const satisfies Catalogue;
