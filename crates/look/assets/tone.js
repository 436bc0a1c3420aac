// Tones of the page's own making: one after the other, each a fifth of a second.
let sound = null;

// A browser lets a page sound only after it was touched: called at a touch, later tones are heard.
export function mayRing() {
  sound ??= window.AudioContext ? new AudioContext() : null;
  sound?.resume?.();
}

export function tone(pitches, loudness) {
  if (!sound) return;
  pitches.forEach((pitch, at) => {
    const [from, voice, loud] = [sound.currentTime + at * 0.24, sound.createOscillator(), sound.createGain()];
    voice.frequency.value = pitch;
    loud.gain.setValueAtTime(loudness, from);
    loud.gain.exponentialRampToValueAtTime(0.001, from + 0.2);
    voice.connect(loud).connect(sound.destination);
    voice.start(from);
    voice.stop(from + 0.22);
  });
}
