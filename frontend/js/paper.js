// What leaves the page: the schedule as a file, the link, the printed card.

import { store } from "./store.js";
import { csv } from "./schedule.js";
import { saveFile } from "./file.js";

export function paperActions({ say, focusOn }) {
  const chosen = () => store.get().answer.setups[store.get().chosen];
  return {
    csv() {
      saveFile("schedule.csv", "text/csv;charset=utf-8", csv(chosen()));
      say("The schedule is saved as a file.");
    },
    share() {
      const shared = store.get().shared ? null : location.href;
      store.set({ shared });
      if (shared) setTimeout(() => focusOn("link"));
    },
    // Only a page from https may write to the clipboard; elsewhere the link stands in a field to be copied by hand.
    async copy() {
      const box = document.getElementById("link");
      box.select();
      try {
        await navigator.clipboard.writeText(box.value);
        say("The link is copied.");
      } catch {
        say("The link is selected: copy it from the field.");
      }
    },
    print: async () => (await import("./jobcard.js")).printCard(),
  };
}
