// A list that is being kept: how many of its rows are written, while the browser waits for the answer.
import { hear } from "./stream.js";
import { words } from "./words.js";

export function progress() {
  const form = document.querySelector("form[data-progress]");
  if (!form) return;
  const key = () => form.elements.namedItem("request_key").value;
  const line = document.createElement("p");
  const bar = document.createElement("progress");
  const said = document.createElement("span");
  line.className = "import-progress";
  line.setAttribute("role", "status");
  line.append(bar, said);
  form.addEventListener("submit", (event) => {
    if (!event.submitter?.formAction.endsWith("/keep")) return;
    said.textContent = words("reading-list");
    form.before(line);
    line.scrollIntoView({ block: "center" });
  });
  hear("import", (data) => {
    const how = JSON.parse(data);
    if (how.key !== key()) return;
    [bar.max, bar.value] = [Math.max(1, how.all), how.done];
    said.textContent = words("parts-read", how);
  });
}
