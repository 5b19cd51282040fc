// The document for the desk: a setup worked by hand is checked, angles are turned both ways.

import { openDocument } from "../document.js";
import { render as check } from "./check-view.js";
import { render as angles, askAgain } from "./angles-view.js";

openDocument({ name: "check", views: { check, angles }, connected: (online) => online && askAgain(), renewed: askAgain });
