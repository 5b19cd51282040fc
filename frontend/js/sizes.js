// Cutting and inspection sizes of a part, each with the source of its formula.

import { html } from "./html.js";

function value(size) {
  if (typeof size.value !== "number") return String(size.value);
  const figure = Number(size.value.toFixed(4));
  return size.unit === "degrees" ? `${figure}°` : `${figure} ${size.unit || ""}`.trim();
}

function rows(list) {
  return list.map((size) => html`<tr><th scope="row">${size.name}</th><td>${value(size)}</td><td class="soft">${size.source}</td></tr>`);
}

export function sizes(part) {
  const list = part && (part.sizes || [...(part.cutting || []), ...(part.inspection || [])]);
  if (!list || !list.length) return "";
  return html`<section class="sheet"><h2>Sizes</h2><div class="wide" tabindex="0" role="region" aria-label="Sizes"><table><thead><tr><th scope="col">Size</th><th scope="col">Value</th>
    <th scope="col">Formula from</th></tr></thead><tbody>${rows(list)}</tbody></table></div></section>`;
}
