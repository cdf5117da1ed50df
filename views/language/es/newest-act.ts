import type { Catalogue } from '../patterns.ts';

/** What another screen has just done to the job that this one shows. */
export const newestAct = {
  '{said} This is the job now.': '{said} Así está ahora el trabajo.',
  '{said} What you typed stays here until you show the new card.':
    '{said} Lo que escribió queda aquí hasta que muestre la tarjeta nueva.',
  '{1} Your card was open then.': '{1} Su tarjeta estaba abierta en ese momento.',
  'Answered by {ownWho} at {at} UTC.': 'Respondido por {ownWho} a las {at} UTC.',
  'Signed by {ownWho} at {at} UTC.': 'Firmado por {ownWho} a las {at} UTC.',
  'Sent back by {ownWho} at {at} UTC.': 'Devuelto por {ownWho} a las {at} UTC.',
  'Something beside the work was noted by {ownWho} at {at} UTC.':
    '{ownWho} anotó algo aparte del trabajo a las {at} UTC.',
  'Left for later by {ownWho} at {at} UTC.': 'Dejado para más tarde por {ownWho} a las {at} UTC.',
  'Taken up again by {ownWho} at {at} UTC.': 'Retomado por {ownWho} a las {at} UTC.',
  'Handed over by {ownWho} at {at} UTC.': 'Entregado por {ownWho} a las {at} UTC.',
  'Gone on with as another job by {ownWho} at {at} UTC.':
    '{ownWho} lo siguió como otro trabajo a las {at} UTC.',
  'Locks taken off for somebody away by {ownWho} at {at} UTC.':
    '{ownWho} quitó los candados de quien no está a las {at} UTC.',
  'Made safe and stopped by {ownWho} at {at} UTC.': 'Puesto a salvo y parado por {ownWho} a las {at} UTC.',
  'Taken back to an earlier step by {ownWho} at {at} UTC.':
    '{ownWho} volvió a un paso anterior a las {at} UTC.',
  'An earlier line was corrected by {ownWho} at {at} UTC.':
    '{ownWho} corrigió una línea anterior a las {at} UTC.',
  'Shown safe again by {ownWho} at {at} UTC.': 'Demostrado otra vez por {ownWho} a las {at} UTC.',
  'Read a second time by {ownWho} at {at} UTC.': 'Leído por segunda vez por {ownWho} a las {at} UTC.',
  'A verdict was set aside by {ownWho} at {at} UTC.': '{ownWho} dejó de lado un veredicto a las {at} UTC.',
  'Gone on without a signature by {ownWho} at {at} UTC.': '{ownWho} siguió sin una firma a las {at} UTC.',
  'A signature by radio was confirmed by {ownWho} at {at} UTC.':
    '{ownWho} confirmó una firma por radio a las {at} UTC.',
  'A signature by radio was denied by {ownWho} at {at} UTC.':
    '{ownWho} negó una firma por radio a las {at} UTC.',
} as const satisfies Catalogue;
