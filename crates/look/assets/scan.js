// A hand scanner types a code faster than a hand does and ends with Enter. Wherever that happens outside of a text
// field, or inside an entry for figures, the code is looked up: it opens the part or the club, at the bench it goes to
// the form with data-scan-here. What stood in the entry before stands there again. What nobody knows as a code is an
// entry like any other.
import { speaks } from "./keys.js";
import { words } from "./words.js";

const MEAN_GAP_MS = 50;
const CODE = /^[A-Za-z0-9][A-Za-z0-9._-]{1,31}$/;
// A figure or a swing weight; four digits and more in a row are no figure that the bench reads.
const READING = /^(\d{1,3}([.,]\d+)?|[A-Ga-g]\d([.,]\d+)?)$/;
const UNIT = /^\d+([.,]\d+)?[A-Za-z]+$/;
let run = null;
let held = null;

export function scan() {
  window.addEventListener("keydown", onKey, true);
}

const figures = (field) =>
  field.matches("input[inputmode='decimal'], input[inputmode='numeric'], input[data-bench-entry], input[name^='read-'], input[name='typed']");
const buttonlike = (field) => field.matches("[type=checkbox], [type=radio], [type=submit], [type=button]");

function onKey(event) {
  if (event.isComposing || event.ctrlKey || event.metaKey || event.altKey || event.repeat || !event.isTrusted) return;
  const field = event.target.closest?.("input, textarea, select, [contenteditable]");
  const entry = field && figures(field) ? field : null;
  if (field && !entry && !buttonlike(field)) return (run = null);
  if (event.key === "Enter") return ends(event, entry);
  if (event.key.length !== 1) return event.key === "Shift" ? undefined : letGo();
  const now = performance.now();
  if (!run || run.entry !== entry || now - run.last > 4 * MEAN_GAP_MS) {
    letGo();
    run = { entry, before: entry?.value ?? "", text: "", first: now, last: now };
  }
  // A single key that would press something waits for a moment: it may be the first letter of a code.
  const first = run.text === "";
  if (held) type(held.key);
  run.text += event.key;
  run.last = now;
  if (!pressesSomething(event.key) || (entry && entry.value !== "")) return;
  event.preventDefault();
  event.stopImmediatePropagation();
  if (first) held = { key: event.key, target: event.target, timer: setTimeout(letGo, MEAN_GAP_MS + 20) };
  else type(event.key);
}

const pressesSomething = (key) =>
  speaks(key) && [...document.querySelectorAll("[data-key]")].some((one) => one.dataset.key.split(" ").includes(key.toLowerCase()));

// The held key belongs to a longer text: it goes where it was typed.
function type(key) {
  if (held) clearTimeout(held.timer);
  held = null;
  if (run?.entry) run.entry.setRangeText(key, run.entry.selectionStart, run.entry.selectionEnd, "end");
}

// The held key was a key on its own.
function letGo() {
  run = null;
  if (!held) return;
  const { key, target, timer } = held;
  clearTimeout(timer);
  held = null;
  target.dispatchEvent(new KeyboardEvent("keydown", { key, bubbles: true, cancelable: true }));
}

function ends(event, entry) {
  const done = run?.entry === entry ? run : null;
  if (held) letGo();
  run = null;
  const fast = done && done.text.length > 1 && (performance.now() - done.first) / done.text.length < MEAN_GAP_MS;
  // Typed by hand into an entry for figures: what cannot be a figure may be a code all the same.
  const code = (fast ? done.text : (entry?.value ?? "")).trim();
  if (!CODE.test(code) || READING.test(code)) return;
  event.preventDefault();
  event.stopImmediatePropagation();
  look(code, entry, fast ? done.before : "");
}

async function look(code, entry, before) {
  const typed = entry?.value;
  if (entry) entry.value = before;
  let why = "";
  try {
    const answer = await fetch(`/api/v1/scan/${encodeURIComponent(code)}`);
    const said = await answer.json();
    if (answer.ok) return go(code, said);
    why = said.detail ?? "";
  } catch {
    why = words("no-look-up", { code });
  }
  // A label that is printed already, for the part that is weighed now.
  const label = entry?.form?.matches("[data-weigh]") && /[A-Za-z]/.test(code) && !UNIT.test(code);
  if (label) return (entry.form.elements.namedItem("code").value = code);
  if (!entry) return say(why);
  // Nobody's code: an entry like any other, which the server reads or refuses.
  entry.value = typed;
  if (entry.dispatchEvent(new KeyboardEvent("keydown", { key: "Enter", bubbles: true, cancelable: true })))
    entry.form?.requestSubmit(entry.form.querySelector("button:not([type]), button[type='submit']"));
}

function go(code, found) {
  const here = document.querySelector("form[data-scan-here]");
  const club = found.club && `/bench/${found.club.job}/${found.club.slot}`;
  const pending = [...document.querySelectorAll("[data-keep] [data-bench-entry]")].find((field) => field.value.trim());
  // The club's own card keeps what stands in the entry, as Enter does; before anything else that must be kept first.
  if (pending && club && here?.action.endsWith(`${club}/scan`)) return pending.form.requestSubmit();
  if (pending) return say(words("typed-first", { typed: pending.value, code }));
  if (!here) return location.assign(club || `/stock/parts/${encodeURIComponent(found.part.code)}`);
  here.elements.namedItem("code").value = code;
  here.requestSubmit();
}

function say(text) {
  document.getElementById("scanned")?.remove();
  const line = Object.assign(document.createElement("p"), { id: "scanned", className: "notice care", textContent: text });
  line.setAttribute("role", "alert");
  document.querySelector("main").before(line);
}
