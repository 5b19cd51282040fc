// What leaves the page: the schedule as a file, the link, the printed card.

import { store } from "./store.js";
import { csv } from "./schedule.js";
import { saveFile } from "./file.js";

export function paperActions({ say }) {
  const chosen = () => store.get().answer.setups[store.get().chosen];
  return {
    csv() {
      saveFile("schedule.csv", "text/csv;charset=utf-8", csv(chosen()));
      say("The schedule is saved as a file.");
    },
    print() { window.print(); },
    share() { store.set({ shared: location.href }); },
  };
}
