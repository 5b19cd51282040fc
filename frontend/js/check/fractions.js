// Fractions as a person reads them: 25/6 is 4 1/6. What is too long for that stays as it came.

export function mixed(fraction) {
  const [over, under] = String(fraction).split("/").map(Number);
  if (!under || Math.abs(over) < under || !Number.isSafeInteger(over)) return String(fraction);
  return `${Math.trunc(over / under)} ${Math.abs(over % under)}/${under}`;
}

// An error of arc that may be large: in degrees from one degree up, else as `small` has it.
export function wideError(seconds, small) {
  return Math.abs(seconds) >= 3600 ? `${(Math.abs(seconds) / 3600).toFixed(2)}°` : small(seconds);
}
