// An angle as crank settings, crank settings as an angle, and what the angle comes to as an arc, a chord, a rise, a sine bar.

import { html, mount } from "../html.js";
import { ask as askService } from "../api.js";
import { store } from "../store.js";
import { field } from "../field.js";
import { faults, summary } from "../errors.js";
import { mixed } from "./fractions.js";
import { fillForm, keepForm } from "../kept-form.js";
import { count, headLine, numberOr, seconds, wholeHead } from "../words.js";

const TYPING = 400;
let actions = null;
let asking = 0;
let pause = 0;

const anglesOf = (state) => ({ from: "angle", ...state.angles });
const filled = (text) => text !== undefined && String(text).trim() !== "";
const isBlank = (form) => form.from === "crank" ? !filled(form.turns) && !filled(form.holes) : !filled(form.angle);

function toRequest(form, head) {
  const body = { head };
  if (form.from === "crank") {
    body.crank = { turns: filled(form.turns) ? numberOr(form.turns) : 0, holes: filled(form.holes) ? numberOr(form.holes) : 0 };
    if (filled(form.circle)) body.crank.circle = numberOr(form.circle);
  } else body.angle = String(form.angle ?? "").trim();
  for (const name of ["diameter", "sine_bar"]) if (filled(form[name])) body[name] = numberOr(form[name]);
  return body;
}

async function ask(loud) {
  clearTimeout(pause);
  const state = store.get();
  const form = anglesOf(state);
  const mine = ++asking;
  if (isBlank(form) && !loud) return store.set({ converted: null });
  const reply = await askService("/v1/angle", toRequest(form, wholeHead(state.head)));
  if (mine !== asking) return;
  if (reply.ok) {
    store.set({ converted: { answer: reply.data } });
    return actions.say(`${reply.data.angle.dms}, ${reply.data.crank.turns} crank turns.`);
  }
  store.set({ converted: loud || reply.status === 0 ? { problem: reply.problem } : null });
  if (loud) setTimeout(() => actions.focusOn("problem"));
}

function changed() {
  clearTimeout(pause);
  pause = setTimeout(() => ask(false), TYPING);
}

const FIELD_OF = { turns: "angles-turns", holes: "angles-holes", circle: "angles-circle" };
const fieldOf = (pointer) => FIELD_OF[/\/crank\/(\w+)/.exec(pointer)?.[1]]
  || { diameter: "angles-diameter", sine_bar: "angles-sine_bar", crank: "angles-holes" }[/^#\/(\w+)/.exec(pointer)?.[1]] || "angles-angle";

const pick = (now, [key, title]) => html`<label class="pick"><input type="radio" name="from" id="angles-from-${key}" value="${key}"
  ${key === now ? html`checked` : ""}><span>${title}</span></label>`;

function formOf({ from }, found) {
  const box = (name, label, more = {}) => field({ id: `angles-${name}`, name, label, found, ...more });
  return html`<form id="angles-form" class="sheet" novalidate>
    <fieldset class="choice"><legend>What do you know?</legend>${[["angle", "The angle"], ["crank", "The crank move"]].map((each) => pick(from, each))}</fieldset>
    ${from === "crank" ? html`<div class="fields">${box("turns", "Whole turns", { mode: "numeric" })}${box("holes", "Spaces", { mode: "numeric" })}
      ${box("circle", "Circle (its number of holes)", { mode: "numeric" })}</div>`
    : box("angle", "Angle", { mode: "decimal", signs: true, size: "big", hint: "Such as 22°30′15″, 22.5, 22 30 15, 1/7 turn, 0.35 rad or 25 gon." })}
    <div class="fields">${box("diameter", "Diameter, for arc and chord", { mode: "decimal" })}${box("sine_bar", "Length of the sine bar", { mode: "decimal" })}</div>
    <button type="submit" class="main" id="angles-ask">Convert</button></form>`;
}

const setting = ({ turns, holes, circle, plate }) => html`<li><strong>${[turns ? count(turns, "turn") : "",
  holes ? `${count(holes, "space")} on ${circle}` : ""].filter(Boolean).join(" and ") || "no move"}</strong>${plate ? `, plate ${plate}` : ""}</li>`;

function crank({ turns, settings, nearest }) {
  const close = nearest && !settings?.length ? html`<p>No circle of this head gives it exactly. Nearest:</p><ul>${setting(nearest)}</ul>
    <p>off by ${seconds(nearest.error_seconds)}.</p>` : "";
  return html`<section class="sheet"><h2>On the crank</h2><p class="crank-move">${turns ? `${mixed(turns)} crank turns` : "No whole fraction of crank turns"}</p>
    ${settings?.length ? html`<ul>${settings.map(setting)}</ul>` : close}</section>`;
}

const figure = (label, value) => value === null || value === undefined ? "" : html`<div><dt>${label}</dt><dd>${value}</dd></div>`;
const round = (value, places = 6) => value === null || value === undefined ? null : String(Number(Number(value).toFixed(places)));

function result({ answer }) {
  if (!answer) return html`<p class="wait">Type an angle or a crank move: the other appears here.</p>`;
  const { angle } = answer;
  return html`${answer.crank ? crank(answer.crank) : ""}<section class="sheet"><h2>The angle</h2><dl class="facts-list">${figure("Degrees, minutes, seconds", angle.dms)}${figure("Decimal degrees", round(angle.degrees, 8))}
    ${figure("Turns", angle.turns)}${figure("Radians", round(answer.radians, 9))}${figure("Gon", round(answer.gon))}</dl></section>
    <section class="sheet"><h2>As a length</h2><dl class="facts-list">${figure("Arc", round(answer.arc))}${figure("Chord", round(answer.chord))}
      ${figure("Rise per 100", round(answer.rise_per_100))}${figure("Sine bar height", round(answer.sine_bar_height))}</dl>
      <p class="soft">In the unit of the length you gave.</p></section>`;
}

export function render(root, state, given) {
  actions = given;
  if (mount(root, html`<h1 tabindex="-1">Angles</h1><p id="angles-head"></p><div class="columns"><div id="angles-ask-here"></div><div id="angles-result" class="column"></div></div>`)) ask(false);
  keepForm(root, "angles-form", "angles", { changed, asked: () => ask(true) });
  const values = anglesOf(state);
  const found = faults(state.converted?.problem, fieldOf);
  root.querySelector("#angles-head").textContent = `On ${state.headName || "the head"}: ${headLine(state.head)}.`;
  const form = root.querySelector("#angles-ask-here");
  mount(form, html`${summary(found)}${formOf(values, found)}`);
  fillForm(form, values);
  mount(root.querySelector("#angles-result"), result(state.converted || {}));
}

// Another head, or the connection back: what stands there is asked anew.
export const askAgain = () => actions && ask(false);
