// An attempt on a phone with weak signal: each answer goes by itself, waits while there is no signal, and is never sent as another.
// The page works without this file: every answer has its own button.

const page = document.querySelector("[data-attempt]");
const forms = page ? [...page.querySelectorAll("form[data-answer]")] : [];
const store = `waiting:${location.pathname}`;
const words = page ? page.dataset : {};
const RETRY_MS = 4000;
const PAUSE_MS = 700;
const GRACE_MS = 31000; // the server takes answers for half a minute past the end

const waiting = new Map(Object.entries(JSON.parse(read() || "{}")));
let sending = null;
let elsewhere = ""; // the page that has more to say than this one

function read() {
  try { return localStorage.getItem(store); } catch { return null; }
}

// Another tab may keep answers of the same attempt: only what this one noted is written over or taken away.
function keep(task, gone) {
  const all = JSON.parse(read() || "{}");
  const note = waiting.get(task);
  if (note) all[task] = note;
  else if (all[task]?.key === gone?.key) delete all[task];
  try { Object.keys(all).length ? localStorage.setItem(store, JSON.stringify(all)) : localStorage.removeItem(store); } catch { /* private window: the page itself still holds what was typed */ }
}

const formOf = (task) => forms.find((form) => form.elements.task.value === task);
const newKey = () => crypto.randomUUID?.() ?? "10000000-1000-4000-8000-100000000000".replace(/[018]/g, (c) => (c ^ (crypto.getRandomValues(new Uint8Array(1))[0] & (15 >> (c / 4)))).toString(16));

function say(form, text, kind) {
  const line = form.querySelector("[data-state] .st");
  line.className = `st ${kind}`;
  line.lastChild.textContent = text;
  draw(line, kind.slice(3)); // symbols are called as the classes of their lines: met, open, miss
}

function draw(line, symbol) {
  const use = line.querySelector("use");
  use?.setAttribute("href", use.getAttribute("href").replace(/#.*/, `#${symbol}`));
}

function mark(line, done) {
  line.classList.toggle("st-met", done);
  line.classList.toggle("st-open", !done);
  draw(line, done ? "met" : "open");
}

function count(task, answered) {
  const item = document.querySelector(`[data-sum="${task}"]`);
  item.querySelector("[data-open]").hidden = answered;
  mark(item.querySelector(".st"), answered);
  const items = [...document.querySelectorAll("[data-sum]")];
  const done = items.filter((one) => one.querySelector("[data-open]").hidden).length;
  const line = document.querySelector(".strip [data-count]");
  line.querySelector("[data-count-words]").textContent = words.countWords.replace("{done}", done).replace("{all}", items.length);
  mark(line, done === items.length);
}

function signal(there) {
  const box = page.querySelector("[data-no-signal]");
  if (box) box.hidden = there;
  page.parentElement.querySelector("[data-hand-in] button")?.toggleAttribute("disabled", !there && waiting.size > 0);
}

function typed(form) {
  return JSON.stringify([...new FormData(form).entries()].filter(([name]) => name === "value" || name === "none"));
}

// What was typed before this file was here: a field that is no longer as the server sent it.
function touched(field) {
  if (field.matches("select")) return field.selectedIndex !== Math.max(0, [...field.options].findIndex((one) => one.defaultSelected));
  return field.matches("[type=radio],[type=checkbox]") ? field.checked !== field.defaultChecked : field.value !== field.defaultValue;
}

function note(form) {
  const data = new FormData(form);
  data.delete("csrfmiddlewaretoken");
  const before = waiting.get(form.elements.task.value);
  const unheard = before ? [...before.unheard, before.key] : []; // sent perhaps, but never acknowledged here
  waiting.set(form.elements.task.value, { pairs: [...data.entries()], key: newKey(), unheard });
  keep(form.elements.task.value);
  // A sentence that stands here stays until the reply: nothing below may move while a finger is on its way to it.
  if (!form.querySelector("[data-state] .st-miss")) say(form, words.sendingWords, "st-open");
}

async function send(task) {
  const form = formOf(task);
  const note = waiting.get(task);
  if (!form || !note) { waiting.delete(task); return true; }
  const body = new URLSearchParams(note.pairs);
  body.set("client_key", note.key);
  body.set("seen", form.elements.seen.value);
  note.unheard.forEach((key) => body.append("unheard", key));
  body.set("csrfmiddlewaretoken", form.elements.csrfmiddlewaretoken.value);
  let reply;
  try {
    reply = await fetch(form.action, { method: "POST", body, headers: { Accept: "application/json" }, credentials: "same-origin" });
  } catch {
    signal(false);
    return wait();
  }
  if (reply.status >= 500 || reply.status === 429) return wait();
  if (!reply.headers.get("Content-Type")?.includes("json")) return askAgain(task, note);
  signal(true);
  const newest = waiting.get(task) === note;
  if (newest) waiting.delete(task);
  else waiting.get(task).unheard = [];
  keep(task, note);
  settle(form, reply.status, await reply.json(), newest);
  return true;
}

function wait() {
  for (const task of waiting.keys()) if (formOf(task)) say(formOf(task), words.waitingWords, "st-open");
  return false;
}

// A page came back where an answer was asked for: signed out, or the form is too old. What was typed waits for the page loaded anew.
function askAgain(task, note) {
  if (!note.asked) {
    note.asked = true;
    keep(task);
    location.reload();
  }
  return wait();
}

function settle(form, status, answer, newest) {
  if (status === 409 || status === 410) { elsewhere = answer.page; return; } // two answers, or too late: the page shows both and asks
  if (status === 200) form.elements.seen.value = answer.sequence;
  if (!newest) return; // a newer one is on its way, and says so itself
  if (status === 200) {
    form.querySelector(".invalid-feedback")?.remove();
    refuse(form, false);
    say(form, answer.words, answer.answered ? "st-met" : "st-open");
    const last = document.querySelector("[data-last-saved]");
    if (last) { last.replaceChildren(...form.querySelector("[data-state] .st").cloneNode(true).childNodes); last.className = "st st-met"; draw(last, "met"); }
    count(form.elements.task.value, answer.answered);
  } else {
    say(form, answer.error, "st-miss");
    refuse(form, true);
  }
}

function refuse(form, refused) {
  const field = form.querySelector(".form-control");
  field?.classList.toggle("is-invalid", refused);
  field?.setAttribute("aria-invalid", refused);
}

function flush() {
  sending ??= sendAll().finally(() => {
    sending = null;
    if (waiting.size) setTimeout(flush, RETRY_MS);
  });
  return sending;
}

async function sendAll() {
  while (waiting.size) {
    const [task] = waiting.keys();
    if (!(await send(task))) return;
  }
  if (!elsewhere) return; // what still waited has gone now too
  location.assign(elsewhere);
  if (new URL(elsewhere, location).pathname === location.pathname) location.reload(); // the page itself, as it is now
}

for (const form of forms) {
  let pause;
  form.querySelector("[data-keep]").hidden = true; // each answer goes by itself
  let last = typed(form);
  const go = () => {
    clearTimeout(pause);
    if (typed(form) === last) return;
    last = typed(form);
    note(form);
    flush();
  };
  form.addEventListener("input", (event) => {
    clearTimeout(pause);
    if (event.target.matches("[data-none]") && event.target.checked) form.querySelectorAll("[name=value]").forEach((box) => { box.checked = false; });
    else if (event.target.type === "checkbox" && event.target.checked) form.querySelectorAll("[data-none]").forEach((box) => { box.checked = false; });
    if (!event.target.matches("[type=radio],[type=checkbox]")) pause = setTimeout(go, PAUSE_MS);
  });
  form.addEventListener("change", go);
  addEventListener("pagehide", () => { if (typed(form) !== last) note(form); }); // typed in the last moment: it waits on this device
  form.addEventListener("submit", (event) => { event.preventDefault(); go(); });
  if ([...form.querySelectorAll("[name=value],[name=none]")].some(touched)) { last = ""; go(); }
}

document.querySelector("[data-hand-in]")?.addEventListener("submit", async (event) => {
  if (!waiting.size) return;
  event.preventDefault();
  await flush();
  if (waiting.size || elsewhere) return;
  const refused = forms.find((form) => form.querySelector("[data-state] .st-miss"));
  if (refused) refused.querySelector("[name=value]:not([type=hidden]), select").focus(); // its sentence stands there; pressed again, it is left open
  else event.target.submit();
});

const left = document.querySelector("[data-left]");
if (left) {
  const end = Date.now() + Number(left.dataset.left) * 1000;
  const said = document.querySelector("[data-left-said]");
  const tick = () => {
    const minutes = Math.max(0, Math.ceil((end - Date.now()) / 60000));
    const text = words.leftWords.replace("{minutes}", minutes);
    if (left.textContent !== text) {
      left.textContent = text;
      if (said && [10, 5, 1].includes(minutes)) said.textContent = text;
    }
    if (Date.now() <= end + GRACE_MS) setTimeout(tick, 1000);
    else if (waiting.size || !navigator.onLine) setTimeout(tick, RETRY_MS); // what waits goes first, and is told that it is late
    else location.reload();
  };
  tick();
}

if (page) {
  for (const [task, note] of waiting) restore(formOf(task), note);
  addEventListener("online", flush);
  addEventListener("offline", () => signal(false));
  if (waiting.size) flush();
}

function restore(form, note) {
  if (!form) return;
  const given = new Map(note.pairs);
  const values = note.pairs.filter(([name]) => name === "value").map(([, value]) => value);
  if (form.querySelector("[data-steps-list]")) form.dispatchEvent(new CustomEvent("restore", { detail: values }));
  form.querySelectorAll("[name=value]:not([type=hidden]),[name=none]").forEach((field) => {
    if (field.matches("select")) field.value = [...field.options].map((one) => one.value).find((one) => one && values.includes(one)) ?? "";
    else if (field.matches("[type=radio],[type=checkbox]")) field.checked = note.pairs.some(([name, value]) => name === field.name && value === field.value);
    else field.value = given.get("value") ?? "";
  });
  say(form, words.waitingWords, "st-open");
}
