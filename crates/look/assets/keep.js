// Forms with data-keep are sent by script: what could not be sent is kept on this tablet and sent when the network is
// back, with the time of typing. The server knows each entry by its request_key and keeps it once.
//
// The answer takes the page's place without leaving it, so that no key typed meanwhile is lost. In a form with
// data-queue the next entry belongs to the next club or part: what is typed ahead follows while each is taken.
// Elsewhere it would go to the same club again, and is told instead.
import { serverNow } from "./clocks.js";
import { words } from "./words.js";

const STORE = "setwright.waiting";
// Request keys of this tablet's last entries by club: a reading that they made is no other tablet's.
const OWN = "setwright.own";
const OWN_MOST = 60;
const TRY_AGAIN_MS = 4000;
let sending = false;
// Entries typed while the one before is on its way.
let ahead = [];

export function keep() {
  document.addEventListener("submit", onSubmit);
  window.addEventListener("online", sendAll);
  setInterval(() => waiting().length && sendAll(), TRY_AGAIN_MS);
  say();
  sendAll();
}

async function onSubmit(event) {
  const form = event.target;
  if (!form.matches("[data-keep]") || event.defaultPrevented) return;
  const button = event.submitter;
  const url = button?.formAction && button.hasAttribute("formaction") ? button.formAction : form.action;
  const data = new FormData(form, button);
  if (!data.get("request_key")) return; // Without a key it could arrive twice: leave it to the browser.
  event.preventDefault();
  const field = bigEntry(form);
  if (form.dataset.busy) {
    if (field?.value.trim()) ahead.push(field.value.trim());
    emptied(form);
    return;
  }
  form.dataset.busy = "1";
  button?.setAttribute("aria-busy", "true");
  const entry = {
    url,
    body: new URLSearchParams(data).toString(),
    key: data.get("request_key"),
    what: named(form, data),
    at: new Date(serverNow()).toISOString(),
  };
  // With nothing typed it only asks where to go on: nothing to keep.
  const typed = [...form.querySelectorAll("input:not([type=hidden], [type=checkbox])")];
  const asks = typed.length > 0 && typed.every((field) => !field.value.trim());
  // Kept first, then sent: a tablet that dies in between still has it.
  if (!asks) store([...waiting(), entry]);
  emptied(form);
  try {
    const answer = await send(entry, Boolean(form.closest("[data-held]")));
    drop(entry.key);
    await show(answer, url, form);
  } catch {
    form.reset();
    const key = form.querySelector("[name=request_key]");
    if (key) key.value = freshKey();
    if (asks) tell(words("no-next"));
    else goOn(form, entry);
    notKept("lost-away");
    say();
  } finally {
    delete form.dataset.busy;
    button?.removeAttribute("aria-busy");
  }
}

// `later`: it waited, and says when it was typed.
function send(entry, later = false) {
  const body = new URLSearchParams(entry.body);
  const club = clubOf(entry.url, body);
  if (later && entry.at) body.set("at", entry.at);
  if (later && body.has("seen")) body.set("seen", [body.get("seen"), ...own().filter((one) => one.club === club).map((one) => one.key)].join(" "));
  return fetch(entry.url, {
    method: "POST",
    body,
    headers: { "Idempotency-Key": entry.key },
    signal: AbortSignal.timeout?.(10000),
  }).then((answer) => {
    // No key any more: the page leads to the door. Or the server is in trouble. The entry is kept.
    if (answer.status === 401 && location.pathname !== "/come-in") location.reload();
    if ([401, 502, 503, 504].includes(answer.status)) throw new Error("not now");
    if (answer.ok && club) keepIn(OWN, [...own(), { key: entry.key, club }].slice(-OWN_MOST));
    return answer;
  });
}

// Which club an entry belongs to: its own page names it in the address, the grid in the form.
function clubOf(url, body) {
  const [, job, place] = new URL(url, location.href).pathname.match(/^\/bench\/(\d+)\/(\d+|grid)/) ?? [];
  return job && `${job}/${place === "grid" ? body.get("slot") : place}`;
}

const bigEntry = (from) => from.querySelector("[data-bench-entry]");

function emptied(form) {
  const field = bigEntry(form);
  if (field) field.value = "";
}

// What was typed meanwhile stands in the new page's entry; what was typed ahead is sent if this entry was taken and the
// page asks for the next.
async function show(answer, url, form) {
  const page = new DOMParser().parseFromString(await answer.text(), "text/html");
  const main = page.querySelector("main");
  const place = (of) => `${of.body.className} ${of.querySelector(".places [aria-current]")?.textContent}`;
  if (!main || place(page) !== place(document)) return location.assign(answer.redirected ? answer.url : url);
  const typing = bigEntry(form)?.value ?? "";
  const asked = form.querySelector("[name=slot]")?.value;
  for (const old of document.querySelectorAll("body > .notice")) old.remove();
  const [here, head] = [document.querySelector("main"), document.querySelector(".head-title")];
  for (const notice of page.querySelectorAll("body > .notice")) here.before(document.adoptNode(notice));
  if (head && page.querySelector(".head-title")) head.replaceWith(document.adoptNode(page.querySelector(".head-title")));
  document.title = page.title;
  here.replaceWith(document.adoptNode(main));
  if (answer.redirected) history.replaceState(null, "", answer.url);
  const next = document.querySelector("form[data-queue]");
  const field = document.querySelector("[aria-invalid], [autofocus]");
  (field ?? document.querySelector("main")).focus();
  // What was refused is typed over.
  if (!answer.redirected) field?.select?.();
  document.dispatchEvent(new CustomEvent("setwright:placed"));
  if (!answer.redirected) return notKept("lost-refused");
  // A grid names its club; at the weigh-in each entry is another part.
  const goesOn = next && (!asked || next.querySelector("[name=slot]")?.value !== asked);
  const entry = bigEntry(document);
  if (ahead.length && !(goesOn && entry)) return notKept("lost-done");
  if (!entry || entry.matches("[aria-invalid]")) return;
  if (ahead.length) {
    // At once: a key heard between would join it.
    entry.value = ahead.shift();
    entry.form.requestSubmit();
    entry.value = typing;
  } else if (typing) entry.value = typing;
}

// Without network the entry of a grid goes on to the next club by itself: whoever types without looking means that one. The
// row that it leaves shows what waits; where none is left, the entry goes.
function goOn(form, entry) {
  const row = form.closest(".set-grid tr");
  if (!row) return;
  const left = [...document.querySelectorAll(".set-grid a.grid-enter")];
  const link = left.find((one) => row.compareDocumentPosition(one) & Node.DOCUMENT_POSITION_FOLLOWING) ?? left[0];
  const typed = new URLSearchParams(entry.body).get("typed");
  const waits = Object.assign(document.createElement("span"), { className: "grid-waits", textContent: `${typed} …` });
  row.classList.remove("current");
  row.removeAttribute("aria-current");
  form.replaceWith(waits);
  if (!link) return;
  const next = link.closest("tr");
  next.classList.add("current");
  next.setAttribute("aria-current", "true");
  for (const name of ["slot", "version"]) form.querySelector(`[name=${name}]`).value = link.dataset[name];
  form.querySelector("[name=seen]").value = "";
  form.dataset.keep = next.querySelector("th").textContent.trim();
  link.replaceWith(form);
  bigEntry(form)?.focus();
}

// What was typed ahead and must not go to another club than it was meant for.
function notKept(why) {
  if (!ahead.length) return;
  tell(words(why, { typed: ahead.join(", ") }));
  ahead = [];
}

function tell(text) {
  const line = Object.assign(document.createElement("p"), { className: "notice bad", textContent: text });
  line.setAttribute("role", "alert");
  document.querySelector("main").before(line);
}

async function sendAll() {
  if (sending) return;
  sending = true;
  const before = waiting().length;
  let sent = 0;
  try {
    for (const entry of waiting().filter((entry) => !entry.refused)) {
      if (document.querySelector("form[data-busy]")) break;
      const answer = await send(entry, true);
      if (answer.ok) drop(entry.key);
      else await refused(entry, answer);
      sent += 1;
    }
  } catch {
    // Still no network: all is kept for the next try.
  }
  sending = false;
  if (before || sent) say();
  if (sent) document.dispatchEvent(new CustomEvent("setwright:sent"));
}

// The server's page says why: it shows the value that is kept now beside the one that was typed.
async function refused(entry, answer) {
  const page = new DOMParser().parseFromString(await answer.text(), "text/html");
  const why = page.querySelector("body > .notice.bad")?.textContent.trim() || words("enter-again");
  store(waiting().map((other) => (other.key === entry.key ? { ...other, refused: answer.status, why } : other)));
}

const waiting = () => keptIn(STORE);
const own = () => keptIn(OWN);
const store = (entries) => keepIn(STORE, entries);

function keptIn(name) {
  try {
    return JSON.parse(localStorage.getItem(name) ?? "[]");
  } catch {
    return [];
  }
}

function keepIn(name, entries) {
  try {
    localStorage.setItem(name, JSON.stringify(entries));
  } catch {
    // Private windows may refuse to store; sending still works.
  }
}

function drop(key) {
  store(waiting().filter((entry) => entry.key !== key));
}

function named(form, data) {
  const name = form.dataset.keep || document.querySelector("h1")?.textContent || "";
  const field = form.querySelector("[data-bench-entry]");
  const value = field && data.get(field.name);
  return value ? `${name}: ${value}` : name;
}

// Secure contexts alone have randomUUID, and a shop's network is often plain http.
function freshKey() {
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  bytes[6] = (bytes[6] & 0x0f) | 0x40;
  bytes[8] = (bytes[8] & 0x3f) | 0x80;
  const hex = [...bytes].map((byte) => byte.toString(16).padStart(2, "0")).join("");
  return hex.replace(/(.{8})(.{4})(.{4})(.{4})(.{12})/, "$1-$2-$3-$4-$5");
}

function say() {
  const place = document.getElementById("waiting");
  if (!place) return;
  const entries = waiting().filter((entry) => !document.querySelector(`form[data-busy] [value="${CSS.escape(entry.key)}"]`));
  const lines = entries.map((entry) => words(entry.refused ? "refused" : "waits", entry));
  place.replaceChildren(...lines.map((line) => Object.assign(document.createElement("p"), { textContent: line })));
  place.hidden = lines.length === 0;
  if (!entries.some((entry) => entry.refused)) return;
  const seen = Object.assign(document.createElement("button"), { className: "button quiet", textContent: words("seen") });
  seen.addEventListener("click", () => {
    store(waiting().filter((entry) => !entry.refused));
    say();
  });
  place.append(seen);
}
