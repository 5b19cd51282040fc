// The way from the exercises to the handout and back. Pure.

import { html } from "../html.js";

const WAYS = [["class", "Exercises", "class.html"], ["handout", "Handout", "class.html#handout"]];

export const ways = (here) => html`<p class="row unprinted">${WAYS.map(([view, title, href]) => html`<a class="button" id="to-${view}" href="${href}"
  data-do="go" data-view="${view}" ${view === here ? html`aria-current="page"` : ""}>${title}</a>`)}</p>`;
