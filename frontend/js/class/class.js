// The document for the classroom.

import { openDocument } from "../document.js";
import { render as handout } from "./handout.js";

openDocument({ name: "class", views: { class: handout, handout } });
