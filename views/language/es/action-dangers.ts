import type { Catalogue } from '../patterns.ts';

/** What can hurt in each class of act, and what stands against it. */
export const actionDangers = {
  '29 CFR 1910 subpart S, and the class of the area': '29 CFR 1910 subparte S, y la clase del área',
  'A connector that carries the spring lets the stem shoot to its stop; the plug drops.':
    'Un conector que sostiene el resorte deja que el vástago salga disparado a su tope; el obturador cae.',
  'A cover drawn down on one side tears the diaphragm, and a spring under it slips.':
    'Una tapa apretada por un lado rasga el diafragma, y el resorte de debajo resbala.',
  'A cover let off on one side is thrown by the spring.':
    'Una tapa soltada por un lado sale lanzada por el resorte.',
  'A hose end under pressure whips.': 'Un extremo de manguera con presión azota.',
  'A joint that is not tight blows out; the block valves hold the test in.':
    'Una unión que no es estanca revienta; las válvulas de bloqueo retienen la prueba.',
  'A line that passes floods the open body with the hands in it.':
    'Una línea que pasa inunda el cuerpo abierto con las manos dentro.',
  'A live cover in a classified area can ignite; the valve can jump.':
    'Una tapa con tensión en un área clasificada puede inflamar; la válvula puede saltar.',
  'A loaded spring throws the case cover.': 'Un resorte cargado lanza la tapa de la caja.',
  'A loaded spring throws the case cover: the long bolts stay as they are.':
    'Un resorte cargado lanza la tapa de la caja: los pernos largos se quedan como están.',
  'A nut that is turned with air on the case can break its bolt and throw it.':
    'Una tuerca que se gira con aire en la caja puede romper su perno y lanzarlo.',
  'A second source or a live line moves the stem when nobody expects it.':
    'Una segunda fuente o una línea viva mueve el vástago cuando nadie lo espera.',
  'A spring that is loaded under an open case throws its cover.':
    'Un resorte cargado bajo una caja abierta lanza su tapa.',
  'A spring that is not free drives the two stems together with the fingers between them.':
    'Un resorte que no está libre junta los dos vástagos con los dedos en medio.',
  'A spring that is not free throws plate and diaphragm at the hands.':
    'Un resorte que no está libre lanza plato y diafragma contra las manos.',
  'A stud that breaks lets the packing blow out; the stem sticks and then jumps.':
    'Un espárrago que se rompe deja salir disparada la empaquetadura; el vástago se atasca y luego salta.',
  'A touched flapper makes the valve jump: hands out of the yoke.':
    'Tocar la paleta hace saltar la válvula: manos fuera del yugo.',
  'Air at line pressure throws oil, water and scale into the eyes.':
    'El aire a presión de línea lanza aceite, agua y óxido a los ojos.',
  'Air or water jets out where it is let off. Never held back: this is the way to safe.':
    'Aire o agua salen a chorro donde se sueltan. Nunca se retienen: este es el camino a lo seguro.',
  'Air that changes drives the connector into the hand; a plug on its seat is scored.':
    'Un aire que cambia empuja el conector contra la mano; un obturador en su asiento se raya.',
  'Air that changes drives the stem past the fingers at the pointer.':
    'Un aire que cambia mueve el vástago junto a los dedos que están en el índice.',
  'Air that changes drives the two stems together with the fingers between them.':
    'Un aire que cambia junta los dos vástagos con los dedos en medio.',
  'Air that is on already drives the stem and whips the hose.':
    'El aire que ya está puesto mueve el vástago y azota la manguera.',
  'An open drain on an unlocked line floods hot or toxic fluid.':
    'Un drenaje abierto en una línea sin candado suelta fluido caliente o tóxico.',
  'Anybody can open what is not locked.': 'Cualquiera puede abrir lo que no tiene candado.',
  'None: nothing is opened.': 'Ninguno: no se abre nada.',
  'Pockets in cage and bellows keep pressure and residue.':
    'Los huecos de jaula y fuelle retienen presión y residuo.',
  'Process returns to an unready valve.': 'El proceso vuelve a una válvula que no está lista.',
  'Stem or plug jumps or drops.': 'El vástago o el obturador salta o cae.',
  'The end cap is thrown.': 'La tapa del cilindro sale lanzada.',
  'The joint blows off in the hand, and the valve jumps as its air is lost.':
    'La unión se suelta en la mano, y la válvula salta al perder su aire.',
  'The line stands behind an open body until the last nut is tight.':
    'La línea está detrás de un cuerpo abierto hasta que se aprieta la última tuerca.',
  'The packing may no longer be held down; the weight swings.':
    'La empaquetadura puede quedar sin sujeción; el peso oscila.',
  'The pipe springs; the line is left without support.':
    'La tubería se abre de golpe; la línea queda sin apoyo.',
  'The process comes through the valve as it stands.': 'El proceso pasa por la válvula tal como está.',
  'The process is upset when the valve moves.': 'El proceso se altera cuando la válvula se mueve.',
  'The process loses its flow when the valve does not carry it yet.':
    'El proceso pierde su caudal cuando la válvula todavía no lo lleva.',
  'The process loses its flow when the valve is blocked in before the bypass carries it.':
    'El proceso pierde su caudal si se aísla la válvula antes de que lo lleve el bypass.',
  'The spring is loaded as the cover comes down; a cover that tilts is thrown.':
    'El resorte se carga al bajar la tapa; una tapa que se inclina sale lanzada.',
  'The spring moves the stem as the adjuster turns; air that changes moves it without warning.':
    'El resorte mueve el vástago al girar el ajustador; un aire que cambia lo mueve sin aviso.',
  'The spring was balancing the stem; the process can push it.':
    'El resorte equilibraba el vástago; el proceso puede empujarlo.',
  'The stem blows out; hot or toxic residue follows it.':
    'El vástago sale disparado; le sigue residuo caliente o tóxico.',
  'The stem is driven out as the nut comes off. The air is let off again before anything is lifted.':
    'El vástago sale empujado al soltarse la tuerca. El aire se suelta otra vez antes de levantar nada.',
  'The stem moves as the air leaves. Never held back: this is the way to safe.':
    'El vástago se mueve al salir el aire. Nunca se retiene: este es el camino a lo seguro.',
  'The stem moves without warning; a finger in the yoke is crushed.':
    'El vástago se mueve sin aviso; un dedo en el yugo queda aplastado.',
  'The stem moves; a finger in the yoke is crushed.':
    'El vástago se mueve; un dedo en el yugo queda aplastado.',
  'The valve moves as the air returns.': 'La válvula se mueve al volver el aire.',
  'The weight swings; a stem that is met askew bends.':
    'El peso oscila; un vástago que se encuentra torcido se dobla.',
  'Trapped pressure throws the bonnet. Far side first, joint cracked before the nuts come off.':
    'La presión atrapada lanza el bonete. Primero el lado lejano, con la unión entreabierta antes de quitar las tuercas.',
  'Two air sources on one actuator.': 'Dos fuentes de aire en un mismo actuador.',
  'Venting moves the valve to its fail position; a tube end whips.':
    'Al ventear, la válvula va a su posición de fallo; un extremo de tubo azota.',
  'Without air the valve goes to its fail position.': 'Sin aire, la válvula va a su posición de fallo.',
  'actuator shut and every bolt in and tight, or the adjuster turning freely by hand':
    'actuador cerrado y cada perno puesto y apretado, o el ajustador girando libre a mano',
  'drives the stem when the side that moves it is vented':
    'mueve el vástago cuando se ventea el lado que lo mueve',
  'each side vented at the actuator': 'cada lado venteado en el actuador',
  'left shut in under its cover, or backed off with the adjuster before a bolt of it is touched':
    'se deja encerrado bajo su tapa, o se descarga con el ajustador antes de tocar un perno',
  'line off at the actuator and capped; later one source of test air in your hand':
    'línea fuera del actuador y tapada; después una sola fuente de aire de prueba en su mano',
  'the port of that side, cracked twice without flow':
    'el puerto de ese lado, entreabierto dos veces sin que salga nada',
  'throws the cover that is loosened over it': 'lanza la tapa que se afloja encima',
} as const satisfies Catalogue;
