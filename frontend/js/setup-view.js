// The first page: the question above, the answer below it.

import { html, mount } from "./html.js";
import { faults, summary } from "./errors.js";
import { askForm, fill, listen } from "./ask-form.js";
import { answerView } from "./answer-view.js";

const FRAME = html`<h1 tabindex="-1" class="unseen">Crank move</h1><div class="bench"><div id="ask"></div><div id="result" aria-live="off"></div></div>`;

// A fault of the head is put right on its own page.
const aboutHead = ({ field, text }) => (/^head-/.test(field) ? { field: "change-head", text: `The head: ${text}` } : { field, text });

// The drawing and sizes of a part are fetched when one is first asked for.
async function showPart(root, part) {
  try {
    const { partView } = await import("./part-view.js");
    const here = root.querySelector("#part-here");
    if (here) mount(here, partView(part));
  } catch { /* without a connection the move still stands */ }
}

export function render(root, state, actions) {
  if (mount(root, FRAME)) listen(root.querySelector("#ask"), actions);
  const found = faults(state.problem, state.question.kind === "part" ? "part-kind" : state.question.kind).map(aboutHead);
  const ask = root.querySelector("#ask");
  const fresh = mount(ask, html`${summary(found)}${askForm(state, found)}`);
  fill(ask, state.question, fresh);
  mount(root.querySelector("#result"), answerView(state));
  if (state.answer?.part) showPart(root, state.answer.part);
}
