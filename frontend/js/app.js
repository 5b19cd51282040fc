// The first document: what the machine needs. What the first answer and the count can do without comes a moment later.

import { openDocument } from "./document.js";
import { actions, connected, link, renewed, start } from "./actions.js";
import { render as jobs } from "./jobs-view.js";
import { render as setup } from "./setup-view.js";
import { render as shop, shopActions } from "./shop.js";

openDocument({
  name: "setup", views: { setup, jobs, shop }, actions: { ...actions, ...shopActions }, connected, link, renewed, start,
  later: { card: () => import("./jobcard.js"), part: () => import("./part-view.js") },
});
