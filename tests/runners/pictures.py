"""The stores' pictures from pictures of screens, each on a canvas of exactly the size that the store asks for.

    pictures.py screens WIDTHxHEIGHT OUT PNG...   1.png, 2.png and so on: fitted, the rest filled with the paper's colour
    pictures.py banner WIDTHxHEIGHT OUT PNG...    one file: the screens side by side
    pictures.py icon WIDTHxHEIGHT OUT PNG         one file

Without transparency, as both stores ask for; docs/stores.md names the stores' documents.
"""

import sys
from pathlib import Path

from PIL import Image

MARGIN = 24  # round the screens of a banner, in pixels


def opened(path):
    with Image.open(path) as image:
        return image.convert("RGB")


def fitted(image, width, height):
    """The image at the largest size that fits, unless it has the size already: scaling blurs thin lines."""
    scale = min(width / image.width, height / image.height)
    if scale == 1:
        return image
    return image.resize((round(image.width * scale), round(image.height * scale)), Image.Resampling.LANCZOS)


def on_canvas(images, width, height, margin=0):
    """The images side by side in the middle of a canvas that has the colour of the first one's corner."""
    canvas = Image.new("RGB", (width, height), images[0].getpixel((0, 0)))
    room = (width - margin * (len(images) + 1)) // len(images)
    small = [fitted(image, room, height - 2 * margin) for image in images]
    left = (width - sum(image.width for image in small) - margin * (len(small) - 1)) // 2
    for image in small:
        canvas.paste(image, (left, (height - image.height) // 2))
        left += image.width + margin
    return canvas


def saved(image, path):
    path.parent.mkdir(parents=True, exist_ok=True)
    image.save(path, optimize=True)
    print(f"{path}: {image.width} x {image.height}, {path.stat().st_size // 1024} kB")


def main(kind, size, out, *sources):
    width, height = (int(part) for part in size.split("x"))
    images = [opened(source) for source in sources]
    if kind == "screens":
        for number, image in enumerate(images, 1):
            saved(on_canvas([image], width, height), Path(out) / f"{number}.png")
    elif kind == "banner":
        saved(on_canvas(images, width, height, MARGIN), Path(out))
    elif kind == "icon":
        saved(fitted(images[0], width, height), Path(out))
    else:
        sys.exit(__doc__)


if __name__ == "__main__":
    if len(sys.argv) < 5:
        sys.exit(__doc__)
    main(*sys.argv[1:])
