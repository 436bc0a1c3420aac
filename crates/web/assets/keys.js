// Single keys: an element with data-key="r" or "z Backspace" is pressed by that key. In a text field they work only
// while it is empty and carries data-bench-entry, so that typing is never taken away.
export function keys() {
  document.addEventListener("keydown", (event) => {
    if (event.defaultPrevented || event.isComposing || event.ctrlKey || event.metaKey || event.altKey) return;
    const field = event.target.closest?.("input, textarea, select, [contenteditable]");
    if (event.key === "Enter" && field?.matches("[data-enter-next]")) return enter(event, field);
    if (field && !isIdle(field)) return;
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
