// Answers that still waited on this device when their attempt was closed: they go now, are kept as late, and the page then says so.

const closed = document.querySelector("[data-closed]");
const { closed: attempt, save } = closed.dataset;
const store = `waiting:${attempt}`;

function read() {
  try { return Object.entries(JSON.parse(localStorage.getItem(store) || "{}")); } catch { return []; }
}

async function gone([, note]) {
  const body = new URLSearchParams(note.pairs);
  body.set("client_key", note.key);
  body.set("csrfmiddlewaretoken", document.querySelector("[name=csrfmiddlewaretoken]").value);
  const reply = await fetch(save, { method: "POST", body, headers: { Accept: "application/json" } }).catch(() => null);
  return (await reply?.json().catch(() => null)) != null; // a page, or nothing, came back: it waits on
}

async function send(waiting) {
  const left = [];
  for (const one of waiting) if (!(await gone(one))) left.push(one);
  if (left.length) return localStorage.setItem(store, JSON.stringify(Object.fromEntries(left)));
  localStorage.removeItem(store);
  location.reload();
}

const waiting = read();
if (waiting.length) send(waiting);
