// Who is about to be signed out is told in time, and any key or touch keeps them in. Pages work without this; the
// server alone decides who is signed in.

const WARN_S = 120;
const ASK_AGAIN_S = 30;

const strip = document.getElementById('staying');
let timer = 0;
let canBeKept = false;

function lookIn(seconds) {
  clearTimeout(timer);
  timer = setTimeout(look, Math.max(1, seconds) * 1000);
}

async function look(asked = {}) {
  const headers = { accept: 'application/json', ...asked.headers };
  const answer = await fetch('/signed-in', { ...asked, headers }).catch(() => null);
  // Away, or refused since it is over: asking once more tells which.
  if (!answer?.ok) {
    lookIn(answer?.status === 401 ? 1 : ASK_AGAIN_S);
    return;
  }
  show(await answer.json());
}

const stay = () => look({ method: 'POST', body: '{}', headers: { 'content-type': 'application/json' } });

function show({ person, endsInS, canStay }) {
  const isOver = person !== document.documentElement.dataset.person;
  const isNear = endsInS <= WARN_S;
  canBeKept = !isOver && isNear && canStay;
  if (isOver) say('over');
  else if (!isNear) say('');
  else say(canStay ? 'idle' : 'shift', endsInS);
  if (!isOver) lookIn(isNear ? endsInS + 1 : endsInS - WARN_S);
}

function say(which, endsInS = 0) {
  strip.hidden = which === '';
  const text = which === '' ? '' : strip.dataset[which];
  const minutes = Math.max(1, Math.ceil(endsInS / 60));
  strip.querySelector('[data-said]').textContent = text.replace('{minutes}', minutes);
  strip.querySelector('[data-stay]').hidden = which !== 'idle';
  strip.querySelector('[data-in]').hidden = which !== 'over';
}

function touched() {
  if (!canBeKept) return;
  canBeKept = false;
  stay();
}

if (strip) {
  document.addEventListener('keydown', touched, true);
  document.addEventListener('pointerdown', touched, true);
  lookIn(Number(strip.dataset.first) - WARN_S);
}
