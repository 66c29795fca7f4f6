"""Photographs: decoded, turned upright, and written anew without what tells where they were taken.

What cannot be decoded is no picture, whatever its name says. Of the words inside a picture only the
time it was taken is kept, and the place only if asked.
"""

import io
import warnings
from dataclasses import dataclass

from eyebar.errors import OutOfRange, Unreadable

MOST_PIXELS = 80_000_000
"""Width times height; more would fill the memory once decoded."""
KINDS = {"JPEG": "image/jpeg", "PNG": "image/png", "WEBP": "image/webp", "TIFF": "image/tiff"}
"""Forms that are decoded, by the names that the library gives them."""
ENDS = (".jpg", ".jpeg", ".png", ".webp", ".tif", ".tiff")
SIGNS = (b"\xff\xd8\xff", b"\x89PNG\r\n", b"II*\0", b"MM\0*")
QUALITY = 92

_TAKEN, _TAKEN_ORIGINAL, _DETAILS, _POSITION = 0x0132, 0x9003, 0x8769, 0x8825  # tags of Exif 2.3


@dataclass(frozen=True, slots=True, kw_only=True)
class Picture:
    """A picture written anew: its bytes, its kind, and when it was taken or ""."""

    content: bytes
    media_type: str
    taken: str
    had_position: bool
    """Whether the file told where it was taken."""


def is_picture(name: str, content: bytes) -> bool:
    """Whether a file says, by its name or its first bytes, that it is a picture."""
    webp = content[:4] == b"RIFF" and content[8:12] == b"WEBP"
    return name.lower().endswith(ENDS) or content.startswith(SIGNS) or webp


def picture_of(name: str, content: bytes, *, keep_position: bool = False) -> Picture:
    """The picture that a file holds, written anew.

    Raises Unreadable where it cannot be decoded, OutOfRange where it has too many pixels.
    """
    from PIL import Image, ImageOps, UnidentifiedImageError

    try:
        with warnings.catch_warnings():
            warnings.simplefilter("ignore")  # the limit on pixels is ours, below
            with Image.open(io.BytesIO(content), formats=tuple(KINDS)) as opened:
                _refuse_huge(name, opened.width * opened.height)
                kind = "PNG" if opened.format == "PNG" else "JPEG"
                exif = opened.getexif()
                upright = ImageOps.exif_transpose(opened)
                upright.load()
    except OutOfRange:
        raise
    except Image.DecompressionBombError:
        raise _huge(name, "far more than that many pixels") from None
    except UnidentifiedImageError:
        raise _none(name, "it is none of these forms") from None
    except Exception as error:  # noqa: BLE001,RUF100 - a decoder may fail in any way on bad bytes
        reason = " ".join(str(error).split())[:120] or type(error).__name__
        raise _none(name, reason) from None
    position = dict(exif.get_ifd(_POSITION))
    taken = str(exif.get_ifd(_DETAILS).get(_TAKEN_ORIGINAL) or exif.get(_TAKEN) or "")
    kept = Image.Exif()
    if keep_position and position:
        kept[_POSITION] = position
    clear = kind == "PNG" and upright.has_transparency_data
    pixels = upright.convert("RGBA" if clear else "RGB")
    bare = Image.frombytes(pixels.mode, pixels.size, pixels.tobytes())
    written = io.BytesIO()
    bare.save(written, kind, quality=QUALITY, exif=kept.tobytes() if len(kept) else b"")
    return Picture(
        content=written.getvalue(), media_type=KINDS[kind], taken=_printable(taken),
        had_position=bool(position),
    )


def _none(name: str, reason: str) -> Unreadable:
    return Unreadable(
        name, f"is no picture that can be decoded ({reason})",
        "send it as JPEG, PNG, WebP or TIFF, or under another kind of name",
    )


def _refuse_huge(name: str, pixels: int) -> None:
    if pixels > MOST_PIXELS:
        raise _huge(name, f"{pixels:,} pixels")


def _huge(name: str, got: str) -> OutOfRange:
    return OutOfRange(
        "picture", f"{name} with {got}", f"of {MOST_PIXELS:,} pixels at most: send it smaller"
    )


def _printable(text: str) -> str:
    return "".join(sign for sign in text if sign.isprintable())[:40]
