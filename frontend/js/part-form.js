import { html } from "./html.js";
export function partFields(part, found) { return html``; }
