// The sentences come with the page; a {name} is filled in here.
const all = JSON.parse(document.documentElement.dataset.words ?? "{}");

export const words = (id, figures = {}) => (all[id] ?? "").replace(/{(\w+)}/g, (_, name) => figures[name] ?? "");
