// The tablet stays awake, shakes, speaks; each fails silently where the browser does not allow it.

let lock = null;
let wanted = false;

export const canStayAwake = () => window.isSecureContext && "wakeLock" in navigator;
export const canShake = () => "vibrate" in navigator;
export const canSpeak = () => "speechSynthesis" in window;

async function hold() {
  if (!wanted || lock || document.visibilityState !== "visible" || !canStayAwake()) return;
  try {
    lock = await navigator.wakeLock.request("screen");
    lock.addEventListener("release", () => { lock = null; });
  } catch { /* a low battery forbids it; the tablet's own screen time holds */ }
}

export function stayAwake(on) {
  wanted = on;
  if (on) return hold();
  lock?.release();
  lock = null;
}

// The browser takes the lock away whenever the page is hidden.
document.addEventListener("visibilitychange", hold);

export function shake(shop, pattern) {
  if (shop?.shake && canShake()) navigator.vibrate(pattern);
}

export function speak(shop, words) {
  if (!shop?.speak || !canSpeak()) return;
  speechSynthesis.cancel();
  speechSynthesis.speak(new SpeechSynthesisUtterance(words));
}
