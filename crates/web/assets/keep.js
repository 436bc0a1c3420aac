// A form with data-keep is sent by script, so that a dropped network loses nothing: what could not be sent is kept on
// this tablet and sent once when the network is back. The server knows each entry by its request_key and keeps it once,
// however often it arrives.
const STORE = "setwright.waiting";
const TRY_AGAIN_MS = 4000;
let sending = false;

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
  // With nothing typed it only asks where to go on: nothing to keep.
  const typed = [...form.querySelectorAll("input:not([type=hidden], [type=checkbox])")];
  if (typed.length && typed.every((field) => !field.value.trim())) return;
  event.preventDefault();
  // Typed and sent while the one before is on its way: it is sent after it.
  if (form.dataset.busy) return void (form.dataset.again = "1");
  form.dataset.busy = "1";
  button?.setAttribute("aria-busy", "true");
  const entry = { url, body: new URLSearchParams(data).toString(), key: data.get("request_key"), what: named(form, data) };
  // Kept first, then sent: a tablet that dies in between still has it.
  store([...waiting(), entry]);
  const inPlace = form.hasAttribute("data-in-place");
  // The next one may be typed while this one is on its way.
  if (inPlace) emptied(form);
  try {
    const answer = await send(entry);
    drop(entry.key);
    await show(answer, url, inPlace && form);
  } catch {
    form.reset();
    const key = form.querySelector("[name=request_key]");
    if (key) key.value = freshKey();
    say();
  } finally {
    delete form.dataset.busy;
    button?.removeAttribute("aria-busy");
  }
}

function send(entry) {
  const stop = AbortSignal.timeout ? { signal: AbortSignal.timeout(10000) } : {};
  return fetch(entry.url, {
    method: "POST",
    body: entry.body,
    headers: { "Content-Type": "application/x-www-form-urlencoded", "Idempotency-Key": entry.key },
    ...stop,
  }).then((answer) => {
    // The server itself is in trouble: keep the entry and try again.
    if ([502, 503, 504].includes(answer.status)) throw new Error("not now");
    return answer;
  });
}

const bigEntry = (from) => from.querySelector("[data-bench-entry]");

function emptied(form) {
  const field = bigEntry(form);
  if (field) field.value = "";
}

// After sending: go where the server says; an answer with an error is shown in place. A form with data-in-place stays
// on its page: the page that the server leads to is put in its place, with what was typed since.
async function show(answer, url, form) {
  if (answer.redirected && !form) return location.assign(answer.url);
  const page = new DOMParser().parseFromString(await answer.text(), "text/html");
  const main = page.querySelector("main");
  if (!main) return location.assign(url);
  for (const old of document.querySelectorAll("body > .notice")) old.remove();
  const notice = page.querySelector("body > .notice");
  const here = document.querySelector("main");
  if (notice) here.before(document.adoptNode(notice));
  const typed = answer.redirected && form ? bigEntry(here)?.value : "";
  here.replaceWith(document.adoptNode(main));
  const field = document.querySelector("[aria-invalid], [autofocus]");
  (field ?? document.querySelector("main")).focus();
  if (!form) return;
  if (answer.redirected) history.replaceState(null, "", answer.url);
  if (typed && field) field.value = typed;
  if (typed && field && form.dataset.again) setTimeout(() => field.form.requestSubmit());
  document.dispatchEvent(new CustomEvent("setwright:placed"));
}

async function sendAll() {
  if (sending) return;
  sending = true;
  const before = waiting().length;
  let sent = 0;
  try {
    for (const entry of waiting().filter((entry) => !entry.refused)) {
      if (document.querySelector("form[data-busy]")) break;
      const answer = await send(entry);
      if (answer.ok) drop(entry.key);
      else store(waiting().map((other) => (other.key === entry.key ? { ...other, refused: answer.status } : other)));
      sent += 1;
    }
  } catch {
    // Still no network: all is kept for the next try.
  }
  sending = false;
  if (before || sent) say();
  if (sent) document.dispatchEvent(new CustomEvent("setwright:sent"));
}

function waiting() {
  try {
    return JSON.parse(localStorage.getItem(STORE) ?? "[]");
  } catch {
    return [];
  }
}

function store(entries) {
  try {
    localStorage.setItem(STORE, JSON.stringify(entries));
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

// Tells what waits, in the page's own place for it.
function say() {
  const place = document.getElementById("waiting");
  if (!place) return;
  const entries = waiting().filter((entry) => !document.querySelector(`form[data-busy] [value="${CSS.escape(entry.key)}"]`));
  const lines = entries.map((entry) =>
    entry.refused
      ? `Not accepted when it was sent later: ${entry.what}. Enter it again.`
      : `Kept on this tablet, not sent yet: ${entry.what}. It is sent once when the network is back.`,
  );
  place.replaceChildren(...lines.map((line) => Object.assign(document.createElement("p"), { textContent: line })));
  place.hidden = lines.length === 0;
  if (!entries.some((entry) => entry.refused)) return;
  const seen = Object.assign(document.createElement("button"), { className: "button quiet", textContent: "Understood" });
  seen.addEventListener("click", () => {
    store(waiting().filter((entry) => !entry.refused));
    say();
  });
  place.append(seen);
}
