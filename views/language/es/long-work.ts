import type { Catalogue } from '../patterns.ts';

/** Work that goes on for a while, the check and the export of the log, and intervals that are proposed for the plant. */
export const longWork = {
  Back: 'Volver',
  'Either it was done whole, or nothing of it was.': 'O se hizo entero, o no se hizo nada.',
  'It is being written and is not stopped any more.': 'Se está escribiendo y ya no se detiene.',
  'Look where it would show, and begin it again if it is not there.':
    'Mire dónde se vería, y empiécelo de nuevo si no está.',
  'Method: {1}. None is proposed from fewer than five readings, or over a year or less.':
    'Método: {1}. No se propone ninguno con menos de cinco lecturas, ni con un año o menos.',
  'No valve has readings enough yet.': 'Ninguna válvula tiene aún lecturas suficientes.',
  'Nothing was begun.': 'No se empezó nada.',
  'Nothing was changed.': 'No se cambió nada.',
  'Other procedures for this valve': 'Otros procedimientos para esta válvula',
  'Proposed intervals': 'Intervalos propuestos',
  'Proposed intervals, the earliest first': 'Intervalos propuestos, el más próximo primero',
  'Send it again to begin anew.': 'Envíelo otra vez para empezar de nuevo.',
  'Somebody stopped this work.': 'Alguien detuvo este trabajo.',
  'Stopped.': 'Detenido.',
  'The server is busy with other long work.': 'El servidor está ocupado con otro trabajo largo.',
  'This work is no longer here.': 'Este trabajo ya no está aquí.',
  'Wait until it is done, and try again.': 'Espere a que termine e inténtelo otra vez.',
  'because of its': 'por su',
  'by what each valve did so far': 'por lo que hizo cada válvula hasta ahora',
  'check within': 'revisar antes de',
  'that is by': 'es decir, el',
  '{1} s so far. Nothing is changed until it is done whole.':
    '{1} s hasta ahora. No se cambia nada hasta que esté hecho entero.',
  'Check it here': 'Compruébelo aquí',
  'every line, every job': 'cada línea, cada trabajo',
  'Whole: {1} lines.': 'Entero: {1} líneas.',
  'Check number of the last: {1}. Compare it with one on paper: only that shows that the end was not cut off.':
    'Número de control de la última: {1}. Compárelo con uno en papel: solo eso muestra que no se cortó el final.',
  'Not whole.': 'No está entero.',
  '{1} lines are good before it.': '{1} líneas están bien antes.',
  'It reads every line as it was sealed and works every job out again. It changes nothing and may be stopped.':
    'Lee cada línea tal como se selló y vuelve a calcular cada trabajo. No cambia nada y se puede detener.',
  'It is ready.': 'Está lista.',
  'Save it on this machine': 'Guardarla en esta máquina',
  'Check the whole log': 'Comprobar toda la bitácora',
  'Make the export': 'Hacer la exportación',
} as const satisfies Catalogue;
