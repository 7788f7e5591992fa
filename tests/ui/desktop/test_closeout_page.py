"""The Close-out page in a real window, on jobs made through the session with vectors of the simulated rotor."""

import csv
import io
import json
from dataclasses import replace

import pytest
from balancing_jobs import balancing_job, take_run
from screen_faults import faults, small_targets, unseen_focus
from stillshaft.solver.job import Job
from stillshaft.ui.desktop import closeout_work
from stillshaft.ui.desktop.closeout_cards import ACCEPT, REFUSE
from stillshaft.ui.desktop.closeout_page import CLOSE, NEXT, REPORT, CloseOutPage
from stillshaft.ui.desktop.closeout_work import MET, NOT_MET, UNTOLD
from stillshaft.ui.desktop.settings import View
from stillshaft.ui.desktop.stages import Stage, State
from stillshaft.ui.session import Session


@pytest.fixture
def opened(page_on, wait_until, tmp_path):
    """Opens a job on the page, after `more` was done to it."""

    def at(planes=2, *, more=lambda session: None, **job):
        with balancing_job(tmp_path / "jobs" / "job", planes, **job) as session:
            more(session)
        page = page_on(Stage.CLOSE_OUT, CloseOutPage, tmp_path / "jobs" / "job")
        wait_until(lambda: page.found is not None)
        return page

    (tmp_path / "jobs").mkdir()
    return at


def settle(page, wait_until):
    def there():
        return not page.job.busy and page.found is not None and page._asked[1] == page.job.shown.entries

    wait_until(there)


def test_what_was_recorded_here_is_undone_here(opened, wait_until):
    page = opened(2, until="check", limit=1.8)
    page.close_card.judge.click()
    settle(page, wait_until)
    assert len(page.found.state.verdicts) == 1
    page.undo.click()
    settle(page, wait_until)
    assert page.found.state.verdicts == ()
    page.redo.click()
    settle(page, wait_until)
    assert len(page.found.state.verdicts) == 1


# where it stands


def test_before_and_after_and_verdicts_are_those_of_the_record(opened):
    page = opened(2, until="check", limit=1.8)
    first, last = closeout_work.ends(page.found.state)
    assert (first.what.name, last.what.name) == ("initial", "check")
    for bar, before, after in zip(page.found.bars, first.what.vectors, last.what.vectors, strict=True):
        assert (bar.before, bar.after) == (before.amplitude, after.amplitude)
        assert (bar.limit, bar.verdict) == (1.8, MET)
    assert [(s.name, s.verdict) for s in page.found.planes] == [("bearing A", MET), ("bearing B", MET)]
    # G6.3 of 74 kg at 1480 r/min by hand: e = 6.3/Ω = 40.65 µm, U = 3008 g·mm over both bearings
    assert sum(s.limit for s in page.found.planes) == pytest.approx(3008.0, rel=1e-3)
    assert "drive end horizontal" in page.points.summary
    assert "agreed in the brief" in page.points.summary
    assert any("ISO 21940-11" in text for text in page.sources.said)


def test_a_goal_that_is_not_met_is_said_so(opened):
    page = opened(2, until="trials", limit=1.8)
    assert page.found.bars == ()
    assert page.why_bars.text() == "There is no run after balancing yet."
    assert {s.verdict for s in page.found.vibration} == {NOT_MET}
    assert page.state() is State.EMPTY
    assert page.sentence() is None


def test_without_runs_nothing_can_be_told(opened):
    page = opened(1, until="brief")
    assert {(s.value, s.verdict) for s in page.found.planes} == {(None, UNTOLD)}
    assert "not known, limit 13" in page.planes.summary
    assert page.why_bars.text() == "No run counts yet."
    assert page.why_points.text() == "No limit applies."


def test_a_residual_near_its_limit_cannot_be_told_yet(opened):
    def finer(session):
        session.describe({"goal": {"grade": "G0.4"}, "rotor": {"mass": "13.5 kg"}})

    page = opened(1, until="check", more=finer)
    assert {s.verdict for s in page.found.planes} == {UNTOLD}
    assert "cannot be told yet" in page.planes.summary
    assert "cannot be told" in page.close_card.verdict.text()


def test_units_of_before_and_after_follow_the_view(opened, wait_until):
    page = opened(2, until="check", limit=1.8)
    before = page.found.bars[0]
    page.set_view(replace(View(), unit="µm p-p"))
    wait_until(lambda: page.found.unit == "µm p-p")
    # v = Ω·x: mm/s rms to µm peak to peak at 1480 r/min by hand, 2·√2·1000/(2π·1480/60) = 18.25
    assert page.found.bars[0].before == pytest.approx(18.25 * before.before, rel=1e-3)
    assert page.found.bars[0].limit == pytest.approx(18.25 * 1.8, rel=1e-3)


# closing


def test_trial_masses_keep_the_job_from_closing(opened, wait_until):
    page = opened(2, until="last trial on", limit=1.8)
    assert page.close_card.blocking.text.text().startswith("Trial masses are still on: far side 12.00 g")
    page.close_card.close_job.click()
    wait_until(lambda: page.close_card.trouble.text.text() != "")
    assert "take them off" in page.close_card.trouble.text.text()
    assert not page.job.shown.state.closed


def test_what_is_not_done_is_listed(opened):
    page = opened(2, until="check", limit=1.8)
    said = " ".join(page.close_card.missing.said)
    assert "not noted as weighed back in" in said
    assert "no photo yet" in said.lower()
    assert "A recorded verdict" in said
    assert page.state() is State.UNDER_WAY
    assert page.sentence() is not None


def test_a_piece_put_on_after_the_last_run_is_said(opened):
    def more(session):
        session.put_on([{"plane": "disc", "mass_g": 1.0, "angle_deg": 0.0, "fixing": "welded"}], "trim")

    page = opened(1, until="check", more=more)
    assert any("since the last run" in text for text in page.close_card.missing.said)


def test_acceptance_needs_a_name_and_closes_the_job(opened, wait_until):
    page = opened(2, until="check", limit=1.8)
    card = page.close_card
    card.choice.buttons[ACCEPT].click()
    card.close_job.click()
    assert card.trouble.text.text() == "Write who accepts it for the owner."
    assert not page.job.shown.state.closed
    card.who.setText("third person")
    card.remarks.setText("by contract")
    card.close_job.click()
    settle(page, wait_until)
    state = page.job.shown.state
    assert state.closed
    assert (state.verdicts[-1].what.accepted_by, state.verdicts[-1].what.verdict) == ("third person", "met")
    assert "accepted by third person" in card.verdict.text()
    assert page.state() is State.DONE
    assert card.close_job.isHidden()
    card.remarks.clear()
    assert [w.isHidden() for w in (card.owner, card.choice, card.who, card.judge, card.remarks)] == [True] * 4 + [False]
    card.reopen.click()
    assert "why the job is reopened" in card.trouble.text.text()
    card.remarks.setText("another point shakes")
    card.reopen.click()
    settle(page, wait_until)
    assert not page.job.shown.state.closed


def test_refusal_needs_a_reason_and_is_recorded(opened, wait_until):
    page = opened(1, until="trials", more=lambda s: take_run(s, "check", "check", planes=1))
    card = page.close_card
    card.judge.click()
    settle(page, wait_until)
    assert page.job.shown.state.verdicts[-1].what.verdict == "not met"
    card.choice.buttons[REFUSE].click()
    card.who.setText("third person")
    card.close_job.click()
    assert card.trouble.text.text() == "Write why it is refused."
    card.remarks.setText("still above the grade")
    card.close_job.click()
    settle(page, wait_until)
    verdict = page.job.shown.state.verdicts[-1].what
    assert (verdict.refused_by, verdict.note) == ("third person", "still above the grade")


# report and exports


def test_the_report_is_made_on_a_thread_looked_at_and_kept(opened, wait_until):
    page = opened(2, until="check", limit=1.8)
    page.turn_to(REPORT)
    report = page.report
    assert not report.keep.isEnabled()
    report.make.click()
    wait_until(lambda: report.made is not None)
    text = report.preview.toPlainText()
    for said in ("fan 3", "Outcome", "Residual unbalance and limits", "Placement sheet", "drive side", "Acceptance"):
        assert said in text
    assert f"{report.made.pages} pages" in report.said.text.text()
    report.keep.click()
    wait_until(lambda: page.job.shown.state.reports)
    file = page.job.shown.state.reports[-1].what.file
    assert (page.job.shown.folder / file.path).read_bytes().startswith(b"%PDF")
    report.units.buttons["inches and ounces"].click()
    assert report.made is None


def test_the_preview_has_the_pictures_and_is_as_wide_as_its_place(opened, wait_until):
    page = opened(2, until="check", limit=1.8)
    page.turn_to(REPORT)
    page.make_report()
    wait_until(lambda: page.report.made is not None)
    preview = page.report.preview
    _, images = preview._shown
    assert len(images) > 3
    html = preview.document().toHtml()
    assert all(f"picture:{n}" in html for n in range(len(images)))
    assert f"picture:{len(images)}" not in html
    assert preview.document().idealWidth() <= preview.viewport().width() + 2  # rounded up


def test_files_are_written_where_the_person_wants_them(opened, wait_until, tmp_path):
    page = opened(2, until="check", limit=1.8)
    page.turn_to(REPORT)
    page.make_report()
    wait_until(lambda: page.report.made is not None)
    out = tmp_path / "out"
    out.mkdir()
    for kind, ending in closeout_work.KINDS.items():
        path = out / f"fan{ending}"
        page.export(kind, path)
        wait_until(lambda: not page.job.busy)
        assert page.report.said.text.text() == f"Written: {path}"
    assert (out / "fan.pdf").read_bytes().startswith(b"%PDF")
    assert "<!DOCTYPE html>" in (out / "fan.html").read_text(encoding="utf-8")
    rows = list(csv.DictReader(io.StringIO((out / "fan.csv").read_text(encoding="utf-8"))))
    assert {row["run"] for row in rows} == {"initial", "trial drive side", "trial far side", "check"}
    whole = json.loads((out / "fan.json").read_text(encoding="utf-8"))
    assert whole["state"]["name"] == "fan 3"
    assert whole["trusted"] is True
    before = (page.job.shown.folder / "job.jsonl").read_bytes()
    page.export("CSV", page.job.shown.folder / "job.jsonl")
    wait_until(
        lambda: "is there already" in page.report.said.text.text() or "lies within" in page.report.said.text.text()
    )
    assert (page.job.shown.folder / "job.jsonl").read_bytes() == before
    page.export("JSON", tmp_path / "none" / "fan.json")
    wait_until(lambda: "there is no folder" in page.report.said.text.text())


def test_a_report_is_broken_off(opened, wait_until):
    page = opened(1, until="check")
    page.turn_to(REPORT)
    page.make_report()
    page.report.work.break_off()
    wait_until(lambda: page.report.make.isEnabled())
    assert page.report.made is None
    assert page.report.said.text.text() == "Broken off."


# the next visit


def test_coefficients_are_stored_and_one_run_balances_the_next_time(opened, wait_until, tmp_path):
    page = opened(1, until="check")
    page.turn_to(NEXT)
    assert "can be stored" in page.next.hints.said[0]
    page.next.keep.click()
    wait_until(lambda: "are stored with this job" in page.next.hints.said[0])
    folder = page.job.shown.folder
    assert (folder / "coefficients.toml").exists()
    page.job.close()
    with Session.next_visit(tmp_path / "later", None, "first person", folder) as later:
        take_run(later, "initial", "initial", planes=1)
        assert later.worked().solution is not None
        assert later.worked().solution.corrections[0].angle_deg == pytest.approx(320.0, abs=10.0)


def test_the_trend_reads_the_jobs_beside_this_one(opened, wait_until, tmp_path):
    with balancing_job(tmp_path / "jobs" / "earlier", 2, until="check"):
        pass
    page = opened(2, until="check")
    page.turn_to(NEXT)
    page.next.trend.click()
    wait_until(lambda: page.next.rows.said)
    assert page.next.rows.said[0].startswith("Drive end horizontal, mm/s rms, first → last run of each job: fan 3 ")
    assert page.next.rows.said[0].count("fan 3 ") == 2
    assert "since the visit before" in page.next.rows.said[0]


def test_a_closed_job_begins_the_next_visit_and_nothing_of_it_stays(opened, wait_until):
    page = opened(1, until="check")
    page.turn_to(NEXT)
    assert page.next.visit.isHidden()
    page.job.act(lambda s: s.judge())
    page.job.act(lambda s: s.finish("done", accepted_by="the owner"))
    wait_until(lambda: not page.next.visit.isHidden())
    page.report.show_report(None, "it cannot be made")
    page.close_card.remarks.setText("as agreed")
    page.next.visit.click()
    wait_until(lambda: page.job.shown.state.name.startswith("extraction fan 2"))
    wait_until(lambda: page.found is not None)
    assert not page.found.state.runs
    assert page.report.made is None
    assert page.report.said.text.text() == page.close_card.remarks.text() == ""


# the page in the window


def test_a_job_open_to_read_only_can_only_be_looked_at(opened):
    page = opened(1, until="check")
    folder = page.job.shown.folder
    with Job.open(folder, read_only=True) as job:
        assert job.state.name == "fan 3"
    page.job.shown = replace(page.job.shown, read_only=True)
    page._show()
    assert not page.close_card.judge.isEnabled()
    assert not page.close_card.close_job.isEnabled()
    assert not page.next.keep.isEnabled()


@pytest.mark.parametrize(
    ("size", "theme", "text"),
    [
        ((1400, 900), "light", "normal"),
        ((1024, 700), "dark", "large"),
        ((1400, 900), "sunlight", "largest"),
        ((1024, 700), "light", "largest"),
    ],
)
def test_every_card_is_sound_in_the_window(opened, wait, wait_until, size, theme, text):
    page = opened(2, until="check", limit=1.8)
    page.make_report()
    wait_until(lambda: page.report.made is not None)
    frame = page.window()
    frame.resize(*size)
    frame.set_view(replace(frame.view, theme=theme, text_size=text))
    for what in (CLOSE, REPORT, NEXT):
        page.turn_to(what)
        wait(30)
        assert faults(frame) == []
        assert small_targets(frame) == []


def test_the_focus_is_seen(opened, wait):
    page = opened(1, until="check")
    for what in (CLOSE, REPORT):
        page.turn_to(what)
        wait(30)
        assert unseen_focus(page.window()) == []
