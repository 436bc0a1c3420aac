// At the weigh-in page: a tone for what was kept or asked, the label printed, Escape to weigh again. Each follows an
// entry of this tablet, never a page that is only loaded anew.
let sound = null;

export function weigh() {
  document.addEventListener("setwright:placed", placed);
  document.addEventListener("keydown", (event) => {
    if (event.key === "Escape") document.querySelector("[data-weigh-again]")?.click();
  });
}

function placed() {
  const sign = document.querySelector("[data-weigh-sign]");
  if (!sign) return;
  if (document.querySelector("[data-weigh-sound]")) tone(sign.dataset.weighSign === "kept" ? [880] : [330, 330]);
  if (document.querySelector("[data-weigh-label]")) window.print();
}

function tone(pitches) {
  try {
    sound ??= new AudioContext();
    pitches.forEach((pitch, at) => {
      const [from, voice, loud] = [sound.currentTime + at * 0.22, sound.createOscillator(), sound.createGain()];
      voice.frequency.value = pitch;
      loud.gain.setValueAtTime(0.2, from);
      loud.gain.exponentialRampToValueAtTime(0.001, from + 0.18);
      voice.connect(loud).connect(sound.destination);
      voice.start(from);
      voice.stop(from + 0.2);
    });
  } catch {
    // A tablet without sound still shows the sign.
  }
}
