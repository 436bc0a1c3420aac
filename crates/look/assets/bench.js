// What moves: single keys, clocks, entries kept without network, other tablets' readings. The page says by data
// attributes what it wants; nothing here knows a page, and every page works without it.
import { clocks } from "./clocks.js";
import { keys } from "./keys.js";
import { keep } from "./keep.js";
import { live } from "./live.js";
import { scale } from "./scale.js";
import { scan } from "./scan.js";

clocks();
scan();
keys();
keep();
live();
scale();

// In a row that scrolls sideways, the one shown now comes into view.
function intoView() {
  for (const current of document.querySelectorAll(".clubs, .places, .tabs, .step-line > ol")) {
    const shown = current.querySelector("[aria-current], .current");
    if (shown) current.scrollLeft += shown.getBoundingClientRect().left - current.getBoundingClientRect().left - (current.clientWidth - shown.clientWidth) / 2;
  }
}
intoView();
document.addEventListener("setwright:placed", intoView);

// What only some pages need is loaded by those.
const wanted = (selector) => document.querySelector(selector);
await Promise.all([
  import("./ring.js").then((one) => one.ring()),
  wanted(".step-line") && import("./held.js").then((one) => one.held()),
  wanted("form[data-pad]") && import("./pad.js").then((one) => one.pad()),
  wanted("[data-learn-pedal]") && import("./tablet.js").then((one) => one.tablet()),
  wanted("[data-weigh]") && import("./weigh.js").then((one) => one.weigh()),
  wanted("form[data-progress]") && import("./progress.js").then((one) => one.progress()),
  wanted("form[data-what-if]") && import("./what-if.js").then((one) => one.whatIf()),
]);

// From here on keys are heard.
document.documentElement.dataset.ready = "";
