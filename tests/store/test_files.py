"""Photographs and files: decoded, without their place, kept whole, withdrawn with a reason."""

import io
from pathlib import Path

import pytest

from eyebar.errors import NotWhole, OutOfRange, Unknown, Unreadable
from eyebar.store import files
from eyebar.store.chain import digest
from eyebar.store.files import About, attach, attach_content, fetched, files_of, take_out, withdraw
from eyebar.store.opened import Register
from eyebar.store.pictures import MOST_PIXELS, is_picture, picture_of
from eyebar.store.verified import verified
from tests.store.filled import picture
from tests.store.samples import WHO, added

BY = {"person": WHO, "reason": "county inspection"}
PART = "north/U1-L0"


def kept(register: Register, number: int) -> bytes:
    with register.reading() as connection:
        return fetched(connection, number)[1]


def test_a_file_comes_back_byte_for_byte(register: Register, tmp_path: Path) -> None:
    added(register)
    content = bytes(range(256)) * 4000
    (tmp_path / "scan.bin").write_bytes(content)
    done = attach(register, "W-1", tmp_path / "scan.bin", About(part=PART, note="a scan"), **BY)
    assert kept(register, done.number) == content
    assert done.sha256 == digest(content)
    take_out(register, done.number, tmp_path / "out.bin")
    assert (tmp_path / "out.bin").read_bytes() == content
    with pytest.raises(OutOfRange, match="not there yet"):
        take_out(register, done.number, tmp_path / "out.bin")
    with register.reading() as connection:
        (row,) = files_of(connection, 1)
    assert (row["part"], row["note"], row["media_type"]) == (PART, "a scan", files.PLAIN)


def test_where_a_picture_was_taken_is_taken_out_unless_asked(in_file: Register) -> None:
    from PIL import Image

    added(in_file)
    given = picture(position=True)
    assert Image.open(io.BytesIO(given)).getexif().get_ifd(0x8825)  # it is there at first
    without = attach_content(in_file, "W-1", ("a.jpg", given), About(), **BY)
    kept_on = attach_content(
        in_file, "W-1", ("b.jpg", given), About(), keep_position=True, **BY
    )
    assert (without.had_position, kept_on.had_position) == (True, True)
    stripped = Image.open(io.BytesIO(kept(in_file, without.number)))
    assert not dict(stripped.getexif())  # nor who made the camera
    position = Image.open(io.BytesIO(kept(in_file, kept_on.number))).getexif().get_ifd(0x8825)
    assert tuple(float(part) for part in position[2]) == (44.0, 30.0, 0.0)
    with in_file.reading() as connection:
        row = files_of(connection, 1)[0]
    assert (row["taken"], row["given_sha256"]) == ("2026:06:09 10:20:30", digest(given))


def test_what_is_hidden_behind_a_picture_does_not_come_along() -> None:
    found = picture_of("a.jpg", picture() + b"<script>hidden</script>")
    assert b"hidden" not in found.content


def test_a_picture_is_turned_upright() -> None:
    from PIL import Image

    exif = Image.Exif()
    exif[0x0112] = 6  # by the standard: the top of the scene is at the right
    written = io.BytesIO()
    Image.new("RGB", (8, 6)).save(written, "JPEG", exif=exif.tobytes())
    assert Image.open(io.BytesIO(picture_of("a", written.getvalue()).content)).size == (6, 8)


@pytest.mark.parametrize("form", ["PNG", "WEBP", "TIFF", "JPEG"])
def test_every_form_that_is_known_is_decoded(form: str) -> None:
    from PIL import Image

    written = io.BytesIO()
    Image.new("RGB", (8, 6), (120, 60, 20)).save(written, form)
    assert is_picture("no ending", written.getvalue())
    again = Image.open(io.BytesIO(picture_of("a", written.getvalue()).content))
    assert again.format == ("PNG" if form == "PNG" else "JPEG")
    red, green, blue = again.convert("RGB").getpixel((3, 3))
    assert max(abs(red - 120), abs(green - 60), abs(blue - 20)) <= 3


@pytest.mark.parametrize(
    "content",
    [b"no picture", b"<svg onload='x'/>", b"\xff\xd8\xff" + b"\0" * 40, picture()[:200], b"GIF89a"],
)
def test_a_picture_that_is_none_is_refused(in_file: Register, content: bytes) -> None:
    added(in_file)
    with pytest.raises(Unreadable, match="no picture that can be decoded") as refusal:
        attach_content(in_file, "W-1", ("a.jpg", content), About(), **BY)
    assert "object at" not in str(refusal.value)
    with in_file.reading() as connection:
        assert files_of(connection, 1) == []


def test_a_picture_of_too_many_pixels_is_refused_before_it_is_decoded() -> None:
    import struct
    import zlib

    # By hand after the PNG specification: a head that claims 100,000 by 100,000 pixels.
    head = b"IHDR" + struct.pack(">IIBBBBB", 100_000, 100_000, 8, 2, 0, 0, 0)
    claimed = b"\x89PNG\r\n\x1a\n" + struct.pack(">I", 13) + head + struct.pack(
        ">I", zlib.crc32(head)
    ) + struct.pack(">I", 0) + b"IDAT" + struct.pack(">I", zlib.crc32(b"IDAT"))
    assert MOST_PIXELS < 100_000 * 100_000
    with pytest.raises(OutOfRange, match="80,000,000 pixels at most"):
        picture_of("a.png", claimed)


def test_an_upload_of_200_megabytes_is_refused_before_it_is_read(
    in_file: Register, tmp_path: Path
) -> None:
    added(in_file)
    large = tmp_path / "film.bin"
    with large.open("wb") as written:
        written.truncate(200_000_000)  # no room is taken
    with pytest.raises(OutOfRange, match=r"200,000,000 bytes; it must be at most 50,000,000"):
        attach(in_file, "W-1", large, About(), **BY)


def test_bytes_beyond_the_limit_and_none_at_all_are_refused(
    in_file: Register, monkeypatch: pytest.MonkeyPatch
) -> None:
    added(in_file)
    monkeypatch.setattr(files, "LARGEST", 10)
    attach_content(in_file, "W-1", ("a", b"x" * 10), About(), **BY)
    for content, said in ((b"x" * 11, "at most 10 bytes"), (b"", "no bytes")):
        with pytest.raises(OutOfRange, match=said):
            attach_content(in_file, "W-1", ("a", content), About(), **BY)


@pytest.mark.parametrize("name", ["../../etc/passwd", "C:\\boot\\passwd", "/a/passwd"])
def test_of_a_name_only_the_last_piece_is_kept(in_file: Register, name: str) -> None:
    added(in_file)
    attach_content(in_file, "W-1", (name, b"x"), About(), **BY)
    with in_file.reading() as connection:
        assert files_of(connection, 1)[0]["name"] == "passwd"


def test_a_page_or_a_program_is_kept_as_bytes_that_nobody_shows(in_file: Register) -> None:
    added(in_file)
    for name in ("a.html", "a.svg", "a.js", "a.xml"):
        attach_content(in_file, "W-1", (name, b"<script>"), About(), **BY)
    with in_file.reading() as connection:
        assert {one["media_type"] for one in files_of(connection, 1)} == {files.PLAIN}


def test_a_part_that_is_no_address_is_refused(in_file: Register) -> None:
    added(in_file)
    with pytest.raises(Unreadable):
        attach_content(in_file, "W-1", ("a", b"x"), About(part="some where"), **BY)


def test_a_withdrawn_file_keeps_hash_reason_and_person(register: Register) -> None:
    added(register)
    done = attach_content(register, "W-1", ("face.jpg", picture()), About(), **BY)
    withdraw(register, done.number, person="B. Clerk", reason="a person is in it")
    with pytest.raises(Unknown, match="a person is in it"):
        kept(register, done.number)
    with register.reading() as connection:
        (row,) = files_of(connection, 1)
    assert (row["sha256"], row["withdrawn"]) == (done.sha256, "a person is in it")
    assert verified(register).broken == ""
    with pytest.raises(OutOfRange, match="not withdrawn yet"):
        withdraw(register, done.number, person="B. Clerk", reason="again")


def test_bytes_are_not_blanked_without_a_withdrawal(register: Register) -> None:
    from sqlalchemy import text
    from sqlalchemy.exc import DBAPIError

    added(register)
    attach_content(register, "W-1", ("a.bin", b"x"), About(), **BY)
    for change in ("bytes = NULL", "bytes = bytes", "file = 2, bytes = NULL"):
        with pytest.raises(DBAPIError), register.engine.begin() as connection:
            connection.execute(text(f"UPDATE contents SET {change}"))
    assert kept(register, 1) == b"x"


def test_bytes_that_were_changed_are_not_given_out(register: Register) -> None:
    from sqlalchemy import update

    from eyebar.store.tables import contents
    from tests.store.test_verifying import unguarded

    added(register)
    attach_content(register, "W-1", ("a.bin", b"x"), About(), **BY)
    unguarded(register, update(contents).values(bytes=b"y"))
    with pytest.raises(NotWhole, match="not as they were kept"):
        kept(register, 1)


@pytest.mark.parametrize("number", [0, 5])
def test_a_file_that_is_not_there_is_told(in_file: Register, number: int) -> None:
    with pytest.raises(Unknown, match="no file"):
        kept(in_file, number)
