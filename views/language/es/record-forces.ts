import type { Catalogue } from '../patterns.ts';

/** What holds a valve shut, what came through its seat, and readings in doubt. */
export const recordForces = {
  '; counted, by the table of bubbles': '; contado, por la tabla de burbujas',
  '; measured to {1} either way': '; medido con ± {1}',
  'as found {1}': 'como se encontró {1}',
  'as left {1}': 'como se dejó {1}',
  'in doubt': 'en duda',
  'not known, and not counted': 'desconocida y no contada',
  'not on the sheet': 'no está en la ficha',
  'of this packing by the sheet': 'de esta empaquetadura según la hoja',
  'seat leakage, bubbles a minute': 'fuga del asiento, burbujas por minuto',
  'seat leakage, {1}': 'fuga del asiento, {1}',
  'the plug leaves its seat at': 'el obturador deja su asiento a',
  'the plug meets its seat at': 'el obturador toca su asiento a',
  'too close for this gauge': 'demasiado cerca para este manómetro',
  'wanted by the seat': 'lo que pide el asiento',
  '{1} found wrong since': '{1} se encontró mal después',
  '{1} in doubt': '{1} en duda',
  'Force balance': 'Balance de fuerzas',
  'Force balance at both ends of the travel': 'Balance de fuerzas en ambos extremos de la carrera',
  'Forces on the stem at both ends of its travel. {1}.':
    'Fuerzas sobre el vástago en ambos extremos de su carrera. {1}.',
  'NOT HELD SHUT': 'NO SE MANTIENE CERRADA',
  'Of an exercise: no document for paper is made of it.':
    'De un ejercicio: no se hace de él ningún documento en papel.',
  'Worked out from the valve sheet, with the friction named here; not measured with the process on. Plus pushes towards the seat; what is left holds the seat when shut, and the stop when open. What the process does to the open plug fades as it opens, and is not counted.':
    'Calculado con la ficha de la válvula y la fricción indicada aquí; no medido con el proceso presente. Más empuja hacia el asiento; lo que queda mantiene el asiento al estar cerrada, y el tope al estar abierta. Lo que el proceso hace sobre el obturador abierto se desvanece al abrir y no se cuenta.',
  'air times area': 'aire por área',
  force: 'fuerza',
  friction: 'fricción',
  'friction counted': 'fricción que se cuenta',
  'friction may hold it short of its stop': 'la fricción puede dejarla antes de su tope',
  left: 'queda',
  'lbf, plus towards the seat': 'lbf, más hacia el asiento',
  'no air': 'sin aire',
  'not counted': 'no contado',
  'pressure across the shut plug': 'presión a través del obturador cerrado',
  process: 'proceso',
  '{1}, plus towards the seat': '{1}, más hacia el asiento',
  'at the open end': 'en el extremo abierto',
  'at the shut end': 'en el extremo cerrado',
  'No result of a stroke or a seat test was read: the lines of this job tell what was done.':
    'No se leyó ningún resultado de una carrera ni de una prueba de asiento: las líneas de este trabajo dicen qué se hizo.',
  'Open, with {1} on the case': 'Abierta, con {1} en la cámara',
  'Shut, with {1} on the case': 'Cerrada, con {1} en la cámara',
} as const satisfies Catalogue;
