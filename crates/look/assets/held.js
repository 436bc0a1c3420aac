// The open job, held on this tablet: every club at every step, and the grids, so that moving between them works while the
// network is away. They are fetched while nobody types, and again for a club that was read since. An entry from a held page
// is sent with its time even at once, as one that waited: others of the same club may have come before it.
import { words } from "./words.js";

const IDLE_MS = 4000;
const PATIENCE_MS = 2500;
let timer = 0;
const OLD_MS = 12 * 3600000;
let filling = false;
let moved = false;
let base = null;

const job = () => location.pathname.match(/^\/bench\/(\d+)\//)?.[1];
const ours = (href) => new URL(href, location.href).pathname.startsWith(`/bench/${job()}/`);

export function held() {
  if (!job()) return;
  addEventListener("click", onClick);
  addEventListener("popstate", () => moved && go(location.href, false));
  for (const event of ["setwright:placed", "setwright:sent"]) document.addEventListener(event, stale);
  const name = `setwright.held.${job()}`;
  if (!(Number(localStorage.getItem(name)) > Date.now() - OLD_MS)) {
    // What is held from another day tells of another state.
    with_("readwrite", (pages) => pages.clear());
    localStorage.setItem(name, Date.now());
  }
  later();
}

function later() {
  clearTimeout(timer);
  timer = setTimeout(fill, IDLE_MS);
}

// After a reading the held pages of that club and all grids are out of date: they are fetched again.
async function stale() {
  const kept = new URLSearchParams(location.search).get("kept");
  const club = location.pathname.includes("/grid/") ? `/bench/${job()}/${kept}` : location.pathname;
  for (const path of await all("getAllKeys")) if (path.startsWith(`${club}?`) || path.includes("/grid/")) await put(path, null);
  later();
}

function wanted() {
  const steps = [...document.querySelectorAll(".step-line > ol a")].map((a) => new URL(a.href));
  const keys = steps.map((url) => url.searchParams.get("step") ?? url.pathname.split("/").pop());
  const clubs = [...document.querySelectorAll(".clubs a[href*='?step='], .set-grid tbody th a")].map((a) => new URL(a.href).pathname);
  const now = document.querySelector(".step-line > ol .current a");
  const here = now && (new URL(now.href).searchParams.get("step") ?? new URL(now.href).pathname.split("/").pop());
  const of = (step) => [`/bench/${job()}/grid/${step}`, ...clubs.map((club) => `${club}?step=${step}`)];
  return [here, ...keys.filter((key) => key !== here)].filter(Boolean).flatMap(of);
}

async function fill() {
  if (filling || !navigator.onLine) return;
  filling = true;
  const have = new Map();
  const [names, pages] = [await all("getAllKeys"), await all("getAll")];
  names.forEach((name, at) => have.set(name, pages[at]));
  try {
    for (const path of wanted().filter((path) => !have.get(path))) {
      if (document.hidden || document.querySelector("form[data-busy]")) break;
      const answer = await fetch(path, { headers: { Accept: "text/html" }, priority: "low" });
      if (answer.ok && !answer.redirected) await put(path, await answer.text());
    }
  } catch {
    // The network went away: what is held is held.
  }
  filling = false;
}

function onClick(event) {
  const link = event.target.closest?.("a[href]");
  if (!link || event.defaultPrevented || event.button || event.ctrlKey || event.metaKey || event.shiftKey || link.target || !ours(link.href)) return;
  event.preventDefault();
  go(link.href, true);
}

// Online the browser goes there as ever; a held page takes its place where the server cannot be reached.
async function go(href, push) {
  if (navigator.onLine) {
    try {
      const answer = await fetch("/api/v1/shop", { method: "HEAD", signal: AbortSignal.timeout(PATIENCE_MS) });
      if (answer) return push ? location.assign(href) : location.reload();
    } catch {
      // Away, though the tablet does not know it.
    }
  }
  const url = new URL(href);
  const text = (await get(`${url.pathname}${url.search.replace(/[?&]kept=\d+/, "")}`)) ?? (await get(url.pathname + url.search));
  if (!text) return tell(words("not-held"));
  place(new DOMParser().parseFromString(text, "text/html"));
  if (push) history.pushState(null, "", href);
  moved = true;
}

function place(page) {
  page.querySelector("main").dataset.held = "";
  for (const key of page.querySelectorAll("main [name=request_key]")) key.value = `${key.value.slice(0, 24)}${Math.random().toString(16).slice(2, 14).padEnd(12, "0")}`;
  for (const part of ["main", ".head-title"]) document.querySelector(part)?.replaceWith(document.adoptNode(page.querySelector(part)));
  document.title = page.title;
  tell(words("held"));
  document.querySelector("[autofocus]")?.focus();
  document.dispatchEvent(new CustomEvent("setwright:fresh"));
}

function tell(text) {
  document.getElementById("held")?.remove();
  const line = Object.assign(document.createElement("p"), { id: "held", className: "notice care", textContent: text });
  line.setAttribute("role", "status");
  document.querySelector("main").before(line);
}

// The browser's own store, which a plain http page of the shop's network has too.
const open = () =>
  (base ??= new Promise((then, fail) => {
    const asked = indexedDB.open(`setwright-job-${job()}`, 1);
    asked.onupgradeneeded = () => asked.result.createObjectStore("pages");
    asked.onsuccess = () => then(asked.result);
    asked.onerror = () => fail(asked.error);
  }));

async function with_(mode, ask) {
  try {
    const pages = await open();
    return await new Promise((then, fail) => {
      const asked = ask(pages.transaction("pages", mode).objectStore("pages"));
      asked.onsuccess = () => then(asked.result);
      asked.onerror = () => fail(asked.error);
    });
  } catch {
    return undefined;
  }
}

const get = (path) => with_("readonly", (pages) => pages.get(path));
const put = (path, text) => with_("readwrite", (pages) => (text === null ? pages.delete(path) : pages.put(text, path)));
const all = async (how) => (await with_("readonly", (pages) => pages[how]())) ?? [];
