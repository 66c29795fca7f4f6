"""A drawing as a file of its own: SVG, the letters that are used put into it."""

from collections.abc import Sequence

from eyebar.drawings.blocks import Laid
from eyebar.drawings.fonts import FAMILY, STYLES, Face, embedded
from eyebar.drawings.ink import Ink, attribute, content, letterings, number, written
from eyebar.drawings.lettering import PAPER
from eyebar.drawings.paper import UNITS_PER_INCH

LAID = "font-kerning:none;font-variant-ligatures:none;text-rendering:geometricPrecision"
"""Letters are set one after the other, as they were measured."""


def svg_file(laid: Laid, *, title: str, said: str) -> str:
    """The text of a file: what was laid out, with its title and what it says in words."""
    size = laid.paper.width, laid.height
    return svg_text(laid.ink, size, words=(title, said), faces=_faces(laid.ink))


def svg_alone(ink: Sequence[Ink], size: tuple[float, float], *, words: tuple[str, str]) -> str:
    """The text of a file of its own: some ink on a sheet of a size, with its title and words."""
    return svg_text(ink, size, words=words, faces=_faces(ink))


def svg_text(
    ink: Sequence[Ink], size: tuple[float, float], *, words: tuple[str, str], faces: str
) -> str:
    """SVG of some ink on a sheet of a size; `words` are its title and what it says, `faces` the
    rules that bring its letters."""
    (width, height), (title, said) = size, words
    body = "\n".join(written(one) for one in ink)
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" width="{number(width / UNITS_PER_INCH)}in" '
        f'height="{number(height / UNITS_PER_INCH)}in" '
        f'viewBox="0 0 {number(width)} {number(height)}" '
        'style="max-width:100%;height:auto" role="graphics-document document" '
        f"aria-label={attribute(title)} fill=\"none\">\n"
        f"<title>{content(title)}</title>\n<desc>{content(said)}</desc>\n"
        f"<style>text{{{LAID}}}{faces}</style>\n"
        f'<rect width="{number(width)}" height="{number(height)}" fill="{PAPER}"/>\n'
        f"{body}\n</svg>\n"
    )


def _faces(ink: Sequence[Ink]) -> str:
    """The faces used, each cut down to the letters used."""
    used: dict[Face, set[str]] = {}
    for one in letterings(*ink):
        for letters in one.runs:
            used.setdefault(letters.face, set()).update(letters.text)
    rules = []
    for face in sorted(used):
        style, weight = STYLES[face]
        source = embedded(face, "".join(sorted(used[face])))
        rules.append(
            f'@font-face{{font-family:"{FAMILY}";font-style:{style};font-weight:{weight};'
            f"src:url({source})}}"
        )
    return "".join(rules)
