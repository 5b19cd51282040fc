// What stands around every view: the way from page to page, notices, the foot.

import { html } from "./html.js";
import { clock, headLine } from "./words.js";

const PAGES = [["setup", "Set up"], ["jobs", "Jobs"], ["check", "Check"], ["angles", "Angles"], ["head", "Head"]];
const THEMES = [["auto", "As the tablet"], ["light", "Light"], ["dark", "Dark"]];

export function nav(state) {
  return html`<ul class="pages">${PAGES.map(([view, title]) => html`<li><button type="button" id="go-${view}" data-do="go"
    data-view="${view}" ${state.view === view ? html`aria-current="page"` : ""}>${title}</button></li>`)}</ul>`;
}

export function notices(state) {
  return html`
    ${!state.online && html`<p class="note warn" id="offline"><strong>No connection.</strong>
      ${state.saved && state.answer ? `This answer was saved ${clock(state.saved)}.` : "New questions must wait; counting goes on."}
      The page tries again by itself.</p>`}
    ${state.ownHead && html`<div class="note" id="borrowed"><p>The link brought its own head: ${headLine(state.head)}.</p>
      <button type="button" data-do="ownHead">Back to my head: ${state.ownHead.headName || headLine(state.ownHead.head)}</button></div>`}`;
}

export function foot(state) {
  return html`<fieldset class="choice"><legend>Light or dark</legend>${THEMES.map(([theme, title]) => html`<button type="button"
      id="theme-${theme}" data-do="theme" data-theme="${theme}" aria-pressed="${state.theme === theme}">${title}</button>`)}</fieldset>
    <p><button type="button" id="go-handout" data-do="go" data-view="handout">Handout for a class</button></p>
    <p class="soft">Stop the cutter before indexing, measuring or changing gears. The machine maker's and the shop's rules,
      local codes and qualified supervision come before anything said here.${state.version && ` Version ${state.version}.`}</p>`;
}
