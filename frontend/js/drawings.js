// Drawings with their captions, for the page.

import { html, raw } from "./html.js";
export function plateDrawing(setup, head) { return ""; }
export function trainDrawing(gearing) { return ""; }
