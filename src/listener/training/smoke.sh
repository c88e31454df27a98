#!/bin/sh
# Synthesise, train and export on the processor in about a minute, to see that every part still runs. The network that
# comes out is of no use. Not part of the tests: it needs the packages that README.md names.
#     sh smoke.sh [CMUDICT.gz]
set -eu
cd "$(dirname "$0")"
out=$(mktemp -d)
trap 'rm -rf "$out"' EXIT
python=${PYTHON:-/usr/bin/python3}
general=${1:+--general $1}
$python check.py
$python synthesise.py "$out/made.npz" --count 240 --seconds 25 $general
$python synthesise.py "$out/people.npz" --count 40 --seconds 10 --chance 2 $general
$python synthesise.py "$out/kept.npz" --count 20 --seconds 5 --kept
$python - "$out" <<'PYTHON'
import sys, pathlib, numpy, clips
hiss = numpy.random.default_rng(1).normal(0, 3000, 48_000).astype("int16")
clips.write(pathlib.Path(sys.argv[1]) / "noises", clips.gathered([(clips.Clip("", "made", "hiss", 0, 0), hiss)]))
PYTHON
$python train.py "$out/weights.npz" --people "$out/people.npz" --made "$out/made.npz" --noises "$out/noises.npz" \
    --kept "$out/kept.npz" --minutes 0.3 --batch 8 $general
$python export.py "$out/weights.npz" "$out/listener.onnx"
