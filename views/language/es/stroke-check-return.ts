import type { Catalogue } from '../patterns.ts';

/** The stroke check, card by card: air away, back to service. */
export const strokeCheckReturn = {
  'Air that is let off leaves in a jet, and the stem may move as it goes.':
    'El aire que se suelta sale en chorro, y el vástago puede moverse al irse.',
  'It can hurt eyes and ears, and crush a finger in the yoke.':
    'Puede dañar ojos y oídos, y aplastar un dedo en el yugo.',
  'Eye protection on, face beside the jet; let it off slowly, hands outside the yoke.':
    'Protección de ojos puesta, la cara al lado del chorro; suéltelo despacio, las manos fuera del yugo.',
  'The flow changes as the bypass shuts, and stops where the valve does not take it.':
    'El caudal cambia al cerrar el bypass, y se detiene donde la válvula no lo toma.',
  'The valve moves as the loop takes it.': 'La válvula se mueve cuando el lazo la toma.',
  'Hands and tools out of the yoke before it is given.':
    'Manos y herramientas fuera del yugo antes de entregarla.',
  'A bellows twists off with its stem, and a pin shears: neither shows until it leaks or lets go.':
    'Un fuelle se arranca al girar con su vástago y un pasador se corta: nada de eso se ve hasta que fuga o se suelta.',
  'A block valve that passes a little shows it only with time.':
    'Una válvula de bloqueo que deja pasar un poco solo lo muestra con el tiempo.',
  'A loop that is left in manual controls nothing, and nobody sees it until the process drifts.':
    'Un lazo que queda en manual no controla nada, y nadie lo ve hasta que el proceso se desvía.',
  'A stem that is held by less thread pulls out of its connector under load.':
    'Un vástago sujeto por menos rosca se sale de su acoplamiento bajo carga.',
  'Air and process come next: a loose nut or a tool left in is found now, or under pressure.':
    'Después vienen el aire y el proceso: una tuerca floja o una herramienta olvidada se encuentra ahora, o con presión.',
  'If the air changes the stem moves at once, and crushes a finger at the pointer.':
    'Si el aire cambia, el vástago se mueve al instante y aplasta un dedo en el indicador.',
  'Into a line that is off supply air blows free; into one that is on it moves the valve.':
    'Por una línea suelta el aire de alimentación sale libre; por una conectada mueve la válvula.',
  'Pipe and valve move, heat up and make noise as process comes in: nobody has a hand near them then.':
    'Al entrar el proceso, tubería y válvula se mueven, se calientan y hacen ruido: entonces nadie tiene la mano cerca.',
  'The pointer is set while air holds the spring.':
    'El indicador se ajusta mientras el aire sostiene el resorte.',
  'Whoever opens the next job on this valve reads it first.':
    'Quien abre el siguiente trabajo en esta válvula lo lee primero.',
  'A leaking joint can burn or poison.': 'Una unión que fuga puede quemar o envenenar.',
  'A regulator that does not bleed keeps air on the case. Crack the joint at the case and watch it twice.':
    'Un regulador que no purga deja aire en la caja. Entreabra la unión en la caja y obsérvela dos veces.',
  'Adjuster height, as left': 'Altura del ajustador, como se dejó',
  'After the locks are off, before anything is opened.':
    'Después de quitar los candados, antes de abrir nada.',
  'Before the process goes back': 'Antes de que vuelva el proceso',
  'Before the process goes on coming back': 'Antes de que el proceso siga volviendo',
  'Before the valve leaves the bench': 'Antes de que la válvula deje el banco',
  'Bleed the regulator to zero. Locks stay on.': 'Purgue el regulador a cero. Los candados quedan puestos.',
  'Bleed the test air to zero and read it': 'Purgar a cero el aire de prueba y leerlo',
  'Both block valves open, joints tight': 'Ambas válvulas de bloqueo abiertas, uniones estancas',
  'Bypass shut, process value held': 'Bypass cerrado, valor de proceso mantenido',
  'Case port, first look': 'Puerto de la caja, primera mirada',
  'Case port, second look': 'Puerto de la caja, segunda mirada',
  'Case, bonnet and gland shut, every bolt in and tight':
    'Caja, bonete y prensaestopas cerrados, cada perno puesto y apretado',
  'Check the valve before it goes back': 'Comprobar la válvula antes de devolverla',
  'Connect the controller line again': 'Conectar otra vez la línea del controlador',
  'Connect the controller line to the case.': 'Conecte la línea del controlador a la caja.',
  'Disconnect the test air.': 'Desconecte el aire de prueba.',
  'Drains first: shut and capped. Then the locks off {outletPoint} and {inletPoint}.':
    'Primero los drenajes: cerrados y tapados. Después los candados de {outletPoint} e {inletPoint}.',
  'Drains shut and capped': 'Drenajes cerrados y tapados',
  'Every case bolt in and tight, the controller line back on, people clear of yoke and body.':
    'Cada perno de la caja puesto y apretado, la línea del controlador puesta otra vez, personas apartadas de yugo y cuerpo.',
  'Every case bolt in and tight, the controller line back on, the block valves still locked, people clear.':
    'Cada perno de la caja puesto y apretado, la línea del controlador puesta otra vez, las válvulas de bloqueo todavía con candado, personas apartadas.',
  'Exposed stem thread, as left': 'Rosca vista del vástago, como se dejó',
  'Gauge of the second feed': 'Manómetro de la segunda alimentación',
  'Go on from the locks of the block valves': 'Seguir desde los candados de las válvulas de bloqueo',
  'Go on: look at the controller line': 'Seguir: mirar la línea del controlador',
  'Go on: read the air at zero': 'Seguir: leer el aire a cero',
  'Isolate again for more work': 'Aislar otra vez para más trabajo',
  'It is off and capped': 'Está quitada y tapada',
  'It says which cards are left before supply and process come back.':
    'Dice qué tarjetas quedan antes de que vuelvan suministro y proceso.',
  'It was never taken off': 'Nunca se quitó',
  'Leave the block valves locked. The air is on or may be: stay out of the yoke.':
    'Deje con candado las válvulas de bloqueo. Hay aire o puede haberlo: quédese fuera del yugo.',
  'Line on, joint tight': 'Línea puesta, unión apretada',
  'Lock nuts and connector tight': 'Contratuercas y conector apretados',
  'Look again and have it signed': 'Mirar otra vez y hacerlo firmar',
  'Look at the case before the air comes back': 'Mirar la caja antes de que vuelva el aire',
  'Look at the controller line': 'Mirar la línea del controlador',
  'Look at the valve again before it is signed again':
    'Mirar otra vez la válvula antes de que se firme otra vez',
  'My locks and tags are off, the block valves still shut':
    'Mis candados y etiquetas están quitados, las válvulas de bloqueo todavía cerradas',
  'No air on the case, every case bolt in and tight, and what was found and left is in the record.':
    'Sin aire en la caja, cada perno de la caja puesto y apretado, y lo encontrado y lo dejado está en el registro.',
  'No test air is connected': 'No hay aire de prueba conectado',
  'Nothing is under test air. Step back from the valve.':
    'Nada está bajo aire de prueba. Apártese de la válvula.',
  'One reading alive, one at zero: at most {signalSafeLimit} with the gauge counted in.':
    'Una lectura viva, otra a cero: como mucho {signalSafeLimit}, contando el manómetro.',
  'Open slowly, stand aside, look at every joint.': 'Abra despacio, póngase a un lado, mire cada unión.',
  'Open the block valves': 'Abrir las válvulas de bloqueo',
  'Outlet {outletPoint}, then inlet {inletPoint}, slowly; the bypass stays as it is.':
    'Salida {outletPoint}, después entrada {inletPoint}, despacio; el bypass queda como está.',
  'Process pressure returns to the body and its joints.':
    'La presión de proceso vuelve al cuerpo y a sus uniones.',
  'Put it right, then go on from the supply': 'Corregirlo, y seguir desde el suministro',
  'Rings in the box, where the points are, what to watch':
    'Anillos en la caja de empaquetadura, dónde están los puntos, qué vigilar',
  'Show that no air is on the case': 'Demostrar que no hay aire en la caja',
  'Shut the bypass {bypassPoint} slowly': 'Cerrar despacio el bypass {bypassPoint}',
  'Slowly, as the first.': 'Despacio, como la primera.',
  'Soaped joints are tight': 'Las uniones enjabonadas son estancas',
  'Somebody who did none of this work reads the record as left, and signs it or sends it back.':
    'Alguien que no hizo nada de este trabajo lee el registro como se dejó, y lo firma o lo devuelve.',
  'Somebody who did none of this work reads the valve as left, and signs it or sends it back.':
    'Alguien que no hizo nada de este trabajo lee la válvula como se dejó, y la firma o la devuelve.',
  'Stopped before anything was changed': 'Parado antes de cambiar nada',
  'Stopped on the way back: hands off the stem': 'Parado en el camino de vuelta: manos fuera del vástago',
  'Stopped while the process comes back': 'Parado mientras vuelve el proceso',
  'Stopped: locks stay on': 'Parado: los candados quedan puestos',
  'Stopped: nothing more is opened without a signature': 'Parado: no se abre nada más sin firma',
  'Stopped: the process stays locked out': 'Parado: el proceso sigue bloqueado fuera',
  'Supply gauge': 'Manómetro de suministro',
  'Take off what was fitted for it: gauge, dial indicator.':
    'Retire lo que se montó para ello: manómetro, comparador.',
  'Take the caps off.': 'Quite los tapones.',
  'Take the test air off the case': 'Quitar el aire de prueba de la caja',
  'Take your lock off the second feed {secondSupplyPoint} and open it':
    'Quitar su candado de la segunda alimentación {secondSupplyPoint} y abrirla',
  'Take your lock off the supply cock {supplyPoint} and open it':
    'Quitar su candado de la llave de suministro {supplyPoint} y abrirla',
  'Take your locks off the block valves; open nothing yet':
    'Quitar sus candados de las válvulas de bloqueo; no abrir nada todavía',
  'Tell the operator and everybody near that process comes back':
    'Avisar al operador y a todos los que están cerca de que vuelve el proceso',
  'The body may be live. Leave every joint alone; tell the operator.':
    'El cuerpo puede estar vivo. No toque ninguna unión; avise al operador.',
  'The body may be live. Leave every joint and every block valve alone; tell the operator.':
    'El cuerpo puede estar vivo. No toque ninguna unión ni válvula de bloqueo; avise al operador.',
  'The operator has the loop back and says that it controls':
    'El operador tiene otra vez el lazo y dice que controla',
  'The operator takes the flow on {tag} and holds the process value.':
    'El operador toma el caudal en {tag} y mantiene el valor de proceso.',
  'The port, watched twice': 'El puerto, observado dos veces',
  'The signature for the return has run out. Somebody who did none of this work signs, or sends it back.':
    'La firma para la vuelta ha caducado. Alguien que no hizo nada de este trabajo firma, o lo devuelve.',
  'The signature has run out: have it signed again': 'La firma ha caducado: hacerla firmar otra vez',
  'The valve is back': 'La válvula está de vuelta',
  'Tighten the joint.': 'Apriete la unión.',
  'Told before the air came back, by role': 'Avisado antes de que volviera el aire, por función',
  'Told, by role': 'Avisado, por función',
  'Tools are out and people are clear': 'Herramientas fuera y personas apartadas',
  'Tools out of the yoke, people clear': 'Herramientas fuera del yugo, personas apartadas',
  'Travel indicator stands right': 'El indicador de carrera está bien puesto',
  'Write down what the next person wants to know': 'Escribir lo que la próxima persona quiere saber',
} as const satisfies Catalogue;
