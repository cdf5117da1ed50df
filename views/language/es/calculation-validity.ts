import type { Catalogue } from '../patterns.ts';

/** When a calculation holds, what its inputs are, and what it refuses. */
export const calculationValidity = {
  '2 · 10⁻⁴ l/h for each kPa and each mm of seat': '2 · 10⁻⁴ l/h por cada kPa y cada mm de asiento',
  'A figure of one maker: the valve sheet chooses the table, or states a figure of its own.':
    'Una cifra de un fabricante: la ficha elige la tabla, o da una cifra propia.',
  'a list of rows': 'una lista de filas',
  'A model to compare a record with; a sticky valve does not follow it.':
    'Un modelo con el que comparar un registro; una válvula que se pega no lo sigue.',
  'a number is missing or is no number': 'falta un número o no es un número',
  'a number lies outside its range': 'un número está fuera de su rango',
  'A picture of the size only; how fast it comes out is another matter.':
    'Una idea solo del tamaño; lo rápido que sale es otra cosa.',
  'A plugged restriction lowers the back pressure, a plugged nozzle raises it to the supply.':
    'Una restricción tapada baja la contrapresión, una tobera tapada la sube hasta la alimentación.',
  'a quarter of the limit': 'un cuarto del límite',
  'A quarter of the limit.': 'Un cuarto del límite.',
  'A re-torque after the first heating is a pass of its own and is not in the list.':
    'Un reapriete después del primer calentamiento es una pasada aparte y no está en la lista.',
  'A rising signal means less': 'Una señal que sube significa menos',
  'A slow reversal test. Dead band is percent of input span, hysteresis percent of output span.':
    'Una prueba de inversión lenta. La banda muerta es porcentaje del intervalo de entrada, la histéresis, del de salida.',
  'About 12 % above the equation of IEC 60534-2-1 when choked at xT 0.72: not to be mixed with its limits.':
    'Alrededor de un 12 % por encima de la ecuación de IEC 60534-2-1 en flujo crítico con xT 0,72: no se mezcla con sus límites.',
  'above the vapour pressure: the liquid boils before the valve':
    'por encima de la presión de vapor: el líquido hierve antes de la válvula',
  'above {1}': 'por encima de {1}',
  'Absolute pressures. The critical ratio is 0.2 to 0.5 for parts, 0.528 only for an ideal nozzle.':
    'Presiones absolutas. La relación crítica es de 0,2 a 0,5 en piezas, 0,528 solo en una tobera ideal.',
  'Air or nitrogen at 50 psi or the largest rated drop, whichever is lower. The millilitres decide, not the bubbles.':
    'Aire o nitrógeno a 50 psi o a la mayor caída nominal, la que sea menor. Deciden los mililitros, no las burbujas.',
  'air stored': 'aire acumulado',
  'All figures in one unit, whichever it is.': 'Todas las cifras en una misma unidad, cualquiera que sea.',
  'any number': 'cualquier número',
  'At 20 °C; ideal gas, isentropic to the throat.': 'A 20 °C; gas ideal, isentrópico hasta la garganta.',
  'at a stop': 'en un tope',
  'at least 1 influence': 'al menos 1 influencia',
  'at least 1 row': 'al menos 1 fila',
  'at least 1 row off the seat and the stops': 'al menos 1 fila fuera del asiento y de los topes',
  'at least 1 uncertainty': 'al menos 1 incertidumbre',
  'at least 2 different times': 'al menos 2 momentos distintos',
  'at least one travel passed moving both ways': 'al menos una carrera pasada en los dos sentidos',
  'at most {1} in size': 'como mucho {1} en valor absoluto',
  'At standard gland torque; a typical figure, not a limit.':
    'Con el par normal del prensaestopas; una cifra típica, no un límite.',
  'Average curve': 'Curva promedio',
  'Below 10 000 the flow equations here do not hold, and no laminar ones are given.':
    'Por debajo de 10 000 las ecuaciones de caudal de aquí no valen, y no se dan las laminares.',
  'below {1}': 'por debajo de {1}',
  'Bench set without process. The plug is held off its seat by the test air while it is turned; a maker’s seating instruction outranks the rule.':
    'Ajuste de banco sin proceso. El aire de prueba mantiene el obturador fuera de su asiento mientras se gira; una instrucción de asentado del fabricante prevalece sobre la regla.',
  'Between the stops. The stroke must not be shorter than the rated one.':
    'Entre los topes. La carrera no debe ser menor que la nominal.',
  'Bolts on their circle': 'Pernos en su círculo',
  'Both influences rectangular; about 95 %. {1}': 'Ambas influencias rectangulares; alrededor del 95 %. {1}',
  'Both read while the stem moves. Breakout friction is larger.':
    'Ambas leídas mientras el vástago se mueve. La fricción de arranque es mayor.',
  'Both units measure the same thing. A gauge pressure stays gauge, an absolute one absolute.':
    'Las dos unidades miden lo mismo. Una presión manométrica sigue manométrica, una absoluta, absoluta.',
  'by hand': 'a mano',
  'Capacity of the test fluid at the test pressures, not the service ones.':
    'Capacidad del fluido de prueba a las presiones de prueba, no a las de servicio.',
  'Class IV-S2, GB/T 4213-92': 'Clase IV-S2, GB/T 4213-92',
  'Class VI, ANSI/FCI 70-2': 'Clase VI, ANSI/FCI 70-2',
  'Class VI, IEC 60534-4': 'Clase VI, IEC 60534-4',
  'Classes II to IV, and IV-S1 where the standard has it. {1}':
    'Clases II a IV, y IV-S1 donde la norma la tiene. {1}',
  'Compares accuracies only. {1}': 'Compara solo exactitudes. {1}',
  'Constant leak and temperature; a choked hole leaks less as the pressure falls.':
    'Fuga y temperatura constantes; un agujero en flujo crítico fuga menos cuando baja la presión.',
  'Constant pressure drop. An equal-percentage trim shuts below 1/R, which the formula does not show.':
    'Caída de presión constante. Un internal de igual porcentaje cierra por debajo de 1/R, lo que la fórmula no muestra.',
  'constant volume': 'volumen constante',
  'Counted under water. A film of soap shows where, not how much.':
    'Contadas bajo el agua. Una película de jabón muestra dónde, no cuánto.',
  'Current at 0 %': 'Corriente a 0 %',
  'Current at 100 %': 'Corriente a 100 %',
  'Current that goes in': 'Corriente que entra',
  'die-formed graphite set': 'juego de grafito conformado en matriz',
  'Each valve stands still outside its own part of the signal.':
    'Cada válvula se queda quieta fuera de su propia parte de la señal.',
  'Effective area the same over the stroke; it changes by a few percent.':
    'Área efectiva igual en toda la carrera; cambia unos pocos por ciento.',
  'equal percentage': 'igual porcentaje',
  'failed high': 'fallo alto',
  'failed low': 'fallo bajo',
  'first quarter': 'primer cuarto',
  Flow: 'Caudal',
  'Friction left out. A bench end below zero cannot be set.':
    'Sin contar la fricción. Un extremo del banco por debajo de cero no se puede ajustar.',
  'Friction left out. The plug force fades as the valve opens, so that one end stays where it is.':
    'Sin contar la fricción. La fuerza sobre el obturador se desvanece al abrir la válvula, de modo que un extremo se queda donde está.',
  'from 1 to {1} points': 'de 1 a {1} puntos',
  'from 1 to {1} rows': 'de 1 a {1} filas',
  'from 3 to {1} different inputs': 'de 3 a {1} entradas distintas',
  'from 3 to {1} samples': 'de 3 a {1} muestras',
  'From memory, not read; class V of that family comes from a chart and is not here.':
    'De memoria, no leído; la clase V de esa familia viene de una gráfica y no está aquí.',
  'From memory: do not accept a valve on it before the standard is in hand.':
    'De memoria: no acepte una válvula con ella antes de tener la norma en la mano.',
  'From the order to move until the stop is reached, air supply as in service.':
    'Desde la orden de moverse hasta llegar al tope, con la alimentación de aire como en servicio.',
  'Gas at low pressure, counted at 0 °C. No other standard has this class.':
    'Gas a baja presión, contado a 0 °C. Ninguna otra norma tiene esta clase.',
  'Gas at low pressure. Between the rows the leak goes with the diameter squared.':
    'Gas a baja presión. Entre las filas la fuga va con el diámetro al cuadrado.',
  'Gauge and indicator independent of each other.': 'Manómetro e indicador independientes entre sí.',
  'Hoses count as volume. Wait until the heat of filling is gone; read the barometer at both ends.':
    'Las mangueras cuentan como volumen. Espere hasta que se vaya el calor del llenado; lea el barómetro al principio y al final.',
  'Ideal gas, isentropic to the throat; absolute pressures.':
    'Gas ideal, isentrópico hasta la garganta; presiones absolutas.',
  'IEC, Kv, kPa, normal cubic metres at 0 °C': 'IEC, Kv, kPa, metros cúbicos normales a 0 °C',
  'IEC, Kv, kPa, standard cubic metres at 15 °C': 'IEC, Kv, kPa, metros cúbicos estándar a 15 °C',
  Influence: 'Influencia',
  Influences: 'Influencias',
  'Influences independent of each other. {1}': 'Influencias independientes entre sí. {1}',
  'ISA, Cv, psi, standard cubic feet at 60 °F': 'ISA, Cv, psi, pies cúbicos estándar a 60 °F',
  'isothermal availability': 'disponibilidad isotérmica',
  'Isothermal, while the outlet is choked; afterwards it empties more slowly.':
    'Isotérmico, mientras la salida está en flujo crítico; después se vacía más despacio.',
  'last quarter': 'último cuarto',
  'leak and decay': 'fuga y caída de presión',
  'Limits on both sides of zero; U at about 95 %. {1}':
    'Límites a ambos lados de cero; U alrededor del 95 %. {1}',
  'Linear signals with a live zero. 3-15 psi is not 20-100 kPa.':
    'Señales lineales con cero vivo. 3-15 psi no es 20-100 kPa.',
  'Linear spring. The preload stays when the air is vented: the case holds it.':
    'Resorte lineal. La precarga queda cuando se ventea el aire: la caja la sostiene.',
  'Liquid in a measuring glass, or gas over water at the state of the room.':
    'Líquido en una probeta, o gas sobre agua en el estado de la sala.',
  'Load by circumference, not by area. A negative load is reported as such.':
    'Carga por circunferencia, no por área. Una carga negativa se indica como tal.',
  'Load of one bolt, not of all.': 'Carga de un perno, no de todos.',
  'Load of one bolt, not of all. The load scatters by about 30 %; a dry factor on greased threads overloads.':
    'Carga de un perno, no de todos. La carga se dispersa alrededor del 30 %; un factor en seco sobre rosca engrasada sobrecarga.',
  'Low-alloy bolts at 50 ksi on the root area; sizes of the table only.':
    'Pernos de baja aleación a 50 ksi sobre el área del núcleo; solo tamaños de la tabla.',
  'Lower end of its part': 'Extremo inferior de su parte',
  'middle half': 'mitad central',
  'no class: this stem has no graphite figure': 'sin clase: este vástago no tiene cifra para grafito',
  'No leak. 1 K at 500 kPa absolute is 1.7 kPa.': 'Sin fuga. 1 K a 500 kPa absolutos es 1,7 kPa.',
  'No process force. {1}': 'Sin fuerza del proceso. {1}',
  'No reducers.': 'Sin reducciones.',
  'none of them': 'ninguna de ellas',
  'none that this gauge can tell': 'ninguna que este manómetro pueda distinguir',
  'Normal distribution; one limit or two. {1}': 'Distribución normal; uno o dos límites. {1}',
  'normal, 0 °C and 101.325 kPa': 'normal, 0 °C y 101,325 kPa',
  'Normal: mean and standard deviation; gamma: shape and scale. Joint probabilities, of all items. {1}':
    'Normal: media y desviación típica; gamma: forma y escala. Probabilidades conjuntas, del total de piezas. {1}',
  'not at all': 'de ningún modo',
  'Numbered clockwise from the top. Several orders are good; this is the usual one (common practice).':
    'Numerados en sentido horario desde arriba. Varios órdenes son buenos; este es el usual (práctica común).',
  'Off the seat, with the plug force at that lift. {1}':
    'Fuera del asiento, con la fuerza sobre el obturador a esa apertura. {1}',
  'on seat': 'en el asiento',
  'one U': 'una U',
  'Only what is given is judged. What was not measured is listed as unknown, never taken as good.':
    'Se juzga solo lo que se da. Lo que no se midió se lista como desconocido, nunca se toma por bueno.',
  Parts: 'Partes',
  Passes: 'Pasadas',
  'Percent of span, not of reading. {1}': 'Porcentaje del intervalo, no de la lectura. {1}',
  'Percent of span, over the whole scale. {1}': 'Porcentaje del intervalo, en toda la escala. {1}',
  'pinned stem': 'vástago con pasador',
  'Pressure at 0 %': 'Presión a 0 %',
  'Pressure at 100 %': 'Presión a 100 %',
  'Pressure class': 'Clase de presión',
  Readings: 'Lecturas',
  'Recovered by fitting the printed drops, which they reproduce to the last digit; class III is not in it.':
    'Recuperadas ajustando las caídas impresas, que reproducen hasta la última cifra; la clase III no está.',
  'restriction and nozzle': 'restricción y tobera',
  'Rings set, even stress over the height. The ratio of radial to axial stress is commonly 0.5.':
    'Anillos asentados, esfuerzo igual en toda la altura. La relación entre esfuerzo radial y axial es por lo común 0,5.',
  'Rod through the lower side. Full thrust needs the other side vented.':
    'Varilla por el lado inferior. El empuje completo pide el otro lado venteado.',
  'root sum of squares': 'raíz de la suma de cuadrados',
  'Rows worked out': 'Filas calculadas',
  Samples: 'Muestras',
  'saturated high': 'saturada por arriba',
  'saturated low': 'saturada por abajo',
  'Scale in volume at a reference state, same gas.':
    'Escala en volumen a un estado de referencia, mismo gas.',
  'Seat loads behind the allowable pressure drops of a sizing guide of 2008':
    'Cargas de asiento detrás de las caídas admisibles de una guía de dimensionamiento de 2008',
  'Seat loads of a handbook family, metal seats':
    'Cargas de asiento de una familia de manuales, asientos metálicos',
  'Short concentric reducers, pipes not narrower than the valve.':
    'Reducciones cortas y concéntricas, tuberías no más estrechas que la válvula.',
  'Single port, port area and not valve size, stem through the bonnet on the side away from the port.':
    'Un solo puerto, área del puerto y no tamaño de la válvula, vástago por el bonete en el lado opuesto al puerto.',
  'Single-start unified threads. 1-14 is UNS, not UNF: read the actual part.':
    'Roscas unificadas de una entrada. 1-14 es UNS, no UNF: lea la pieza real.',
  'spring loaded by the stroke': 'resorte cargado por la carrera',
  'spring loaded when vented': 'resorte cargado una vez venteado',
  'stand still': 'quedarse quieto',
  'standard cubic foot, 60 °F and 14.696 psi absolute': 'pie cúbico estándar, 60 °F y 14,696 psi absolutos',
  'standard, 15 °C and 101.325 kPa': 'estándar, 15 °C y 101,325 kPa',
  'Stem sizes of the table only; a typical figure, not a limit. {1}':
    'Solo tamaños de vástago de la tabla; una cifra típica, no un límite. {1}',
  'Steps in one direction, each from rest.': 'Escalones en un sentido, cada uno desde el reposo.',
  'Steps tried, one direction': 'Escalones probados, en un sentido',
  'stroke table': 'tabla de carrera',
  'Tables of different makers differ by a factor of two: the need comes from the valve sheet.':
    'Las tablas de distintos fabricantes difieren en un factor de dos: lo necesario viene de la ficha.',
  'Textbook form, incompressible, equal discharge factors; up to a third off the compressible answer.':
    'Forma de libro, incompresible, coeficientes de descarga iguales; hasta un tercio de diferencia con la respuesta compresible.',
  'the choice is not in the list': 'la opción no está en la lista',
  'the equation has no valid answer for these inputs':
    'la ecuación no tiene respuesta válida con estos datos',
  'The first sample is the start, the last the settled end. Times count from the input step and hold the dead time.':
    'La primera muestra es el principio, la última el final estabilizado. Los tiempos cuentan desde el escalón de entrada e incluyen el tiempo muerto.',
  'The forms differ by up to two and a half: name the form with the number. Hoses count as volume.':
    'Las formas difieren hasta en dos veces y media: nombre la forma con el número. Las mangueras cuentan como volumen.',
  'The line through the outermost points that neither seat nor stop holds.':
    'La recta por los puntos más externos que no retienen ni asiento ni tope.',
  'The other side at zero.': 'El otro lado a cero.',
  'The output falls as the input rises': 'La salida baja cuando la entrada sube',
  'The plug force has faded at the open end. No margin is added.':
    'La fuerza sobre el obturador se ha desvanecido en el extremo abierto. No se añade margen.',
  'The ratio is of absolute pressures. Below zero gauge it does not choke to atmosphere.':
    'La relación es de presiones absolutas. Por debajo de cero manométrico no llega a flujo crítico hacia la atmósfera.',
  'The signal is the pressure in the case, the process is off the plug. Breakout friction is larger and needs its own test.':
    'La señal es la presión en la caja, sin proceso sobre el obturador. La fricción de arranque es mayor y pide una prueba propia.',
  'The state of the current is that of a 4-20 mA device set to the usual failure levels.':
    'El estado de la corriente es el de un dispositivo de 4-20 mA con los niveles de fallo usuales.',
  'The stresses belong to one maker’s sets; the maker’s torque for the packing at hand outranks it.':
    'Los esfuerzos son de los juegos de un fabricante; el par del fabricante de la empaquetadura que se usa prevalece.',
  'there are too few points, or they do not fit together': 'hay muy pocos puntos, o no encajan entre sí',
  'thread left': 'rosca que queda',
  'Three times the step or drift of the gauge counts as seen (common practice). No wait mends a drift of temperature.':
    'Tres veces la división o la deriva del manómetro cuenta como visto (práctica común). Ninguna espera remedia una deriva de temperatura.',
  'times that rise ({1} s stands before)': 'momentos que aumentan ({1} s está antes)',
  'too little thread left': 'queda muy poca rosca',
  'Travel is counted from the open end: mid signal stays 50 %. Without friction and process.':
    'La carrera se cuenta desde el extremo abierto: la señal media sigue en 50 %. Sin fricción ni proceso.',
  'travelM or travelPercent in each row': 'travelM o travelPercent en cada fila',
  'Turbulent, single phase; absolute pressures. Reducers where all three sizes are given.':
    'Turbulento, una sola fase; presiones absolutas. Reducciones donde se dan los tres tamaños.',
  'Turns that tighten the spring count positive. Both bench ends shift alike; no lift is lost.':
    'Las vueltas que aprietan el resorte cuentan positivas. Los dos extremos del banco se desplazan igual; no se pierde apertura.',
  'two inputs contradict each other': 'dos datos se contradicen',
  'Unbalanced plug, flow under it, outlet at ambient pressure. Negative: not even without a drop.':
    'Obturador no equilibrado, flujo por debajo, salida a presión ambiente. Negativo: ni siquiera sin caída.',
  'Up and down alone give hysteresis and dead band together. Leave out rows that a seat or a stop held.':
    'Subida y bajada solas dan histéresis y banda muerta juntas. Deje fuera las filas que retuvo un asiento o un tope.',
  'Up and down alone give hysteresis and dead band together. Rows on the seat are shown, but not judged.':
    'Subida y bajada solas dan histéresis y banda muerta juntas. Las filas en el asiento se muestran, pero no se juzgan.',
  'Up and down table, in the order read': 'Tabla de subida y bajada, en el orden leído',
  'Upper end of its part': 'Extremo superior de su parte',
  'Water at the service drop. 5 % above the US form: use the constant of the standard that was agreed.':
    'Agua a la caída de servicio. Un 5 % por encima de la forma US: use la constante de la norma acordada.',
  'Water of 10 to 52 °C at the service drop, at least 100 psi, not above the rating of the body.':
    'Agua de 10 a 52 °C a la caída de servicio, al menos 100 psi, no por encima de la presión nominal del cuerpo.',
  'Whether the lift lost is bearable is for the seating turns themselves to say.':
    'Si la apertura perdida es aceptable lo dicen las propias vueltas de asiento.',
  'Which way round tightens is read off the actuator.': 'Hacia qué lado aprieta se lee en el actuador.',
  'whole scale': 'toda la escala',
  'Wider in the last tenth of the scale. {1}': 'Más ancho en el último décimo de la escala. {1}',
  'Written for vessels and piping: an indicator of hazard for an actuator, from which no distance is derived.':
    'Escrito para recipientes y tuberías: para un actuador es un indicador de peligro, del que no se saca ninguna distancia.',
  '{1} A negative seat load means that the plug is not held.':
    '{1} Una carga de asiento negativa significa que el obturador no queda apretado.',
  '{1} At 350 kPa most valves choke, so that the limit hangs on the xT of the open valve.':
    '{1} A 350 kPa la mayoría de las válvulas llega a flujo crítico, de modo que el límite depende del xT de la válvula abierta.',
  '{1} Beyond the range the percent goes on; clamped it does not.':
    '{1} Fuera del rango el porcentaje sigue; limitado, no.',
  '{1} Nothing is clamped.': '{1} No se limita nada.',
  '{1} Stem travel in proportion to the signal; a lever or cam bends it.':
    '{1} Carrera del vástago en proporción a la señal; una palanca o una leva la curva.',
  '{1} The form names whose rounded constant is used.':
    '{1} La forma nombra de quién es la constante redondeada que se usa.',
} as const satisfies Catalogue;
