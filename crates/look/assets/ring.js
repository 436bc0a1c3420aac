// Clocks of the glue that ring: the end of the pot life, handling strength, full cure. On every page of every tablet, with a
// tone of its own making, a notification where the browser allows it, and a line that stays until somebody has seen it.
// The last minutes of the pot life stand over the page. While a pot life runs the screen stays awake.
import { serverNow } from "./clocks.js";
import { mayRing, tone } from "./tone.js";
import { words } from "./words.js";

const STORE = "setwright.rings";
const ASK_MS = 30000;
const WARN_MS = 5 * 60000;
const SNOOZE_MS = 5 * 60000;
// What rang long ago, while the tablet was off, is history.
const LATE_MS = 30 * 60000;
const SAYS = {
  pot_life_until: (batch) => words("ring-pot-life", { batch }),
  handling_at: (batch) => words("ring-handling", { batch }),
  full_cure_at: (batch) => words("ring-cured", { batch }),
};
let clocks = [];
let beeped = 0;
let lock = null;

export function ring() {
  clocks = kept().clocks ?? [];
  ask();
  setInterval(ask, ASK_MS);
  setInterval(tick, 1000);
  // A browser lets a page sound and notify only after it was touched.
  for (const touch of ["pointerdown", "keydown"]) addEventListener(touch, touched, { once: true });
  document.addEventListener("visibilitychange", awake);
}

async function ask() {
  try {
    const answer = await fetch("/api/v1/batches", { headers: { Accept: "application/json" } });
    if (!answer.ok) return;
    const batches = (await answer.json()).filter((one) => !one.batch.taken_back);
    clocks = batches.flatMap((one) => Object.keys(SAYS).map((kind) => ({ kind, batch: one.batch.number, at: Date.parse(one[kind]) })));
    clocks = clocks.filter((clock) => clock.at > serverNow() - LATE_MS);
    keep({ clocks });
  } catch {
    // Without network the clocks that are known ring all the same.
  }
  tick();
}

function tick() {
  const now = serverNow();
  const seen = kept().seen ?? {};
  const name = (clock) => `${clock.batch} ${clock.kind}`;
  const rings = clocks.filter((clock) => clock.at <= now && clock.at > now - LATE_MS && (seen[name(clock)] ?? 0) <= now);
  const soon = clocks.filter((clock) => clock.kind === "pot_life_until" && clock.at > now && clock.at - now <= WARN_MS);
  const place = shown();
  const lines = [...soon.map((clock) => `soon ${name(clock)}`), ...rings.map(name)];
  if (place.dataset.lines !== lines.join()) {
    place.dataset.lines = lines.join();
    place.replaceChildren(...soon.map(countdown), ...rings.map((clock) => alarm(clock, name(clock))));
    rings.forEach((clock) => notify(clock, name(clock)));
    if (soon.length && !rings.length) beep([660, 880]);
  }
  if (rings.length && Date.now() - beeped > 3000) beep([880, 660, 880]);
  awake();
}

function shown() {
  let place = document.getElementById("rings");
  if (!place) {
    place = Object.assign(document.createElement("div"), { id: "rings" });
    document.querySelector(".head").before(place);
  }
  return place;
}

function line(text, name) {
  const box = Object.assign(document.createElement("div"), { className: name });
  box.append(Object.assign(document.createElement("strong"), { textContent: text }));
  return box;
}

function countdown(clock) {
  const box = line(words("ring-soon", { batch: clock.batch }), "ring soon");
  const left = document.createElement("time");
  left.dataset.until = new Date(clock.at).toISOString();
  box.append(" ", left);
  box.setAttribute("role", "status");
  return box;
}

function alarm(clock, name) {
  const box = line(SAYS[clock.kind](clock.batch), "ring now");
  box.setAttribute("role", "alert");
  const button = (text, until) => {
    const one = Object.assign(document.createElement("button"), { className: "button quiet", type: "button", textContent: text });
    one.addEventListener("click", () => {
      keep({ seen: { ...kept().seen, [name]: until() } });
      tick();
    });
    return one;
  };
  box.append(button(words("ring-snooze"), () => serverNow() + SNOOZE_MS), button(words("seen"), () => clock.at + 2 * LATE_MS));
  return box;
}

function notify(clock, name) {
  if (window.Notification?.permission !== "granted") return;
  try {
    new Notification(SAYS[clock.kind](clock.batch), { tag: name, renotify: true });
  } catch {
    // Some tablets allow it only from a worker; the line and the tone are there.
  }
}

function touched() {
  mayRing();
  if (clocks.length && window.Notification?.permission === "default") Notification.requestPermission();
}

function beep(pitches) {
  beeped = Date.now();
  tone(pitches, 0.3);
}

// The screen stays awake while a pot life runs.
async function awake() {
  const runs = clocks.some((clock) => clock.kind === "pot_life_until" && clock.at > serverNow());
  if (!runs) return lock?.release?.(), (lock = null);
  if (lock || document.hidden || !navigator.wakeLock) return;
  try {
    lock = { release() {} };
    lock = await navigator.wakeLock.request("screen");
    lock.addEventListener?.("release", () => (lock = null));
  } catch {
    lock = null;
  }
}

function kept() {
  try {
    return JSON.parse(localStorage.getItem(STORE) ?? "{}");
  } catch {
    return {};
  }
}

function keep(more) {
  try {
    localStorage.setItem(STORE, JSON.stringify({ ...kept(), ...more }));
  } catch {
    // A private window may refuse to store: then it rings again on the next page.
  }
}
