#!/usr/bin/env python3
"""Makes the cuts of the app's typeface and the table of their widths from one pinned package.

    npm pack @fontsource-variable/roboto-flex@5.3.0
    pip install fonttools==4.68.0 brotli==1.2.1
    core/face/make.py fontsource-variable-roboto-flex-5.3.0.tgz

It writes core/face/res/font/*.ttf, core/face/OFL.txt and core/swim/src/scene/widths.rs. What it writes is in the tree; it runs again
only when the package or the cuts change.
"""

import hashlib
import io
import pathlib
import sys
import tarfile

from fontTools import subset
from fontTools.ttLib import TTFont
from fontTools.varLib import instancer

SHA256 = "0bab192f3e83e6660ecb1b96bc29e012ae1d605b2bda4928d760feb819ac5c27"
SOURCE = "package/files/roboto-flex-latin-standard-normal.woff2"
FAMILY = "Restwater Sans"
TREE = pathlib.Path(__file__).resolve().parent.parent.parent

# English, German and French, with the signs that the screens use. What is typed in another script falls back to the
# phone's own face.
TEXT = (
    [chr(c) for c in range(0x20, 0x7F)]
    + [chr(c) for c in range(0xA0, 0x100)]
    + list("Œœ–—‘’‚“”„•…′″‹›€™−")
)
NO_BREAK_HYPHEN = 0x2011
DIGITS = list("0123456789:+-–− ")

# File, style, weight, width, optical size, characters. Of the clock there are four cuts: the widest that has room is taken, and
# none is ever stretched. Its optical size is the largest: the digits are close together. That of the words is small print: their
# letters are open and further apart.
CUTS = [
    ("restwater_medium", "Medium", 500, 100, 10, TEXT),
    ("restwater_bold", "Bold", 700, 100, 10, TEXT),
    ("restwater_clock_100", "Clock 100", 750, 100, 144, DIGITS),
    ("restwater_clock_75", "Clock 75", 750, 75, 144, DIGITS),
    ("restwater_clock_50", "Clock 50", 700, 50, 144, DIGITS),
    ("restwater_clock_25", "Clock 25", 650, 25, 144, DIGITS),
]


def source(package: pathlib.Path) -> tuple[bytes, str]:
    """The variable face and its licence, of the very package that is pinned."""
    packed = package.read_bytes()
    found = hashlib.sha256(packed).hexdigest()
    if found != SHA256:
        sys.exit(f"{package} is another package: its SHA-256 is {found}")
    with tarfile.open(fileobj=io.BytesIO(packed)) as files:
        return files.extractfile(SOURCE).read(), files.extractfile("package/LICENSE").read().decode()


def cut(face: bytes, style: str, weight: int, width: int, optical: int, text: list[str]) -> TTFont:
    """One static cut. It has no kerning and no ligatures: a text is as wide as its letters, on every phone alike."""
    axes = {"wght": weight, "wdth": width, "opsz": optical, "slnt": 0}
    font = instancer.instantiateVariableFont(TTFont(io.BytesIO(face)), axes)
    options = subset.Options()
    options.layout_features = []
    options.hinting = False
    options.name_IDs = [0, 1, 2, 3, 4, 5, 6, 13, 14]
    options.notdef_outline = True
    options.drop_tables += ["STAT", "GPOS", "GSUB", "GDEF", "MVAR", "HVAR"]
    chosen = subset.Subsetter(options)
    chosen.populate(text="".join(text))
    chosen.subset(font)
    font.flavor = None
    # A hyphen at which no line breaks looks like any other; the source has none.
    for table in (table for table in font["cmap"].tables if table.isUnicode() and ord("-") in table.cmap):
        table.cmap[NO_BREAK_HYPHEN] = table.cmap[ord("-")]
    names = {1: f"{FAMILY} {style}", 2: "Regular", 3: f"{FAMILY} {style}", 4: f"{FAMILY} {style}", 6: f"RestwaterSans-{style.replace(' ', '')}"}
    for record in font["name"].names:
        record.string = names.get(record.nameID, record.toUnicode())
    font["OS/2"].usWeightClass = weight
    font["head"].modified = font["head"].created
    return font


def widths(font: TTFont, text: list[str]) -> dict[str, int]:
    """Advance widths in thousandths of the em, rounded up."""
    names, advances, em = font.getBestCmap(), font["hmtx"], font["head"].unitsPerEm
    missing = [c for c in text if ord(c) not in names]
    if missing:
        sys.exit(f"the face has no {missing}")
    return {c: -(-advances[names[ord(c)]][0] * 1000 // em) for c in text}


def table(name: str, doc: str, known: dict[str, int]) -> str:
    """A table of widths as Rust: code points in order."""
    rows = [f"(0x{ord(c):04x}, {w})" for c, w in sorted(known.items())]
    lines = [", ".join(rows[i : i + 6]) for i in range(0, len(rows), 6)]
    body = ",\n    ".join(lines)
    return f"/// {doc}\n#[rustfmt::skip]\npub(crate) const {name}: [(u32, u16); {len(rows)}] = [\n    {body},\n];\n"


def main() -> None:
    face, licence = source(pathlib.Path(sys.argv[1]))
    (TREE / "core/face/OFL.txt").write_text(licence)
    tables = {}
    for file, style, weight, width, optical, text in CUTS:
        font = cut(face, style, weight, width, optical, text)
        path = TREE / f"core/face/res/font/{file}.ttf"
        font.save(path)
        tables[file] = widths(font, text)
        digits = {tables[file][d] for d in "0123456789"}
        if len(digits) != 1:
            sys.exit(f"{file}: digits of several widths: {digits}")
        print(f"{path.relative_to(TREE)}: {path.stat().st_size} bytes, a digit is {digits.pop()} thousandths wide")
    clocks = {name: tables[name] for name in tables if "clock" in name}
    digits = {int(name.rsplit("_", 1)[1]): (known["0"], known[":"]) for name, known in clocks.items()}
    rust = [
        "//! Advance widths of the app's typeface in thousandths of the text size. Written by `core/face/make.py`; don't edit.\n",
        table("MEDIUM", "Of the medium cut.", tables["restwater_medium"]),
        table("BOLD", "Of the bold cut.", tables["restwater_bold"]),
        "/// Of the cuts of the clock, the widest first: its width in per cent, that of a digit and that of a colon.",
        f"pub(crate) const CLOCKS: [(u32, u16, u16); {len(digits)}] =",
        "    [" + ", ".join(f"({w}, {d}, {c})" for w, (d, c) in sorted(digits.items(), reverse=True)) + "];\n",
    ]
    (TREE / "core/swim/src/scene/widths.rs").write_text("\n".join(rust))


if __name__ == "__main__":
    main()
