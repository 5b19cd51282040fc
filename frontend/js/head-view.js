import { html, mount } from "./html.js";
export function render(root, state, actions) { mount(root, html`<h1 tabindex="-1">My head</h1>`); }
