// What the shop screen says of a cut. Pure.

import { count, plural } from "./words.js";

export const STAGE = { ready: "Before the first cut", trial: "Trial pass", closing: "Trial pass", cut: "Cutting", done: "Finished" };

export function title(job) {
  if (job.phase === "trial") return `Mark ${job.at + 1} of ${job.count}`;
  if (job.phase === "cut") return `Cut ${job.at + 1} of ${job.count}`;
  if (job.phase === "closing") return `All ${job.count} marked`;
  return job.phase === "done" ? `All ${job.count} cut` : "Get ready";
}

// [[number, unit]]: the figures of one move, whole turns first. `holes` below 0 go the other way.
export const figures = (turns, holes) => [
  [turns, plural(turns, "turn")], [Math.abs(holes), `${plural(holes, "space")}${holes < 0 ? " back" : ""}`],
].filter(([number]) => number);

const moved = (turns, holes) => figures(turns, holes).map((figure) => figure.join(" ")).join(" and ");

// One sentence for the ear: what to turn, where it ends.
export function spoken(job, row) {
  if (!row) return title(job);
  const place = row.scale ? ` Scale ${row.scale}.` : "";
  if (row.dial) return `${title(job)}. Dial to ${row.dial.set}.${place}`;
  const second = row.secondHoles ? `, then ${moved(0, row.secondHoles)} with the plate` : "";
  const move = moved(row.turns, row.holes);
  return `${title(job)}. ${move || second ? `${move}${second}` : "No move"}, hole ${row.hole}.${place}`;
}

export const doneLabel = (job) => job.phase === "trial" ? `Mark ${job.at + 1} is made` : `Cut ${job.at + 1} is made`;

function directStart({ move, asked }) {
  const free = asked.head.worm_disengages === false ? "Latch the crank pin up; the worm stays in mesh." : "Take the worm out of mesh.";
  return [free, `Put the direct pin in a hole of the ${move.circle} circle and mark that hole: it is hole 0.`];
}

function plateStart({ move, second }) {
  const list = [`Plate ${move.plate} is on. The pin is in circle ${move.circle}; mark its hole with chalk: it is hole 0.`];
  if (move.sector_holes) list.push(`Set the arms over ${move.sector_holes} holes, the pin's own included, and rest the first arm against the pin.`);
  if (second) list.push(`The second move is on circle ${second.circle} of the same plate, with the stop pin drawn: plate and crank turn together.`);
  return list;
}

// Everything to be seen to before the first cut, in the order of doing it.
export function preparations(job) {
  const { method, move, gearing } = job;
  const list = !move ? ["Bring the dial to zero, coming up to it the way you will turn."] : move.plate ? plateStart(job) : directStart(job);
  if (gearing) list.push(`Fit the gears and ${count(gearing.idlers, "idler")}, guard them, and draw the stop pin: the plate must be free to turn.`);
  const turned = method === "direct" || (move && !move.plate) ? "Turn" : method === "dial" ? "Turn the handwheel" : "Turn the crank";
  return [...list, "Set the scale on the spindle nose to 0, or note what it reads.", `${turned} one way only, as you will when cutting, so that no slack is left.`];
}

export const armsReminder = ({ move }, row) => {
  if (!move || !move.plate || !row.holes || row.cut === 1) return "";
  return move.sector_holes ? "Arms first: swing them on, the first one against the pin."
    : `Arms first: set them over ${Math.abs(row.holes) + 1} holes from the pin; they change at every cut.`;
};
