import type { Catalogue } from '../patterns.ts';

/** The stroke check, card by card: where something is not as it should be. */
export const strokeCheckOtherwise = {
  'A block valve does not open, or something leaks': 'Una válvula de bloqueo no abre, o algo fuga',
  'A drain is not shut, or a lock is not off': 'Un drenaje no está cerrado, o un candado no está quitado',
  'A drain that does not shut stays capped and is told. A lock that is not yours is taken off by its owner alone.':
    'Un drenaje que no cierra se queda tapado y se avisa. Un candado que no es suyo lo quita solo su dueño.',
  'A joint leaks, or the air does not come as it should': 'Una unión fuga, o el aire no llega como debe',
  'A joint leaks: it is isolated again for it': 'Una unión fuga: se aísla otra vez por ella',
  'A trip, a self-test or a remote write moves it under your hands. Whoever keeps the control system blocks it.':
    'Un disparo, una autoprueba o una escritura remota la mueve bajo sus manos. Lo bloquea quien lleva el sistema de control.',
  'Agreed now, permit in hand: ask again': 'Acordado ahora, permiso en la mano: preguntar otra vez',
  'Agreed now: write it down': 'Acordado ahora: escribirlo',
  'Ask when it may be had and what the plant needs for it: another hour, another state, somebody to watch.':
    'Pregunte cuándo se puede tener y qué necesita la planta para ello: otra hora, otro estado, alguien que vigile.',
  'Bleed the air off before the work goes on as another job':
    'Purgar el aire antes de que el trabajo siga como otro trabajo',
  'Block valves shut, drawn up evenly, people clear: look again':
    'Válvulas de bloqueo cerradas, apretado por igual, personas apartadas: mirar otra vez',
  'Controller line off and capped; only the signal gauge hangs on the case':
    'Línea del controlador quitada y tapada; en la caja solo está el manómetro de señal',
  'Freed, or dry now: open them': 'Suelta, o ya seca: abrirlas',
  'Friction that no setting cures is the packing first. Every lock stays where it hangs, and what was read goes along.':
    'La fricción que ningún ajuste cura es primero la empaquetadura. Cada candado queda donde está, y lo leído va con el trabajo.',
  'Friction too high: the packing': 'Fricción demasiado alta: la empaquetadura',
  'Hands and tools out of the yoke; the operator told first.':
    'Manos y herramientas fuera del yugo; el operador, avisado antes.',
  'Have the bypass open again as far as the operator wants it, the loop in manual, before anything else.':
    'Haga abrir otra vez el bypass tanto como lo quiera el operador, el lazo en manual, antes que nada.',
  'Have the bypass open again as far as the operator wants it, the loop in manual. Shut it once more, slower.':
    'Haga abrir otra vez el bypass tanto como lo quiera el operador, el lazo en manual. Ciérrelo una vez más, más despacio.',
  'Have the plant as it was agreed for the valve to be shut off':
    'Tener la planta como se acordó para que se cierre el paso a la válvula',
  'Have the process on the bypass again': 'Tener otra vez el proceso en el bypass',
  'Held again: once more, slower': 'Mantenido otra vez: una vez más, más despacio',
  'Held again: tell the operator, then once more, slower':
    'Mantenido otra vez: avisar al operador, y una vez más, más despacio',
  'In manual and tagged; remote writes, trips and self-tests blocked':
    'En manual y etiquetado; escrituras remotas, disparos y autopruebas bloqueados',
  'In manual, tagged and blocked now: look again': 'En manual, etiquetado y bloqueado ahora: mirar otra vez',
  'It cannot be blocked: give the valve back': 'No se puede bloquear: devolver la válvula',
  'It does not control: it is isolated again for that': 'No controla: se aísla otra vez por eso',
  'It goes on as the packing job': 'Sigue como trabajo de empaquetadura',
  'It stays as it is until it is known why': 'Se queda como está hasta que se sepa por qué',
  'It stays on the bypass for now': 'De momento se queda en el bypass',
  'It stays on the bypass: go on with the work': 'Se queda en el bypass: seguir con el trabajo',
  'It wants more work: isolate it again as it stands, and have it signed':
    'Necesita más trabajo: aislarla otra vez como está, y hacerlo firmar',
  'It was soap or gauge, nothing leaks: read it again': 'Era jabón o manómetro, nada fuga: leerlo otra vez',
  'Leave a joint under air alone: it is tightened with its feed shut and vented. The process is locked out still.':
    'Deje en paz una unión con aire: se aprieta con su alimentación cerrada y venteada. El proceso sigue bloqueado fuera.',
  'Leave the port of the case open.': 'Deje abierto el puerto de la caja.',
  'Leave the regulator shut. At most {signalSafeLimit} with the gauge counted in, or the joint cracked and watched twice.':
    'Deje cerrado el regulador. Como mucho {signalSafeLimit}, contando el manómetro, o la unión entreabierta y observada dos veces.',
  'Lines off, ports open, rinsed, held fast: whatever is not so is put right before anything is opened.':
    'Líneas quitadas, puertos abiertos, enjuagada, bien sujeta: lo que no esté así se corrige antes de abrir nada.',
  'No air is on it and the locks hang: nuts, connector, pointer and tools are put right now. A joint that was never closed wants more than a spanner.':
    'No tiene aire y los candados están puestos: tuercas, conector, aguja y herramientas se corrigen ahora. Una unión que nunca se cerró necesita más que una llave.',
  'Not now: give the valve back': 'Ahora no: devolver la válvula',
  'Not now: give the valve back as it stands': 'Ahora no: devolver la válvula como está',
  'Not now: it goes back so': 'Ahora no: vuelve así',
  'Nothing is opened on somebody who does not know. Whoever is in the way is waited for.':
    'No se abre nada ante alguien que no lo sabe. A quien está en medio se le espera.',
  'Only the gland weeps: it goes back so, the job on the live gland comes next':
    'Solo rezuma el prensaestopas: vuelve así, y después viene el trabajo del prensaestopas vivo',
  'Operations say in which state of the plant it may stop, and when that is. A valve without a bypass waits for it.':
    'Operaciones dice en qué estado de la planta se puede detener, y cuándo es. Una válvula sin bypass lo espera.',
  'Packing is at hand: go on as the packing job':
    'Hay empaquetadura a mano: seguir como trabajo de empaquetadura',
  'Put right: check again': 'Corregido: comprobar otra vez',
  'Put right: record it again': 'Corregido: registrarlo otra vez',
  'Shut the air off again, from the first lock, and put it right':
    'Cerrar otra vez el aire, desde el primer candado, y corregirlo',
  'Slowly, the gauge watched: at most {supplyWantedHigh}. Soap the joints that were apart.':
    'Despacio, vigilando el manómetro: como mucho {supplyWantedHigh}. Enjabone las uniones que estuvieron sueltas.',
  'Somebody is not told, or not clear': 'Alguien no está avisado, o no está apartado',
  'Something is not right yet': 'Todavía hay algo que no está bien',
  'Something is slack, or somebody is not clear': 'Algo está flojo, o alguien no está apartado',
  'Stand clear of a joint that leaks: no nut is touched with pressure on it. A gland that weeps has a careful job of its own.':
    'Apártese de una unión que fuga: no se toca ninguna tuerca con presión en ella. Para un prensaestopas que rezuma hay un trabajo cuidadoso aparte.',
  'The body may be live: no bolt is drawn up on it. Tell the operator that the block valves are to be shut, and stay clear.':
    'El cuerpo puede estar vivo: no se aprieta ningún perno en él. Diga al operador que hay que cerrar las válvulas de bloqueo, y apártese.',
  'The bypass carries the flow, the operator holds the process value':
    'El bypass lleva el caudal, el operador mantiene el valor de proceso',
  'The bypass takes the flow, a little at a time, while the operator shuts {tag}. The loop stands in manual.':
    'El bypass toma el caudal, poco a poco, mientras el operador cierra {tag}. El lazo está en manual.',
  'The loop is not in manual, or something else can still move the valve':
    'El lazo no está en manual, o todavía hay algo que puede mover la válvula',
  'The operator does not give the valve, or the permit is not in hand':
    'El operador no entrega la válvula, o el permiso no está en la mano',
  'The operator does not have the process on {tag}': 'El operador no tiene el proceso en {tag}',
  'The operator does not have the process on {tag} yet': 'El operador todavía no tiene el proceso en {tag}',
  'The packing grips: does it go on now?': 'La empaquetadura aprieta: ¿sigue ahora?',
  'The plant is not set up for the flow to stop': 'La planta no está preparada para que el caudal se detenga',
  'The process is set up for the flow to stop': 'El proceso está preparado para que el caudal se detenga',
  'The valve does not stand free on the bench': 'La válvula no está libre en el banco',
  'The valve moves to where its signal asks as the air returns.':
    'La válvula se mueve adonde pide su señal cuando vuelve el aire.',
  'Told and clear now: tell them once more': 'Avisado y apartado ahora: avisar una vez más',
  'Without a bypass it is only blocked in again in a state of the plant that operations agree to.':
    'Sin bypass solo se bloquea otra vez por ambos lados en un estado de la planta que acepten operaciones.',
  'The sheet says: {energyResidue} Part of a trip: {sheetTrip}. At most {safeTouch} may be touched. A bare yes is not enough.':
    'La ficha dice: {energyResidue} Parte de un disparo: {sheetTrip}. Se puede tocar hasta {safeTouch}. Un simple sí no basta.',
  'Measure what is asked below as it was found: the next person wants it.':
    'Mida lo que se pregunta abajo como se encontró: la próxima persona lo necesita.',
  'Take off what was fitted for it: gauge, dial indicator.':
    'Quite lo que se montó para ello: manómetro, comparador.',
} as const satisfies Catalogue;
