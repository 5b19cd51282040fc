// Each part: title, then [field, label, how it is typed or what is to be chosen, hint]. Pure.

const COUNT = "numeric", LENGTH = "decimal", ANGLE = "angle";
const UNIT = ["unit", "Unit", [["mm", "mm"], ["in", "inch"]]];
const HAND = ["hand", "Hand", [["right", "Right"], ["left", "Left"]]];
const TEETH = ["teeth", "Number of teeth", COUNT];
const PITCH = [["module", "Module", LENGTH, "Or the diametral pitch."], ["diametral_pitch", "Diametral pitch", LENGTH]];
const TOOTH = [...PITCH, ["pressure_angle", "Pressure angle", ANGLE, "Empty: 20°."],
  ["whole_depth", "Whole depth", [["", "2.25 modules"], ["2.157", "2.157, older"], ["2.166", "2.166"]]]];

export const PARTS = {
  __proto__: null,
  spur_gear: ["Spur gear", [TEETH, ...TOOTH, UNIT]],
  helical_gear: ["Helical gear", [TEETH, ...TOOTH, ["helix_angle", "Helix angle, from the axis", ANGLE], HAND, UNIT]],
  bevel_gear: ["Bevel gear", [TEETH, ["mate", "Teeth of its mate", COUNT, "Or the pitch angle."], ["pitch_angle", "Pitch angle", ANGLE], ...PITCH, UNIT]],
  helix: ["Flutes, worm or cam on a helix", [["starts", "Number of starts", COUNT], ["diameter", "Diameter", LENGTH],
    ["lead", "Lead", LENGTH, "Or the helix angle."], ["helix_angle", "Helix angle, from the axis", ANGLE], HAND, UNIT]],
  flats: ["Flats on a bar", [["sides", "Number of flats", COUNT], ["across_flats", "Across flats", LENGTH, "Empty: the largest that the round allows."],
    ["round", "Diameter of the round", LENGTH, "Empty: just enough for full corners."], UNIT]],
  bolt_circle: ["Holes on a circle", [["holes", "Number of holes", COUNT], ["diameter", "Diameter of the circle", LENGTH],
    ["start", "Angle of the first hole", ANGLE, "Empty: 0."], ["zero", "Zero at", [["", "3 o'clock"], ["12 o'clock", "12 o'clock"]]],
    ["sense", "Counted", [["", "Anticlockwise"], ["clockwise", "Clockwise"]]], ["x", "Centre, x", LENGTH], ["y", "Centre, y", LENGTH], UNIT]],
  spline: ["Straight-sided spline", [["teeth", "Number of keys", COUNT], ["major", "Diameter over the keys", LENGTH],
    ["minor", "Diameter at the bottom", LENGTH], ["width", "Width of a key", LENGTH], UNIT]],
  dial: ["Graduated dial", [["divisions", "Number of lines", COUNT], ["diameter", "Diameter of the rim", LENGTH],
    ["label_every", "Lines from number to number", COUNT, "Empty: 10."], UNIT]],
  end_teeth: ["Teeth on a face, or a clutch", [TEETH, ["form", "What is cut", [["side_mill", "Side mill"], ["end_mill", "End mill"],
    ["saw_tooth", "Saw-tooth clutch"], ["v_clutch", "V clutch"], ["straight", "Straight-sided clutch"]]],
    ["cutter_angle", "Angle of the cutter", ANGLE, "Not for straight sides."]]],
  reamer: ["Reamer, unequal flutes", [["flutes", "Number of flutes", COUNT]]],
};

export const DEFAULT_PART = { kind: "spur_gear", unit: "mm", hand: "right", form: "side_mill" };

export const fieldsOf = (part) => (PARTS[part?.kind] || PARTS.spur_gear)[1];

// Fields typed for another kind stay in the page and are not sent.
export function typedPart(part) {
  const whole = { ...DEFAULT_PART, ...part };
  const mine = fieldsOf(whole).map(([name]) => [name, whole[name]]).filter(([, value]) => value !== undefined && String(value).trim() !== "");
  return { kind: whole.kind, ...Object.fromEntries(mine) };
}

export function isCount(part, name) {
  return fieldsOf(part).some(([field, , mode]) => field === name && mode === COUNT);
}

export function isBlankPart(part) {
  return !String(part?.[fieldsOf(part)[0][0]] ?? "").trim();
}

export const partTitle = (part) => (PARTS[part.kind] || ["Part"])[0];
