// The parts that the page asks for: title, then [field, label, how it is typed or what is to be chosen, hint]. Pure.

const LENGTH = "decimal";
const ANGLE = "angle";
const UNIT = ["unit", "Unit", [["mm", "mm"], ["in", "inch"]]];
const HAND = ["hand", "Hand", [["right", "Right"], ["left", "Left"]]];
const PITCH = [["module", "Module", LENGTH, "Or the diametral pitch below."], ["diametral_pitch", "Diametral pitch", LENGTH],
  ["pressure_angle", "Pressure angle", ANGLE, "20° when left empty."]];

export const PARTS = {
  flats: ["Flats on a bar", [["sides", "Number of flats", "numeric"], ["across_flats", "Across flats", LENGTH], ["round", "Diameter of the round", LENGTH], UNIT]],
  bolt_circle: ["Holes on a circle", [["holes", "Number of holes", "numeric"], ["diameter", "Diameter of the circle", LENGTH],
    ["start", "Angle of the first hole", ANGLE, "0 when left empty."], ["x", "Centre, x", LENGTH], ["y", "Centre, y", LENGTH], UNIT]],
  spur_gear: ["Spur gear", [["teeth", "Number of teeth", "numeric"], ...PITCH, UNIT]],
  helical_gear: ["Helical gear", [["teeth", "Number of teeth", "numeric"], ...PITCH, ["helix_angle", "Helix angle", ANGLE], HAND, UNIT]],
  bevel_gear: ["Bevel gear", [["teeth", "Number of teeth", "numeric"], ...PITCH, ["pitch_angle", "Pitch angle", ANGLE], UNIT]],
  helix: ["Flutes or thread on a helix", [["starts", "Number of starts", "numeric"], ["diameter", "Diameter", LENGTH], ["lead", "Lead", LENGTH], HAND, UNIT]],
  dial: ["Graduated dial", [["divisions", "Number of lines", "numeric"], ["diameter", "Diameter at the lines", LENGTH],
    ["label_every", "A number at every … lines", "numeric"], UNIT]],
  spline: ["Straight-sided spline", [["teeth", "Number of splines", "numeric"], ["major", "Major diameter", LENGTH], ["minor", "Minor diameter", LENGTH],
    ["width", "Width of a spline", LENGTH], UNIT]],
  end_teeth: ["Teeth on a face, or a clutch", [["teeth", "Number of teeth", "numeric"], ["cutter_angle", "Angle of the cutter", ANGLE],
    ["form", "What is cut", [["end_mill", "End mill"], ["side_mill", "Side mill"], ["saw_tooth", "Saw-tooth clutch"], ["v_clutch", "V clutch"], ["straight", "Straight-sided clutch"]]]]],
  reamer: ["Reamer, unequal flutes", [["flutes", "Number of flutes", "numeric"]]],
};

export const DEFAULT_PART = { kind: "spur_gear", unit: "mm", hand: "right", form: "side_mill" };

// What is typed for this kind alone: fields of other kinds stay in the page and are not sent.
export function typedPart(part) {
  const whole = { ...DEFAULT_PART, ...part };
  const [, fields] = PARTS[whole.kind] || PARTS.spur_gear;
  const mine = fields.map(([name]) => [name, whole[name]]).filter(([, value]) => value !== undefined && String(value).trim() !== "");
  return { kind: whole.kind, ...Object.fromEntries(mine) };
}

export function isBlankPart(part) {
  const [, fields] = PARTS[(part && part.kind) || DEFAULT_PART.kind] || PARTS.spur_gear;
  return !part || !String(part[fields[0][0]] ?? "").trim();
}

export function partTitle(part) {
  return (PARTS[part.kind] || ["Part"])[0];
}
