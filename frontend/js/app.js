// The first document: what the machine needs.

import { openDocument } from "./document.js";
import { actions, connected, link, renewed, start } from "./actions.js";
import { render as jobs } from "./jobs-view.js";
import { render as setup } from "./setup-view.js";
import { render as shop, shopActions } from "./shop.js";

openDocument({ name: "setup", views: { setup, jobs, shop }, actions: { ...actions, ...shopActions }, connected, link, renewed, start });

// Card and part can wait for the first answer, but must be there when the network goes.
setTimeout(() => Promise.all([import("./jobcard.js"), import("./part-view.js")]).catch(() => {}), 1500);
