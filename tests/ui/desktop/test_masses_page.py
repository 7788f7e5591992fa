"""The Masses page in a real window, on jobs made through the session with vectors of the simulated rotor."""

from dataclasses import replace

import numpy as np
import pytest
from balancing_jobs import balancing_job, take_run, vibration
from PySide6 import QtCore, QtGui, QtTest
from screen_faults import faults, small_targets, unseen_focus
from stillshaft.dsp import vectors
from stillshaft.solver import progress
from stillshaft.solver.job import Job
from stillshaft.solver.replay import replay
from stillshaft.ui.desktop import masses_model, masses_sheet
from stillshaft.ui.desktop.masses_model import OFF, STAYS, Draft
from stillshaft.ui.desktop.masses_page import MassesPage
from stillshaft.ui.desktop.masses_sheet_card import sheets_of
from stillshaft.ui.desktop.masses_view import CAUTIONS, CORRECTION, PIECES, PUT_ON, TRIAL
from stillshaft.ui.desktop.places import face_of
from stillshaft.ui.desktop.settings import View
from stillshaft.ui.desktop.stages import Stage, State, Weight

KEY = QtCore.Qt.Key


@pytest.fixture
def opened(page_on, wait_until, tmp_path):
    """Opens a job on the page."""

    def at(planes=2, **job):
        balancing_job(tmp_path / "job", planes, **job).close()
        page = page_on(Stage.MASSES, MassesPage, tmp_path / "job")
        if page.job.shown.state.brief.planes:
            wait_until(lambda: page.known is not None)
        return page

    return at


def settle(page, wait_until):
    """Wait for the record to be written and what follows to be worked out."""
    wait_until(lambda: not page.job.busy and not page._tasks.busy and page._asked[1] == page.job.shown.entries)


def mass_vector(drafts):
    return sum(vectors.vector(d.total_g * (d.radius_mm or 310.0) / 310.0, d.angle_deg) for d in drafts)


# a visit with stored coefficients


@pytest.fixture
def visit(opened, wait_until, tmp_path):
    """A second visit with one initial run."""
    page = opened(2, until="check")
    page.job.act(lambda s: s.keep_coefficients())
    page.job.next_visit(tmp_path / "second", "second visit", "first person", tmp_path / "job")
    page.job.act(lambda s: take_run(s, "initial", "initial", seed=4))
    wait_until(lambda: page.job.shown is not None and page.job.shown.folder == tmp_path / "second")
    settle(page, wait_until)
    return page


def test_one_run_is_balanced_with_stored_coefficients_which_are_said_to_be_untested(visit, wait_until):
    page = visit
    page.turn_to(CORRECTION)
    assert page.correction.lines[0][0].text().startswith("drive side: 19.")
    said = page.correction.warnings.said
    assert said[0] == "By influence coefficients stored on an earlier visit"
    assert "half the correction first" in said[1]
    whole = masses_model.drafts_of(page.known, left_on=False)
    page.correction.half.click()
    assert [d.mass_g for d in page.drafts.pieces] == pytest.approx([0.5 * d.mass_g for d in whole], abs=0.051)
    assert page.turn.value == PUT_ON


def test_a_correction_by_stored_coefficients_is_kept(visit, wait_until):
    page = visit
    page.turn_to(CORRECTION)
    page.correction.keep.click()
    settle(page, wait_until)
    assert page.job.shown.state.measured[-1].what.what == "correction by stored coefficients"
    page.correction.parts.buttons["static part"].click()
    settle(page, wait_until)
    page.correction.keep.click()
    settle(page, wait_until)
    assert page.correction.trouble.text.text().startswith("With stored coefficients only the whole correction is kept")


# once hands are out


def test_trial_masses_are_noted_as_weighed_back_in_later(opened, wait_until):
    page = opened(2)  # both trial masses were taken off without a word
    page.turn_to(PUT_ON)
    assert not page.after.isHidden()
    assert page.after.lost.text() == "Taken off, and not noted as weighed back in: drive side 12 g, far side 12 g."
    assert page.after.photos.isHidden()
    page.after.add.click()
    assert page.after.trouble.text.text() == "Write what weighing told first."
    page.after.weighed.setText("all there, 12.0 g")
    page.after.add.click()
    settle(page, wait_until)
    state = page.job.shown.state
    assert [d.what.text for d in state.decisions] == ["trial mass weighed back in: all there, 12.0 g"] * 2
    assert "weigh-back" not in dict(progress.left_at_the_end(state, 10.0))
    assert page.after.isHidden()
    page.undo.click()
    settle(page, wait_until)
    assert page.after.lost.text().endswith("weighed back in: far side 12 g.")


def test_photos_of_final_pieces_are_taken_here(opened, wait_until, tmp_path):
    page = opened(1, until="check")
    page.turn_to(PUT_ON)
    assert not page.after.photos.isHidden()
    picture = tmp_path / "welded.png"
    QtGui.QImage(8, 8, QtGui.QImage.Format.Format_RGB32).save(str(picture))
    page.after.photos.chosen.emit([picture])
    settle(page, wait_until)
    state = page.job.shown.state
    assert state.photos[-1].what.about == state.on_rotor[-1].of
    assert "photograph" not in dict(progress.left_at_the_end(state, 10.0))
    assert [t.photo.name for t in page.after.photos.tiles] == ["welded.png"]
    page.after.photos.removed.emit(state.photos[-1].id)
    settle(page, wait_until)
    assert page.after.photos.tiles == []


# suggestions


def test_a_trial_mass_is_suggested_with_force_and_reason(opened):
    page = opened(1, until="initial")
    # a tenth of the weight, 62 kg, at 310 mm and 1480 r/min: 0.1·m·g = m·r·Ω² by hand
    assert page.trial.figure.text().startswith("8.17 g")
    assert "60.8 N (6.20 kgf)" in page.trial.force.text()
    assert page.trial.why.text() == "Heavy spot unknown: any direction."
    page.trial.take.click()
    assert page.drafts.pieces == (Draft("disc", 8.2, 0.0),)
    assert page.turn.value == PUT_ON
    assert page.entry.purpose.value == "trial"


def test_without_runs_it_says_which_run_is_missing(opened):
    page = opened(1, until="brief")
    page.turn_to(CORRECTION)
    assert "run" in page.correction.trouble.text.text()
    assert page.correction.take.isHidden()
    assert page.expected.summary == "no runs to tell it from"
    assert page.state() is State.EMPTY


def test_the_correction_is_shown_with_its_uncertainty_and_lowers_what_is_expected(opened):
    page = opened(1)
    page.turn_to(CORRECTION)
    large, small = (label.text() for label in page.correction.lines[0])
    assert large.startswith("disc: 24 ± 4 g at 320° ± ")  # the demonstration's unbalance is 24 g at 140°
    assert "N (" in small
    assert page.correction.condition.text().startswith("Method least squares; condition number 1.00")
    assert page.correction.half.isHidden()
    page.correction.take.click()
    assert page.turn.value == PUT_ON
    assert page.drafts.pieces[0].angle_deg == 320.0
    assert "piece 1, chosen: 24.1 g to go at 320 degrees" in page.face.summary
    assert "wanted: wanted to go at 320 degrees plus or minus" in page.face.summary
    assert page.sentence().text == "Before hands go in: nobody has said since the last start that the cautions hold."
    assert page.sentence().weight is Weight.CAUTION


@pytest.mark.parametrize("planes", [1, 2])
def test_what_is_expected_comes_true_on_the_simulated_rotor(opened, planes):
    page = opened(planes)
    rng = np.random.default_rng(5)
    names = [p.name for p in page.job.shown.state.brief.planes]
    for _ in range(5):
        drafts = [Draft(n, float(rng.uniform(5.0, 25.0)), float(rng.uniform(0.0, 360.0))) for n in names]
        page.think_of(drafts)
        rows = masses_model.expected(page.known, page.drafts.pieces, left_on=False)
        really = abs(vibration(planes, [(d.plane, d.mass_g, d.angle_deg) for d in drafts], rng))
        for row, value in zip(rows, really, strict=True):
            assert row.amplitude == pytest.approx(value, abs=row.upper95 - row.amplitude)


def test_masses_of_the_last_run_may_stay_only_while_they_are_on(opened, wait_until):
    page = opened(2, until="last trial on")
    stays = page.correction.base.buttons[STAYS]
    assert stays.isEnabled()
    page.turn_to(CORRECTION)
    off = page.correction.lines[1][0].text()
    stays.click()
    assert page.correction.lines[1][0].text() != off
    page.correction.take.click()
    far = [d for d in page.drafts.pieces if d.plane == "far side"]
    corrected = vectors.vector(14.0, 30.0) - vectors.vector(12.0, 90.0)  # what it takes, less what is on
    assert abs(mass_vector(far) - corrected) < 1.5
    assert page.entry.purpose.value == "trim"
    page.on.weighed.setText("weighed back in")
    page.turn_to(PUT_ON)
    page.on.acts["trials off"].click()
    settle(page, wait_until)
    assert page.job.shown.state.on_rotor == ()
    assert page.job.shown.state.masses[-1].what.note == "weighed back in"
    assert not stays.isEnabled()
    assert page.correction.base.value == OFF


def test_static_part_and_points_left_out_are_worked_out_and_kept_as_chosen(opened, wait_until):
    page = opened(2)
    page.turn_to(CORRECTION)
    page.correction.parts.buttons["static part"].click()
    page.correction.points["far end horizontal"].click()
    wait_until(lambda: page.known.wanted.parts == "static" and page.known.wanted.left_out)
    masses = [c for c in page.known.solution.corrections]
    assert masses[0].angle_deg == pytest.approx(masses[1].angle_deg)
    page.correction.keep.click()
    settle(page, wait_until)
    kept = page.job.shown.state.plans[-1].what.options
    assert (kept.parts, kept.left_out, kept.planes) == ("static", ["far end horizontal"], None)
    page.correction.parts.buttons["each plane"].click()
    page.correction.points["far end horizontal"].click()
    wait_until(lambda: page.known.wanted == page.correction.wanted)
    page.correction.keep.click()
    settle(page, wait_until)
    folder = page.job.shown.folder
    assert len(page.job.shown.state.plans) == 2
    page.job.close()
    with Job.open(folder, read_only=True) as job:
        assert [r.differences for r in replay(job)] == [(), ()]


def test_every_point_left_out_is_refused_in_words(opened, wait_until):
    page = opened(2)
    page.turn_to(CORRECTION)
    for each in page.correction.points.values():
        each.click()
    wait_until(lambda: page.known.solution is None)
    assert "keep at least one" in page.correction.trouble.text.text()


def test_a_mark_that_moved_turns_angles_and_not_what_is_expected(opened, wait_until):
    page = opened(1)
    before = page.known.solution.corrections[0]
    page.think_of(masses_model.drafts_of(page.known, left_on=False))
    expected = masses_model.expected(page.known, page.drafts.pieces, left_on=False)
    page.job.act(lambda s: s.change_reference("mark moved", 30.0, mark_moved=True))
    settle(page, wait_until)
    assert page.known.solution.corrections[0].angle_deg == pytest.approx(before.angle_deg)
    page.think_of(masses_model.drafts_of(page.known, left_on=False))
    assert page.drafts.pieces[0].angle_deg == 290.0
    after = masses_model.expected(page.known, page.drafts.pieces, left_on=False)
    assert [r.amplitude for r in after] == pytest.approx([r.amplitude for r in expected])


# moving pieces


def place_on(page, mark):
    marked = next(m for m in (*page.face._thought, *page.face._on) if m.mark == mark)
    return page.face._at(page.face._place(marked)).toPoint()


def drag(page, mark, to_deg):
    face = page.face
    begin = place_on(page, mark)
    place = face._at(0.9 * face_place(page, to_deg)).toPoint()
    QtTest.QTest.mousePress(face, QtCore.Qt.MouseButton.LeftButton, pos=begin)
    QtTest.QTest.mouseMove(face, (begin + place) / 2)
    for at in ((begin + place) / 2, place):
        event = QtGui.QMouseEvent(
            QtCore.QEvent.Type.MouseMove, QtCore.QPointF(at), face.mapToGlobal(QtCore.QPointF(at)),
            QtCore.Qt.MouseButton.NoButton, QtCore.Qt.MouseButton.LeftButton, QtCore.Qt.KeyboardModifier.NoModifier,
        )  # fmt: skip
        face.mouseMoveEvent(event)
    QtTest.QTest.mouseRelease(face, QtCore.Qt.MouseButton.LeftButton, pos=place)


def face_place(page, rotor_deg):
    from stillshaft.ui.desktop import face as faces

    return faces.rotor_place(page.face._bare, rotor_deg, page.face._seen_from)


@pytest.mark.parametrize("seen_from", ["reference end", "other end"])
def test_a_piece_is_dragged_to_where_the_finger_goes(opened, seen_from, wait):
    page = opened(1)
    page.set_view(replace(View(), seen_from=seen_from))
    page.think_of([Draft("disc", 10.0, 20.0)])
    wait(30)
    before = page.expected.summary
    drag(page, "1", 250.0)
    assert page.drafts.pieces[0].angle_deg == pytest.approx(250.0, abs=1.5)
    assert page.drafts.pieces[0].angle_deg.is_integer()
    assert page.expected.summary != before
    assert page.entry.place.text == f"{page.drafts.pieces[0].angle_deg:g}°"


def test_a_piece_is_dropped_at_the_nearest_position(opened, wait):
    page = opened(1, positions=12)
    page.think_of([Draft("disc", 10.0, 0.0, 1)])
    wait(30)
    drag(page, "1", 100.0)
    assert (page.drafts.pieces[0].angle_deg, page.drafts.pieces[0].position) == (90.0, 4)


def test_blocked_positions_are_passed_over(opened, wait_until):
    page = opened(1, positions=12)
    planes = [{"name": "disc", "radius": "310 mm", "positions": 12, "blocked": [4]}]
    page.job.act(lambda s: s.describe({"planes": planes}))
    settle(page, wait_until)
    page.think_of([Draft("disc", 10.0, 60.0, 3)])
    page._step("1", 1)
    assert page.drafts.pieces[0].position == 5
    page._step("1", -1)
    assert page.drafts.pieces[0].position == 3
    page.entry.place.line.setText("position 4")
    page.entry.place.commit()
    assert page.entry.place.remark.text.text() == (
        "Position 4 on disc is blocked by the brief: choose another. Kept: position 3."
    )
    assert page.drafts.pieces[0].position == 3


def test_arrows_move_with_the_clock_on_the_screen_and_keys_change_the_mass(opened, wait):
    page = opened(1)
    page.think_of([Draft("disc", 10.0, 20.0), Draft("disc", 3.0, 200.0)])
    page.face.setFocus()
    begin = place_on(page, "1")
    QtTest.QTest.keyClick(page.face, KEY.Key_Right)
    # counter-clockwise rotation seen from the drive end: against it is clockwise, which is to the right at the top
    assert page.drafts.pieces[0].angle_deg == 21.0
    assert place_on(page, "1").x() > begin.x()
    page.set_view(replace(View(), seen_from="other end"))
    begin = place_on(page, "1")
    QtTest.QTest.keyClick(page.face, KEY.Key_Right)
    assert page.drafts.pieces[0].angle_deg == 20.0
    assert place_on(page, "1").x() > begin.x()
    QtTest.QTest.keyClick(page.face, KEY.Key_Plus)
    QtTest.QTest.keyClick(page.face, KEY.Key_Up)
    QtTest.QTest.keyClick(page.face, KEY.Key_Minus)
    assert page.drafts.pieces[0].mass_g == pytest.approx(10.1)
    QtTest.QTest.keyClick(page.face, KEY.Key_PageDown)
    assert page.drafts.chosen == "2"
    QtTest.QTest.keyClick(page.face, KEY.Key_Down)
    assert page.drafts.pieces[1].mass_g == pytest.approx(2.9)


def test_pieces_beside_each_other_are_drawn_apart(opened, wait):
    page = opened(1)
    page.think_of([Draft("disc", 5.0, angle) for angle in (0.0, 0.0, 5.0, 9.0, 14.0, 180.0)])
    wait(30)
    page.face.grab()
    boxes = [page.face._box(m) for m in page.face._thought]
    assert not any(a.intersects(b) for n, a in enumerate(boxes) for b in boxes[:n])


def test_a_removed_piece_is_brought_back(opened):
    page = opened(1)
    page.turn_to(PUT_ON)
    page.on.acts["add"].click()
    page.entry.mass.line.setText("7 g")
    page.entry.mass.commit()
    page.on.acts["remove"].click()
    assert page.drafts.pieces == ()
    page.on.acts["bring back"].click()
    assert [d.mass_g for d in page.drafts.pieces] == [7.0]


@pytest.mark.parametrize(("mass_g", "shown"), [(24.07, 24.1), (1.04, 1.0), (0.058, 0.058), (0.0581, 0.058), (0.0, 0.0)])
def test_small_corrections_are_not_rounded_away(mass_g, shown):
    assert masses_model.weighable(mass_g) == pytest.approx(shown, rel=1e-12)


# pieces of the stock


def test_pieces_are_found_on_a_thread_tried_and_kept(opened, wait_until):
    page = opened(1, positions=12)
    page.turn_to(PIECES)
    page.pieces.most.setValue(5)
    page.pieces.search.click()
    assert not page.pieces.search.isEnabled()
    wait_until(lambda: page.pieces.plan is not None)
    assert "pieces: largest point" in page.pieces.result.text()
    assert len(page.pieces.rows.said) == len(page.pieces.plan.chosen.pieces) <= 5
    page.pieces.take.click()
    assert len(page.drafts.pieces) == len(page.pieces.plan.chosen.pieces)
    assert all(d.position for d in page.drafts.pieces)
    rows = masses_model.expected(page.known, page.drafts.pieces, left_on=False)
    assert max(r.amplitude for r in rows) == pytest.approx(page.pieces.plan.chosen.largest, rel=1e-6)
    page.pieces.keep.click()
    settle(page, wait_until)
    kept = page.job.shown.state.measured[-1].what
    assert kept.what == "pieces"
    assert len(kept.figures["pieces"]) == len(page.drafts.pieces)


def test_the_search_is_broken_off(opened, wait_until):
    page = opened(2, positions=24)
    page.turn_to(PIECES)
    page.pieces.aim.buttons["least vibration"].click()
    page.pieces.search.click()
    page.pieces.work.cancel.click()
    wait_until(lambda: page.pieces.trouble.text.text() == "Broken off.")
    assert page.pieces.plan is None
    assert page.pieces.search.isEnabled()


def test_the_stock_is_edited_in_one_line_and_bad_input_keeps_it(opened, wait_until):
    page = opened(1)
    page.turn_to(PIECES)
    stock = page.pieces.stock
    assert stock.text == "1 g x 6, 2 g x 6, 5 g x 8"
    entries = page.job.shown.entries
    for typed, said in (
        ("6 apples", "write mass x count"),
        ("0 g x 3", '"0 g" is no piece'),
        ("3 V x 2", "is no mass"),
    ):
        stock.line.setText(typed)
        stock.commit()
        assert said in stock.remark.text.text()
        assert stock.text == "1 g x 6, 2 g x 6, 5 g x 8"
    assert page.job.shown.entries == entries
    stock.line.setText("3 x 4; 0.5 oz × 2")
    stock.commit()
    settle(page, wait_until)
    assert [(s.count, s.mass) for s in page.job.shown.state.brief.stock] == [(4, "3 g"), (2, "0.5 oz")]
    stock.line.setText("")
    stock.commit()
    settle(page, wait_until)
    page.pieces.search.click()
    assert "the stock is empty" in page.pieces.trouble.text.text().lower()


# what was really put on


def test_what_was_put_on_is_recorded_with_unit_place_radius_fixing_and_filler(opened, wait_until):
    page = opened(1, positions=12)
    page.turn_to(PUT_ON)
    page.on.acts["add"].click()
    for field, typed in (
        (page.entry.mass, "0.5 oz"), (page.entry.place, "position 5"), (page.entry.radius, "12 in"), (page.entry.filler, "0,6"),
    ):  # fmt: skip
        field.line.setText(typed)
        field.commit()
        assert field.remark.isHidden(), field.remark.text.text()
    page.entry.fixing.setCurrentText("welded")
    page.entry._take_fixing(page.entry.fixing.currentIndex())
    page.entry.purpose.buttons["correction"].click()
    page.entry.remarks.setText("weighed by second person")
    page.entry.record.click()
    settle(page, wait_until)
    mass = page.job.shown.state.masses[-1].what
    assert (mass.act, mass.purpose, mass.note) == ("put on", "correction", "weighed by second person")
    piece = mass.pieces[0]
    assert piece.mass_g == pytest.approx(0.5 * 28.349523125 + 0.6)  # the ounce: 1959 yard and pound agreement
    assert (piece.angle_deg, piece.position, piece.fixing) == (120.0, 5, "welded")
    assert piece.radius_mm == pytest.approx(304.8)
    assert "0.6 g of filler metal" in piece.note
    assert page.drafts.pieces == ()


BAD = [
    ("mass", "twelve", '"twelve" is no mass'),
    ("mass", "0", "0 g is no mass"),
    ("mass", "3 mm", '"3 mm" is no mass'),
    ("place", "north", '"north" is no place'),
    ("place", "position 13", 'position "13" does not exist on disc: there are 1 to 12'),
    ("radius", "-3 mm", '"-3 mm" is no radius'),
    ("filler", "much", '"much" is no filler metal'),
]


def test_bad_input_is_said_beside_the_field_and_keeps_what_was_there(opened):
    page = opened(1, positions=12)
    page.turn_to(PUT_ON)
    page.on.acts["add"].click()
    before = page.drafts.pieces
    for field, typed, said in BAD:
        entry = getattr(page.entry, field)
        kept = entry.text
        entry.line.setText(typed)
        entry.commit()
        assert said.lower() in entry.remark.text.text().lower()
        assert entry.text == kept
        assert page.drafts.pieces == before


def test_what_is_being_typed_counts_when_a_key_records(opened, wait_until):
    page = opened(1)
    page.turn_to(PUT_ON)
    page.on.acts["add"].click()
    page.entry.mass.line.setFocus()
    page.entry.mass.line.setText("3.5")
    page.entry.record.click()
    settle(page, wait_until)
    assert page.job.shown.state.masses[-1].what.pieces[0].mass_g == 3.5


def test_angles_are_typed_and_shown_as_the_person_counts_them(opened):
    page = opened(1)
    page.set_view(replace(View(), angles="with rotation"))
    page.turn_to(PUT_ON)
    page.on.acts["add"].click()
    page.entry.place.line.setText("30")
    page.entry.place.commit()
    assert page.drafts.pieces[0].angle_deg == 330.0
    assert page.entry.place.text == "30°"


def test_a_piece_that_sits_elsewhere_is_moved_in_the_record(opened, wait_until):
    page = opened(2, until="check")
    page.turn_to(PUT_ON)
    page.choose("A")
    page.on.acts["sits elsewhere"].click()
    page.entry.place.line.setText("200")
    page.entry.place.commit()
    page.entry.record.click()
    settle(page, wait_until)
    mass = page.job.shown.state.masses[-1].what
    assert mass.act == "really placed"
    assert [p.angle_deg for p in mass.pieces][0] == 200.0
    assert len(page.job.shown.state.on_rotor) == 2


def test_undo_and_redo_act_on_the_record(opened, wait_until):
    page = opened(2, until="last trial on")
    page.turn_to(PUT_ON)
    page.choose("A")
    page.on.acts["take off"].click()
    settle(page, wait_until)
    assert page.job.shown.state.on_rotor == ()
    page.undo.click()
    settle(page, wait_until)
    assert len(page.job.shown.state.on_rotor) == 1
    page.redo.click()
    settle(page, wait_until)
    assert page.job.shown.state.on_rotor == ()
    page.face.setFocus()
    QtTest.QTest.keyClick(page.window(), KEY.Key_Z, QtCore.Qt.KeyboardModifier.ControlModifier)
    wait_until(lambda: len(page.job.shown.state.on_rotor) == 1)


# at the bench


def test_a_piece_is_split_between_positions_and_made_one_again(opened):
    page = opened(1, positions=12)
    page.turn_to(PUT_ON)
    page.think_of([Draft("disc", 24.0, 320.0)])
    wanted = mass_vector(page.drafts.pieces)
    page.entry.hand.split.click()
    assert [d.position for d in page.drafts.pieces] == [11, 12]
    assert abs(mass_vector(page.drafts.pieces) - wanted) < 0.02
    page.entry.hand.combine.click()
    assert len(page.drafts.pieces) == 1
    assert abs(mass_vector(page.drafts.pieces) - wanted) < 0.04


def test_metal_taken_away_on_the_other_side_does_the_same(opened):
    page = opened(1)
    page.turn_to(PUT_ON)
    page.think_of([Draft("disc", 24.0, 320.0)])
    wanted = mass_vector(page.drafts.pieces)
    assert page.entry.hand.diameter.isHidden()
    page.entry._take_fixing(masses_model.FIXINGS.index("drilled"))
    draft = page.drafts.pieces[0]
    assert (draft.mass_g, draft.angle_deg) == (-24.0, 140.0)
    assert abs(mass_vector([draft]) - wanted) < 1e-9
    assert not page.entry.hand.diameter.isHidden()
    page.entry.hand.diameter.line.setText("12 mm")
    page.entry.hand.diameter.commit()
    # cylinder and 118° cone of 12 mm in steel, 7850 kg/m³, by hand: 27.03 mm full and 3.61 mm of point less a third
    assert page.entry.hand.result.text() == "drill to 29.4 mm at the tip, 25.8 mm full diameter (118° point)"
    page.entry._take_fixing(masses_model.FIXINGS.index("bolted"))
    assert page.drafts.pieces[0].mass_g == 24.0


def test_another_radius_keeps_what_the_piece_does(opened):
    page = opened(1)
    page.turn_to(PUT_ON)
    page.think_of([Draft("disc", 24.0, 320.0)])
    wanted = mass_vector(page.drafts.pieces)
    page.entry.hand.radius.line.setText("155 mm")
    page.entry.hand.radius.commit()
    assert (page.drafts.pieces[0].mass_g, page.drafts.pieces[0].radius_mm) == (48.0, 155.0)
    assert abs(mass_vector(page.drafts.pieces) - wanted) < 1e-6
    page.entry.hand.angles.line.setText("300 and 340")
    page.entry.hand.angles.commit()
    assert abs(mass_vector(page.drafts.pieces) - wanted) < 0.05
    page.entry.hand.angles.line.setText(f"300{' ' * 20_000}or 340")  # hours if it were tried in all ways
    page.entry.hand.angles.commit()
    assert "is not two angles" in page.entry.hand.angles.remark.text.text()
    page.entry.hand.angles.line.setText("300 and 300")
    page.entry.hand.angles.commit()
    assert "in line" in page.entry.hand.angles.remark.text.text()


# cautions


def test_cautions_are_answered_one_by_one_and_recorded(opened, wait_until):
    page = opened(1)
    page.turn_to(CAUTIONS)
    page.cautions.who.setText("")
    page.cautions.say.click()
    assert f"{len(page.cautions.ticks)} of {len(page.cautions.ticks)}" in page.cautions.trouble.text.text()
    for tick in page.cautions.ticks:
        tick.click()
    page.cautions.say.click()
    assert page.cautions.trouble.text.text() == "Write who says so."
    assert page.job.shown.state.cautions == ()
    page.cautions.who.setText("second person")
    page.cautions.say.click()
    settle(page, wait_until)
    said = page.job.shown.state.cautions[-1].what
    assert said.who == "second person"
    assert any("blocked by mechanical means" in text for text in said.texts)
    assert page.cautions.done.text.text().startswith("Second person said since the last start")
    page.think_of([Draft("disc", 10.0, 0.0)])
    assert page.entry.caution.isHidden()
    page.job.act(lambda s: take_run(s, "check", "later", planes=1))
    settle(page, wait_until)
    assert not page.entry.caution.isHidden()


# the sheet


def test_the_sheet_is_saved_for_paper_and_phone(opened, tmp_path, wait_until, wait):
    page = opened(2)
    page._try_correction()
    page.sheet.click()
    wait_until(lambda: page.sheet_card.isVisible())
    wait(30)
    card = page.sheet_card
    assert card.back.hasFocus()
    assert faults(page.window()) == []
    card.save(tmp_path / "sheet.pdf", "pdf")
    assert (tmp_path / "sheet.pdf").read_bytes().startswith(b"%PDF")
    card.save(tmp_path / "sheet.png", "png")
    assert "sheet 1.png" in card.said.text.text()
    image = QtGui.QImage(str(tmp_path / "sheet 1.png"))
    assert (image.width(), image.height()) == (1170, 2340)
    card.save(tmp_path / "none" / "sheet.pdf", "pdf")
    assert "cannot be written" in card.said.text.text()
    texts = [s.text for s in card.paper[0].shapes if hasattr(s, "text")]
    assert "drive side" in texts
    assert "Seen from the drive end" in texts
    assert any(t.startswith("it turns counter-clockwise") for t in texts)
    assert any("19.0 g" in t for t in texts)
    assert "245°" in texts
    card.turn.buttons["Phone"].click()
    assert card.picture.accessibleName().startswith("To be put on")
    card.back.click()
    assert page.columns.isVisible()


@pytest.mark.parametrize(
    ("seen_from", "clock", "turns"),
    [("reference end", "3:00", "counter-clockwise"), ("other end", "9:00", "clockwise")],
)
def test_the_sheet_says_where_on_the_clock_face_from_either_end(opened, seen_from, clock, turns):
    page = opened(1)
    face = masses_sheet.as_seen(face_of(page.job.shown.hookup), seen_from)
    assert face.rotation == turns
    line = masses_sheet.line_of(1, 10.0, 90.0, face, {"place": "90°"}, None)
    # rotation counter-clockwise from the drive end, mark at 12: against rotation is clockwise, a quarter is 3 o'clock
    assert line.more[0] == f"clock face {clock}"


def test_without_anything_there_is_no_sheet(opened, wait_until):
    page = opened(1)
    page.sheet.click()
    wait_until(lambda: page.trouble.text.text() != "")
    assert "nothing is on the rotor or thought of" in page.trouble.text.text().lower()


def test_many_pieces_go_on_over_the_page(opened):
    page = opened(1, positions=12)
    shown = page.job.shown
    drafts = tuple(Draft("disc", 1.0 + i, 30.0 * i, i + 1) for i in range(12))
    paper, phone = sheets_of(shown.state, shown.hookup, drafts, page.known, View(), left_on=False)
    for pages in (paper, phone):
        assert len(pages) > 1
        texts = [s.text for p in pages for s in p.shapes if hasattr(s, "text")]
        assert all(f"position {i} ({30 * (i - 1)}°)" in texts for i in range(1, 13))
        for each in pages:
            assert all(0.0 <= s.y <= each.height for s in each.shapes if hasattr(s, "text"))


def test_the_sheet_crosses_out_what_is_blocked(opened, wait_until):
    page = opened(1)
    plane = {"name": "disc", "radius": "310 mm", "positions": 12, "blocked": [4]}
    page.job.act(lambda s: s.describe({"planes": [plane]}))
    wait_until(lambda: not page.job.busy and page.job.shown.state.brief.planes[0].blocked == [4])
    shown, drafts = page.job.shown, (Draft("disc", 5.0, 0.0, 1),)
    paper, _phone = sheets_of(shown.state, shown.hookup, drafts, page.known, View(), left_on=False)
    assert any("Crossed out: no mass may go there." in s.text for s in paper[0].shapes if hasattr(s, "text"))
    assert sum(getattr(s, "colour", None) == "bad" and len(getattr(s, "points", ())) == 2 for s in paper[0].shapes) == 2


# the page in the window


def test_a_job_without_planes_says_what_to_do(opened, wait_until):
    page = opened(1)
    page.job.act(lambda s: s.describe({"planes": None}))
    wait_until(lambda: not page.nothing.isHidden())
    assert "Brief page" in page.nothing.text()


def test_states_of_the_stage(opened):
    page = opened(2, until="check")
    assert page.state() is State.DONE
    assert page.sentence() is None


def test_units_of_vibration_follow_the_view(opened):
    page = opened(1)
    page.set_view(replace(View(), unit="in/s peak"))
    assert "in/s peak in the last run" in page.expected.summary
    page._try_correction()
    assert "in/s peak expected" in page.expected.summary


def test_with_nothing_thought_of_nothing_is_expected(opened):
    page = opened(1, limit=2.0)
    assert page._expected_card.heading.text() == "Vibration in the last run"
    assert "above the limit" in page.expected.summary
    assert "expected" not in page.expected.summary
    page._try_correction()
    assert page._expected_card.heading.text() == "Expected vibration"
    assert "below the limit with 95 %" in page.expected.summary


def test_a_closed_job_offers_nothing_to_do_and_says_how_to_go_on(opened, wait_until, tmp_path):
    page = opened(2, until="check", limit=2.0)
    page._try_correction()
    page.job.act(lambda s: s.judge())
    page.job.act(lambda s: s.finish("done", accepted_by="the owner"))
    settle(page, wait_until)
    wait_until(lambda: page.job.shown.state.closed)
    assert page.turn.isHidden()
    assert all(card.isHidden() for cards in page.cards.values() for card in cards)
    assert not page.closed.isHidden()
    assert page.closed.pieces.said == tuple(b.text() for b in page.on.on.lines)
    assert page._wedges() == [] == list(page.drafts.pieces)
    assert page.sentence() is None
    asked = []
    page.opened.connect(asked.append)
    page.closed.reopen.click()
    assert asked == [Stage.CLOSE_OUT]
    page.closed.visit.click()
    wait_until(
        lambda: page.job.shown.folder.parent == tmp_path and page.job.shown.folder.name.startswith("extraction fan 2")
    )
    assert page.closed.isHidden()
    assert not page.trial.isHidden()
    assert (tmp_path / "job" / "job.jsonl").exists()


def test_nothing_of_one_job_is_thought_of_in_another(opened, wait_until, tmp_path):
    page = opened(2, limit=2.0)
    page._try_correction()
    page.entry.remarks.setText("weighed twice")
    balancing_job(tmp_path / "other", 2, until="initial").close()
    page.job.open(tmp_path / "other", "first person")
    wait_until(lambda: page.job.shown.folder.name == "other")
    assert page.drafts.pieces == ()
    assert page.entry.remarks.text() == ""
    assert page.known is None or page.known.solution is None
    assert page.correction.take.isHidden()
    assert page.turn.value == TRIAL


@pytest.mark.parametrize(
    ("size", "theme", "text"),
    [
        ((1400, 900), "light", "normal"),
        ((1024, 700), "dark", "large"),
        ((1400, 900), "sunlight", "largest"),
        ((1024, 700), "light", "largest"),
    ],
)
def test_every_card_is_sound_in_the_window(opened, wait, size, theme, text):
    page = opened(2, until="last trial on", limit=1.8)
    page._try_correction()
    frame = page.window()
    frame.resize(*size)
    frame.set_view(replace(frame.view, theme=theme, text_size=text))
    for what in (TRIAL, CORRECTION, PIECES, PUT_ON, CAUTIONS):
        page.turn_to(what)
        wait(30)
        assert faults(frame) == []
        assert small_targets(frame) == []


def test_the_focus_is_seen(opened, wait):
    page = opened(1, until="last trial on")
    page._try_correction()
    for what in (CORRECTION, PUT_ON):
        page.turn_to(what)
        wait(30)
        assert unseen_focus(page.window()) == []
