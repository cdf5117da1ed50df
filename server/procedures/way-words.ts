/** How a way is called that has no outcome of its own. */
export const WAY_WORDS = {
  ANSWER: 'done',
  SIGN: 'signed',
  SEND_BACK: 'sent back',
  GO_ON: 'gone on',
  WAIVE: 'waived',
} as const;
