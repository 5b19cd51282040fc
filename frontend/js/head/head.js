// The document for the head: described, counted, kept by name, taken into use.

import { openDocument } from "../document.js";
import { headActions as actions } from "./head-actions.js";
import { render as head } from "./head-view.js";

openDocument({ name: "head", views: { head }, actions });
