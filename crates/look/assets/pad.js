// A keypad at the thumb: on a phone the system's keyboard would cover what is read from. It belongs to the form with the
// bench's entries; letters are there only where the entry takes a swing weight, the four about the one that is expected. A
// keyboard or a scale works as ever.
import { words } from "./words.js";

const PHONE = matchMedia("(max-width: 720px) and (pointer: coarse)");
const DIGITS = ["1", "2", "3", "4", "5", "6", "7", "8", "9", ".", "0"];
const LETTERS = "ABCDEFG";
let entry = null;

export function pad() {
  place();
  PHONE.addEventListener("change", place);
  for (const fresh of ["setwright:placed", "setwright:fresh"]) document.addEventListener(fresh, place);
  document.addEventListener("focusin", (event) => {
    if (!event.target.matches?.("[data-pad] [data-bench-entry]")) return;
    entry = event.target;
    letters();
  });
}

function place() {
  for (const old of document.querySelectorAll(".pad")) old.remove();
  for (const form of document.querySelectorAll("form[data-pad]")) {
    const fields = [...form.querySelectorAll("[data-bench-entry]")];
    if (!fields.length) continue;
    for (const field of fields) {
      field.dataset.keys ??= field.inputMode;
      field.inputMode = PHONE.matches ? "none" : field.dataset.keys;
    }
    if (!PHONE.matches) continue;
    entry = fields.includes(document.activeElement) ? document.activeElement : fields[0];
    form.append(made(form));
    letters();
  }
}

function made(form) {
  const box = Object.assign(document.createElement("div"), { className: "pad" });
  const row = Object.assign(document.createElement("div"), { className: "pad-letters" });
  const expected = LETTERS.indexOf(form.querySelector(".figure-value")?.textContent.trim()[0] || "D");
  const from = Math.max(0, Math.min(expected < 0 ? 2 : expected - 1, LETTERS.length - 4));
  row.append(...[...LETTERS].slice(from, from + 4).map((letter) => key(letter)));
  const keep = form.querySelector("button.big").cloneNode(true);
  keep.classList.add("pad-keep");
  const back = key("", words("delete"));
  back.append(Object.assign(document.createElement("span"), { className: "pad-back" }));
  box.append(row, ...DIGITS.map((digit) => key(digit)), back, keep);
  return box;
}

function key(text, name = text) {
  const button = Object.assign(document.createElement("button"), { type: "button", className: "button pad-key", textContent: text });
  button.setAttribute("aria-label", name);
  // The entry keeps the cursor.
  button.addEventListener("pointerdown", (event) => event.preventDefault());
  button.addEventListener("click", () => type(text));
  return button;
}

function type(text) {
  if (!entry?.isConnected) return;
  if (document.activeElement !== entry) entry.focus({ preventScroll: true });
  const [from, to] = [entry.selectionStart, entry.selectionEnd];
  entry.setRangeText(text, text || from !== to ? from : Math.max(0, from - 1), to, "end");
  entry.dispatchEvent(new Event("input", { bubbles: true }));
}

function letters() {
  for (const row of document.querySelectorAll(".pad-letters")) row.hidden = entry?.dataset.keys !== "text";
}
