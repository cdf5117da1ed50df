import type { Catalogue } from '../patterns.ts';

/** Energies and how each is made safe. */
export const energies = {
  ', because of {1}': ', por {1}',
  'Air behind the lock-up relay': 'Aire detrás del relé de bloqueo de aire',
  'Air in tank or booster': 'Aire en tanque o amplificador',
  'Air on the other side of the actuator': 'Aire del otro lado del actuador',
  'Commands from outside': 'Órdenes desde fuera',
  'Controller line': 'Línea del controlador',
  Electrical: 'Eléctrica',
  'Left as it is: the job makes safe and ends': 'Queda como está: el trabajo deja seguro y termina',
  'Process, inlet side': 'Proceso, entrada',
  'Process, outlet side': 'Proceso, salida',
  'Put right first, then shown and asked for again':
    'Primero corregido, después demostrado y pedido de nuevo',
  Residue: 'Residuo',
  'Safety function': 'Función de seguridad',
  'Second air feed': 'Segunda alimentación de aire',
  'Shown or done again, then asked for again': 'Demostrado o hecho otra vez, y pedido de nuevo',
  'Supply air': 'Aire de suministro',
  Weight: 'Peso',
  'a plug on its seat keeps it when the other side is drained':
    'un obturador en su asiento la retiene cuando se drena el otro lado',
  'a reading at the body': 'una lectura en el cuerpo',
  'a trip fires, or is missing when it is needed': 'se dispara una parada, o falta cuando hace falta',
  'actuator, plug and stem drop or swing when the last fastener is out':
    'actuador, obturador y vástago caen u oscilan al quitar la última fijación',
  'air that returns, a controller that moves its output, a positioner that calibrates itself or runs a part-stroke test: each moves the valve by surprise':
    'aire que vuelve, un controlador que mueve su salida, un posicionador que se calibra solo o hace una prueba de carrera parcial: cada uno mueve la válvula por sorpresa',
  'another job relies on it': 'otro trabajo se apoya en él',
  "another person's lock": 'el candado de otra persona',
  'block valve shut and locked, side drained': 'válvula de bloqueo cerrada y con candado, lado drenado',
  'block valve shut and locked, side drained by its own drain':
    'válvula de bloqueo cerrada y con candado, lado drenado por su propio drenaje',
  'blows out at any joint that is opened': 'revienta por cualquier unión que se abra',
  'breaker off and locked, tried dead; a rule of its own for work on it':
    'interruptor abierto y con candado, probado sin tensión; una regla propia para trabajar en ello',
  'burns or freezes skin': 'quema o congela la piel',
  'cock shut and locked, line vented behind it': 'llave cerrada y con candado, línea venteada detrás',
  'drain or bleed': 'drenaje o purga',
  'drained, purged, gas tested': 'drenado, purgado, gases medidos',
  'how it was cleared, with the test and its time': 'cómo se limpió, con la prueba y su hora',
  'hung before the last fastener is loosened': 'colgado antes de aflojar la última fijación',
  'its own cock shut and locked, its own line vented':
    'su propia llave cerrada y con candado, su propia línea venteada',
  'its own vent, cracked twice without flow': 'su propio venteo, entreabierto dos veces sin flujo',
  'left until it may be touched, tracing shut off': 'se deja hasta que se puede tocar, traceado cerrado',
  'lifting gear on, slack taken up': 'medios de izado puestos, sin holgura',
  'loop in manual and tagged, remote writes and tests blocked; never an isolation by itself':
    'lazo en manual y etiquetado, escrituras remotas y pruebas bloqueadas; nunca un aislamiento por sí solo',
  'moves the stem as the controller asks': 'mueve el vástago como pide el controlador',
  'moves the stem though the first feed is shut':
    'mueve el vástago aunque la primera alimentación esté cerrada',
  'moves the stem when it comes back; a tube end whips':
    'mueve el vástago cuando vuelve; el extremo de un tubo da latigazos',
  'not competent': 'no competente',
  'number of the override': 'número de la anulación',
  'override by the site’s own permit': 'anulación con el permiso propio de la planta',
  'the whole travel': 'la carrera completa',
  'pockets in bonnet, cage, bellows and drains keep the fluid':
    'los huecos en bonete, jaula, fuelle y drenajes retienen el fluido',
  'shocks, and a spark can ignite; a solenoid moves the valve':
    'da descargas, y una chispa puede inflamar; una solenoide mueve la válvula',
  'strokes the valve after the supply is shut': 'mueve la válvula después de cerrar el suministro',
  'tag alone': 'solo etiqueta',
  'the gauge that was seen alive reads zero, or the vent shows no flow, twice':
    'el manómetro que se vio vivo marca cero, o el venteo no muestra flujo, dos veces',
  'the joint behind the relay, cracked twice without flow':
    'la unión detrás del relé, entreabierta dos veces sin flujo',
  'the operator says so, by role': 'lo dice el operador, por función',
  'the relay keeps it on the actuator by design': 'el relé lo mantiene en el actuador por diseño',
  'tried dead at the terminals': 'probado sin tensión en los bornes',
  'vented at its own vent, not only at the regulator':
    'venteado en su propio venteo, no solo en el regulador',
  'vented between relay and actuator': 'venteado entre relé y actuador',
  '{1} counts as {2}{3}; to {4} it must be {5}.': '{1} cuenta como {2}{3}; para {4} debe estar {5}.',
  '{1}; read again after the drains were shut in': '{1}; leído otra vez después de cerrar los drenajes',
} as const satisfies Catalogue;
