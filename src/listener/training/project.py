"""Where the project keeps what training shares with the app, so that nothing is written down twice."""

import re
from pathlib import Path

HERE = Path(__file__).resolve().parent
ROOT = HERE.parents[2]
GRAMMARS = ROOT / "grammars"
DICTIONARY = GRAMMARS / "words.dict"
NETWORK = ROOT / "public/listener/listener.onnx"

RATE_HZ = 16_000


def output_names() -> list[str]:
    """The network's outputs in order, the blank first. Source: src/listener/phones.ts."""
    text = (HERE.parent / "phones.ts").read_text()
    body = text[text.index("OUTPUT_NAMES") : text.index("as const")]
    return re.findall(r'"([^"]+)"', body)


def respellings() -> dict[str, str]:
    """Words that made voices read wrongly, and letters that make them say it. Source: src/adapters/voice/respell.ts."""
    text = (ROOT / "src/adapters/voice/respell.ts").read_text()
    body = text[text.index("const WORDS") : text.index("const UNITS")]
    rows = re.findall(r'\["([^"]+)", "([^"]+)"\]', body)
    return {written: spoken for written, spoken in rows if written == written.lower()}
