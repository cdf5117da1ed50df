import type { Catalogue } from '../patterns.ts';

/** A procedure as a form for paper. */
export const paperForm = {
  'Revision {1}. To be filled by hand where no screen is at hand. Nothing is recorded by it: what is written here is entered afterwards, each reading with the time at which it was read (UTC) and the reason why so late. Who did it enters it; who signed here proves it there by PIN.':
    'Revisión {1}. Para llenar a mano donde no haya pantalla. No registra nada: lo escrito aquí se pasa después, cada lectura con la hora a la que se leyó (UTC) y el motivo del retraso. Lo pasa quien lo hizo; quien firmó aquí lo demuestra allí con su PIN.',
  'The signature allows no further work.': 'La firma no permite más trabajo.',
  'The signature allows: {1}; nothing else.': 'La firma permite: {1}; nada más.',
  'What the signer of step {1} looks at': 'Lo que mira quien firma el paso {1}',
  'found, or read, with its gauge': 'encontrado, o leído, con su manómetro',
  'or sent back, because': 'o devuelto, porque',
  'the signer looks at': 'quien firma mira',
  'time (UTC)': 'hora (UTC)',
  to: 'a',
  'to be written': 'por escribir',
  'wait {1}: from': 'espera {1}: desde',
} as const satisfies Catalogue;
