// Other tablets' readings: a part of the page with data-live="JOB" is fetched anew when the server says that the job
// changed, unless somebody is typing in it; then it waits until the entry is empty or left. 0 is the whole shop: such a
// part belongs to every job, such an event to every part.
import { hear, hearAgain } from "./stream.js";

const pending = new Set();
let fetching = false;

export function live() {
  document.addEventListener("focusout", () => setTimeout(refresh, 50));
  document.addEventListener("setwright:sent", () => all().forEach((part) => want(part.dataset.live)));
  if (!all().length) return;
  hear("job", (data) => want(jobOf(data)));
  hearAgain(() => all().forEach((part) => want(part.dataset.live)));
  again();
}

// A part that holds data-again="SECONDS" is looked at again after so long.
let waiting = 0;
function again() {
  clearTimeout(waiting);
  const part = all().find((part) => part.querySelector("[data-again]"));
  if (!part) return;
  waiting = setTimeout(() => {
    pending.add(part.dataset.live);
    refresh();
    again();
  }, 1000 * part.querySelector("[data-again]").dataset.again);
}

const all = () => [...document.querySelectorAll("[data-live]")];

function jobOf(data) {
  try {
    const value = JSON.parse(data);
    return typeof value === "object" ? String(value.job ?? value.id) : String(value);
  } catch {
    return data;
  }
}

function want(job) {
  for (const part of all()) if (job === "0" || part.dataset.live === "0" || part.dataset.live === job) pending.add(part.dataset.live);
  refresh();
}

// Typing: a field of the part holds something that the server does not know yet. Entries start empty: what the page
// itself put into one was refused, and waits there to be corrected.
function typing(part) {
  const changed = (field) =>
    field.matches("input:not([type=hidden]), textarea, select") &&
    (field.matches("[type=checkbox], [type=radio]") ? field.checked !== field.defaultChecked
      : field.matches("[type=range]") ? field === document.activeElement // A slider only tries something out.
      : field.matches("select") ? [...field.options].some((option) => option.selected !== option.defaultSelected) && field === document.activeElement
      : field.value !== (field.closest("[data-keep]") ? "" : field.defaultValue));
  return part.querySelector("form[data-busy]") || [...part.querySelectorAll("input, textarea, select")].some(changed);
}

async function refresh() {
  if (fetching || !pending.size) return;
  const free = all().filter((part) => pending.has(part.dataset.live) && !typing(part));
  if (!free.length) return;
  fetching = true;
  const jobs = new Set(free.map((part) => part.dataset.live));
  jobs.forEach((job) => pending.delete(job));
  try {
    const answer = await fetch(location.href, { headers: { Accept: "text/html" } });
    const text = await answer.text();
    // Another club may be open by now: in its place, this page would take its reading for the wrong club.
    const here = free.every((part) => part.isConnected);
    if (answer.ok && here) put(new DOMParser().parseFromString(text, "text/html"), jobs);
    if (!here) jobs.forEach((job) => pending.add(job));
  } catch {
    jobs.forEach((job) => pending.add(job));
  }
  fetching = false;
  again();
}

function put(page, jobs) {
  const fresh = [...page.querySelectorAll("[data-live]")];
  all().forEach((part, index) => {
    const next = fresh[index];
    if (!next || !jobs.has(part.dataset.live) || next.dataset.live !== part.dataset.live) return;
    if (typing(part)) return pending.add(part.dataset.live);
    if (plain(next) === plain(part)) return;
    const focused = part.contains(document.activeElement) ? document.activeElement.id : "";
    const scrolled = [...part.querySelectorAll(".clubs, .table-wrap")].map((box) => box.scrollLeft);
    part.replaceChildren(...document.adoptNode(next).childNodes);
    [...part.querySelectorAll(".clubs, .table-wrap")].forEach((box, at) => (box.scrollLeft = scrolled[at] ?? 0));
    document.dispatchEvent(new CustomEvent("setwright:fresh"));
    if (focused) document.getElementById(focused)?.focus({ preventScroll: true });
    part.classList.remove("is-new");
    if (part.querySelector("[data-again]")) return; // It moves by itself.
    void part.offsetWidth;
    part.classList.add("is-new");
  });
}

// The content without the keys that the server makes anew for each page.
const plain = (part) => part.innerHTML.replace(/name="request_key" value="[^"]*"/g, "");
