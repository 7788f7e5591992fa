"""Waits between starts while somebody sets the computer's clock: not shorter, and it is said."""

from datetime import UTC, datetime, timedelta

import pytest
from stillshaft.solver import clock, guidance
from stillshaft.solver.job import Job
from stillshaft.ui.session import Session

BEGAN = datetime(2026, 3, 29, 8, 0, tzinfo=UTC)


class Clocks:
    """What the computer shows, and how long it has been running."""

    def __init__(self):
        self.wall, self.running_s = BEGAN, 500.0

    def passes(self, minutes):
        self.wall += timedelta(minutes=minutes)
        self.running_s += 60.0 * minutes

    def set(self, minutes):
        self.wall += timedelta(minutes=minutes)


@pytest.fixture
def clocks(monkeypatch):
    found = Clocks()
    monkeypatch.setattr(clock, "_clock", lambda: found.wall)
    monkeypatch.setattr(clock, "_running_s", lambda: found.running_s)
    monkeypatch.setattr(clock, "_began", found.wall)
    monkeypatch.setattr(clock, "_began_s", found.running_s)
    monkeypatch.setattr(clock, "_dated", {})
    return found


@pytest.fixture
def session(tmp_path, clocks):
    """A machine that may start every 30 minutes, and was started just now."""
    with Job.create(tmp_path / "job", "fan", "ann") as job:
        job.append("brief", starts={"minutes_between": 30.0})
        job.append("start")
        yield Session(job)


def told(session):
    facts = session._facts()
    return guidance.starts(session.state, facts.now, facts.ahead_s)


def wait_min(session):
    earliest = told(session).earliest
    return None if earliest is None else (earliest - session._facts().now).total_seconds() / 60.0


@pytest.mark.parametrize(("minutes", "way"), [(60.0, "forward by 60 min"), (-60.0, "back by 60 min")])
def test_a_clock_that_is_set_changes_no_wait_and_is_said(session, clocks, minutes, way):
    clocks.passes(10.0)
    assert wait_min(session) == pytest.approx(20.0)
    assert "clock" not in told(session).sentence
    clocks.set(minutes)
    assert wait_min(session) == pytest.approx(20.0)
    assert f"this computer's clock was set {way}; waits are told without it" in told(session).sentence
    clocks.passes(20.0)
    assert wait_min(session) is None


def test_a_clock_that_is_adjusted_is_not_said(session, clocks):
    clocks.set(0.5)
    assert "clock" not in told(session).sentence


def test_a_start_after_the_clock_was_set_is_waited_for_from_then_on(session, clocks):
    clocks.set(60.0)
    clocks.passes(5.0)
    session.job.append("start")
    clocks.passes(1.0)
    assert wait_min(session) == pytest.approx(29.0)


def test_a_start_of_before_is_never_waited_for_less(session, clocks):
    """Another program wrote it: the clock is believed as it stood when this one began, and where it is set back."""
    clock._dated.clear()
    clocks.passes(10.0)
    clocks.set(60.0)
    assert wait_min(session) == pytest.approx(20.0)
    clocks.set(-70.0)
    assert wait_min(session) == pytest.approx(30.0)
    clocks.set(-50.0)
    assert wait_min(session) == pytest.approx(80.0)
    assert "the last start is dated 50 min ahead of this computer's clock" in told(session).sentence


def test_without_a_wait_no_clock_matters(session, clocks):
    session.job.append("brief", starts={"minutes_between": None})
    clocks.set(60.0)
    assert told(session).sentence == "1 start counted"


def test_the_clocks_of_this_computer():
    at = clock.stamp()
    assert clock.now(at) >= datetime.fromisoformat(at)
    assert abs(clock.ahead_s()) < 3600.0
