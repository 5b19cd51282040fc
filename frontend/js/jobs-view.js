// The jobs under way: how far each is, opened or removed here.

import { html, mount } from "./html.js";
import { STAGE } from "./shop-words.js";
import { clock } from "./words.js";

const PROGRESS = {
  ready: () => "not begun", trial: ({ at, count }) => `${at} of ${count} marked`, closing: ({ count }) => `all ${count} marked`,
  cut: ({ at, count }) => `${at} of ${count} cut`, done: ({ count }) => `all ${count} cut`,
};

const entry = (job) => html`<li class="job"><h2>${job.title}</h2><p>${job.summary}</p>
  <p><strong>${STAGE[job.phase]}</strong>: ${PROGRESS[job.phase](job)}. Last step ${clock(job.touched)}.</p>
  <div class="shop-row"><button class="main" id="job-open-${job.id}" data-do="show" data-id="${job.id}">Go on with ${job.title}</button>
  <button id="job-drop-${job.id}" data-do="opens" data-dialog="job-sure-${job.id}">Remove</button></div>
  <dialog id="job-sure-${job.id}" aria-labelledby="job-sure-title-${job.id}"><h2 id="job-sure-title-${job.id}">Remove ${job.title}?</h2>
    <p>Its count goes with it: ${PROGRESS[job.phase](job)}.</p>
    <div class="shop-row"><button class="main" data-do="closes">Keep it</button>
    <button data-do="drop" data-id="${job.id}">Remove it</button></div></dialog></li>`;

export function render(root, state) {
  const jobs = state.jobs || [];
  mount(root, html`<h1 tabindex="-1">Jobs</h1>${jobs.length ? html`<ul class="jobs">${jobs.map(entry)}</ul>`
    : html`<p>No job is under way. Work out a setup, then take it to the machine.</p>`}`);
}
