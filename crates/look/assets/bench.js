// What moves: single keys, clocks, entries kept without network, other tablets' readings. The page says by data
// attributes what it wants; nothing here knows a page, and every page works without it.
import { clocks } from "./clocks.js";
import { keys } from "./keys.js";
import { keep } from "./keep.js";
import { live } from "./live.js";
import { pad } from "./pad.js";
import { progress } from "./progress.js";
import { scale } from "./scale.js";
import { scan } from "./scan.js";
import { weigh } from "./weigh.js";
import { whatIf } from "./what-if.js";

clocks();
scan();
keys();
keep();
live();
pad();
scale();
weigh();
progress();
whatIf();

// In a row that scrolls sideways, the one shown now comes into view.
function intoView() {
  for (const current of document.querySelectorAll(".clubs, .places, .tabs")) {
    const shown = current.querySelector("[aria-current]");
    if (shown) current.scrollLeft += shown.getBoundingClientRect().left - current.getBoundingClientRect().left - (current.clientWidth - shown.clientWidth) / 2;
  }
}
intoView();
document.addEventListener("setwright:placed", intoView);

// From here on keys are heard.
document.documentElement.dataset.ready = "";
