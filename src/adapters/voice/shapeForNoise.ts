/** Below it engines are loudest and speech says least. */
const HIGH_PASS_HZ = 400;
const SHELF = { hz: 1_300, db: 16 };
/** Where consonants are told apart, and the ear is keenest. */
const PRESENCE = { hz: 2_800, db: 12 };
/** Quiet consonants are brought up to loud vowels: all that is over this is pressed together. */
const COMPRESSION = { thresholdDb: -36, kneeDb: 6, ratio: 4, attackS: 0.001, releaseS: 0.04 };
/** What the compression took, so that the built-in voice is about as loud as it was: `npm run bench -- voice`. */
const MAKE_UP_DB = 1;
/** Peaks over the first are rounded off, and none passes the second; 1 is full scale. */
const LIMIT = { from: 0.5, to: 0.95 };
/** How far over full scale the limit still sees a difference. */
const LIMIT_RANGE = 4;
const LIMIT_POINTS = 2_049;

const LIMIT_CURVE = Float32Array.from({ length: LIMIT_POINTS }, (_none, i) => {
  const at = LIMIT_RANGE * ((2 * i) / (LIMIT_POINTS - 1) - 1);
  const over = Math.abs(at) - LIMIT.from;
  const room = LIMIT.to - LIMIT.from;
  return over <= 0 ? at : Math.sign(at) * (LIMIT.from + room * Math.tanh(over / room));
});

/**
 * Shapes speech so that its words come through engine noise: what masks least and says most is made louder.
 *
 * @param gainDb louder or softer than usual; what would then clip is rounded off.
 * @returns where the speech goes in; it comes out at `out` some 6 ms later, as the compressor looks ahead.
 * Not for tones: it would change their harmonics and the rise of their pulses.
 * Source of the equaliser's figures: measured offline before, for this engine; those of the compression are ours.
 */
export function shapeForNoise(context: BaseAudioContext, out: AudioNode, gainDb: number): AudioNode {
  const filter = (type: BiquadFilterType, hz: number, db: number): AudioNode => {
    const node = context.createBiquadFilter();
    node.type = type;
    node.frequency.value = hz;
    node.gain.value = db;
    return node;
  };
  const compressor = context.createDynamicsCompressor();
  compressor.threshold.value = COMPRESSION.thresholdDb;
  compressor.knee.value = COMPRESSION.kneeDb;
  compressor.ratio.value = COMPRESSION.ratio;
  compressor.attack.value = COMPRESSION.attackS;
  compressor.release.value = COMPRESSION.releaseS;
  const makeUp = context.createGain();
  makeUp.gain.value = 10 ** ((MAKE_UP_DB + gainDb) / 20) / LIMIT_RANGE;
  const limiter = context.createWaveShaper();
  limiter.curve = LIMIT_CURVE;
  const input = filter("highpass", HIGH_PASS_HZ, 0);
  input
    .connect(filter("highshelf", SHELF.hz, SHELF.db))
    .connect(filter("peaking", PRESENCE.hz, PRESENCE.db))
    .connect(compressor)
    .connect(makeUp)
    .connect(limiter)
    .connect(out);
  return input;
}
