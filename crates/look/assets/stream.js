// The one stream of the server's events that a page has: opened when somebody wants to hear the first of them, closed
// with the page.
const wanted = new Map();
const again = [];
let stream = null;

// `name` is the event's: job, scale, import.
export function hear(name, then) {
  if (!window.EventSource) return;
  open();
  if (!wanted.has(name)) {
    wanted.set(name, []);
    stream.addEventListener(name, (event) => wanted.get(name).forEach((one) => one(event.data)));
  }
  wanted.get(name).push(then);
}

// After a break anything may have changed.
export function hearAgain(then) {
  again.push(then);
}

function open() {
  if (stream) return;
  stream = new EventSource("/api/v1/live");
  let broken = false;
  stream.addEventListener("error", () => (broken = true));
  stream.addEventListener("open", () => {
    if (broken) again.forEach((one) => one());
    broken = false;
  });
  window.addEventListener("pagehide", () => stream.close());
}
