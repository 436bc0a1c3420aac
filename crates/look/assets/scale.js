// A connected scale: its value is shown beside its entry; a settled value is entered by itself.
// The entry is kept as always, by Enter, a pedal or a scan. On the weigh-in page it is kept at once: lifting the part
// off calls for the next one.
import { hear as stream } from "./stream.js";
import { figure, words } from "./words.js";

export function scale() {
  const tested = document.querySelectorAll("[data-scale]");
  if (tested.length || entries("mass").length || entries("swing_weight").length) stream("scale", (data) => hear((last = shownHere(JSON.parse(data)))));
  // A refresh of the page removes the line, and a scale at rest sends nothing to bring it back.
  for (const put of ["setwright:placed", "setwright:fresh"]) document.addEventListener(put, () => last && beside(last));
}

let last = null;

const shownHere = (now) => ({ ...now, text: figure(now.text ?? "") });

const MASS = "input[name='mass'], input[name^='read-'][name$='_mass']";
const POINTS = "input[name='read-swing_weight'], input[name='read-check_weight'], input[name='read-reference_swing_weight']";

// On the grid the entry is `typed`; what it asks stands beside it.
function entries(shows) {
  const own = [...document.querySelectorAll(shows === "mass" ? MASS : POINTS)];
  const grid = [...document.querySelectorAll("input[name='typed']")].filter((input) => {
    const what = input.form?.elements.namedItem("what")?.value ?? "";
    return shows === "mass" ? what.endsWith("_mass") : ["swing_weight", "check_weight", "reference_swing_weight"].includes(what);
  });
  return own.concat(grid);
}

function hear(now) {
  for (const bar of document.querySelectorAll("[data-scale]")) {
    if (bar.dataset.scale !== now.scale) continue;
    bar.querySelector("[data-scale-value]").textContent = now.text || "–";
    bar.querySelector("[data-scale-trouble]").textContent = now.trouble?.words ?? "";
  }
  const at = beside(now);
  if (!at || !now.taken) return;
  const weigh = at.form?.matches("[data-weigh]") ? at.form : null;
  if (at.value) {
    if (weigh) at.nextElementSibling.textContent = words("scale-busy", now);
    return;
  }
  // An entry in ounces gets the scale's grams with their sign.
  at.value = now.shows === "mass" && at.parentElement.querySelector(".unit")?.textContent === "oz" ? `${now.text} g` : now.text;
  at.dispatchEvent(new Event("input", { bubbles: true }));
  at.focus();
  if (!weigh) return;
  // Two tablets at one scale: what both send is kept once
  weigh.elements.namedItem("request_key").value = now.take;
  if (weigh.hasAttribute("data-weigh-angles")) weigh.elements.namedItem("loft").focus();
  else if (weigh.reportValidity()) weigh.requestSubmit();
}

// The value beside its entry, which is returned.
function beside(now) {
  const all = entries(now.shows);
  const at = all.find((input) => input === document.activeElement) ?? all.find((input) => !input.value);
  if (at) shown(at, now);
  return at;
}

function shown(at, now) {
  let bar = document.querySelector("[data-scale-beside]");
  if (!bar) {
    bar = Object.assign(document.createElement("p"), { className: "scale-beside" });
    bar.dataset.scaleBeside = "";
    bar.setAttribute("role", "status");
  }
  if (bar.previousElementSibling !== at) at.after(bar);
  bar.textContent = now.trouble ? `${now.name}: ${now.trouble.words}` : `${now.name}: ${now.text || "–"}`;
}
