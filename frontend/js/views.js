// The views by name; each is render(root, state, actions).

import { render as setup } from "./setup-view.js";
import { render as head } from "./head-view.js";

export const VIEWS = { setup, head };
