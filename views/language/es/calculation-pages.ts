import type { Catalogue } from '../patterns.ts';

/** The pages of the calculations: what is asked, what is refused, pictures and cautions. */
export const calculationPages = {
  ', may be blank': ', puede quedar en blanco',
  'A finger in the yoke can be crushed, and a plug that is turned on its seat is scored.':
    'Un dedo en el yugo puede quedar aplastado, y un obturador que se gira en su asiento se raya.',
  'A gland that is loosened under pressure lets it out, hot or harmful as it is.':
    'Un prensaestopas que se afloja con presión lo deja salir, caliente o dañino como sea.',
  'A joint that opens under it can throw parts.': 'Una unión que se abre con ella puede lanzar piezas.',
  'A lag behind a dead time': 'Un retardo tras un tiempo muerto',
  'A line each, in this order or under a head with these names: {1}. Comma, semicolon, tab or blanks between.':
    'Una línea cada uno, en este orden o bajo una cabecera con estos nombres: {1}. Entre medias coma, punto y coma, tabulador o espacios.',
  'Air is stored under pressure.': 'Hay aire almacenado a presión.',
  'As on the sheet of {1}.': 'Como en la ficha de {1}.',
  'Back pressure': 'Contrapresión',
  'Back pressure against gap': 'Contrapresión frente a la separación',
  'Below the head stands no line.': 'Bajo la cabecera no hay ninguna línea.',
  'Bench set and installed range meet at the open end; the process moves the shut end.':
    'El ajuste de banco y el rango instalado coinciden en el extremo abierto; el proceso mueve el extremo cerrado.',
  'Bolts numbered clockwise from the top, tightened in the order {1}; each nut carries its place in the order.':
    'Pernos numerados en sentido horario desde arriba, apretados en el orden {1}; cada tuerca lleva su lugar en el orden.',
  'Case bolts that are loosened under it throw the cover and kill.':
    'Los pernos de la caja que se aflojan con él lanzan la tapa y matan.',
  'Chance of a wrong accept over the value': 'Probabilidad de aceptar mal frente al valor',
  'Chance that the true value lies beyond the limit': 'Probabilidad de que el valor verdadero pase el límite',
  'Count the turns, keep the thread that the maker’s manual asks for, and turn only in a job, with no more air on than its step says.':
    'Cuente las vueltas, conserve la rosca que pide el manual del fabricante, y gire solo en un trabajo, con no más aire del que dice su paso.',
  'Decay of the pressure': 'Caída de la presión',
  Fall: 'Caída',
  'Fall of pressure over the wait': 'Caída de presión durante la espera',
  'Fall of pressure over time': 'Caída de presión con el tiempo',
  'Flow of air at 20 °C and 100 kPa': 'Caudal de aire a 20 °C y 100 kPa',
  'Flow over the outlet pressure': 'Caudal frente a la presión de salida',
  'Force of air, spring and process over the lift, and their sum; the process force is held as given.':
    'Fuerza de aire, resorte y proceso frente a la apertura, y su suma; la del proceso se mantiene como se dio.',
  'Forces over the lift, opening positive': 'Fuerzas frente a la apertura, positivo al abrir',
  'Hands stay outside the yoke while air is on and while it is vented.':
    'Las manos quedan fuera del yugo mientras hay aire y mientras se ventea.',
  'Inherent characteristic': 'Característica inherente',
  'It has {1} lines; at most {2}. Leave out what is quiet.':
    'Tiene {1} líneas; como mucho {2}. Deje fuera lo tranquilo.',
  'Line {1}: {2}': 'Línea {1}: {2}',
  'Loosen a gland only in a job that has shown the body without pressure.':
    'Afloje un prensaestopas solo en un trabajo que haya demostrado el cuerpo sin presión.',
  'Mass flow': 'Caudal másico',
  'No line can be read.': 'No se puede leer ninguna línea.',
  'Nothing moves during the dead time; then 63 % of the step within one time constant and 86 % within two.':
    'Nada se mueve durante el tiempo muerto; después el 63 % del escalón en una constante de tiempo y el 86 % en dos.',
  'One field cannot be read.': 'Un campo no se puede leer.',
  'One field is blank.': 'Un campo está en blanco.',
  Open: 'Abierto',
  'Pressure on the diaphragm': 'Presión en el diafragma',
  'Pressure over the opening': 'Presión frente a la apertura',
  'Put it right.': 'Corríjalo.',
  'Release the spring first, by its adjuster or the way that the maker’s manual says.':
    'Suelte primero el resorte, con su ajustador o como diga el manual del fabricante.',
  'Seat load gained': 'Carga de asiento ganada',
  'Seat load gained over the turns': 'Carga de asiento ganada frente a las vueltas',
  'Share of the rated flow coefficient': 'Parte del coeficiente de caudal nominal',
  'Share of the rated flow coefficient over the lift.':
    'Parte del coeficiente de caudal nominal frente a la apertura.',
  'Share of the step': 'Parte del escalón',
  'Share of the tolerance': 'Parte de la tolerancia',
  'Shift of both ends': 'Desplazamiento de ambos extremos',
  'Shift of the bench set over the turns': 'Desplazamiento del ajuste de banco frente a las vueltas',
  'Shut the supply off, lock it, vent, and see a gauge that was alive there stand at zero before anything is loosened.':
    'Cierre el suministro, póngale candado, ventee, y vea en cero un manómetro que estuvo vivo allí antes de aflojar nada.',
  'Stem and plug follow it at once when the air goes, and can crush a hand.':
    'Vástago y obturador lo siguen al instante cuando se va el aire, y pueden aplastar una mano.',
  'Stem and spring move with the test air.': 'Vástago y resorte se mueven con el aire de prueba.',
  'Step response': 'Respuesta al escalón',
  'Stored energy over the pressure': 'Energía almacenada frente a la presión',
  'The adjuster holds the force of the spring.': 'El ajustador retiene la fuerza del resorte.',
  'The back pressure falls from the supply towards nothing as the flapper opens.':
    'La contrapresión cae del suministro hacia nada al abrirse la paleta.',
  'The better the gauge against the tolerance, the more of it is left.':
    'Cuanto mejor el manómetro frente a la tolerancia, más queda de ella.',
  'The chance rises from nothing well inside the limit to certainty well beyond it.':
    'La probabilidad sube de nada, bien dentro del límite, a certeza, bien pasado.',
  'The energy grows faster than the pressure.': 'La energía crece más deprisa que la presión.',
  'The flow grows as the outlet pressure falls, and no further below the critical ratio.':
    'El caudal crece al caer la presión de salida, y no más por debajo de la relación crítica.',
  'The flow grows as the outlet pressure falls, and no further once the gas chokes.':
    'El caudal crece al caer la presión de salida, y no más una vez que el gas entra en flujo crítico.',
  'The flow grows as the outlet pressure falls, and no further once the liquid chokes.':
    'El caudal crece al caer la presión de salida, y no más una vez que el líquido entra en flujo crítico.',
  'The gauge from start to end beside what a tight volume would have read: between them lies the leak.':
    'El manómetro de principio a fin junto a lo que marcaría un volumen estanco: entre ambos está la fuga.',
  'The head has no column {1}.': 'La cabecera no tiene columna {1}.',
  'The leak is seen once the fall is three times the step or drift of the gauge.':
    'La fuga se ve cuando la caída es tres veces el paso o la deriva del manómetro.',
  'The packing holds the process back.': 'La empaquetadura retiene el proceso.',
  'The pressure decays fast at first and ever more slowly.':
    'La presión cae deprisa al principio y cada vez más despacio.',
  'The pressure falls evenly with time.': 'La presión cae por igual con el tiempo.',
  'The seat load gained grows with the turns.': 'La carga de asiento ganada crece con las vueltas.',
  'The sheet of {1} has {2}.': 'La ficha de {1} tiene {2}.',
  'The shift of both bench ends grows with the turns.':
    'El desplazamiento de ambos extremos crece con las vueltas.',
  'The spring stays loaded when the air is gone: the case alone holds it.':
    'El resorte sigue cargado cuando se va el aire: solo lo retiene la caja.',
  'The stroke has pressed the spring together.': 'La carrera ha comprimido el resorte.',
  'Travel over current': 'Carrera frente a corriente',
  'Travel over signal': 'Carrera frente a señal',
  'Travel over signal after the seating turns': 'Carrera frente a señal después de las vueltas de asiento',
  'Travel over signal, going up and coming down, beside the line that is wanted.':
    'Carrera frente a señal, subiendo y bajando, junto a la recta pedida.',
  'Travel over the current, end to end.': 'Carrera frente a la corriente, de extremo a extremo.',
  'Travel over the signal, end to end.': 'Carrera frente a la señal, de extremo a extremo.',
  'Travel over the signal; the seat stops the plug before the end of the range.':
    'Carrera frente a la señal; el asiento detiene el obturador antes del fin del rango.',
  'Travel over time, with the input step, the end of the dead time, T63 and T86.':
    'Carrera frente al tiempo, con el escalón de entrada, el fin del tiempo muerto, T63 y T86.',
  'Turn only in a job that has shown the process isolated and the air in one hand, with the plug held off its seat.':
    'Gire solo en un trabajo que haya demostrado el proceso aislado y el aire en una sola mano, con el obturador separado de su asiento.',
  'Turned out of its thread it lets the spring go.': 'Si se gira hasta salir de su rosca, suelta el resorte.',
  Wait: 'Espera',
  'What is left of the tolerance over the uncertainty ratio':
    'Lo que queda de la tolerancia frente a la relación de incertidumbre',
  'Write it anew; a number may carry its unit.': 'Escríbalo de nuevo; un número puede llevar su unidad.',
  'Write this.': 'Escriba esto.',
  'a number': 'un número',
  'a text': 'un texto',
  'a tight volume, by temperature and barometer alone':
    'un volumen estanco, solo por temperatura y barómetro',
  'as read': 'como se leyó',
  'dead time': 'tiempo muerto',
  'installed, with the process': 'instalada, con el proceso',
  'it has {1} cells; there are {2} columns.': 'tiene {1} celdas; hay {2} columnas.',
  'it is needed here': 'hace falta aquí',
  'not chosen': 'sin elegir',
  'not said by these figures': 'estas cifras no lo dicen',
  'nothing is written.': 'no hay nada escrito.',
  seen: 'se ve',
  '{1} absolute': '{1} absoluta',
  '{1} cannot be': '{1} no puede ser',
  '{1} fields are blank.': '{1} campos están en blanco.',
  '{1} fields cannot be read.': '{1} campos no se pueden leer.',
  '{1}, SI': '{1}, SI',
  '{1}, US': '{1}, EE. UU.',
  '“{1}” is gauge pressure. Write absolute pressure: gauge plus barometer.':
    '“{1}” es presión manométrica. Escriba presión absoluta: manómetro más barómetro.',
  '“{1}” is not among: {2}.': '“{1}” no está entre: {2}.',
} as const satisfies Catalogue;
