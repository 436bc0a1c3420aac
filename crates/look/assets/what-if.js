// What if a mass were another: while a slider is dragged the server draws the beam anew, and the figure beside it
// follows. Only the latest place is asked for; without script the form's own button does the same.
export function whatIf() {
  document.addEventListener("input", (event) => {
    const form = event.target.closest?.("form[data-what-if]");
    if (form) draw(form);
  });
}

let asking = false;
let again = null;

async function draw(form) {
  if (asking) return (again = form);
  asking = true;
  const address = `${form.action.split("?")[0]}?${new URLSearchParams(new FormData(form))}`;
  try {
    const answer = await fetch(address, { headers: { Accept: "text/html" } });
    if (answer.ok) put(form, new DOMParser().parseFromString(await answer.text(), "text/html"));
  } catch {
    // Without network the picture stays as it was.
  }
  asking = false;
  const next = again;
  again = null;
  if (next) draw(next);
}

// The sliders stay as they are under the finger; the picture and the figures are the server's.
function put(form, page) {
  const id = form.dataset.whatIf;
  const fresh = page.getElementById(id);
  if (fresh) document.getElementById(id)?.replaceWith(document.adoptNode(fresh));
  const figures = page.querySelectorAll(`form[data-what-if="${CSS.escape(id)}"] output`);
  form.querySelectorAll("output").forEach((output, at) => (output.textContent = figures[at]?.textContent ?? output.textContent));
}
