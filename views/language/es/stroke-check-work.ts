import type { Catalogue } from '../patterns.ts';

/** The stroke check, card by card: as found, setting, as left. */
export const strokeCheckWork = {
  'A bellows seal tears and a pinned stem shears. The maker sets the seat load of such a valve another way.':
    'Un sello de fuelle se rasga y un vástago con pasador se corta. El fabricante ajusta la carga de asiento de tal válvula de otro modo.',
  'A case that bursts kills.': 'Una caja que revienta mata.',
  'Adjust again': 'Ajustar otra vez',
  'Adjuster height now': 'Altura del ajustador ahora',
  'After the adjuster': 'Después del ajustador',
  'After {turnsWanted} the stem must still be held by at least its own diameter of thread (common practice).':
    'Después de {turnsWanted} el vástago debe seguir sujeto al menos por su propio diámetro de rosca (práctica común).',
  'As left is not inside its limits': 'Como se dejó no está dentro de sus límites',
  'At most {testAirLimit} may stand on this case: {testAirBecause}.':
    'En esta caja puede haber como mucho {testAirLimit}: {testAirBecause}.',
  'Before plug stem or adjuster is turned': 'Antes de girar el vástago del obturador o el ajustador',
  'Bleed the regulator to zero, hands out of the yoke': 'Purgar el regulador a cero, manos fuera del yugo',
  'Both ends of the bench set move together; its span does not.':
    'Ambos extremos del ajuste de banco se mueven juntos; su amplitud no.',
  'Check that one regulator and its gauge are on the case':
    'Comprobar que hay un regulador y su manómetro en la caja',
  'Check the joint at the case.': 'Compruebe la unión en la caja.',
  'Choose other work': 'Elegir otro trabajo',
  'Come to each signal from one side, without passing it. Read the travel when it rests.':
    'Llegue a cada señal desde un solo lado, sin pasarse. Lea la carrera cuando esté quieta.',
  'Connect it to the case.': 'Conéctelo a la caja.',
  'Connect one regulator and its gauge to the case': 'Conectar a la caja un regulador y su manómetro',
  'Dial indicator on the stem. Move the signal slowly one way until the plug leaves its seat, then back until it touches.':
    'Comparador en el vástago. Mueva la señal despacio en un sentido hasta que el obturador deje su asiento, y después de vuelta hasta que lo toque.',
  'Does not move up to the limit': 'No se mueve hasta el límite',
  'Each energy is absent, or shown safe by a reading inside its limit or by a vent without flow, tried twice.':
    'Cada energía está ausente, o demostrada segura por una lectura dentro de su límite o por un venteo sin flujo, probado dos veces.',
  'Enough thread stays in': 'Queda bastante rosca dentro',
  'Find the contact again': 'Encontrar otra vez el contacto',
  'Find the contact again: {expectedContact} is expected':
    'Encontrar otra vez el contacto: se espera {expectedContact}',
  'Find the contact with the seat, as found': 'Encontrar el contacto con el asiento, como se encontró',
  'Fingers at the pointer only; let go at the first change of the gauge.':
    'Los dedos solo en la aguja; suelte al primer cambio del manómetro.',
  'Fit the dial indicator to the stem.': 'Monte el comparador en el vástago.',
  'Found and put right from outside: try again': 'Encontrado y corregido desde fuera: intentarlo otra vez',
  'Friction parts the two; their middle is the contact.':
    'La fricción separa los dos; su punto medio es el contacto.',
  'From below each time, down to the low end between.':
    'Cada vez desde abajo, bajando entre medias hasta el extremo bajo.',
  'Go on all the same': 'Seguir a pesar de todo',
  'Go on with test air': 'Seguir con aire de prueba',
  'Have the hold signed again': 'Hacer firmar otra vez el punto de espera',
  'Hold the air and turn again': 'Sostener el aire y girar otra vez',
  'Hold the plug off its seat with {benchSetMid}':
    'Sostener el obturador separado de su asiento con {benchSetMid}',
  'Hold the valve at its open end with {openEndSignal}':
    'Sostener la válvula en su extremo abierto con {openEndSignal}',
  'Hold the valve with {benchSetMid} while the adjuster is wound':
    'Sostener la válvula con {benchSetMid} mientras se gira el ajustador',
  'How the plug closes gives the direction, not the air. The extra turns load the seat.':
    'El sentido lo da cómo cierra el obturador, no el aire. Las vueltas de más cargan el asiento.',
  'If the air changes it drives the stem through them.':
    'Si el aire cambia, empuja el vástago a través de ellas.',
  'Keep it as it is': 'Conservarlo como está',
  'Leave it as found': 'Dejarla como se encontró',
  'Leave it as found though it is not inside': 'Dejarla como se encontró aunque no está dentro',
  'Leave it for an overhaul': 'Dejarlo para una revisión general',
  'Leave it so': 'Dejarla así',
  'Leaves its seat at': 'Deja su asiento a',
  'Likely first: packing too tight or dry. Then a bent or rough stem, a slack connector, a regulator that does not bleed.':
    'Lo más probable primero: empaquetadura demasiado apretada o seca. Después un vástago doblado o rugoso, un conector flojo, un regulador que no purga.',
  'Likely: turns miscounted, a stem that slipped in its connector, another thread than the sheet says.':
    'Probable: vueltas mal contadas, un vástago que resbaló en su conector, otra rosca que la de la ficha.',
  'Lock nuts tight': 'Contratuercas apretadas',
  'Look at the thread left in the connector': 'Mirar la rosca que queda en el conector',
  'Look for the leak with soap: hose, joint, diaphragm.':
    'Busque la fuga con jabón: manguera, unión, diafragma.',
  'Look for the leak with soap: hose, joint, diaphragm. The stem is not turned on such air.':
    'Busque la fuga con jabón: manguera, unión, diafragma. Con un aire así no se gira el vástago.',
  'Look, hands off: gauge alive, tube open, handwheel in neutral, stop or block in the yoke, packing dry and tight.':
    'Mire sin poner las manos: manómetro vivo, tubo abierto, volante en neutro, tope o calce en el yugo, empaquetadura seca y apretada.',
  'Loosen the lock nuts.': 'Afloje las contratuercas.',
  'Loosen the pointer.': 'Afloje la aguja.',
  'More air is on the case than it may have.': 'En la caja hay más aire del que puede tener.',
  Moves: 'Se mueve',
  'Nobody touches the regulator. Watch the gauge; let go at the first change.':
    'Nadie toca el regulador. Vigile el manómetro; suelte al primer cambio.',
  'One source, in your hand. At most {testAirLimit} goes on this case: {testAirBecause}.':
    'Una sola fuente, en su mano. A esta caja va como mucho {testAirLimit}: {testAirBecause}.',
  'Read the cycle again': 'Leer otra vez el ciclo',
  'Read the cycle as left': 'Leer el ciclo como se dejó',
  'Read the stroke up and down, as found': 'Leer la carrera subiendo y bajando, como se encontró',
  'Read the stroke up and down, as left': 'Leer la carrera subiendo y bajando, como se dejó',
  'Set it again': 'Ponerlo otra vez',
  'Set it again, for the plug': 'Ponerlo otra vez, para el obturador',
  'Set it to full open.': 'Póngala en totalmente abierto.',
  'Set the plug on its seat': 'Ajustar el obturador en su asiento',
  'Set the regulator to zero.': 'Ponga el regulador a cero.',
  'Set the travel indicator at the open end': 'Poner el indicador de carrera en el extremo abierto',
  'Setting plug or adjuster': 'Ajustar el obturador o el ajustador',
  'Shown by the gauge, or by the joint at the case cracked and watched twice.':
    'Demostrado por el manómetro, o por la unión en la caja entreabierta y observada dos veces.',
  'Shut the regulator and vent; stay away from the case until the gauge reads zero.':
    'Cierre el regulador y ventee; no se acerque a la caja hasta que el manómetro marque cero.',
  'Signal a minute later': 'Señal un minuto después',
  'Signal gauge, before': 'Manómetro de señal, antes',
  'Signal gauge, now': 'Manómetro de señal, ahora',
  'Signal now': 'Señal ahora',
  'Spanner from outside the yoke; nobody touches the regulator.':
    'La llave de tuercas desde fuera del yugo; nadie toca el regulador.',
  'Stem and plug move while air is on.': 'El vástago y el obturador se mueven mientras hay aire.',
  'Stop: this valve wants an overhaul': 'Parar: esta válvula necesita una revisión general',
  'Stopped: no air on the case, locks stay on': 'Parado: sin aire en la caja, los candados quedan puestos',
  'Stroke to mid-range again and again, as found': 'Llevar a media carrera una y otra vez, como se encontró',
  'Stroke to mid-range again and again, as left': 'Llevar a media carrera una y otra vez, como se dejó',
  'The air is not held': 'El aire no se mantiene',
  'The air is not held, or the plug is too near its seat':
    'El aire no se mantiene, o el obturador está demasiado cerca de su asiento',
  'The case holds it. Its bench set changes only with the spring, in the overhaul.':
    'Lo sujeta la caja. Su ajuste de banco solo cambia con el resorte, en la revisión general.',
  'The connector is between your hands and the spring.': 'El conector está entre sus manos y el resorte.',
  'The contact is not where the turns should put it':
    'El contacto no está donde deberían ponerlo las vueltas',
  'The contact moves with the adjuster: find it again before the plug is set.':
    'El contacto se mueve con el ajustador: encuéntrelo otra vez antes de ajustar el obturador.',
  'The contact, as found': 'El contacto, como se encontró',
  'The cycle, as found': 'El ciclo, como se encontró',
  'The cycle, as left': 'El ciclo, como se dejó',
  'The gap between up and down is friction; the middle is the spring.':
    'La separación entre subida y bajada es la fricción; el punto medio es el resorte.',
  'The plug is set where contact or seat load is wrong; the adjuster is wound where both ends of the bench set are shifted.':
    'El obturador se ajusta donde el contacto o la carga de asiento está mal; el ajustador se gira donde ambos extremos del ajuste de banco están desplazados.',
  'The spring moves the stem as the adjuster turns.': 'El resorte mueve el vástago al girar el ajustador.',
  'The stem': 'El vástago',
  'The stem does not move': 'El vástago no se mueve',
  'The stroke does not repeat': 'La carrera no se repite',
  'The valve is not held at its open end': 'La válvula no se mantiene en su extremo abierto',
  'Then leave the regulator alone: the adjuster moves the stem by itself.':
    'Después no toque el regulador: el ajustador mueve el vástago por sí solo.',
  'Then leave the regulator alone: the air stays as it is while the stem is turned.':
    'Después no toque el regulador: el aire queda como está mientras se gira el vástago.',
  'This plug stem must not be turned': 'Este vástago del obturador no se debe girar',
  'This spring has no adjuster': 'Este resorte no tiene ajustador',
  'Tighten the lock nuts.': 'Apriete las contratuercas.',
  'Tighten the pointer.': 'Apriete la aguja.',
  'Too close for the gauge is no fault of the valve: a finer gauge may tell. What does not repeat is packing first.':
    'Demasiado justo para el manómetro no es falla de la válvula: uno más fino puede distinguirlo. Lo que no se repite es primero la empaquetadura.',
  'Too little would stay in': 'Quedaría demasiado poca dentro',
  'Tools out of the yoke, people clear and told':
    'Herramientas fuera del yugo, personas apartadas y avisadas',
  'Touches its seat at': 'Toca su asiento a',
  'Travel is counted from the open end, so that half signal stays half travel.':
    'La carrera se cuenta desde el extremo abierto, para que media señal siga siendo media carrera.',
  'Travel it stands at': 'Carrera en la que está',
  'Turn the plug stem {turnsWanted}, {turnDirection}':
    'Girar el vástago del obturador {turnsWanted}, {turnDirection}',
  'Turn the plug stem, counting.': 'Gire el vástago del obturador, contando.',
  'Turned on its seat, a plug scores it; air that changes drives the stem.':
    'Girado sobre su asiento, un obturador lo raya; un aire que cambia empuja el vástago.',
  'Turns by {turnsBecause}. Contact then comes at {expectedContact}, with {liftLeft} of lift left.':
    'Vueltas según {turnsBecause}. El contacto llega entonces a {expectedContact}, y quedan {liftLeft} de apertura.',
  'Turns made': 'Vueltas dadas',
  'Vent the case now, and read zero': 'Ventear la caja ahora, y leer cero',
  'What does not repeat cannot be adjusted.': 'Lo que no se repite no se puede ajustar.',
  'What the stroke says, as found': 'Lo que dice la carrera, como se encontró',
  'What the stroke says, as left': 'Lo que dice la carrera, como se dejó',
  'What this valve wants now': 'Lo que necesita ahora esta válvula',
  'Where the work goes on': 'Dónde sigue el trabajo',
  'Wind the spring adjuster': 'Girar el ajustador del resorte',
  'Wind the spring adjuster {adjusterTurns}: {adjusterDirection}':
    'Girar el ajustador del resorte {adjusterTurns}: {adjusterDirection}',
  'Work stops here. Each energy is shown safe by a reading. Somebody who did none of this work signs, or sends it back.':
    'Aquí se detiene el trabajo. Cada energía se demuestra segura con una lectura. Alguien que no hizo nada de este trabajo firma, o lo devuelve.',
} as const satisfies Catalogue;
