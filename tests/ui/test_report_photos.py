"""Photos in a report: turned and scaled, broken and huge ones in words, nothing read from outside the job's folder."""

import base64
import io
import re
import struct
import zlib

import pytest
from PIL import Image
from report_jobs import made_up_job
from stillshaft.solver.folder import RecordError
from stillshaft.solver.job import Job
from stillshaft.ui import report, report_photos


def jpeg(path, size=(1200, 800), orientation=None):
    """Left half red, right half blue as the camera stored it."""
    image = Image.new("RGB", size, "blue")
    image.paste("red", (0, 0, size[0] // 2, size[1]))
    exif = Image.Exif()
    if orientation is not None:
        exif[0x0112] = orientation
    image.save(path, "JPEG", exif=exif)


def huge_png(path, width, height):
    """The head of a PNG of any size: no pixel of it needs to be there."""
    head = struct.pack(">IIBBBBB", width, height, 8, 2, 0, 0, 0)
    chunk = b"IHDR" + head
    path.write_bytes(
        b"\x89PNG\r\n\x1a\n" + struct.pack(">I", 13) + chunk + struct.pack(">I", zlib.crc32(chunk))
        + struct.pack(">I", 0) + b"IDAT" + struct.pack(">I", zlib.crc32(b"IDAT"))
    )  # fmt: skip


def opened(data):
    return Image.open(io.BytesIO(data))


def test_a_photo_is_scaled_and_turned_as_the_camera_was_held(tmp_path):
    jpeg(tmp_path / "a.jpg")
    data, size = report_photos.scaled(tmp_path / "a.jpg")
    assert size == opened(data).size == (900, 600)
    jpeg(tmp_path / "b.jpg", orientation=6)  # stored lying: its left side is up (EXIF 2.3, table 6, from memory)
    data, size = report_photos.scaled(tmp_path / "b.jpg")
    assert size == (600, 900)
    above, below = (opened(data).getpixel((300, y)) for y in (100, 800))
    assert above[0] > 200 > above[2]
    assert below[2] > 200 > below[0]


def test_what_can_be_seen_through_stands_on_white(tmp_path):
    Image.new("RGBA", (40, 30), (0, 0, 0, 0)).save(tmp_path / "a.png")
    data, size = report_photos.scaled(tmp_path / "a.png")
    assert size == (40, 30)
    assert min(opened(data).getpixel((20, 15))) > 250


@pytest.mark.parametrize(
    ("name", "match"),
    [
        ("text.jpg", r"text\.jpg: not shown, it is no JPEG or PNG picture"),
        ("empty.jpg", "it is no JPEG or PNG picture"),
        ("gif.jpg", "it is no JPEG or PNG picture"),
        ("cut.jpg", r"cut\.jpg: not shown, it is damaged"),
        ("wide.png", "15000 × 9000 are more than 120 million pixels"),
        ("bomb.png", "it has too many pixels"),
        ("huge.jpg", "it is larger than 60 MB"),
    ],
)
def test_what_cannot_be_shown_says_why(tmp_path, name, match):
    (tmp_path / "text.jpg").write_text("no picture\n")
    (tmp_path / "empty.jpg").touch()
    Image.new("P", (8, 8)).save(tmp_path / "gif.jpg", "GIF")
    jpeg(tmp_path / "cut.jpg")
    (tmp_path / "cut.jpg").write_bytes((tmp_path / "cut.jpg").read_bytes()[:2000])
    huge_png(tmp_path / "wide.png", 15_000, 9_000)
    huge_png(tmp_path / "bomb.png", 60_000, 60_000)
    with open(tmp_path / "huge.jpg", "wb") as sparse:
        sparse.truncate(60_000_001)
    with pytest.raises(RecordError, match=match):
        report_photos.scaled(tmp_path / name)


def test_the_report_shows_the_photos_of_checks_masses_and_the_machine(tmp_path):
    folder = made_up_job(tmp_path / "job")
    outside = tmp_path / "secret.jpg"
    jpeg(outside, (600, 400))
    with Job.open(folder) as job:
        for name in ("one.jpg", "two.jpg", "gone.jpg"):
            jpeg(folder / "photos" / name, (600, 400))
            job.append("photo", file=job.file_fields(f"photos/{name}"), note=f"seen from the {name[:3]}")
        (folder / "photos/broken.jpg").write_bytes(b"\xff\xd8\xff")
        job.append("check", item="rotor", outcome="fine", photos=[job.file_fields("photos/broken.jpg")])
        # a link put there afterwards leads out of the folder
        (folder / "photos/two.jpg").unlink()
        (folder / "photos/two.jpg").symlink_to(outside)
        (folder / "photos/gone.jpg").unlink()
        material = report.material_of(job)
    page, (pdf, _) = report.to_html(material), report.to_pdf(material)
    shown = re.findall(r'href="data:image/jpeg;base64,([^"]+)"', page)
    assert [opened(base64.b64decode(text)).size for text in shown] == [(600, 400)]
    assert "img-src data:" in page
    assert page.count("seen from the one") >= 1
    assert "photos/two.jpg leads out through a link" in page
    assert "photos/gone.jpg is missing" in page
    assert "photos/broken.jpg: not shown, it is" in page
    assert pdf.count(b"/Subtype /Image") == 1


def test_more_photos_than_a_report_takes_are_named(tmp_path, monkeypatch):
    folder = made_up_job(tmp_path / "job")
    monkeypatch.setattr(report_photos, "_MOST_SHOWN", 1)
    with Job.open(folder) as job:
        for name in ("one.jpg", "two.jpg"):
            jpeg(folder / "photos" / name, (60, 40))
            job.append("photo", file=job.file_fields(f"photos/{name}"))
        one, two = (p for p in report_photos.gathered(job) if "machine" in p.of)
    assert one.jpeg
    assert two.trouble == "photos/two.jpg: not shown, there are more than 1"
