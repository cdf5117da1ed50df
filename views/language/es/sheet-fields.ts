import type { Catalogue } from '../patterns.ts';

/** Fields of valve sheets and of test gear, with their help. */
export const sheetFields = {
  'A handwheel that is not neutral hides the true travel.':
    'Un volante que no está en neutro oculta la carrera verdadera.',
  'A loop has its operator and its controller: it is checked in the line.':
    'Un lazo tiene su operador y su controlador: se comprueba en la línea.',
  'A piston is not stroked by air on a spring case.':
    'Un pistón no se mueve con aire en una caja de resorte.',
  'A regulator: checked on. Year, month, day: 2026-03-04.':
    'Un regulador: comprobado el. Año, mes, día: 2026-03-04.',
  'A safety function that is bridged while it is worked on.':
    'Una función de seguridad que se puentea mientras se trabaja en ella.',
  Actuator: 'Actuador',
  'Actuator and spring': 'Actuador y resorte',
  'Adjuster thread': 'Rosca del ajustador',
  'Air above the diaphragm pushes it down, air below lifts it up.':
    'El aire por encima del diafragma lo empuja hacia abajo; el de debajo lo levanta.',
  'Air action on the plate': 'Acción del aire en la placa',
  'Air moves the stem': 'El aire mueve el vástago hacia',
  'Another feed, for booster, solenoid or positioner. Blank: there is none.':
    'Otra alimentación, para amplificador, solenoide o posicionador. En blanco: no hay.',
  'As cut, with its pitch. Blank: not known, or no adjuster.':
    'Como está cortada, con su paso. En blanco: no se conoce, o no hay ajustador.',
  'As cut, with its pitch: 1/2-20 or M12x1.25. Read it off the part.':
    'Como está cortada, con su paso: 1/2-20 o M12x1.25. Léala en la pieza.',
  'As on its label, for example G-07.': 'Como en su rótulo, por ejemplo G-07.',
  'As on the plate, for example FV-214.': 'Como en la placa, por ejemplo FV-214.',
  'Balance seal diameter': 'Diámetro del sello de equilibrio',
  'Behind its own regulator. Blank: not known.': 'Detrás de su propio regulador. En blanco: no se conoce.',
  'Bench set, each end': 'Ajuste de banco, cada extremo',
  'Bench set, high end': 'Ajuste de banco, extremo alto',
  'Bench set, low end': 'Ajuste de banco, extremo bajo',
  'Blank: at most 40 psi is put on the case (common practice, no source).':
    'En blanco: a la caja se ponen como mucho 40 psi (práctica común, sin fuente).',
  'Blank: no tank, or not known.': 'En blanco: no hay tanque, o no se conoce.',
  'Blank: nothing electrical, or unplugged at the valve.':
    'En blanco: nada eléctrico, o se desenchufa en la válvula.',
  'Blank: the line has none.': 'En blanco: la línea no tiene ninguna.',
  'Blank: the line has none. A bypass is never an isolation.':
    'En blanco: la línea no tiene ninguna. Un bypass nunca es un aislamiento.',
  'Blank: the plug is not balanced.': 'En blanco: el obturador no está equilibrado.',
  'Blank: there is no second feed.': 'En blanco: no hay segunda alimentación.',
  'Blank: worked out from bench set, travel and area.':
    'En blanco: se calcula con ajuste de banco, carrera y área.',
  Breaker: 'Interruptor',
  'By the maker’s instruction. Blank: by the seat load, or two (common practice, no source).':
    'Según la instrucción del fabricante. En blanco: por la carga de asiento, o dos (práctica común, sin fuente).',
  'Bypass valve': 'Válvula de bypass',
  'Case rating': 'Presión admisible de la caja',
  Certificate: 'Certificado',
  'Cock of the second feed': 'Llave de la segunda alimentación',
  'Cv or Kv, fully open.': 'Cv o Kv, totalmente abierta.',
  'Decides which way the stem is turned for seating.':
    'Decide hacia qué lado se gira el vástago para asentar.',
  'Effective area': 'Área efectiva',
  'Error, each way': 'Error, a cada lado',
  'Flow comes from': 'El flujo entra',
  Fluid: 'Fluido',
  'Fluid can': 'El fluido puede',
  'For gas. Blank: not known.': 'Para gas. En blanco: no se conoce.',
  'Force for each length of seat edge. Makers’ tables differ by a factor of two.':
    'Fuerza por cada longitud de borde del asiento. Las tablas de los fabricantes difieren en un factor de dos.',
  'From the day after, its readings are refused.': 'Desde el día siguiente, sus lecturas se rechazan.',
  'Gauge at the inlet drain': 'Manómetro en el drenaje de entrada',
  'Gauge at the outlet drain': 'Manómetro en el drenaje de salida',
  'Gauge for the test pressure on the seat': 'Manómetro para la presión de prueba en el asiento',
  'Held by the case: it is loaded until the last case bolt is off.':
    'Sujeto por la caja: está cargado hasta que sale el último perno de la caja.',
  'Highest voltage on it, V': 'Tensión más alta en ella, V',
  'Inlet block valve': 'Válvula de bloqueo de entrada',
  'Inlet pressure': 'Presión de entrada',
  'It has a positioner: its stroke is checked with the positioner in the loop.':
    'Tiene posicionador: su carrera se comprueba con el posicionador en el lazo.',
  'It has neither positioner nor converter: its stroke is checked by test air on the case.':
    'No tiene ni posicionador ni convertidor: su carrera se comprueba con aire de prueba en la caja.',
  'It has no positioner.': 'No tiene posicionador.',
  'It has no spring to stroke against.': 'No tiene resorte contra el que moverse.',
  'It is looked over where it is going to work.': 'Se revisa allí donde va a trabajar.',
  'It must be due after {1}.': 'Debe vencer después del {1}.',
  'Its positioner takes the current itself: it is calibrated as a positioner.':
    'Su posicionador toma la corriente directamente: se calibra como posicionador.',
  'Its supply is in the line.': 'Su suministro está en la línea.',
  'Keeps air after the supply is shut.': 'Retiene aire después de cerrar el suministro.',
  'Keeps the body hot after the process is gone.': 'Mantiene caliente el cuerpo después de irse el proceso.',
  'Line is shut off by': 'La línea se cierra con',
  'Lock-up relay': 'Relé de bloqueo de aire',
  Note: 'Nota',
  Notes: 'Notas',
  'Nothing electric is on its sheet. Where a converter gives its signal, its voltage goes on the sheet first.':
    'En su ficha no figura nada eléctrico. Si su señal viene de un convertidor, su tensión se anota primero en la ficha.',
  Number: 'Número',
  'Number of the one that a lesser shut-off rests on.':
    'Número de aquella en la que se apoya un cierre menor.',
  'Of rated travel, several strokes to the same signal.':
    'De la carrera nominal, varias carreras a la misma señal.',
  'Of rated travel.': 'De la carrera nominal.',
  'Of the diaphragm at mid travel, or of the piston.': 'Del diafragma a media carrera, o del pistón.',
  'Of the seat, not the size of the pipe.': 'Del asiento, no el tamaño de la tubería.',
  'Of the whole scale, not of the reading. Blank for a regulator.':
    'De toda la escala, no de la lectura. En blanco para un regulador.',
  'Of this valve’s own part of the range where it is split.':
    'De la parte del rango propia de esta válvula, si está dividido.',
  'On loss of air it': 'Sin aire',
  'On the worse side. By the categories of published guidance (HSG253): I, II, II with care, III.':
    'En el lado peor. Según las categorías de una guía publicada (HSG253): I, II, II con cuidado, III.',
  'One piece of test gear does not fit.': 'Un instrumento de prueba no sirve.',
  'Only a regulator bleeds down. Leave it blank.': 'Solo un regulador purga al bajar. Déjelo en blanco.',
  'Outlet block valve': 'Válvula de bloqueo de salida',
  'Outlet pressure': 'Presión de salida',
  'Packing friction, each way': 'Fricción de la empaquetadura, a cada lado',
  'Part of a trip': 'Parte de un disparo',
  'Plug stem thread': 'Rosca del vástago del obturador',
  Positioner: 'Posicionador',
  'Positioner, solenoid, switches, heating. Blank: nothing electrical.':
    'Posicionador, solenoide, contactos, calefacción. En blanco: nada eléctrico.',
  'Pressure drop ratio xT': 'Relación de caída de presión xT',
  'Put right what is named there, and open the job again.':
    'Corrija lo que allí se nombra y abra otra vez el trabajo.',
  'Range with the process on, high end': 'Rango con el proceso, extremo alto',
  'Range with the process on, low end': 'Rango con el proceso, extremo bajo',
  'Readings of it are taken in this unit.': 'Sus lecturas se toman en esta unidad.',
  'Regulator that bleeds': 'Regulador que purga',
  'Regulators only: does the pressure fall when it is turned down with the line shut?':
    'Solo reguladores: ¿baja la presión cuando se gira hacia abajo con la línea cerrada?',
  'Relays in the positioner': 'Relés en el posicionador',
  Repeatability: 'Repetibilidad',
  Rings: 'Anillos',
  'Rising signal loads': 'La señal creciente carga',
  'Risk assessment': 'Evaluación de riesgos',
  'In that unit. A reading above it is refused.': 'En esa unidad. Se rechaza una lectura por encima.',
  'In that unit. A reading below it is refused.': 'En esa unidad. Se rechaza una lectura por debajo.',
  'Scale from': 'Escala desde',
  'Scale marked in': 'Escala marcada en',
} as const satisfies Catalogue;
