// What stands on top of each view of the office: the way between them and the head that is in use.

import { html } from "../html.js";
import { headLine } from "../words.js";

const VIEWS = [["office", "Routing sheets", "office.html"], ["coverage", "What a head can do", "office.html#coverage"], ["plate", "Make a plate", "office.html#plate"]];

export function deskTop(state, title, intro) {
  return html`<div class="desk-top"><h1 tabindex="-1">${title}</h1>
    <nav class="unprinted" aria-label="In the office"><ul class="pages">${VIEWS.map(([view, name, href]) => html`<li><a id="desk-${view}" href="${href}" data-do="go"
      data-view="${view}" ${state.view === view ? html`aria-current="page"` : ""}>${name}</a></li>`)}</ul></nav>
    <p>${intro}</p>
    <div class="head-line"><p><strong>${state.headName || "Head"}</strong> <span id="head-line">${headLine(state.head)}</span></p>
      <a class="button unprinted" id="change-head" href="./#head" data-do="leave">Change<span class="unseen"> head</span></a></div></div>`;
}
