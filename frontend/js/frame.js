// What stands around every view: the way from page to page, notices, the foot.

import { html } from "./html.js";
import { clock, headLine } from "./words.js";

// The views that the way leads to, and the document that each is in.
export const PLACES = {
  setup: ["Set up", "./"], jobs: ["Jobs", "./#jobs"], head: ["Head", "head.html"], check: ["Check", "check.html"],
  angles: ["Angles", "check.html#angles"], class: ["Class", "class.html"], office: ["Office", "office.html"],
};
const THEMES = [["auto", "As the tablet"], ["light", "Light"], ["dark", "Dark"]];

export function nav(state, name) {
  const here = PLACES[state.view] ? state.view : name;
  return html`<ul class="pages">${Object.entries(PLACES).map(([view, [title, href]]) => html`<li><a id="go-${view}" href="${href}" data-do="go"
    data-view="${view}" ${here === view ? html`aria-current="page"` : ""}>${title}</a></li>`)}</ul>`;
}

export const notices = (state) => html`
    ${!state.online && html`<p class="note warn" id="offline"><strong>No connection.</strong>
      ${state.astray ? `“${state.astray}” must wait until it is back.` : state.saved ? `What stands here was saved ${clock(state.saved)}.`
        : state.view === "setup" || state.view === "jobs" ? "New questions must wait; counting goes on." : "New questions must wait."}
      The page tries again by itself.</p>`}
    ${state.ownHead && html`<div class="note" id="borrowed"><p>The link brought its own head: ${headLine(state.head)}.</p>
      <button data-do="ownHead">Back to my head: ${state.ownHead.headName || headLine(state.ownHead.head)}</button></div>`}`;

export const foot = (state) => html`<fieldset class="choice"><legend>Light or dark</legend>${THEMES.map(([theme, title]) => html`<button
      id="theme-${theme}" data-do="theme" data-theme="${theme}" aria-pressed="${state.theme === theme}">${title}</button>`)}</fieldset>
    <p class="soft">Stop the cutter before indexing, measuring or changing gears. The machine maker's and the shop's rules,
      local codes and qualified supervision come before anything said here.${state.version && ` Version ${state.version}.`}</p>`;
