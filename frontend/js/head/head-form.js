// A head as it is typed, and back. Pure.

import { list, numberOr, wholeHead, wholeOr } from "../words.js";

const SPOTS = [["simple", "with"], ["simple", "against"], ["compound", "with"], ["compound", "against"]];

export function toDraft(head, name = "") {
  const whole = wholeHead(head);
  const dial = whole.dial || {};
  const draft = {
    name, ratio: String(whole.ratio), plates: whole.plates.map((circles) => circles.join(" ")), mounted: whole.mounted_plate || 1,
    direct: whole.direct_circles.join(" "), worm: whole.worm_disengages, gears: whole.change_gears.join(" "),
    stops: (whole.stop_circles || []).join(" "), dial: whole.dial ? (dial.divisions ? "divisions" : "degrees") : "none",
    graduation: dial.graduation || "", vernier: dial.vernier || "", marks: dial.divisions ? String(dial.divisions) : "",
    lead: whole.screw ? String(whole.screw.lead) : "", unit: whole.screw ? whole.screw.unit : "mm",
  };
  for (const [train, way] of SPOTS) draft[`${train}-${way}`] = String(whole.idlers[train][way]);
  return draft;
}

function dialOf(draft) {
  if (draft.dial === "divisions") return { divisions: numberOr(draft.marks) };
  if (draft.dial !== "degrees") return null;
  const dial = { graduation: draft.graduation.trim() };
  return draft.vernier.trim() ? { ...dial, vernier: draft.vernier.trim() } : dial;
}

// Empty rows of plates are dropped; the mounted plate keeps pointing at the same one.
export function fromDraft(draft) {
  const rows = draft.plates.map(list);
  const mounted = rows.slice(0, draft.mounted).filter((row) => row.length).length;
  const plates = rows.filter((row) => row.length);
  const idlers = { simple: {}, compound: {} };
  for (const [train, way] of SPOTS) idlers[train][way] = numberOr(draft[`${train}-${way}`]);
  const stops = list(draft.stops);
  return {
    ratio: wholeOr(draft.ratio), plates, mounted_plate: plates.length ? Math.max(1, mounted) : null, direct_circles: list(draft.direct),
    worm_disengages: draft.worm, change_gears: list(draft.gears), idlers, stop_circles: stops.length ? stops : null,
    screw: draft.lead.trim() ? { lead: numberOr(draft.lead), unit: draft.unit } : null, dial: dialOf(draft),
  };
}

// Crank turns for spindle turns give the ratio; null until both are whole numbers that do.
export function counted(crank, spindle) {
  const [turns, rounds] = [numberOr(crank), numberOr(spindle)];
  if (!(turns > 0) || !(rounds > 0)) return null;
  const ratio = turns / rounds;
  return { ratio: Math.round(ratio), exact: Number.isInteger(ratio) };
}
