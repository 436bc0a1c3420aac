// The key of the foot pedal is learned by pressing it: whatever key comes in that field is its name.
import { words } from "./words.js";

// Those go on doing what they do in a field.
const OTHERWISE = ["Tab", "Shift", "Enter", "Backspace", "Delete"];

export function tablet() {
  const field = document.querySelector("[data-learn-pedal] input");
  const line = Object.assign(document.createElement("p"), { className: "hint" });
  line.setAttribute("role", "status");
  field.closest(".field").append(line);
  field.addEventListener("keydown", (event) => {
    if (OTHERWISE.includes(event.key) || event.ctrlKey || event.metaKey) return;
    event.preventDefault();
    event.stopPropagation();
    const types = event.key.length === 1 || /^(Arrow|Home$|End$|Alt|Dead|Escape)/.test(event.key);
    line.textContent = types ? words("pedal-types", { key: event.key }) : "";
    if (!types) field.value = event.key;
  });
}
