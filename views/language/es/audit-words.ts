import type { Catalogue } from '../patterns.ts';

/** What the safety officer reads: comparison with paper, exceptions, reviews, checks of the log. */
export const auditWords = {
  ', and still on': ', y sigue puesto',
  'A correction with a verdict between the line that it corrects and itself.':
    'Una corrección con un veredicto entre la línea que corrige y ella misma.',
  'A hold that is signed at the screen of the line before, by somebody else, at most 20 seconds after it.':
    'Un punto de espera firmado en la pantalla de la línea anterior, por otra persona, como mucho 20 segundos después.',
  'A hold waived, or passed without its witness': 'Un punto de espera eximido, o pasado sin su testigo',
  'A line that made an energy count as isolated, with nothing given in it. Locks that are taken off are no such line.':
    'Una línea que dio por aislada una energía sin que en ella se diera nada. Los candados que se quitan no son una línea así.',
  'A lock on for longer than a shift': 'Un candado puesto más de un turno',
  'A reading corrected after the verdict that rests on it':
    'Una lectura corregida después del veredicto que se apoya en ella',
  'A run of wrong PINs': 'Una serie de PIN equivocados',
  'A safety officer, supervisor or engineer signs this with you.':
    'Un responsable de seguridad, supervisor o ingeniero firma esto con usted.',
  'A zero on a gauge that read no more than twice its uncertainty on every line before it. Jobs that went on from another are left out: their live readings are there.':
    'Un cero en un manómetro que en todas las líneas anteriores no marcó más del doble de su incertidumbre. Se dejan fuera los trabajos que siguen de otro: sus lecturas vivas están allí.',
  'Acknowledged and signed by two people at one screen within seconds':
    'Reconocido y firmado por dos personas en una pantalla en segundos',
  'All stroke rows of a job between 15 % and 85 % of travel, a straight line through each run of one direction, all of one slope: what is left beside them is below 0.06 % of travel, with at least 6 degrees of freedom and readings given to 0.5 % or finer. Of 10,000 simulated honest jobs with a reading error of 0.25 % of travel, 3 were told where it was read to 0.1 %, fewer than 20 where to 0.5 %. No plant has been measured.':
    'Todas las filas de carrera de un trabajo entre el 15 % y el 85 %, una recta por cada recorrido en un sentido, todas de una pendiente: lo que queda al lado está por debajo del 0.06 % de la carrera, con al menos 6 grados de libertad y lecturas dadas al 0.5 % o más finas. De 10,000 trabajos honestos simulados con un error de lectura del 0.25 % de la carrera se señalaron 3 cuando se leía al 0.1 %, menos de 20 cuando al 0.5 %. No se ha medido ninguna planta.',
  'Ask another safety officer, supervisor or engineer.':
    'Pídalo a otro responsable de seguridad, supervisor o ingeniero.',
  'Audit of job {1}': 'Auditoría del trabajo {1}',
  'Check number of the last good one': 'Número de comprobación de la última buena',
  'Checking the whole log': 'Comprobando toda la bitácora',
  'Every line whose writer gave an earlier time for its reading.':
    'Toda línea cuyo autor dio una hora anterior para su lectura.',
  'Every one. No hold over an isolation can be waived.':
    'Todos. Ningún punto de espera sobre un aislamiento se puede eximir.',
  'Every reading that a person took for good where its limit said otherwise.':
    'Toda lectura que alguien dio por buena cuando su límite decía otra cosa.',
  'Every signature of a second competent person.': 'Toda firma de una segunda persona competente.',
  'Every signature that was read out and read back.': 'Toda firma que se leyó en voz alta y se repitió.',
  'Five wrong ones in a row or more, in one name or in names that nobody has.':
    'Cinco seguidos o más, a un nombre o a nombres que nadie tiene.',
  'From the last live reading to the zero in less time than choked air of 50 °C takes out of the tank of the sheet through a hole of 28 mm, or out of the part of the case that the stem had moved through one of 18 mm, both without loss. No sheet says how wide a vent is, and none is wider than that: true vents take longer, so it errs on the side of the technician and tells only what cannot be.':
    'De la última lectura viva al cero en menos tiempo del que tarda aire a 50 °C en flujo crítico en salir del tanque de la ficha por un agujero de 28 mm, o de la parte de la caja que el vástago recorrió por uno de 18 mm, ambos sin pérdida. Ninguna ficha dice lo ancho que es un venteo, y ninguno es más ancho: los verdaderos tardan más, así que se equivoca a favor del técnico y solo señala lo que no puede ser.',
  'Go back to the log.': 'Vuelva a la bitácora.',
  'Good from the start on': 'Buena desde el principio',
  'It does not fit: line {1} has the check number {2} here. This is another log, or it was written anew.':
    'No concuerda: aquí la línea {1} tiene el número de comprobación {2}. Es otra bitácora, o se escribió de nuevo.',
  'It fits. {1} lines were written since; everything up to line {2} is as it was then.':
    'Concuerda. Desde entonces se escribieron {1} líneas; todo hasta la línea {2} está como entonces.',
  'Line {1}{2}: {3}.': 'Línea {1}{2}: {3}.',
  'Log of job {1}, {2}': 'Bitácora del trabajo {1}, {2}',
  'Making the export': 'Haciendo la exportación',
  'More than 12 hours from the line that hung it to the one that took it off, or until now.':
    'Más de 12 horas desde la línea que lo puso hasta la que lo quitó, o hasta ahora.',
  'Only {1}.': 'Solo {1}.',
  'Photo of line {1} ({2}) {3}.': 'Foto de la línea {1} ({2}) {3}.',
  'Read on a gauge past its due day': 'Leído en un manómetro vencido',
  'Shown safe on a gauge that read nothing live before':
    'Demostrada segura en un manómetro que antes no marcó nada vivo',
  'Shown safe with no reading and no word of how': 'Demostrada segura sin lectura y sin decir cómo',
  'Signed by a second person, with no supervisor there': 'Firmado por una segunda persona, sin supervisor',
  'Stroke readings with less scatter than reading them by eye gives':
    'Lecturas de carrera con menos dispersión de la que da leerlas a ojo',
  'The check number at the foot is an anchor: the log is tamper-evident against anyone who cannot also change the anchors. Keep this paper where nobody who can write to the server can change it. A letter that this typeface lacks is printed as a question mark.':
    'El número de comprobación al pie es un ancla: la bitácora delata a quien no pueda cambiar también las anclas. Guarde este papel donde nadie que escriba en el servidor pueda cambiarlo. Una letra que falta en esta tipografía se imprime como signo de interrogación.',
  'The clock was moved': 'Se movió el reloj',
  'The day of the line is later than the due day of the gauge when the job was opened.':
    'El día de la línea es posterior al vencimiento del manómetro cuando se abrió el trabajo.',
  'The first bad entry, or jobs that come out otherwise when worked out again':
    'La primera anotación mala, o trabajos que salen distintos al calcularlos de nuevo',
  'The first {1} of {2} are printed: narrow the days, or save the table, which has all.':
    'Se imprimen los primeros {1} de {2}: acote los días, o guarde la tabla, que los tiene todos.',
  'The log fits its last checkpoint: there is nothing to take as it is.':
    'La bitácora concuerda con su último punto de control: no hay nada que aceptar tal cual.',
  'The paper speaks of line {1}; this log ends at {2}. Its end was cut off, or an older backup is served.':
    'El papel habla de la línea {1}; esta bitácora acaba en la {2}. Se cortó su final, o se sirve una copia más antigua.',
  'There is no line {1} in this log.': 'En esta bitácora no hay línea {1}.',
  'This must be another person.': 'Debe ser otra persona.',
  'Two energies shown by the very same readings of one gauge':
    'Dos energías demostradas con las mismas lecturas de un manómetro',
  'Two lines that show different energies with one gauge, one live reading and one zero. One card that asks for several energies at once is no such pair.':
    'Dos líneas que demuestran energías distintas con un manómetro, una lectura viva y un cero. Una tarjeta que pide varias energías a la vez no es un par así.',
  'Vented sooner than the air can have left': 'Venteado antes de lo que el aire pudo salir',
  'Write the day as 2026-11-25.': 'Escriba el día como 2026-11-25.',
  'Write the number of a line.': 'Escriba el número de una línea.',
  'Write the number of a page.': 'Escriba el número de una página.',
  'Write the number of the line, as on the paper.': 'Escriba el número de la línea, como en el papel.',
  'a name that nobody has': 'un nombre que nadie tiene',
  'about line {1}': 'sobre la línea {1}',
  'another entry': 'otra anotación',
  'finding noted': 'hallazgo anotado',
  'hold sent back': 'punto de espera devuelto',
  'hold signed': 'punto de espera firmado',
  'hold waived': 'punto de espera eximido',
  'note struck': 'nota tachada',
  'part noted': 'pieza anotada',
  'photo noted': 'foto anotada',
  'radio confirmed': 'radio confirmada',
  'row read': 'fila leída',
  'taken up': 'retomado',
  'went back': 'volvió atrás',
  'at a screen of their own': 'en una pantalla propia',
  'at the screen of the work': 'en la pantalla del trabajo',
  'back by {1} s': 'atrás {1} s',
  'by a second person, no supervisor there': 'por una segunda persona, sin supervisor',
  'corrects line {1}': 'corrige la línea {1}',
  'gear {1}': 'instrumento {1}',
  'heard by {1}': 'oída por {1}',
  'it does not say what its signer was shown': 'no dice qué se mostró a quien firmó',
  'it names no signer': 'no nombra a quien firmó',
  'its check number': 'su número de comprobación',
  'its digest is not of what its signer was shown': 'su huella no es de lo que se mostró a quien firmó',
  'last checkpoint': 'último punto de control',
  'last line': 'última línea',
  'line measured': 'línea medida',
  'line {1}, after the verdict of line {2}: {3}': 'línea {1}, después del veredicto de la línea {2}: {3}',
  'line {1}, {2}': 'línea {1}, {2}',
  'line {1}: {2}': 'línea {1}: {2}',
  'newer than this log': 'más nueva que esta bitácora',
  'newest line of the log {1}, check number {2}':
    'línea más nueva de la bitácora {1}, número de comprobación {2}',
  'no checkpoints are kept': 'no se guardan puntos de control',
  'none yet': 'todavía ninguno',
  'number of the key': 'número de la clave',
  'scatter {1} % of travel, with {2} degrees of freedom':
    'dispersión {1} % de la carrera, con {2} grados de libertad',
  'the first day': 'el primer día',
  'the last day': 'el último día',
  'the last line': 'la última línea',
  'the person': 'la persona',
  'the work that measured it': 'el trabajo que lo midió',
  'time, UTC': 'hora, UTC',
  'what happened and what is lost': 'qué pasó y qué se perdió',
  'what its signer was shown belongs to another place': 'lo que se mostró a quien firmó es de otro lugar',
  'written later, read at {1}: {2}': 'escrita después, leída a las {1}: {2}',
  '{1} and {2} more': '{1} y {2} más',
  '{1} h later: {2}': '{1} h después: {2}',
  '{1} jobs opened from {2} {3}. {4}': '{1} trabajos abiertos desde {2} {3}. {4}',
  '{1} lines were not reviewed.': '{1} líneas no se revisaron.',
  '{1} to {2} in {3} s; {4} L through {5} mm take at least {6} s':
    '{1} a {2} en {3} s; {4} L por {5} mm tardan al menos {6} s',
  '{1}, place {2}: {3}.': '{1}, lugar {2}: {3}.',
  'A line of a job whose time is more than 2 seconds before that of the line before it, a jump of the clock of the server by a minute or more, or a checkpoint that could not be given because the clock stood before the last one.':
    'Una línea de un trabajo cuya hora está más de 2 segundos antes que la de la línea anterior, un salto del reloj del servidor de un minuto o más, o un punto de control que no se pudo dar porque el reloj estaba antes del último.',
} as const satisfies Catalogue;
