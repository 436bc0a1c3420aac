// What the keys do on the page that is open, over it, so that nothing typed is lost; by a key or a touch.
import { words } from "./words.js";

export function keyList(link) {
  document.getElementById("key-list")?.remove();
  const box = Object.assign(document.createElement("dialog"), { id: "key-list", className: "card" });
  const title = Object.assign(document.createElement("h2"), { id: "key-list-title", textContent: words("keys-here") });
  box.setAttribute("aria-labelledby", title.id);
  const list = Object.assign(document.createElement("dl"), { className: "key-list" });
  for (const [key, does] of here()) {
    const cap = document.createElement("dt");
    cap.append(Object.assign(document.createElement("kbd"), { textContent: key }));
    list.append(cap, Object.assign(document.createElement("dd"), { textContent: does }));
  }
  const all = Object.assign(document.createElement("a"), { href: link.href, textContent: words("keys-all") });
  const close = Object.assign(document.createElement("button"), { className: "button", type: "button", textContent: words("close") });
  close.addEventListener("click", () => box.close());
  box.addEventListener("close", () => box.remove());
  const foot = Object.assign(document.createElement("div"), { className: "actions" });
  foot.append(close, all);
  box.append(title, list, foot);
  document.body.append(box);
  box.showModal();
}

// Every button that a key presses, in the order of the page; what the page says of its keys besides.
function here() {
  const shown = (one) => one.offsetParent !== null;
  const told = [...document.querySelectorAll(".keys > span")].map((one) => [one.querySelector("kbd").textContent, one.lastChild.textContent.trim()]);
  const pressed = [...document.querySelectorAll("[data-key]")].filter((one) => shown(one) && !one.closest("dialog"));
  const named = pressed.map((one) => [one.dataset.key.split(" ")[0].toUpperCase().replace("ENTER", "Enter"), (one.querySelector("span") ?? one).textContent.trim()]);
  const known = new Map([...named, ...told].map(([key, does]) => [key, does]));
  return [...known];
}
