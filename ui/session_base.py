"""A job that is open: where it stands, and what is known of the machine: brief, hook-up, inspection, measured checks.

`ui.session` adds the runs, masses and decisions.
"""

from __future__ import annotations

import contextlib
import os
import shutil
from collections.abc import Callable, Iterator, Mapping, Sequence
from pathlib import Path
from types import TracebackType
from typing import TYPE_CHECKING, Any, Self

from stillshaft.acquire import hookup as wiring
from stillshaft.dsp.units import InputError, shown
from stillshaft.solver import events
from stillshaft.solver.events import Event
from stillshaft.solver.folder import FOLDERS, fit_name, remove_folders, room_in
from stillshaft.solver.job import Entry, Job
from stillshaft.solver.record import NAME
from stillshaft.solver.state import JobState
from stillshaft.ui import job_facts

if TYPE_CHECKING:
    from stillshaft.solver.brief import Brief
    from stillshaft.solver.guidance import Advice, Facts, Stage
    from stillshaft.solver.inspection import Check
    from stillshaft.solver.next_steps import StageName
    from stillshaft.ui.analysis import Report
    from stillshaft.ui.job_checks import Checked
    from stillshaft.ui.job_facts import Worked

CHECKS = ("signals", "spectrum", "sweep", "bump", "background", "settling", "repeatability", "swap")


class SessionError(InputError):
    """An act that cannot be done: the message says why and what to do."""


class RecordedJob:
    """An opened job: where it stands, its brief, hook-up, inspection and recordings. Used by one thread."""

    def __init__(self, job: Job) -> None:
        """Use `create`, `next_visit` or `open`."""
        self.job = job
        self._worked: tuple[int, Worked] | None = None

    @classmethod
    def create(cls, folder: Path, name: str, by: str, hookup: Mapping[str, Any] | None = None) -> Self:
        """Begin a job in a new folder. Raises HookupError before anything is written, RecordError for a folder in use."""
        if hookup is not None:
            wiring.hookup_from(dict(hookup))
        was_there = folder.exists()
        session = cls(Job.create(folder, name, by))
        if hookup is not None:
            with session._removed_on_an_error(was_there):
                session.wire(hookup)
        return session

    @contextlib.contextmanager
    def _removed_on_an_error(self, was_there: bool) -> Iterator[None]:
        """Leave nothing of a job that could not be begun: a full disk takes its first entry and not the second."""
        try:
            yield
        except BaseException:
            self.close()
            (self.folder / NAME).unlink(missing_ok=True)
            if not was_there:  # else they may be somebody's own
                (self.folder / job_facts.COEFFICIENTS_NAME).unlink(missing_ok=True)
            remove_folders([*(self.folder / inner for inner in FOLDERS), *([] if was_there else [self.folder])])
            raise

    @classmethod
    def next_visit(
        cls, folder: Path, name: str | None, by: str, earlier: Path, hookup: Mapping[str, Any] | None = None
    ) -> Self:
        """Begin a job with brief, hook-up and coefficients of an earlier job's folder, or of a runs file.

        What was wrong then, and what became of it, is left behind. Raises the errors of the earlier job or file before
        anything is written.
        """
        from stillshaft.solver import stored
        from stillshaft.ui import job_visit

        taken = job_visit.taken_over(earlier)
        was_there = folder.exists()
        session = cls.create(folder, name or taken.name, by, hookup if hookup is not None else taken.hookup)
        with session._removed_on_an_error(was_there):
            if taken.brief:
                session.job.append("brief", **taken.brief)
            if taken.coefficients:
                stored.save(folder / job_facts.COEFFICIENTS_NAME, taken.coefficients)
            session.job.append(
                "measured",
                what="taken over",
                figures={"from": str(earlier), "coefficients": len(taken.coefficients)},
                note="; ".join(taken.remarks),
            )
        return session

    @classmethod
    def open(cls, folder: Path, *, by: str = "", read_only: bool = False, take_over: bool = False) -> Self:
        """Go on with a job. Raises RecordError as `Job.open` does."""
        return cls(Job.open(folder, read_only, by=by, take_over=take_over))

    def close(self) -> None:
        """Give the folder back to other programs."""
        self.job.close()

    def __enter__(self) -> Self:
        return self

    def __exit__(self, kind: type[BaseException] | None, error: BaseException | None, at: TracebackType | None) -> None:
        self.close()

    # where the job stands

    @property
    def changed(self) -> list[Callable[[], None]]:
        """Listeners, called after each event."""
        return self.job.changed

    @property
    def folder(self) -> Path:
        """The job's folder."""
        return self.job.folder

    @property
    def state(self) -> JobState:
        """Where the job stands."""
        return self.job.state

    @property
    def brief(self) -> Brief:
        """What the job is about."""
        return self.job.state.brief

    @property
    def history(self) -> tuple[Entry, ...]:
        """Every line of the record."""
        return self.job.history

    @property
    def hookup(self) -> wiring.Hookup | None:
        """What is wired up. Raises HookupError for one that was damaged in the record."""
        return None if self.state.hookup is None else wiring.hookup_from(self.state.hookup)

    @property
    def problems(self) -> tuple[str, ...]:
        """What is to be said about the record, files that are missing, and recordings that no entry names."""
        missing = [
            f"{self.folder}: {shown(path)} is missing"
            for path in self._named_files()
            if not os.path.lexists(self.folder / path)
        ]
        left = [
            f"{path}: belongs to no run; take it with --recording, or leave it" for path in self.unused_recordings()
        ]
        return (*self.job.problems, *missing, *left)

    def _named_files(self) -> list[str]:
        return [file.path for event in self.job.events for file in events.files_of(event.what)]

    def unused_recordings(self) -> tuple[Path, ...]:
        """Recordings in the folder that no entry names: of a run that was interrupted, or that could not be measured."""
        named = set(self._named_files())
        room = self.folder / "recordings"
        found = sorted(room.iterdir()) if room.is_dir() else []
        return tuple(
            p
            for p in found
            if f"recordings/{p.name}" not in named and not p.name.endswith((".events.jsonl", ".part")) and p.is_file()
        )

    def worked(self) -> Worked:
        """Correction, tolerance and diagnosis as the record stands; worked out when asked for, and kept till it grows."""
        length = len(self.job.events)
        if self._worked is None or self._worked[0] != length:
            before = None if self._worked is None else self._worked[1]
            self._worked = (length, job_facts.worked(self.state, self.folder, before))
        return self._worked[1]

    def advice(self) -> Advice:
        """The most important thing to do next."""
        from stillshaft.solver import guidance

        return guidance.advise(self.state, self._facts())

    def stages(self) -> dict[StageName, Stage]:
        """How far each stage of the job is, with the reason."""
        from stillshaft.solver import guidance

        return guidance.state_of_stages(self.state, self._facts())

    def _facts(self) -> Facts:
        from stillshaft.solver import clock, guidance

        known = self.worked()
        return guidance.Facts(
            known.solution, known.solution_error, known.tolerance, known.diagnosis, guidance.now_for(self.state),
            clock.ahead_s(),
        )  # fmt: skip

    # brief, hook-up, inspection

    def describe(self, patch: Mapping[str, Any]) -> Event[Any]:
        """Lay a patch over the brief: tables key by key, None removes.

        Raises RecordError that names the field, FactsError for a goal that there is not.
        """
        job_facts.check_goal(patch)
        return self.job.append("brief", **patch)

    def wire(self, table: Mapping[str, Any]) -> Event[Any]:
        """Set the hook-up. Raises HookupError that names the field, SessionError where runs were taken with another."""
        wired = wiring.hookup_from(dict(table))
        last = self.state.runs[-1].id if self.state.runs else 0
        said = any(e.id > last for e in self.state.references)
        if last and self.hookup is not None and wired.fingerprint != self.hookup.fingerprint and not said:
            raise SessionError(
                "hook-up: runs were taken with another one; record first what changed, as a change of reference"
            )
        return self.job.append("hookup", table=wired.table)

    def checks(self) -> tuple[Check, ...]:
        """The checks before balancing that fit this machine."""
        from stillshaft.solver import inspection

        return inspection.checks(inspection.facts_from(self.brief))

    def inspect(
        self, item: str, outcome: str, note: str = "", photos: Sequence[Path] = (), evidence: int | None = None
    ) -> Event[Any]:
        """Record the outcome of a check: fine, needs attention, not done (with why). Raises RecordError, SessionError."""
        known = [c.key for c in self.checks()]
        if item not in known:
            raise SessionError(f'check "{shown(item)}": is none of this machine\'s; there is {", ".join(known)}')
        copied = [self.copied_photo(p) for p in photos]
        try:
            return self.job.append("check", item=item, outcome=outcome, note=note, photos=copied, evidence=evidence)
        except BaseException:
            self.remove(copied)
            raise

    def add_photo(self, photo: Path, note: str = "", about: int | None = None) -> Event[Any]:
        """Copy a photo into the job. Raises SessionError for a file that cannot be read, RecordError."""
        copied = self.copied_photo(photo)
        try:
            return self.job.append("photo", file=copied, note=note, about=about)
        except BaseException:
            self.remove([copied])
            raise

    def copied_photo(self, photo: Path) -> dict[str, str]:
        """Copy a photo into the job; its file as an event holds it. Raises SessionError."""
        if not photo.is_file():
            raise SessionError(f"{shown(photo, 400)}: there is no such photo")
        target = self.job.new_file("photos", fit_name(photo.name))
        _copy(photo, target)
        return self.job.file_fields(f"photos/{target.name}")

    def remove(self, copied: Sequence[Mapping[str, str]]) -> None:
        """Take photos out again that no entry came to name."""
        for file in copied:
            (self.folder / file["path"]).unlink(missing_ok=True)

    def record_check(self, checked: Checked, recording: Path | None = None, note: str = "") -> Event[Any]:
        """Record a measured check with its recording, which must be in the job's folder.

        A signal check settles which edge of the pulse leads, where the hook-up leaves it open.
        """
        file = None if recording is None else self.job.file_fields(f"recordings/{recording.name}")
        event = self.job.append(
            "measured", what=checked.what, figures=checked.figures, trusted=checked.trusted, reasons=list(checked.reasons),
            note=note, recording=file,
        )  # fmt: skip
        mark, wired = checked.figures.get("mark"), self.hookup
        if mark is not None and wired is not None and wired.pulse.edge == "auto":
            self.job.append("hookup", table=wiring.with_edge(wired, mark["edge"]).table)
        return event

    def check(
        self,
        what: str,
        recording: Path | None = None,
        *,
        stopped: bool = False,
        points: Sequence[str] = (),
        report: Report | None = None,
    ) -> tuple[Event[Any], Checked]:
        """Make one of the `CHECKS` on a recording, which is copied into the job.

        "repeatability" needs none: it holds the first two runs without masses against each other. "swap" is a recording
        with the sensors of two `points` in each other's place. Raises SessionError
        for a check that there is not, and for what cannot be measured: one made here then stays in the job, unnamed, and
        one that was brought in for it goes again, as it does where it is interrupted.
        """
        from stillshaft.solver import run_vectors
        from stillshaft.ui import job_checks

        if what not in CHECKS:
            raise SessionError(f'check "{shown(what)}": is none; there is {", ".join(CHECKS)}')
        if what == "repeatability":
            bare = [r for r in self.state.runs if r.counts and not r.what.masses and r.what.purpose != "slow roll"]
            if len(bare) < 2:
                raise SessionError("repeatability: needs two runs without masses; stop, start again, and take a second")
            found = job_checks.repeatability(bare[0], bare[1], run_vectors.repeatability(self.state))
            return self.record_check(found), found
        if recording is None:
            raise SessionError(f"{what}: needs a recording or a source")
        path = self.brought_in(recording)
        try:
            found = self._checked(what, path, stopped=stopped, points=points, report=report)
        except BaseException as error:
            if path.samefile(recording):
                raise
            _remove(path)
            if not isinstance(error, InputError) or str(path) not in str(error):
                raise
            raise SessionError(str(error).replace(str(path), str(recording))) from None  # the copy is gone
        return self.record_check(found, path), found

    def _checked(
        self, what: str, path: Path, *, stopped: bool, points: Sequence[str], report: Report | None
    ) -> Checked:
        """What a recording of the job says."""
        from stillshaft.ui import job_checks

        wired = self.wired_for(path)
        running = self.brief.rotor.speed_rpm or (self.state.runs[0].what.speed_rpm if self.state.runs else None)
        if what == "signals":
            return job_checks.signals(path, wired, running, report, stopped=stopped)
        if what == "spectrum":
            return job_checks.spectrum(path, wired, report, self.brief)
        if what == "sweep":
            return job_checks.sweep(path, wired, running, report)
        if what == "settling":
            return job_checks.settling(path, wired, report)
        if what == "swap":
            return job_checks.swap(path, wired, self.state, points, report)
        if what == "bump":
            return job_checks.bump(path, wired, running, report)
        levels = {v.point: v.amplitude for v in self.state.runs[0].what.vectors} if self.state.runs else {}
        return job_checks.background(path, wired, running, levels, report)

    # recordings

    def refuse_closed(self) -> None:
        """Raise SessionError where nothing more may be recorded."""
        if self.job.read_only:
            raise SessionError(f"{self.job.refused or f'{self.folder}: is open to read only'}; nothing can be recorded")
        if self.state.closed:
            raise SessionError(f"{self.folder}: the job is closed; reopen it first")

    def wired_for(self, path: Path) -> wiring.Hookup:
        """The job's hook-up, else the recording's own. Raises SessionError where the two are not the same."""
        from stillshaft.acquire import exchange

        wired = self.hookup
        with exchange.open_any(path, wired) as reader:
            table = reader.hookup
        if wired is None:
            if table is None:
                raise SessionError(f"{path}: carries no hook-up, and the job has none yet; set it first")
            return wiring.hookup_from(table)
        if table is not None and wiring.hookup_from(table).fingerprint != wired.fingerprint:
            raise SessionError(
                f"{path}: was recorded with another hook-up than the job's: sensors, places or pulse differ; give the "
                "recording of this job, or record what changed as a change of reference and set the new hook-up"
            )
        return wired

    def brought_in(self, recording: Path) -> Path:
        """The recording in the job's folder: copied there with its event log unless it is there already."""
        self.refuse_closed()
        room = room_in(self.folder, "recordings")
        if not recording.is_file():
            raise SessionError(f"{shown(recording, 400)}: there is no such recording")
        if recording.resolve().parent == room.resolve():
            return room / recording.name
        self.wired_for(recording)  # what does not belong to the job is not copied
        target = self.job.next_recording().with_suffix(recording.suffix)
        log = recording.with_suffix(".events.jsonl")
        try:
            if log.is_file():
                _copy(log, target.with_suffix(".events.jsonl"))
            _copy(recording, target)
        except BaseException:
            _remove(target)
            raise
        return target


def _remove(recording: Path) -> None:
    """Take a recording that was copied out again, with its event log."""
    for path in (recording, recording.with_suffix(".events.jsonl")):
        path.unlink(missing_ok=True)


def _copy(source: Path, target: Path) -> None:
    """Copy a file whole or not at all. Raises SessionError."""
    part = target.with_name(f"{target.name}.part")
    try:
        shutil.copyfile(source, part)
        os.replace(part, target)
    except OSError as error:
        raise SessionError(f"{source}: cannot be copied to {target}: {(error.strerror or '').lower()}") from None
    finally:
        part.unlink(missing_ok=True)
