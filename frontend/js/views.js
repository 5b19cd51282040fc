// The views by name; each is render(root, state, actions).

import { render as angles } from "./angles-view.js";
import { render as check } from "./check-view.js";
import { render as handout } from "./handout.js";
import { render as head } from "./head-view.js";
import { render as jobs } from "./jobs-view.js";
import { render as setup } from "./setup-view.js";
import { render as shop } from "./shop.js";

export const VIEWS = { setup, jobs, check, angles, head, handout, shop };
