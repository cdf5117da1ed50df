// What the browser adds to plain forms. Every page works without it; nothing here decides anything.

const TWICE_MS = 500;
const KEEPING_MS = 400;

const all = (selector, within = document) => [...within.querySelectorAll(selector)];

// One act, one post: a second tap is the same act, and a card that was redrawn under the finger is not meant.
let sentAt = -TWICE_MS;
document.addEventListener(
  'submit',
  (event) => {
    const form = event.target;
    const again = event.timeStamp - sentAt < TWICE_MS || form.classList.contains('htmx-request');
    if (again && !form.hasAttribute('data-always')) {
      event.preventDefault();
      event.stopImmediatePropagation();
      return;
    }
    sentAt = event.timeStamp;
    if (!form.hasAttribute('hx-post')) keeping(true);
  },
  true,
);

let keepingTimer = 0;
function showKeeping(shown) {
  for (const note of all('[data-keeping]')) note.hidden = !shown;
}
function keeping(busy) {
  clearTimeout(keepingTimer);
  if (busy) keepingTimer = setTimeout(showKeeping, KEEPING_MS, true);
  else showKeeping(false);
}
window.addEventListener('pageshow', () => keeping(false));

// Nothing is swapped when the server is away, so that what was typed stays where it stands.
function away(isAway, words = 'text') {
  const banner = document.getElementById('away');
  const text = isAway ? banner?.dataset[words] : '';
  if (!banner || banner.textContent === text) return;
  banner.textContent = text;
  banner.hidden = !isAway;
}

// An act whose answer never came may have been kept or not: the server is asked by the number that the act carried,
// until it answers. Sent again by hand it counts once all the same.
const ASK_MS = 1500;
let asking = 0;
function askWhetherKept(requestId) {
  away(true, 'unknown');
  clearTimeout(asking);
  asking = setTimeout(async () => {
    const bench = location.pathname.startsWith('/practice/') ? '/practice' : '';
    const headers = { accept: 'application/json', 'by-itself': '1' };
    const answer = await fetch(`${bench}/sent/${requestId}`, { headers }).catch(() => null);
    if (!answer || answer.status >= 500) askWhetherKept(requestId);
    else if (!answer.ok) away(true, 'unasked');
    else if ((await answer.json()).kept) location.reload();
    else away(true, 'unkept');
  }, ASK_MS);
}
document.addEventListener('htmx:beforeRequest', (event) => {
  clearTimeout(asking);
  if (event.detail.requestConfig.verb === 'post') keeping(true);
});
document.addEventListener('htmx:afterRequest', (event) => {
  keeping(false);
  const { xhr, requestConfig } = event.detail;
  const requestId = requestConfig.verb === 'post' && requestConfig.formData?.get('requestId');
  if (xhr.status === 0 && requestId) askWhetherKept(requestId);
  else away(xhr.status === 0 || xhr.status >= 500);
});
window.addEventListener('offline', () => away(true));
window.addEventListener('online', () => away(false));

// The first wrong field, or the first answer to choose from.
const firstWrong = (within) => within.querySelector('[aria-invalid="true"], [data-wrong] input');
// A page that was loaded whole after a refusal begins there as well.
if (document.querySelector('.refusal')) firstWrong(document)?.focus();
// So does a calculation that was asked for, and not only typed at: what is wrong or missing there stands beside its field.
document.addEventListener('htmx:afterSettle', (event) => {
  const { verb, triggeringEvent } = event.detail.requestConfig ?? {};
  if (verb !== 'get' || triggeringEvent?.type !== 'submit') return;
  const said = document.querySelector('.figure > .said:not(:empty)');
  said?.closest('.figure').querySelector('.control').focus();
});

// After an act the place to go on is the wrong field, then the refusal, then the instruction of the open card.
document.addEventListener('htmx:afterSettle', (event) => {
  offerDrafts();
  // A line that was opened is another element than the one that was pressed.
  if (event.detail.elt.matches('details.line')) event.detail.elt.querySelector('summary').focus();
  if (event.detail.requestConfig?.verb !== 'post') return;
  const within = event.detail.elt.isConnected ? event.detail.elt : document;
  const next =
    firstWrong(within) ??
    within.querySelector('.refusal[data-focus]') ??
    within.querySelector('[data-focus]');
  // Whoever counts from the line at the foot goes on there; the line says which card it answers now.
  const atFoot = event.detail.requestConfig.elt?.matches('[data-from-reply]') && next?.matches('h2');
  (atFoot ? (document.getElementById('reply') ?? next) : next)?.focus({ preventScroll: true });
  // The whole card comes into reach, not its heading alone: the way on stands at its end.
  (next?.closest('.card') ?? next)?.scrollIntoView({ block: 'start' });
});

// What was understood counts by Enter on its button; whatever is typed or scanned there, or outside of any field, goes
// to the line at the foot instead.
const TAKES_KEYS = 'input, select, textarea, button, a, summary';
document.addEventListener('keydown', (event) => {
  const isTyped =
    event.key.length === 1 && event.key !== ' ' && !event.ctrlKey && !event.altKey && !event.metaKey;
  const line = document.getElementById('reply');
  if (!isTyped || !line) return;
  if (event.target.matches?.('[data-count]')) line.select();
  else if (!event.target.closest?.(TAKES_KEYS)) line.focus({ preventScroll: true });
});

document.addEventListener('click', (event) => {
  const key = event.target.closest?.('[data-key]');
  const field = key && document.getElementById(key.closest('[data-pin-for]').dataset.pinFor);
  if (!field) return;
  const pressed = key.dataset.key;
  if (pressed === 'clear') field.value = '';
  else field.value = pressed === 'rub' ? field.value.slice(0, -1) : field.value + pressed;
});

// A scanner types and sends Enter: that goes on to the next blank field, and sends the form once none is left.
document.addEventListener('keydown', (event) => {
  const field = event.target;
  if (event.key !== 'Enter' || !field.matches?.('input[data-scan], form[data-draft] input[inputmode="text"]'))
    return;
  const fields = draftFields(field.form);
  const next = fields.slice(fields.indexOf(field) + 1).find((other) => !isBox(other) && other.value === '');
  if (!next) return;
  event.preventDefault();
  next.focus();
});

// Drafts: what was typed and not sent, by form and person, offered after a reload and never filled in unasked.
// A form that comes with another request id than the draft was sent with shows that the draft arrived.
const draftKey = (form) => `draft ${document.documentElement.dataset.person} ${form.dataset.draft}`;
const draftFields = (form) =>
  [...form.elements].filter(
    (field) =>
      field.name && !['hidden', 'password', 'submit', 'button', 'fieldset', 'file'].includes(field.type),
  );
const isBox = (field) => field.type === 'radio' || field.type === 'checkbox';
const written = (form) => draftFields(form).map((field) => (isBox(field) ? field.checked : field.value));
const requestOf = (form) => form.elements.requestId?.value;

function store(key, value) {
  try {
    if (value === undefined) localStorage.removeItem(key);
    else localStorage.setItem(key, JSON.stringify(value));
  } catch {
    // A browser that keeps nothing, or a full one: the form itself still works.
  }
}
function stored(key) {
  try {
    return JSON.parse(localStorage.getItem(key));
  } catch {
    return null;
  }
}
function remember(form, sent) {
  store(draftKey(form), { values: written(form), sent, at: new Date().toTimeString().slice(0, 5) });
}
function forget(form) {
  store(draftKey(form));
  form.querySelector('.draft')?.remove();
}
document.addEventListener('input', (event) => {
  const form = event.target.form;
  if (form?.dataset.draft) remember(form);
});
document.addEventListener('submit', (event) => {
  if (event.target.dataset.draft) remember(event.target, requestOf(event.target));
});

function offerDrafts() {
  for (const form of all('form[data-draft]')) {
    const draft = stored(draftKey(form));
    if (!draft || form.querySelector('.draft')) continue;
    const arrived = draft.sent !== undefined && draft.sent !== requestOf(form);
    const fields = draftFields(form);
    if (arrived || draft.values.length !== fields.length) store(draftKey(form));
    else if (JSON.stringify(draft.values) !== JSON.stringify(written(form))) offer(form, draft);
  }
}
function offer(form, draft) {
  const shown = document.getElementById('draft-offer').content.firstElementChild.cloneNode(true);
  shown.querySelector('[data-when]').textContent = draft.at;
  shown.querySelector('[data-restore]').addEventListener('click', () => {
    draftFields(form).forEach((field, at) => {
      if (isBox(field)) field.checked = draft.values[at];
      else field.value = draft.values[at];
      if (field.value !== field.defaultValue) unfold(field);
    });
    shown.remove();
    draftFields(form)[0]?.focus();
  });
  shown.querySelector('[data-discard]').addEventListener('click', () => forget(form));
  form.prepend(shown);
  unfold(form);
}
// Nothing that was typed is offered or put back where nobody sees it.
function unfold(part) {
  for (let at = part.closest('details'); at; at = at.parentElement.closest('details')) at.open = true;
}

// The look of the screen changes at once and is kept in the cookie that the server reads for the next page.
document.addEventListener('submit', (event) => {
  const button = event.target.matches('.screen-choice') && event.submitter;
  if (!button) return;
  event.preventDefault();
  // biome-ignore lint/suspicious/noDocumentCookie: the newer interface is missing in browsers that a shop still has
  document.cookie = `screen=${button.value}; path=/; max-age=31536000; samesite=strict`;
  document.documentElement.dataset.theme = button.dataset.theme;
  document.documentElement.dataset.contrast = button.dataset.contrast;
  for (const other of all('.screen-choice button'))
    other.setAttribute('aria-pressed', String(other === button));
});

// A browser that goes back to where it was would do so after this, past the card.
if (!location.hash && document.getElementById('card')) {
  history.scrollRestoration = 'manual';
  document.getElementById('card').scrollIntoView({ block: 'start' });
}
offerDrafts();

// News of other screens, and of the end of the time at this one, can wait until the page stands.
const later = () => import('./later.js');
if (document.readyState === 'complete') later();
else window.addEventListener('load', later);
