import type { Catalogue } from '../patterns.ts';

/** A record of the loop: its card, its pictures, what it says. */
export const loopRecord = {
  'And {1} more.': 'Y {1} más.',
  'error, relay or sine': 'error, relé o seno',
  'fewer than two methods come to an answer': 'menos de dos métodos llegan a una respuesta',
  'it allows one method alone, and two must agree': 'solo permite un método, y dos tienen que coincidir',
  'it could not be judged': 'no se pudo juzgar',
  'it does not swing regularly': 'no oscila con regularidad',
  'it has fewer than ten rows in a half swing': 'tiene menos de diez filas por media oscilación',
  'it holds fewer than six half swings': 'contiene menos de seis medias oscilaciones',
  'It weighs little beside a check at the valve; the whole table stands in the log.':
    'Pesa poco al lado de una comprobación en la válvula; la tabla entera está en la bitácora.',
  length: 'duración',
  'No sign that the valve sticks: two published methods agree.':
    'Ninguna señal de que la válvula se pegue: dos métodos publicados coinciden.',
  'No table was given.': 'No se dio ninguna tabla.',
  'No verdict: {1}.': 'Sin veredicto: {1}.',
  'not to be had': 'no se puede obtener',
  'Of a table take fewer rows, or fewer hours: 5000 rows at most.':
    'De una tabla tome menos filas, o menos horas: 5000 filas como máximo.',
  'Save it as CSV UTF-8, and choose it again.': 'Guárdelo como CSV UTF-8 y elíjalo otra vez.',
  'The file cannot be read: its letters are neither UTF-8 nor UTF-16.':
    'El archivo no se puede leer: sus letras no son UTF-8 ni UTF-16.',
  'one thing is wrong': 'una cosa está mal',
  'Output across, {1} upwards. {2}': 'Salida en horizontal, {1} hacia arriba. {2}',
  'Output against {1}': 'Salida contra {1}',
  'output moves, stem stands': 'la salida se mueve, el vástago no',
  'output swings by': 'la salida oscila',
  'output, %; position dashed': 'salida, %; posición a trazos',
  'Paste it instead, or put it right here': 'Pegarla en su lugar, o corregirla aquí',
  period: 'período',
  'process value': 'valor de proceso',
  'process value; set point dashed': 'valor de proceso; consigna a trazos',
  'Put it right in the table, and send it again.': 'Corríjalo en la tabla y envíela otra vez.',
  'Record of the loop, line {1}': 'Registro del lazo, línea {1}',
  'row {1}': 'fila {1}',
  'rows are missing in it': 'faltan filas en él',
  'Rows of the record of line {1}': 'Filas del registro de la línea {1}',
  'Save the record of the loop': 'Guardar el registro del lazo',
  'set point': 'consigna',
  'shape, triangle or sine': 'forma, triángulo o seno',
  'Some rows of the record, evenly through it': 'Algunas filas del registro, repartidas por él',
  'Struck: it stands no more.': 'Tachado: ya no vale.',
  'the methods contradict each other': 'los métodos se contradicen',
  'the output hardly moves in it': 'la salida apenas se mueve en él',
  'the output stands at the end of its range': 'la salida está al final de su rango',
  'The table as text, its head first': 'La tabla como texto, primero su encabezado',
  'The table stands in its field as you sent it; nothing was counted.':
    'La tabla está en su campo como la envió; no se contó nada.',
  'The valve sticks: two published methods agree.': 'La válvula se pega: dos métodos publicados coinciden.',
  Trend: 'Tendencia',
  'Trend of output and process value over {1} seconds. {2}':
    'Tendencia de salida y valor de proceso durante {1} segundos. {2}',
  '{1} and more sticks, {2} and less does not': 'con {1} y más se pega, con {2} y menos no',
  '{1} s, {2} rows': '{1} s, {2} filas',
  '{1} things are wrong': '{1} cosas están mal',
} as const satisfies Catalogue;
