import type { Catalogue } from '../patterns.ts';

/** How the server stands: space, backups, checks of the log. */
export const serverState = {
  'A backup counts only when every line of it was read and found whole. The folder with the keys is not in it: back that up apart.':
    'Una copia cuenta solo cuando cada una de sus líneas se leyó y estaba entera. La carpeta de las claves no va en ella: cópiela aparte.',
  'at {1}': 'a las {1}',
  Backups: 'Copias de seguridad',
  'Nothing wants seeing to.': 'No hay nada que atender.',
  'See to it now.': 'Atiéndalo ahora.',
  Server: 'Servidor',
  'State of the server': 'Estado del servidor',
  'The log': 'La bitácora',
  'The program': 'El programa',
  'There is no encryption: whoever is on this network can read PINs.':
    'No hay cifrado: quien esté en esta red puede leer los PIN.',
  'No checkpoints are kept: a log that was cut short would not show.':
    'No se guardan puntos de control: no se notaría si se cortara la bitácora.',
  'The log takes no work, because it is not the one that was here before. {1}':
    'La bitácora no admite trabajo, porque no es la que estaba aquí antes. {1}',
  'The last checkpoint could not be written. Look at the disk that the key lies on.':
    'El último punto de control no se pudo escribir. Mire el disco en que está la clave.',
  'Only {1} are free on the disk of the log. Make room: on a full disk no act is kept.':
    'Solo quedan {1} libres en el disco de la bitácora. Haga sitio: en un disco lleno no se guarda ningún acto.',
  'Only {1} are free where the backups go, and one takes {2}. Make room there.':
    'Solo quedan {1} libres donde van las copias, y una ocupa {2}. Haga sitio allí.',
  'This server makes no backups by itself. Name a folder for them in YOKESIDE_BACKUPS, on another disk.':
    'Este servidor no hace copias por sí mismo. Nombre una carpeta para ellas en YOKESIDE_BACKUPS, en otro disco.',
  'The backup of {1} failed. {2}': 'La copia del {1} falló. {2}',
  'The log lies in a database: back that up by its own means, and check the log on the page “Is the log whole?”.':
    'La bitácora está en una base de datos: cópiela con los medios de esta, y compruebe la bitácora en la página «¿Está entera la bitácora?».',
  'No backup was ever made.': 'Nunca se hizo una copia.',
  'The last backup is of {1}, and one is due every {2} hours.':
    'La última copia es del {1}, y toca una cada {2} horas.',
  'The log has lost {1} photos. Look for them in an older backup.':
    'La bitácora ha perdido {1} fotos. Búsquelas en una copia más antigua.',
  'The backups lie on the same disk as the log. If it breaks, both are gone: name a folder on another one.':
    'Las copias están en el mismo disco que la bitácora. Si se rompe, se pierden ambas: nombre una carpeta en otro.',
  'The whole log was never read again. Check it on the page “Is the log whole?”.':
    'La bitácora entera no se ha vuelto a leer nunca. Compruébela en la página «¿Está entera la bitácora?».',
  'On {1} the log was found not whole. Make the work safe and stop.':
    'El {1} se halló que la bitácora no está entera. Deje el trabajo seguro y pare.',
  'The whole log was read last on {1}. Check it once a week: a disk can change what it holds.':
    'La bitácora entera se leyó por última vez el {1}. Compruébela una vez por semana: un disco puede cambiar lo que guarda.',
  'check number': 'número de comprobación',
  'size on the disk': 'tamaño en el disco',
  'free on its disk': 'libre en su disco',
  'read whole last': 'leída entera por última vez',
  'whole, {1} lines, {2}': 'entera, {1} líneas, {2}',
  'NOT whole, {1}': 'NO está entera, {1}',
  'last checkpoint': 'último punto de control',
  'none yet': 'ninguno aún',
  'line {1}, {2}': 'línea {1}, {2}',
  Node: 'Node',
  SQLite: 'SQLite',
  'made by this server': 'hechas por este servidor',
  'last one': 'última',
  'its check': 'su comprobación',
  'whole, {1} lines, check number {2}': 'entera, {1} líneas, número de comprobación {2}',
  'next one due': 'toca la siguiente',
  'how often': 'cada cuánto',
  'each hour': 'cada hora',
  'every {1} hours': 'cada {1} horas',
  'kept for': 'se guardan',
  '1 day': '1 día',
  '{1} days': '{1} días',
  'free there': 'libre allí',
  folder: 'carpeta',
  release: 'versión',
  'runs since': 'en marcha desde',
  memory: 'memoria',
  'not known': 'no se sabe',
  never: 'nunca',
  'The server went away before it answered. Whether this was kept is not known: do not go on yet. It is being asked.':
    'El servidor se fue antes de responder. No se sabe si esto se guardó: no siga todavía. Se le está preguntando.',
  'This was not kept. Send it again.': 'Esto no se guardó. Envíelo otra vez.',
  'Whether this was kept is not known. Sign in, and look at the record before you go on.':
    'No se sabe si esto se guardó. Entre, y mire el registro antes de seguir.',
} as const satisfies Catalogue;
