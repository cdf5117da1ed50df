import type { Catalogue } from '../patterns.ts';

/** The stroke check, card by card: off the line, up to its hold. */
export const strokeCheckIsolate = {
  'A block valve that passes fills the body again; a first zero does not show it.':
    'Una válvula de bloqueo que pasa vuelve a llenar el cuerpo; un primer cero no lo muestra.',
  'A case with a slack bolt does not hold its spring.': 'Una caja con un perno flojo no sujeta su resorte.',
  'A case with a slack bolt does not hold its spring. Bolts are tightened evenly, crosswise.':
    'Una caja con un perno flojo no sujeta su resorte. Los pernos se aprietan por igual, en cruz.',
  'A drain that is plugged, frozen or locked by liquid reads zero with pressure behind it.':
    'Un drenaje tapado, helado o bloqueado por líquido marca cero con presión detrás.',
  'A finger in the yoke can be crushed.': 'Un dedo en el yugo puede quedar aplastado.',
  'A second feed that the sheet does not have': 'Una segunda alimentación que la ficha no tiene',
  'A tank or a relay strokes the valve though every cock is locked.':
    'Un tanque o un relé mueve la válvula aunque cada llave esté bloqueada.',
  'A tube end under pressure whips.': 'El extremo de un tubo con presión da latigazos.',
  'A zero counts on a gauge that this job saw alive there, with its uncertainty inside the limit; else watch the vent twice.':
    'Un cero cuenta en un manómetro que este trabajo vio vivo allí, con su incertidumbre dentro del límite; si no, observe el venteo dos veces.',
  'Adjuster height, as found': 'Altura del ajustador, como se encontró',
  'Air is kept somewhere, or the sheet has what you did not find':
    'Hay aire retenido en alguna parte, o la ficha tiene algo que usted no encontró',
  'All shut, every bolt in and tight': 'Todo cerrado, cada perno puesto y apretado',
  'At most {processSafeLimit} still. Where a gauge cannot tell so little, crack the drain and watch it.':
    'Todavía como mucho {processSafeLimit}. Donde un manómetro no distingue tan poco, entreabra el drenaje y obsérvelo.',
  'At most {processSafeLimit} with the gauge counted in. A plug on its seat parts the two sides: each has its own drain and its own zero.':
    'Como mucho {processSafeLimit}, contando el manómetro. Un obturador en su asiento separa los dos lados: cada uno tiene su propio drenaje y su propio cero.',
  'At most {processSafeLimit} with the gauge counted in. Shut the drain afterwards: the side is read again later.':
    'Como mucho {processSafeLimit}, contando el manómetro. Cierre después el drenaje: el lado se lee otra vez más tarde.',
  'Behind a lock-up relay': 'Detrás de un relé de bloqueo de aire',
  'Bleed and read again': 'Purgar y leer otra vez',
  'Body temperature, where it may be touched': 'Temperatura del cuerpo, donde se puede tocar',
  'Booster, solenoid or positioner may be fed from elsewhere, and move the stem all the same.':
    'El amplificador, la solenoide o el posicionador pueden recibir aire de otra parte, y mover el vástago igualmente.',
  'Booster, solenoid, positioner: each tube is followed to where it comes from.':
    'Amplificador, solenoide, posicionador: cada tubo se sigue hasta su origen.',
  'Both flanges are open and clean inside': 'Ambas bridas están abiertas y limpias por dentro',
  'Breaker, lock, and who tried it dead': 'Interruptor, candado y quién lo probó sin tensión',
  'Cap the controller line.': 'Tape la línea del controlador.',
  'Case, bonnet or gland is not shut and tight':
    'La caja, el bonete o el prensaestopas no está cerrado y apretado',
  Cleared: 'Limpio',
  'Drain and read again': 'Drenar y leer otra vez',
  'Drain the inlet side and read zero': 'Drenar el lado de entrada y leer cero',
  'Drain the outlet side and read zero': 'Drenar el lado de salida y leer cero',
  'Drains shut since the outlet side was drained. The time runs while you isolate the air.':
    'Drenajes cerrados desde que se drenó el lado de salida. El tiempo corre mientras usted aísla el aire.',
  'Each one is recorded, also where there is nothing of it. What was made safe says how.':
    'Se registra cada cosa, también donde no hay nada de ella. Lo que se dejó seguro dice cómo.',
  'Each volume counts by itself, and is vented at its own vent.':
    'Cada volumen cuenta por sí mismo, y se ventea en su propio venteo.',
  'Electrical parts that this work touches': 'Partes eléctricas que toca este trabajo',
  'Every tube followed: nothing else feeds it': 'Cada tubo seguido: nada más le da aire',
  'Exposed stem thread, as found': 'Rosca vista del vástago, como se encontró',
  'Fit the signal gauge to the case.': 'Monte el manómetro de señal en la caja.',
  'Gauge, while it is alive': 'Manómetro, mientras está vivo',
  'Give the valve back as it is': 'Devolver la válvula como está',
  'Go on isolating, from the first lock': 'Seguir aislando, desde el primer candado',
  'Hands stay outside the yoke.': 'Las manos quedan fuera del yugo.',
  'Hang your lock and tag.': 'Ponga su candado y su etiqueta.',
  'Hot, toxic or fast fluid can burn, poison or blind.':
    'Un fluido caliente, tóxico o rápido puede quemar, envenenar o cegar.',
  'How it was cleared, with gas test and time': 'Cómo se limpió, con prueba de gases y hora',
  'Hung, slack taken up': 'Colgado, sin holgura',
  'Inlet drain, cracked': 'Drenaje de entrada, entreabierto',
  'Inlet drain, now': 'Drenaje de entrada, ahora',
  'It can cut or bruise.': 'Puede cortar o golpear.',
  'It counts by itself: a first feed that is shut proves nothing of this one.':
    'Cuenta por sí misma: que la primera esté cerrada no demuestra nada de esta.',
  'It flows': 'Sale flujo',
  'It may be touched': 'Se puede tocar',
  'It was none: follow the tubes again': 'No lo era: seguir otra vez los tubos',
  'Leave it and stop': 'Dejarlo y parar',
  'Let both sides stand shut in': 'Dejar encerrados los dos lados',
  'Locked off and tried dead': 'Bloqueado y probado sin tensión',
  'Look at case, bonnet and gland': 'Mirar caja, bonete y prensaestopas',
  'Look for air that is kept after the supply is shut':
    'Buscar aire que quede retenido después de cerrar el suministro',
  'Look for everything else that can hurt': 'Buscar todo lo demás que puede herir',
  'Loosen the joint at the case.': 'Afloje la unión en la caja.',
  'Loosen the joint slowly and let it bleed. At most {signalSafeLimit} left on the case.':
    'Afloje la unión despacio y deje que se purgue. Como mucho {signalSafeLimit} en la caja.',
  'Loosen until it hisses, wait, then take it off.': 'Afloje hasta que silbe, espere y quítelo después.',
  'Made safe: look again': 'Hecho seguro: mirar otra vez',
  'Make sure that nothing else feeds air to {tag}': 'Asegurarse de que nada más da aire a {tag}',
  'No flow': 'Sin flujo',
  'No pipe, no supply, no controller line; the case port is open to the air.':
    'Sin tubería, sin suministro, sin línea del controlador; el puerto de la caja está abierto al aire.',
  'No supply, no second feed and no controller line is connected':
    'No hay conectado suministro, segunda alimentación ni línea del controlador',
  'Not safe': 'No es seguro',
  'Nothing goes on by memory: have the sheet put right, then open the job again on it.':
    'Nada sigue de memoria: haga corregir la ficha y abra después otra vez el trabajo con ella.',
  'Nothing of it here': 'Aquí no hay nada de eso',
  'Number of my lock': 'Número de mi candado',
  'Number of the override': 'Número de la anulación',
  'One of them is not safe, not told how, or on the sheet':
    'Una de ellas no es segura, no dice cómo, o está en la ficha',
  'Outlet drain, cracked': 'Drenaje de salida, entreabierto',
  'Outlet drain, now': 'Drenaje de salida, ahora',
  Overridden: 'Anulada',
  'Read both drains again, on the same gauges': 'Leer otra vez ambos drenajes, en los mismos manómetros',
  'Read both gauges and the tag.': 'Lea los dos manómetros y la identificación.',
  'Read supply and signal first. Without air {tag} {failPosition}.':
    'Lea primero suministro y señal. Sin aire, {tag} {failPosition}.',
  'Read the drain gauge first, while the side is alive.':
    'Lea primero el manómetro del drenaje, mientras el lado está vivo.',
  'Read the gauge and the tag.': 'Lea el manómetro y la identificación.',
  'Read the tag and the gauge.': 'Lea la identificación y el manómetro.',
  'Record that the valve stands free on the bench': 'Registrar que la válvula está libre en el banco',
  'Residue in drains, bonnet, packing': 'Residuo en drenajes, bonete, empaquetadura',
  'Rodded where it can plug; it flowed, and the flow stopped':
    'Desatascado con varilla donde se puede tapar; salió flujo, y el flujo cesó',
  'Safety function of this valve': 'Función de seguridad de esta válvula',
  'Same gauge, now': 'El mismo manómetro, ahora',
  'Shown by': 'Demostrado por',
  'Shut and lock the cock of the second feed {secondSupplyPoint}':
    'Cerrar y bloquear con candado la llave de la segunda alimentación {secondSupplyPoint}',
  'Shut and lock the inlet block valve {inletPoint}':
    'Cerrar y bloquear con candado la válvula de bloqueo de entrada {inletPoint}',
  'Shut and lock the outlet block valve {outletPoint}':
    'Cerrar y bloquear con candado la válvula de bloqueo de salida {outletPoint}',
  'Shut and lock the supply cock {supplyPoint}':
    'Cerrar y bloquear con candado la llave de suministro {supplyPoint}',
  'Shut the block valve again, it may pass': 'Cerrar otra vez la válvula de bloqueo, puede que pase',
  'Shut the cock again, it may pass': 'Cerrar otra vez la llave, puede que pase',
  'Shut the cock.': 'Cierre la llave.',
  'Shut the valve.': 'Cierre la válvula.',
  'Signal gauge at the valve, while it is alive': 'Manómetro de señal en la válvula, mientras está vivo',
  'Spring, air and process are not the whole list.': 'Resorte, aire y proceso no son la lista entera.',
  'Stand aside, face shield down, drain to where the site says.':
    'Póngase a un lado, careta bajada, y drene adonde diga la planta.',
  'Step back from the valve. Whatever is locked stays locked.':
    'Apártese de la válvula. Lo bloqueado sigue bloqueado.',
  'Stopped: locks stay on, nothing is opened': 'Parado: los candados quedan puestos, no se abre nada',
  'Tag on the cock': 'Identificación en la llave',
  'Tag on the valve': 'Identificación en la válvula',
  'Take the controller line off the case and cap it': 'Quitar de la caja la línea del controlador y taparla',
  'Tank or booster': 'Tanque o amplificador',
  'Temperature: body, tracing, jacket': 'Temperatura: cuerpo, traceado, camisa',
  'The air on the case is not shown gone': 'No está demostrado que se haya ido el aire de la caja',
  'The case port is open, nothing hisses, the stem rests':
    'El puerto de la caja está abierto, nada silba, el vástago está en reposo',
  'The gauge that I saw alive': 'El manómetro que vi vivo',
  'The inlet side is not shown safe': 'El lado de entrada no está demostrado seguro',
  'The lock keeps it shut; the gauge seen alive makes a later zero mean something.':
    'El candado la mantiene cerrada; el manómetro visto vivo da sentido a un cero posterior.',
  'The other end of the cylinder': 'El otro extremo del cilindro',
  'The other side of the actuator, where it is fed too':
    'El otro lado del actuador, donde también recibe aire',
  'The outlet side is not shown safe': 'El lado de salida no está demostrado seguro',
  'The second feed is not shown safe': 'La segunda alimentación no está demostrada segura',
  'The sheet has one feed. What is absent is recorded by a person, not assumed.':
    'La ficha tiene una sola alimentación. Lo ausente lo registra una persona; no se supone.',
  'The sheet says: tank or booster {sheetTank}, lock-up relay {sheetLockUp}, {actuatorKind}. Nothing goes on by memory.':
    'La ficha dice: tanque o amplificador {sheetTank}, relé de bloqueo de aire {sheetLockUp}, {actuatorKind}. Nada sigue de memoria.',
  'The sheet says: {energyResidue} Part of a trip: {sheetTrip}. At most {safeTouch} may be touched. A bare yes is not enough.':
    'La ficha dice: {energyResidue} Parte de un disparo: {sheetTrip}. Se puede tocar hasta {safeTouch}. Un simple sí no basta.',
  'The stem moves as the air goes.': 'El vástago se mueve cuando se va el aire.',
  'The supply air is not shown safe': 'El aire de suministro no está demostrado seguro',
  'The valve is held so that it cannot roll': 'La válvula está sujeta para que no ruede',
  'The vent, cracked and watched twice': 'El venteo, entreabierto y observado dos veces',
  'Tightened evenly: look again': 'Apretado por igual: mirar otra vez',
  'Vent and read again': 'Ventear y leer otra vez',
  'Vent behind its own cock. At most {supplySafeLimit} with the gauge counted in.':
    'Ventee detrás de su propia llave. Como mucho {supplySafeLimit}, contando el manómetro.',
  'Vent behind the cock, at the air set. At most {supplySafeLimit} with the gauge counted in.':
    'Ventee detrás de la llave, en el filtro regulador. Como mucho {supplySafeLimit}, contando el manómetro.',
  'Vent the second feed and read zero': 'Ventear la segunda alimentación y leer cero',
  'Vent the supply line and read zero': 'Ventear la línea de suministro y leer cero',
  'Vent, first look': 'Venteo, primera mirada',
  'Vent, second look': 'Venteo, segunda mirada',
  'Vented at its own vent: cracked twice, no flow':
    'Venteado en su propio venteo: entreabierto dos veces, sin flujo',
  'Vented at its own vent: look again': 'Venteado en su propio venteo: mirar otra vez',
  'Weight that this work could let go': 'Peso que este trabajo podría soltar',
  'What is absent is recorded by a person, not assumed.': 'Lo ausente lo registra una persona; no se supone.',
  'What is left in the body comes out at the drain.': 'Lo que queda en el cuerpo sale por el drenaje.',
  'Measure what is asked below as it was found: the next person wants it.':
    'Mida lo que se pide abajo tal como se encontró: la próxima persona lo necesita.',
  'no flow': 'sin flujo',
} as const satisfies Catalogue;
