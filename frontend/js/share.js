// The link to this setup, to be copied or scanned by another tablet. Pure.

import { html } from "./html.js";

export function share(state) {
  if (!state.shared) return "";
  const query = state.shared.split("#")[1] || "";
  return html`<div class="share"><div class="field"><label for="link">This setup as a link</label><input id="link" type="text" readonly value="${state.shared}"></div>
    <p class="row"><button type="button" data-do="copy" id="copy">Copy</button></p>
    <figure><img src="/qr.svg?${query}" alt="QR code of the link" width="180" height="180">
      <figcaption>Opens this setup</figcaption></figure></div>`;
}
