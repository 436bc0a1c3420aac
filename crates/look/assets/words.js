// The sentences come with the page; a {name} is filled in here.
const all = JSON.parse(document.documentElement.dataset.words ?? "{}");

// A figure as this tablet prints it.
export const figure = (text) => (document.documentElement.dataset.decimal === "comma" ? text.replace(/(\d)\.(?=\d)/g, "$1,") : text);

export const words = (id, figures = {}) => (all[id] ?? "").replace(/{(\w+)}/g, (_, name) => figures[name] ?? "");
