import type { Catalogue } from '../patterns.ts';

/** Work that goes on for a while, and intervals that are proposed for the plant. */
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
} as const satisfies Catalogue;
