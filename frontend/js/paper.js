// What leaves the page: the schedule as a file, the link, the printed card.

import { focusOn, say } from "./document.js";
import { store } from "./store.js";
import { csv } from "./schedule.js";
import { saveFile } from "./file.js";

export const paperActions = {
  csv() {
    const { answer, chosen } = store.get();
    saveFile("schedule.csv", "text/csv;charset=utf-8", csv(answer.setups[chosen]));
    say("The schedule is saved as a file.");
  },
  share() {
    const shared = store.get().shared ? null : location.href;
    store.set({ shared, copied: false });
    if (shared) setTimeout(() => focusOn("link"));
  },
  // Only a page from https may write to the clipboard.
  async copy() {
    const box = document.getElementById("link");
    box.select();
    try {
      await navigator.clipboard.writeText(box.value);
      store.set({ copied: true });
      say("The link is copied.");
    } catch {
      say("The link is selected: copy it from the field.");
    }
  },
  print: async () => (await import("./jobcard.js")).printCard(),
};
