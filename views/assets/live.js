// What other people write is shown here while it is written. Pages work without this; nothing here decides anything.
// The server only says that something changed; what it is, this page fetches for itself.

const LOST_MS = 4500;
const LOOK_MS = 500;
const ASK_AGAIN_MS = 3000;
const FRESH_MS = 5 * 60 * 1000;

const shown = () => document.querySelector('[data-live-job], [data-live-list]');
const jobOf = (root) => root?.dataset.liveJob ?? '';
const address = () =>
  `${shown()?.dataset.liveAt ?? ''}/live${jobOf(shown()) ? `?job=${encodeURIComponent(jobOf(shown()))}` : ''}`;

let source;
let askTimer = 0;
let heardAt = performance.now();
let known;
let fetching = false;
let askedMeanwhile = false;

function heard() {
  heardAt = performance.now();
  link(true);
}

// A lost link is said plainly, and what would post into the dark is switched off; making safe never is.
function link(isThere) {
  const root = document.documentElement;
  const wasThere = root.dataset.link !== 'lost';
  if (isThere === wasThere) return;
  const banner = document.getElementById('away');
  if (banner) {
    banner.textContent = isThere ? '' : banner.dataset.text;
    banner.hidden = isThere;
  }
  if (isThere) {
    delete root.dataset.link;
    for (const button of document.querySelectorAll('[data-off]')) {
      button.disabled = false;
      delete button.dataset.off;
    }
  } else {
    root.dataset.link = 'lost';
    for (const button of document.querySelectorAll('main form[method="post"]:not([data-always]) button')) {
      if (button.disabled) continue;
      button.disabled = true;
      button.dataset.off = '';
    }
  }
}

async function ask() {
  const answer = await fetch(address(), { headers: { accept: 'application/json' } }).catch(() => null);
  if (!answer?.ok) return;
  heard();
  changed((await answer.json()).place);
}

function changed(place) {
  const root = shown();
  if (!root) return;
  if (jobOf(root)) {
    // The own act is told of too, often before its answer is here, and that answer shows it already.
    if (document.querySelector('.htmx-request')) setTimeout(changed, LOOK_MS, place);
    else if (place > Number(root.dataset.livePlace)) refresh();
  } else {
    // What was written between the making of this page and its first question counts too.
    known ??= Number(root.dataset.livePlace);
    if (place !== known) refresh();
    known = place;
  }
}

function isTyping(root) {
  const fields = [...root.querySelectorAll('input:not([type="hidden"]), select, textarea')];
  const isTouched = (field) => {
    if (field.type === 'radio' || field.type === 'checkbox') return field.checked !== field.defaultChecked;
    if (field.tagName !== 'SELECT') return field.value !== field.defaultValue;
    const first = [...field.options].find((option) => option.defaultSelected) ?? field.options[0];
    return field.value !== (first?.value ?? '');
  };
  return fields.some((field) => isTouched(field) || field === document.activeElement);
}

// While somebody types nothing is swapped under their fingers: they are told, and swap it themselves.
async function refresh(asked = false) {
  const root = shown();
  if (!root) return;
  if (fetching) {
    askedMeanwhile = true;
    return;
  }
  if (document.querySelector('.htmx-request')) {
    setTimeout(refresh, LOOK_MS);
    return;
  }
  if (isTyping(root) && !asked) {
    await tellAbout(root);
    return;
  }
  fetching = true;
  const place = root.dataset.livePlace;
  const hadFocus = root.contains(document.activeElement);
  const target = `#${root.id}`;
  // Nobody touched the screen for this: it does not keep them signed in.
  const headers = asked ? {} : { 'by-itself': 'yes' };
  const how = { target, swap: 'outerHTML', headers, ...(jobOf(root) ? {} : { select: target }) };
  await htmx.ajax('GET', location.pathname, how).catch(() => undefined);
  fetching = false;
  if (askedMeanwhile) {
    askedMeanwhile = false;
    setTimeout(refresh, LOOK_MS);
  }
  const now = shown();
  if (!now) return;
  if (hadFocus) now.querySelector('[data-focus]')?.focus({ preventScroll: true });
  const isNew = now.dataset.livePlace !== place;
  news(jobOf(now) && isNew && !asked ? 'answered' : '', now.dataset.liveSaid);
}

async function tellAbout(root) {
  const headers = { 'HX-Request': 'true', accept: 'text/html', 'by-itself': 'yes' };
  const answer = await fetch(location.pathname, { headers }).catch(() => null);
  if (!answer?.ok) return;
  const page = new DOMParser().parseFromString(await answer.text(), 'text/html');
  const said = page.querySelector('[data-live-said]')?.dataset.liveSaid;
  news(jobOf(root) ? 'answeredTyping' : 'listChanged', said);
}

// What can be said stands in the page, in its language; `which` is its name there, or blank for nothing.
const ACTS = { answeredTyping: 'showCard', listChanged: 'showList' };
function news(which, said = '') {
  const strip = document.getElementById('news');
  if (!strip) return;
  strip.hidden = which === '';
  strip.querySelector('[data-news]').textContent = (strip.dataset[which] ?? '').replace('{said}', () => said);
  const button = strip.querySelector('[data-show]');
  button.hidden = !ACTS[which];
  button.textContent = strip.dataset[ACTS[which]] ?? '';
}

document.addEventListener('click', (event) => {
  if (event.target.closest?.('[data-show]')) refresh(true);
  if (event.target.closest?.('[data-shut]')) news('');
});
// What the own act answered needs no telling.
document.addEventListener('htmx:afterSettle', (event) => {
  if (event.detail.requestConfig?.verb === 'post') news('');
});

function listen() {
  stop();
  source = new EventSource(address());
  source.addEventListener('open', () => ask());
  source.addEventListener('beat', heard);
  source.addEventListener('message', ({ data }) => {
    heard();
    const { place } = JSON.parse(data);
    if (jobOf(shown())) changed(place);
    else setTimeout(ask, LOOK_MS);
  });
  source.addEventListener('error', () => {
    // Too many screens listen, or the server does not tell: ask instead.
    if (source?.readyState === EventSource.CLOSED && !askTimer) askTimer = setInterval(ask, ASK_AGAIN_MS);
  });
}
function stop() {
  source?.close();
  source = undefined;
  clearInterval(askTimer);
  askTimer = 0;
}

// A browser has few connections to one server: a page that nobody sees lets its own go.
function seen() {
  if (document.hidden) {
    stop();
    return;
  }
  heardAt = performance.now();
  listen();
}

if (shown()) {
  document.addEventListener('visibilitychange', seen);
  window.addEventListener('pagehide', stop);
  window.addEventListener('pageshow', (event) => event.persisted && seen());
  seen();
  setInterval(() => {
    if (!document.hidden && performance.now() - heardAt > LOST_MS) link(false);
  }, LOOK_MS);
  // A page that is signed on says something only for a while: where nobody types, it is fetched anew.
  setInterval(() => {
    const root = shown();
    if (root?.querySelector('input[name="nonce"]') && !isTyping(root)) refresh();
  }, FRESH_MS);
}
