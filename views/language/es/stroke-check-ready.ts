import type { Catalogue } from '../patterns.ts';

/** The stroke check, card by card: getting ready, onto the bypass. */
export const strokeCheckReady = {
  'A loop in manual keeps still while the valve is taken over. It isolates nothing.':
    'Un lazo en manual se queda quieto mientras se toma la válvula. No aísla nada.',
  'A regulator that does not bleed holds the air up and looks like a sticking valve.':
    'Un regulador que no purga retiene el aire y parece una válvula pegada.',
  'After it': 'Después de ella',
  'Agreed with, by role': 'Acordado con, por función',
  'Air away': 'Quitar el aire',
  'An energy is not known, or its size is not': 'No se conoce una energía, o su tamaño',
  'An upset process can hurt people elsewhere.': 'Un proceso alterado puede herir a personas en otro lugar.',
  'Another regulator is on: try it': 'Hay otro regulador puesto: probarlo',
  'Ask the operator for the valve': 'Pedir la válvula al operador',
  'Before the wait': 'Antes de la espera',
  'Blocking the valve in stops the flow.': 'Bloquear la válvula por ambos lados detiene el caudal.',
  'Bring a regulator that bleeds, its gauge, a second gauge and a dial indicator.':
    'Traiga un regulador que purgue, su manómetro, un segundo manómetro y un comparador.',
  'Bring your locks and tags, soap, spanners for the lock nuts, face shield and gloves.':
    'Traiga sus candados y etiquetas, jabón, llaves para las contratuercas, careta y guantes.',
  'Bypass shut, loop as the operator wants it': 'Bypass cerrado, lazo como lo quiere el operador',
  'Cap the end, shut the regulator, then wait.': 'Tape el extremo, cierre el regulador y espere.',
  'Each pressure on a gauge that was seen alive there and reads at most the stated limit, or by a vent watched twice; the process once more after it was shut in. Another person signs over it.':
    'Cada presión en un manómetro que allí se vio vivo y que marca como mucho el límite indicado, o por un venteo observado dos veces; el proceso, otra vez después de quedar encerrado. Otra persona firma sobre ello.',
  'Found: read the list again': 'Encontrado: leer otra vez la lista',
  'From the sheet. What it does not say you find out first, and write down.':
    'Según la ficha. Lo que no dice lo averigua usted primero, y lo escribe.',
  'Get ready': 'Prepararse',
  'Get ready for {tag}': 'Prepararse para {tag}',
  'Give the valve back': 'Devolver la válvula',
  'Give the valve back to the operator': 'Devolver la válvula al operador',
  'Go on: ask the operator again': 'Seguir: preguntar otra vez al operador',
  'Have the controller tagged.': 'Haga etiquetar el controlador.',
  'Have the loop put in manual': 'Hacer poner el lazo en manual',
  'Have the operator put the loop of {tag} in manual.': 'Haga poner en manual el lazo de {tag}.',
  'Have the site permit in hand: local rules and the site lockout come first.':
    'Tenga en la mano el permiso de la planta: las reglas locales y el bloqueo de la planta van primero.',
  'How far the bypass stands open': 'Cuánto está abierto el bypass',
  'I know each of them, its size and how it is controlled': 'Conozco cada una, su tamaño y cómo se controla',
  'In manual, and tagged': 'En manual, y etiquetado',
  'Joints tightened: watch it again': 'Uniones apretadas: vigilarlo otra vez',
  'Leave the bypass where the operator wants it until it is decided.':
    'Deje el bypass donde el operador lo quiera hasta que se decida.',
  'Loop in manual, flow on the bypass or the plant state agreed; both block valves and every air feed shut, each by its own point; sides drained, air vented, kept air vented at its own vent.':
    'Lazo en manual, caudal por el bypass o estado de planta acordado; ambas válvulas de bloqueo y cada alimentación de aire cerradas, cada una en su propio punto; lados drenados, aire venteado, aire retenido venteado en su propio venteo.',
  'Missing on the sheet: {energiesMissing}. Find it on the plate, in the manual or from the operator.':
    'Falta en la ficha: {energiesMissing}. Búsquelo en la placa, en el manual o pregunte al operador.',
  'Name the operator by role': 'Nombre al operador, por función',
  Neither: 'Ninguna de las dos cosas',
  No: 'No',
  'One of them is wrong by more than both may be. Nothing is measured until it is known which.':
    'Uno de ellos se equivoca más de lo que ambos pueden. No se mide nada hasta saber cuál.',
  'Onto the bypass': 'Pasar al bypass',
  'Open it a little at a time.': 'Ábrala poco a poco.',
  'Open the bypass {bypassPoint} slowly': 'Abrir despacio el bypass {bypassPoint}',
  'Output that it stands at, with its unit': 'Salida en la que está, con su unidad',
  'Process value before, with its unit': 'Valor de proceso antes, con su unidad',
  'Process value now': 'Valor de proceso ahora',
  'Read both again': 'Leer los dos otra vez',
  'Read both gauges of the rig on one pressure': 'Leer los dos manómetros del equipo con una misma presión',
  'Read the maker’s manual for this valve: it outranks this card.':
    'Lea el manual del fabricante de esta válvula: va por delante de esta tarjeta.',
  'Read the tag of the bypass valve.': 'Lea la etiqueta de identificación de la válvula de bypass.',
  'Read what can hurt on {tag}, before anything is shut':
    'Leer lo que puede herir en {tag}, antes de cerrar nada',
  'Read whether the dead end held': 'Leer si el extremo ciego se mantuvo',
  'Remote writes, trips and self-tests blocked, or there are none':
    'Escrituras remotas, disparos y autopruebas bloqueados, o no hay ninguno',
  'Return to service': 'Volver a servicio',
  'Rig in your hand, connected to nothing. Set {benchSetMid}.':
    'El equipo en la mano, sin conectar a nada. Ponga {benchSetMid}.',
  'Say what will move and how long it takes. The site permit comes first.':
    'Diga qué se moverá y cuánto tarda. El permiso de la planta va primero.',
  'Second gauge': 'Segundo manómetro',
  'Set the plug': 'Ajustar el obturador',
  'Set the regulator back and watch the gauge follow it down':
    'Bajar el regulador y ver que el manómetro lo sigue',
  'Shut the bypass if it was opened, slowly, while the operator takes the flow on {tag}.':
    'Cierre el bypass si se abrió, despacio, mientras el operador toma el caudal en {tag}.',
  'Shut the rig in at its dead end and watch it': 'Encerrar el equipo con su extremo ciego y vigilarlo',
  'Signal gauge': 'Manómetro de señal',
  'Soap every joint of hose and gauge. A leaking rig looks like a leaking diaphragm.':
    'Enjabone cada unión de manguera y manómetro. Un equipo que fuga parece un diafragma que fuga.',
  'Stay on the radio with the operator all the while.': 'Siga en la radio con el operador todo el tiempo.',
  Stop: 'Parar',
  'Stop, and open the job again with other gauges': 'Parar, y abrir otra vez el trabajo con otros manómetros',
  'Stopped before anything was isolated': 'Parado antes de aislar nada',
  'Stroke check and plug adjustment': 'Comprobación de carrera y ajuste del obturador',
  'Tag on the bypass valve': 'Identificación en la válvula de bypass',
  'Take off line': 'Sacar de línea',
  'Take one that does: this one would imitate hysteresis.': 'Tome uno que purgue: este imitaría histéresis.',
  'The bypass carries the flow and the operator holds the process value':
    'El bypass lleva el caudal y el operador mantiene el valor de proceso',
  'The bypass keeps the process going. It isolates nothing.':
    'El bypass mantiene el proceso en marcha. No aísla nada.',
  'The flow changes as the bypass opens.': 'El caudal cambia al abrir el bypass.',
  'The gauge follows the regulator down to zero': 'El manómetro sigue al regulador hasta cero',
  'The line is out of service': 'La línea está fuera de servicio',
  'The operator gives the valve, and the permit is in hand':
    'El operador entrega la válvula, y el permiso está en la mano',
  'The operator holds the process value by shutting {tag} as the bypass takes the flow.':
    'El operador mantiene el valor de proceso cerrando {tag} a medida que el bypass toma el caudal.',
  'The process is set up for the valve to move and the flow to stop':
    'El proceso está preparado para que la válvula se mueva y el caudal se detenga',
  'The process is upset when a valve moves that nobody expects to move.':
    'El proceso se altera cuando se mueve una válvula que nadie espera que se mueva.',
  'The process value is not held': 'El valor de proceso no se mantiene',
  'The regulator does not bleed': 'El regulador no purga',
  'The rig leaks': 'El equipo fuga',
  'The two gauges do not agree': 'Los dos manómetros no coinciden',
  'The valve is still in the line and live. Leave it alone.':
    'La válvula sigue en la línea y viva. Déjela en paz.',
  'This line has no bypass': 'Esta línea no tiene bypass',
  'To check the stroke of a spring-and-diaphragm valve and to set its plug or its adjuster, in the line or on the bench. It opens neither case nor body.':
    'Para comprobar la carrera de una válvula de resorte y diafragma y ajustar su obturador o su tornillo de resorte, en la línea o en el banco. No abre ni la caja ni el cuerpo.',
  'Try again, slower': 'Intentarlo otra vez, más despacio',
  'Two gauges that agree are believed.': 'A dos manómetros que coinciden se les cree.',
  'Wait for the operator after each.': 'Espere al operador después de cada poco.',
  'What can move the valve by surprise: air that returns, a controller that changes its output, a positioner that calibrates itself or runs a part-stroke test.':
    'Lo que puede mover la válvula por sorpresa: aire que vuelve, un controlador que cambia su salida, un posicionador que se calibra solo o hace una prueba de carrera parcial.',
  'What is agreed': 'Qué se ha acordado',
  'What the process does meanwhile, as operations say it':
    'Qué hace el proceso mientras tanto, según operaciones',
  'What the sheet does not say, with its unit': 'Lo que no dice la ficha, con su unidad',
  'Who shuts a point hangs their own lock and tag there and writes its number; the same person takes it off. Another person takes over with a lock of their own on first. Local rules and the site lockout come first.':
    'Quien cierra un punto pone allí su propio candado y su etiqueta y escribe su número; la misma persona lo quita. Otra persona lo recibe con un candado propio puesto primero. Las reglas locales y el bloqueo de la planta van primero.',
  'Who watches the process value meanwhile, by role':
    'Quién vigila mientras tanto el valor de proceso, por función',
  'Whoever isolates knows each energy, how big it is and how it is controlled.':
    'Quien aísla conoce cada energía, su tamaño y cómo se controla.',
  'With flow the plug force would shift one end; without it the bench set alone counts.':
    'Con caudal, la fuerza en el obturador desplazaría un extremo; sin él solo cuenta el ajuste de banco.',
  'Without one the valve is only taken in a state of the plant that operations have agreed.':
    'Sin él, la válvula solo se toma en un estado de la planta acordado con operaciones.',
  Yes: 'Sí',
  '{airAction}, {failPosition} on loss of air; air moves the stem {airMoves}. Process flow would move {rangeMoved} of its range by {rangeMovedBy}; without flow the bench set alone counts.':
    '{airAction}, {failPosition} sin aire; el aire mueve el vástago hacia {airMoves}. El caudal de proceso movería {rangeMoved} de su rango en {rangeMovedBy}; sin caudal solo cuenta el ajuste de banco.',
} as const satisfies Catalogue;
