import type { Catalogue } from '../patterns.ts';

/** What a card, a note and the reply line say beyond the stroke check. */
export const otherCards = {
  ', after the way to it': ', después del camino hasta ella',
  ', looked at {1}': ', mirado {1}',
  ', looked at {1} and not the same': ', mirado {1} y no igual',
  'A job takes {1} photos, and has them.': 'Un trabajo admite {1} fotos, y ya las tiene.',
  'Both ports open to the air': 'Ambos puertos abiertos al aire',
  'Both tubes off at the cylinder, ends capped': 'Ambos tubos fuera en el cilindro, extremos tapados',
  Choose: 'Elija',
  'Choose a finding or part that stands.': 'Elija un hallazgo o una pieza que siga en pie.',
  'Choose another check, or a way on.': 'Elija otra comprobación, o un modo de seguir.',
  'Choose the file or paste the table; "cannot tell" and "skip" are answers too.':
    'Elija el archivo o pegue la tabla; “no se sabe” y “saltar” también son respuestas.',
  'Choose what was seen, or write every number that is asked; "cannot tell" and "skip" are answers too.':
    'Elija lo que se vio, o escriba cada número que se pide; “no se sabe” y “saltar” también son respuestas.',
  'Count {1} rows': 'Registrar {1} filas',
  'IN DOUBT: {1}': 'EN DUDA: {1}',
  'Much hangs on this one answer.{1} Look as if nobody had looked: at the tag, on another gauge if one is at hand, best with other eyes.':
    'Mucho depende de esta única respuesta.{1} Mire como si nadie hubiera mirado: la etiqueta, en otro manómetro si hay uno a mano, mejor con otros ojos.',
  'Name the gauge that this was read on.': 'Nombre el manómetro en que se leyó esto.',
  'No gauge is fitted {1}.': 'No hay ningún manómetro montado {1}.',
  'None on the sheet; cylinder shut, every tie rod in and tight':
    'Ninguno en la ficha; cilindro cerrado, cada tirante puesto y apretado',
  'Note in words what there is to see.': 'Anote con palabras lo que se ve.',
  'Photo of line {1}': 'Foto de la línea {1}',
  'Struck: {1}': 'Tachado: {1}',
  'This valve has no such thing.': 'Esta válvula no tiene tal cosa.',
  'What it needs is not to be had as the valve stands.':
    'Lo que necesita no se puede tener tal como está la válvula.',
  'What stands open on the card': 'Lo que está abierto en la tarjeta',
  'What you typed is still there; nothing was counted.': 'Lo que escribió sigue ahí; no se contó nada.',
  'Your locks': 'Sus candados',
  'batch or serial': 'lote o serie',
  'must be {1}': 'debe ser {1}',
  'no block valve': 'sin válvula de bloqueo',
  'put in': 'puesto',
  struck: 'tachado',
  'struck on line {1}: {2}': 'tachado en la línea {1}: {2}',
  'that it was opened on': 'con la que se abrió',
  'wanted {1}': 'se pide {1}',
  'was {1},': 'era {1},',
  '{1} in section, in service: plug closes moving {2}, air moves the stem {3}, {4}, flow {5} the plug.':
    '{1} en sección, en servicio: el obturador cierra moviéndose hacia {2}, el aire mueve el vástago hacia {3}, {4}, caudal {5} el obturador.',
  '{1} rods: {2}': '{1} tirantes: {2}',
  '{1}, not one of the site': '{1}, no es de la planta',
  '{1}: neither a word nor a whole reading.': '{1}: ni una palabra ni una lectura completa.',
  '{1}: {2} shows {3}.': '{1}: {2} muestra {3}.',
  '{1}: {2} steps and the ways between them; the same stands in words below.':
    '{1}: {2} pasos y los caminos entre ellos; lo mismo está abajo con palabras.',
  '{1}reads {2}': '{1}marca {2}',
  'Choose what the operator says, or write a number with its unit.':
    'Elija lo que dice el operador, o escriba un número con su unidad.',
  'Neither a complaint nor a number was written.': 'No se escribió ni una queja ni un número.',
  'Made and proved: {1}. Its check is sound now; what is left to find is something else.':
    'Hecho y comprobado: {1}. Su comprobación está bien ahora; lo que queda por encontrar es otra cosa.',
  'Made, and it did not help: {1}. Its check is not sound: the repair did not take, or the fault is another. What it cures counts less, as far as the repair can be trusted.':
    'Hecho, y no ayudó: {1}. Su comprobación no está bien: la reparación no surtió efecto, o la avería es otra. Lo que cura cuenta menos, hasta donde se pueda confiar en la reparación.',
  'Nothing on the list would tell: their repairs are tried one after the other, the likeliest for its minutes first.':
    'Nada de la lista lo diría: sus reparaciones se prueban una tras otra, primero la más probable por sus minutos.',
  'Nothing else on the list would tell, but a second look may, where the first was a slip: {1}.':
    'Nada más de la lista lo diría, pero una segunda mirada puede, si la primera fue un descuido: {1}.',
  'What would tell, once isolated: {1}.': 'Lo que lo diría, una vez aislada: {1}.',
  'Cannot be told apart from outside any more: {1}. {2}': 'Ya no se pueden distinguir desde fuera: {1}. {2}',
  'It does not go on as that job.': 'No sigue como ese trabajo.',
  '{1} On its card, give the valve back instead.': '{1} En su tarjeta, devuelva la válvula en lugar de ello.',
  'It went on as': 'Siguió como',
  ', with every lock where it hung.': ', con cada candado donde colgaba.',
  'The valve in section, {1}': 'La válvula en sección, {1}',
  'This procedure has no hold point.': 'Este procedimiento no tiene punto de espera.',
  'as it stood at the hold': 'como estaba en el punto de espera',
  'as this job has it': 'como la tiene este trabajo',
} as const satisfies Catalogue;
