// Single keys: an element with data-key="r" or "z Backspace" is pressed by that key. In a text field they work only
// while it is empty and carries data-bench-entry, so that typing is never taken away.
//
// A tablet may switch off keys that print a letter (data-letters="off"; WCAG 2.1, 2.1.4).
//
// A foot pedal types a function key that browsers leave alone, or the key that this tablet has learned (data-pedal): it
// keeps what stands in the bench entry, wherever the focus is. Keys that scroll or are hit by mistake would keep half of a
// reading.
const FUNCTION = /^F([1-4]|[6-9]|10|1[3-9]|2[0-4])$/;
const { pedal: learned, letters: lettersAre } = document.documentElement.dataset;
const isPedal = (key) => (learned ? key === learned : FUNCTION.test(key));

// Whether a key presses something by itself.
export const speaks = (key) => lettersAre !== "off" || key.length > 1;

export function keys() {
  document.addEventListener("click", (event) => {
    const list = event.target.closest?.("[data-key-list]");
    if (!list || event.ctrlKey || event.metaKey || event.shiftKey) return;
    event.preventDefault();
    import("./key-list.js").then((one) => one.keyList(list));
  });
  document.addEventListener("keydown", (event) => {
    if (event.defaultPrevented || event.isComposing || event.ctrlKey || event.metaKey || event.altKey) return;
    const field = event.target.closest?.("input, textarea, select, [contenteditable]");
    if (isPedal(event.key)) return pedal(event, field);
    if (event.key === "Enter" && field?.matches("[data-enter-next]")) return enter(event, field);
    if ((field && !isIdle(field)) || !speaks(event.key)) return;
    const name = event.key.length === 1 ? event.key.toLowerCase() : event.key;
    const wanted = [...document.querySelectorAll("[data-key]")].find(
      (element) => element.dataset.key.split(" ").includes(name) && !element.disabled && element.offsetParent !== null,
    );
    if (!wanted || event.repeat) return;
    // Enter and Space already press what has the focus.
    if ((name === "Enter" || name === " ") && event.target.closest("a, button")) return;
    event.preventDefault();
    wanted.click();
  });
}

function pedal(event, field) {
  const form = field?.form?.querySelector("[data-bench-entry]") ? field.form : document.querySelector("[data-bench-entry]")?.form;
  // A step that is only done has no entry, but a button that Enter presses.
  const done = form ? null : document.querySelector("button[data-key='Enter']");
  if (!form && !done) return;
  event.preventDefault();
  if (event.repeat) return;
  if (form) form.requestSubmit();
  else done.click();
}

function isIdle(field) {
  if (field.matches("[type=checkbox], [type=radio]")) return true;
  return field.matches("[data-bench-entry]") && field.value === "";
}

// In a set grid Enter goes to the next empty entry of the form; from the last one the form is sent.
function enter(event, field) {
  const fields = [...(field.form?.querySelectorAll("[data-enter-next]") ?? [])];
  const next = fields.slice(fields.indexOf(field) + 1).find((other) => !other.disabled);
  if (!next) return;
  event.preventDefault();
  next.focus();
  next.select?.();
}
