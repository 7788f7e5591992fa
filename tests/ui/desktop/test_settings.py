"""The remembered view: written whole or not at all, and a broken file costs nothing but the choices."""

from dataclasses import replace

import pytest
from stillshaft.ui.desktop import recent, settings
from stillshaft.ui.desktop.settings import CHOICES, View


def test_what_is_saved_is_loaded(tmp_path):
    path = tmp_path / "deep" / "view.toml"
    view = View("µm p-p", "with rotation", "other end", "sunlight", "largest")
    assert settings.save(path, view) is None
    assert settings.load(path) == (view, None)
    assert [p.name for p in path.parent.iterdir()] == ["view.toml"]


@pytest.mark.parametrize("field", CHOICES)
def test_every_choice_is_kept(tmp_path, field):
    for word in CHOICES[field]:
        view = replace(View(), **{field: word})
        settings.save(tmp_path / "v.toml", view)
        assert settings.load(tmp_path / "v.toml")[0] == view


def test_no_file_is_no_fault(tmp_path):
    assert settings.load(tmp_path / "none.toml") == (View(), None)


@pytest.mark.parametrize("content", [b"theme = ", b"\xff\xfe\x00", b"theme = [1,"])
def test_a_damaged_file_is_said_and_the_usual_view_used(tmp_path, content):
    path = tmp_path / "view.toml"
    path.write_bytes(content)
    view, said = settings.load(path)
    assert view == View()
    assert "is damaged" in said
    assert settings.save(path, view) is None
    assert settings.load(path) == (view, None)


def test_an_unknown_choice_costs_only_itself(tmp_path):
    path = tmp_path / "view.toml"
    path.write_text('theme = "purple"\ntext_size = "large"\nunit = 3\n')
    view, said = settings.load(path)
    assert view == View(text_size="large")
    assert "unit, theme" in said


def test_a_folder_in_its_place_is_said(tmp_path):
    (tmp_path / "view.toml").mkdir()
    assert "cannot be read" in settings.load(tmp_path / "view.toml")[1]
    assert "cannot be written" in settings.save(tmp_path / "view.toml", View())
    assert [p.name for p in tmp_path.iterdir()] == ["view.toml"]


def test_a_file_where_the_folder_should_be_is_said(tmp_path):
    (tmp_path / "stillshaft").write_text("")
    assert "cannot be written" in settings.save(tmp_path / "stillshaft" / "view.toml", View())


@pytest.mark.parametrize(
    "content", [b"theme = " + b"[" * 3000, b"theme = " + b"9" * 5000, b"theme = '" + b"x" * 30_000 + b"'"]
)
def test_a_hostile_file_is_a_damaged_one(tmp_path, content):
    (tmp_path / "view.toml").write_bytes(content)
    view, said = settings.load(tmp_path / "view.toml")
    assert view == View()
    assert "is damaged" in said


def test_a_hostile_list_of_jobs_is_an_empty_one(tmp_path):
    path = tmp_path / "jobs.toml"
    for content in (
        b"recent = " + b"[" * 3000,
        b'recent = ["' + b"x" * 5000 + b'"]',
        b'recent = ["a\\u0000b"]',
        b"recent = 3",
    ):
        path.write_bytes(content)
        assert recent.load(path) == ()
