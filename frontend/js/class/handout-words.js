// What the handout teaches, and the work that it uses: an invented works that rebuilds looms. Pure.

const divisions = (...numbers) => numbers.map((number) => ({ divisions: number }));

export function opening({ ratio, plates }) {
  const lines = [`Inside the head a worm turns a wheel. On this head ${ratio} turns of the crank turn the work once, so for N divisions every move is ${ratio} ÷ N turns.`];
  if (!plates.length) return [...lines, "Whole turns are counted; the rest of a turn is read from the dial."];
  return [...lines, "Whole turns are counted; the rest of a turn is measured on a circle of holes.",
    "A space is the step from one hole to the next. The hole that the pin is in is left, so it is never counted; the arms embrace one hole more than there are spaces."];
}

export const blanks = ({ plates }) => plates.length
  ? "Turns ______ Spaces ______ Circle ______ Arms over ______ holes" : "Turns ______ Dial ____________";

// Each lesson tries its numbers in turn and shows the first that the head can do by that method.
export const LESSONS = [
  {
    title: "Direct: the plate on the spindle", method: "direct", works: divisions(6, 8, 4, 3, 5, 9),
    words: ["For few divisions the worm is left out. The pin drops into a plate that sits on the spindle itself. The holes of that plate, shared by the number wanted, give the spaces of one move: a share without remainder is needed."],
    without: "This head has no direct plate.",
  },
  {
    title: "Plain: a fraction of a crank turn", method: "plain", works: divisions(28, 18, 36, 7, 12, 9),
    words: ["Write ratio over divisions. Take out the whole turns. Bring what remains to a fraction whose lower number is a circle on one of the plates: its upper number is the spaces.",
      "Where several circles serve, the larger one is better, since a hole that is slightly out of place then does least harm."],
    without: "No circle of this head serves these numbers.",
  },
  {
    title: "An angle instead of a number", method: "plain", works: [{ angle: "37°30'" }, { angle: "22°30'" }, { angle: "15°" }, { angle: "9°" }],
    words: ["One crank turn is 360° over the ratio. Divide the wanted angle by that and go on as before."],
    without: "No circle of this head serves these angles.",
  },
  {
    title: "Compound: two circles of one plate", method: "compound", works: divisions(77, 51, 63, 91, 69, 99),
    words: ["First the crank moves on one circle, then plate and crank together on another. The two fractions add up, or one is taken from the other. Keep the same order at every cut."],
    without: "This head gives none of these numbers by two circles of one plate.",
  },
  {
    title: "Differential: the plate geared to the spindle", method: "differential", works: divisions(73, 53, 59, 61, 51),
    words: ["Choose a move that a circle does give. It is a little wrong, and gears from the spindle turn the plate during the move to put that right. Turn the crank and watch the plate before cutting: heads differ in how many idlers they want."],
    without: "This head has no change gears for it.",
  },
  {
    title: "By the dial", method: "dial", works: divisions(28, 12, 7),
    words: ["Every reading is worked from zero and only then rounded to the dial. Adding a rounded step would add its error at every cut."],
    without: "This head has no dial.",
  },
];

export const EXERCISES = [
  { words: "A ratchet of the let-off motion has 18 teeth.", work: { divisions: 18 } },
  { words: "A beam flange is drilled with 7 holes at even distances.", work: { divisions: 7 } },
  { words: "A pattern wheel is notched 34 times.", work: { divisions: 34 } },
  { words: "Two keyways of a tappet shaft stand 22°30′ apart.", work: { angle: "22°30'" } },
  { words: "A take-up wheel has 46 teeth.", work: { divisions: 46 } },
  { words: "A change wheel has 65 teeth.", work: { divisions: 65 } },
];
