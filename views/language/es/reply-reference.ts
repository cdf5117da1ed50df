import type { Catalogue } from '../patterns.ts';

/** The built-in reference: terms of the trade by name, and what each of them is. */
export const replyReference = {
  'Each has its chance, and what speaks for it and against it. Above them stands the check that tells most for its minutes.':
    'Cada una tiene su probabilidad, y lo que habla a favor y en contra. Encima está la comprobación que más dice por sus minutos.',
  'None is certain until its own check has shown it.':
    'Ninguna es segura hasta que la haya mostrado su propia comprobación.',
  'The likely causes stand on this card, the likeliest first.':
    'Las causas probables están en esta tarjeta, primero la más probable.',
  'Another person sees these numbers before the work goes on.':
    'Otra persona ve estos números antes de que siga el trabajo.',
  'It belongs to “{1}”: {2}': 'Forma parte de «{1}»: {2}',
  'Line {1}, “{2}”, says: {3}.': 'La línea {1}, «{2}», dice: {3}.',
  'Nobody passes until each energy is shown safe and another person signs: what comes after it cannot be undone.':
    'Nadie pasa hasta que cada energía esté demostrada segura y firme otra persona: lo que viene detrás no se puede deshacer.',
  'One step is left after this card, if nothing gives trouble.':
    'Queda un paso después de esta tarjeta, si nada da problemas.',
  'Somebody who had no hand in the work judges its numbers.':
    'Alguien que no participó en el trabajo juzga sus números.',
  'What is written here stands in the record, and the cards after it rest on it.':
    'Lo que se escribe aquí queda en el registro, y las tarjetas siguientes se apoyan en ello.',
  'What can hurt: {1}': 'Lo que puede hacer daño: {1}',
  'A cock, block valve or breaker with a tag, where a lock is hung. Its state belongs to the site, not to one job.':
    'Una llave, válvula de bloqueo o interruptor con identificación, donde se pone un candado. Su estado es de la planta, no de un trabajo.',
  'A controller on the valve that compares stem and signal and gives the actuator the air that it needs.':
    'Un controlador en la válvula que compara vástago y señal y da al actuador el aire que necesita.',
  'A zero counts on a gauge that this job saw alive there, with its uncertainty inside the limit; otherwise the vent is cracked and watched twice.':
    'Un cero cuenta en un manómetro que este trabajo vio vivo allí, con su incertidumbre dentro del límite; si no, se entreabre el venteo y se observa dos veces.',
  'An energy is safe when its point is locked and tagged, and a reading or an observation has shown that nothing is left. The lock is taken off by whoever hung it.':
    'Una energía es segura cuando su punto está bloqueado con candado y etiquetado, y una lectura u observación ha demostrado que no queda nada. El candado lo quita quien lo puso.',
  'How far the signal can go back before the stem follows.':
    'Cuánto puede volver la señal antes de que el vástago la siga.',
  'How far the stem moves between shut and open. It is read at the stem, from the open end.':
    'Cuánto se mueve el vástago entre cerrado y abierto. Se lee en el vástago, desde el extremo abierto.',
  'How far the travel going up and the travel coming down lie apart at the same signal. Friction and lost motion make it.':
    'Cuánto se separan, con la misma señal, la carrera subiendo y la carrera bajando. La causan la fricción y el juego.',
  'How far the travel lies from what the signal asks for, in percent of the travel.':
    'Cuánto se aparta la carrera de lo que pide la señal, en por ciento de la carrera.',
  'How far the travels lie apart when the same signal is set again from the same side. What does not repeat cannot be adjusted.':
    'Cuánto se separan las carreras cuando se pone otra vez la misma señal desde el mismo lado. Lo que no se repite no se puede ajustar.',
  'How many rings of packing the sheet gives. Count the ones that come out: one left behind is the usual leak.':
    'Cuántos anillos de empaquetadura da la ficha. Cuente los que salen: uno que se queda dentro es la fuga de siempre.',
  'How much force the spring adds for each length of travel: the span of the bench set times the effective area, over the travel.':
    'Cuánta fuerza añade el resorte por cada unidad de carrera: la amplitud del ajuste de banco por el área efectiva, entre la carrera.',
  'How much may pass the shut seat in its type test.':
    'Cuánto puede pasar por el asiento cerrado en su ensayo de tipo.',
  'How much the open valve passes: the flow of water at a drop of one unit of pressure.':
    'Cuánto deja pasar la válvula abierta: el caudal de agua con una caída de una unidad de presión.',
  'How the valve behaves before anything is changed. It cannot be read later.':
    'Cómo se comporta la válvula antes de cambiar nada. Después ya no se puede leer.',
  'How the valve behaves when the work is over.':
    'Cómo se comporta la válvula cuando el trabajo ha terminado.',
  'Live is what can hurt and is not yet made safe: spring, air, process, electricity, weight, heat. It stays live until a reading or a look has shown otherwise.':
    'Vivo es lo que puede herir y aún no está hecho seguro: resorte, aire, proceso, electricidad, peso, calor. Sigue vivo hasta que una lectura o una mirada demuestre otra cosa.',
  'No torque stands on a valve sheet here: the maker’s manual gives it, and it outranks any formula. For a bolt whose load is known, or a packing gland, it can be worked out.':
    'Aquí ninguna ficha de válvula da un par de apriete: lo da el manual del fabricante, que va por delante de cualquier fórmula. Para un perno cuya carga se conoce, o un prensaestopas, se puede calcular.',
  'Nobody passes until each energy is shown safe and another person, who had no hand in the work, signs or sends back. A reply cannot sign it.':
    'Nadie pasa hasta que cada energía esté demostrada segura y otra persona, que no intervino en el trabajo, firme o devuelva. Una respuesta no puede firmarlo.',
  'Plug and seat close the flow; together with their guides they are the trim.':
    'El obturador y el asiento cierran el flujo; junto con sus guías son los internos.',
  'Stops the work and takes the way to safe. It is open on every card, and nothing can stand against it.':
    'Detiene el trabajo y toma el camino a lo seguro. Está abierto en cada tarjeta, y nada puede impedirlo.',
  'Test air from one regulator in your hand, the controller line off and capped, the pressure read twice and steady. It ends at the next change of air.':
    'Aire de prueba de un solo regulador en su mano, la línea del controlador quitada y tapada, la presión leída dos veces y estable. Termina con el siguiente cambio de aire.',
  'The air pressure that tells the valve where to stand.':
    'La presión de aire que dice a la válvula dónde ponerse.',
  'The air that feeds the valve, before any regulator or controller.':
    'El aire que alimenta la válvula, antes de cualquier regulador o controlador.',
  'The area that turns air pressure into force on the stem.':
    'El área que convierte la presión de aire en fuerza sobre el vástago.',
  'The block valve on the side that the process comes from.':
    'La válvula de bloqueo del lado de donde viene el proceso.',
  'The block valve on the side that the process goes to. Pressure may stand behind it too.':
    'La válvula de bloqueo del lado al que va el proceso. Detrás de ella también puede haber presión.',
  'The body stays hot long after the flow has stopped. Measure it before hands go near.':
    'El cuerpo sigue caliente mucho después de cesar el flujo. Mídalo antes de acercar las manos.',
  'The cock that shuts the air of this valve off. Read its label before turning it; another feed has a cock of its own.':
    'La llave que corta el aire de esta válvula. Lea su etiqueta antes de girarla; otra alimentación tiene su propia llave.',
  'The direction follows from how the plug closes, not from the air: closes moving down, the plug stem is screwed out and gets longer; closes moving up, in and shorter.':
    'El sentido lo da cómo cierra el obturador, no el aire: si cierra bajando, el vástago del obturador se desenrosca y se alarga; si cierra subiendo, se enrosca y se acorta.',
  'The extra turns of the plug stem after seat contact. They load the seat, so the contact comes earlier in the stroke and a little lift is lost. A maker’s seating instruction outranks this number.':
    'Las vueltas de más del vástago del obturador después del contacto con el asiento. Cargan el asiento, por eso el contacto llega antes en la carrera y se pierde algo de apertura. Una instrucción de asiento del fabricante va por delante de este número.',
  'The force that holds the stem against moving: half the pressure between up and down at one travel, times the effective area.':
    'La fuerza que impide moverse al vástago: la mitad de la presión entre subida y bajada a una misma carrera, por el área efectiva.',
  'The force that presses the plug on its seat at the shut end. Too little leaks, far too much damages the seat.':
    'La fuerza que aprieta el obturador contra su asiento en el extremo cerrado. Con muy poca fuga; con demasiada se daña el asiento.',
  'The job waits as it stands: locks stay on. What was shown safe is shown again before hands go in.':
    'El trabajo espera como está: los candados quedan puestos. Lo demostrado seguro se demuestra otra vez antes de meter las manos.',
  'The most air that is put on this case by hand: the case rating, or the highest signal and 5 psi, whichever is less. A blank case rating counts as 40 psi.':
    'El máximo de aire que se pone a mano en esta caja: la presión nominal de la caja, o la señal más alta y 5 psi, lo que sea menos. Una presión nominal en blanco cuenta como 40 psi.',
  'The most air that the actuator case is built for. Test air stays below it: the highest signal and 5 psi, where that is less. A blank rating counts as 40 psi.':
    'El máximo de aire para el que está hecha la caja del actuador. El aire de prueba queda por debajo: la señal más alta y 5 psi, si eso es menos. Una presión nominal en blanco cuenta como 40 psi.',
  'The pressures at which the valve starts and ends its travel in the line. Flow pushes on the plug and shifts one end; without flow the bench set alone counts.':
    'Las presiones a las que la válvula empieza y termina su carrera en la línea. El flujo empuja el obturador y desplaza un extremo; sin flujo cuenta solo el ajuste de banco.',
  'The reading lies so near its limit that this gauge cannot tell inside from outside. A finer gauge may.':
    'La lectura está tan cerca de su límite que este manómetro no distingue dentro de fuera. Uno más fino quizá sí.',
  'The rings that seal the stem. Tight packing is friction; loose packing leaks.':
    'Los anillos que sellan el vástago. Apretados de más son fricción; flojos, fuga.',
  'The screw that loads the spring. It moves both ends of the bench set by the same amount; it does not change the span. It is turned with the valve held, hands out of the yoke.':
    'El tornillo que carga el resorte. Mueve igual los dos extremos del ajuste de banco; no cambia la amplitud. Se gira con la válvula sostenida, manos fuera del yugo.',
  'The signal at half of the bench set. After seating turns it still stands for half the travel, because travel is counted from the open end.':
    'La señal a la mitad del ajuste de banco. Después de las vueltas de asiento sigue siendo media carrera, porque la carrera se cuenta desde el extremo abierto.',
  'The signal at which the plug just leaves or just touches its seat. It is felt and seen at the stem, coming from one side.':
    'La señal a la que el obturador apenas deja o apenas toca su asiento. Se nota y se ve en el vástago, llegando desde un solo lado.',
  'The specification of one valve: all numbers of the cards are worked out from it. A job stays on the sheet that it was opened with.':
    'La especificación de una válvula: de ella se calculan todos los números de las tarjetas. Un trabajo sigue con la ficha con la que se abrió.',
  'The spring stays loaded with the air gone. It is let out by its long bolts or its adjuster, never by the case.':
    'El resorte sigue cargado aunque no haya aire. Se suelta con sus pernos largos o su ajustador, nunca por la caja.',
  'The two air pressures at which the actuator starts and ends its travel with no process flow on the plug.':
    'Las dos presiones de aire a las que el actuador empieza y termina su carrera sin flujo de proceso sobre el obturador.',
  'The way round the valve that keeps the process going. It isolates nothing: it is a record, never an isolation.':
    'El camino alrededor de la válvula que mantiene el proceso en marcha. No aísla nada: es un registro, nunca un aislamiento.',
  'Thread of the plug stem in the connector. One turn moves the plug by one pitch.':
    'Rosca del vástago del obturador en el conector. Una vuelta mueve el obturador un paso de rosca.',
  'What air does to the valve. Air to open: air lifts the valve open and the spring shuts it. Air to close: the other way round.':
    'Lo que hace el aire a la válvula. Aire para abrir: el aire la abre y el resorte la cierra. Aire para cerrar: al revés.',
  'What its sheet allows. A reading too near its limit is judged too close, not inside.':
    'Lo que permite su ficha. Una lectura demasiado cerca de su límite se juzga demasiado justa, no dentro.',
  'What remains of the travel after the seating turns: the plug meets its seat before the actuator meets its stop.':
    'Lo que queda de la carrera después de las vueltas de asiento: el obturador llega a su asiento antes que el actuador a su tope.',
  'What stands at the valve. It can be behind the plug and in the body when a drain shows nothing.':
    'Lo que hay en la válvula. Puede estar detrás del obturador y en el cuerpo aunque un drenaje no muestre nada.',
  'Where the sheet says it is. Read its tag before the first tool.':
    'Donde dice la ficha. Lea su identificación antes de la primera herramienta.',
  'Where the spring drives the valve when the air is gone.':
    'Adónde lleva el resorte la válvula cuando falta el aire.',
  'breaker or fuse': 'interruptor o fusible',
  class: 'clase',
  'cock of the second air feed': 'llave de la segunda alimentación de aire',
  'friction expected': 'fricción esperada',
  'on this valve': 'en esta válvula',
  'packing should cost': 'la empaquetadura debería costar',
  pitch: 'paso de rosca',
  port: 'puerto',
  rated: 'nominal',
  '{1} is {2}.': '{1} es {2}.',
  'each end of the bench set within': 'cada extremo del ajuste de banco dentro de',
  fluid: 'fluido',
  inlet: 'entrada',
  outlet: 'salida',
  place: 'lugar',
  'repeatability at most': 'repetibilidad como mucho',
  rings: 'anillos',
  service: 'servicio',
  thread: 'rosca',
  'what it does to people': 'lo que hace a las personas',
  'air action': 'acción del aire',
  'bench set': 'ajuste de banco',
  'case rating': 'presión nominal de la caja',
  contact: 'contacto',
  'dead band': 'banda muerta',
  'effective area': 'área efectiva',
  error: 'error',
  'fail position': 'posición de fallo',
  'flow coefficient': 'coeficiente de caudal',
  friction: 'fricción',
  'hold point': 'punto de espera',
  hysteresis: 'histéresis',
  'inlet valve': 'válvula de entrada',
  'installed range': 'rango instalado',
  'isolation point': 'punto de aislamiento',
  'leakage class': 'clase de fuga',
  'lift left': 'apertura que queda',
  'locked tagged tried': 'bloqueado, etiquetado, probado',
  'mid range': 'media carrera',
  'outlet valve': 'válvula de salida',
  'packing rings': 'anillos de empaquetadura',
  parking: 'pausa',
  'process fluid': 'fluido de proceso',
  'safe limit': 'límite seguro',
  'seat load': 'carga de asiento',
  'seating turns': 'vueltas de asiento',
  'signal, high': 'señal, alta',
  'signal, low': 'señal, baja',
  'spring force': 'fuerza del resorte',
  'spring rate': 'constante del resorte',
  'supply cock': 'llave de suministro',
  'supply, high': 'suministro, alto',
  'supply, low': 'suministro, bajo',
  'test air': 'aire de prueba',
  tolerance: 'tolerancia',
  'too close': 'demasiado justo',
  torque: 'par de apriete',
  'valve sheet': 'ficha de válvula',
  'where is the valve': 'dónde está la válvula',
  'which way': 'en qué sentido',
} as const satisfies Catalogue;
