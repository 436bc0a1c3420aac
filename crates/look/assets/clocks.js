import { words } from "./words.js";

// Counts down every element with data-until (RFC 3339). The server's time, data-now on the page, corrects a tablet
// whose clock is wrong.
const now = Date.parse(document.documentElement.dataset.now ?? "");
const ahead = Number.isNaN(now) ? 0 : now - Date.now();

// The server's time, as far as this tablet knows it.
export const serverNow = () => Date.now() + ahead;

export function clocks() {
  const tick = () => {
    for (const clock of document.querySelectorAll("[data-until]")) show(clock, serverNow());
  };
  tick();
  setInterval(tick, 1000);
}

function show(clock, now) {
  const until = Date.parse(clock.dataset.until);
  if (Number.isNaN(until)) return;
  const left = Math.max(0, Math.ceil((until - now) / 1000));
  const over = left === 0;
  const text = over && clock.dataset.done ? clock.dataset.done : spoken(left);
  if (clock.textContent !== text) clock.textContent = text;
  clock.classList.toggle("is-over", over);
}

// 9:05 under an hour, 3 h 20 min under two days, else days.
function spoken(seconds) {
  const minutes = Math.floor(seconds / 60);
  const hours = Math.floor(minutes / 60);
  if (hours >= 48) return words("days", { days: Math.round(hours / 24) });
  if (hours >= 1) return words("hours", { hours, minutes: String(minutes % 60).padStart(2, "0") });
  return `${minutes}:${String(seconds % 60).padStart(2, "0")}`;
}
