// The question above, the answer below it.

import { html, mount } from "./html.js";
import { faults, summary } from "./errors.js";
import { askForm, fill, listen } from "./ask-form.js";
import { answerView } from "./answer-view.js";

const FRAME = html`<h1 tabindex="-1" class="unseen">Crank move</h1><div class="bench"><div id="ask"></div><div id="result" aria-live="off"></div></div>`;

// The id of the field that a pointer means; a fault of the head is put right in the head's document.
function fieldOf(pointer, kind) {
  const [, of, first, second] = /^#\/(\w+)\/?(\w*)\/?(\w*)/.exec(pointer) || [];
  if (of === "head") return "change-head";
  if (of === "tolerance") return first === "angle" ? of : first || of;
  if (first === "part") return `part-${second || "kind"}`;
  return of === "work" && first || (of === "every" ? of : kind === "part" ? "part-kind" : kind);
}

async function showPart(root, part) {
  try {
    const { partView } = await import("./part-view.js");
    const here = root.querySelector("#part-here");
    if (here) mount(here, partView(part));
  } catch { /* without a connection the move still stands */ }
}

export function render(root, state, actions) {
  if (mount(root, FRAME)) listen(root.querySelector("#ask"), actions);
  const found = faults(state.problem, (pointer) => fieldOf(pointer, state.question.kind))
    .map(({ field, text }) => ({ field, text: field === "change-head" ? `The head: ${text}` : text }));
  const ask = root.querySelector("#ask");
  const fresh = mount(ask, html`${summary(found)}${askForm(state, found)}`);
  fill(ask, state.question, fresh);
  mount(root.querySelector("#result"), answerView(state));
  if (state.answer?.part) showPart(root, state.answer.part);
}
