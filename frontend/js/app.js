// The first document: what the machine needs. Setting up, cutting and the count come with it; the rest a moment later, so that the
// first answer need not wait for it, and is there when the network goes.

import { openDocument } from "./document.js";
import { actions, connected, link, renewed, start } from "./actions.js";
import { render as jobs } from "./jobs-view.js";
import { render as setup } from "./setup-view.js";
import { render as shop } from "./shop.js";

openDocument({
  name: "setup", views: { setup, jobs, shop }, actions, connected, link, renewed, start,
  later: { card: () => import("./jobcard.js"), part: () => import("./part-view.js") },
});
