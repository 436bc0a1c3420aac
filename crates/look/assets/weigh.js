// At the weigh-in page: a tone for what was kept or asked, the label printed, Escape to weigh again. Each follows an
// entry of this tablet, never a page that is only loaded anew.
import { mayRing, tone } from "./tone.js";

export function weigh() {
  document.addEventListener("setwright:placed", placed);
  document.addEventListener("keydown", (event) => {
    if (event.key === "Escape") document.querySelector("[data-weigh-again]")?.click();
  });
}

function placed() {
  const sign = document.querySelector("[data-weigh-sign]");
  if (!sign) return;
  if (document.querySelector("[data-weigh-sound]")) ring(sign.dataset.weighSign === "kept" ? [880] : [330, 330]);
  if (document.querySelector("[data-weigh-label]")) window.print();
}

function ring(pitches) {
  mayRing();
  tone(pitches, 0.2);
}
