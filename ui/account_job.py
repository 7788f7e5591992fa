"""What the verbs of a job print for people. Every text of the record is cleaned of what a terminal would act on."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING, Any

from rich.markup import escape
from rich.table import Table
from stillshaft.dsp.units import shown
from stillshaft.ui import brief_text
from stillshaft.ui.account import new_console, with_interval
from stillshaft.ui.job_masses import told

if TYPE_CHECKING:
    from stillshaft.solver.brief import Brief
    from stillshaft.solver.cautions import Caution
    from stillshaft.solver.guidance import Advice
    from stillshaft.solver.inspection import Check
    from stillshaft.solver.job import Entry
    from stillshaft.solver.pieces import Plan
    from stillshaft.solver.state import JobState
    from stillshaft.ui.job_checks import Checked
    from stillshaft.ui.rehearsal import Rehearsal
    from stillshaft.ui.session import RunTaken, Session

_LINES_OF_HISTORY = 15


def clean(text: object, most: int = 300) -> str:
    """A text of the record for the console: one line, nothing unprintable, no markup."""
    return escape(shown(text, most))


def print_job(session: Session, *, whole_history: bool) -> None:
    """The job at a glance: machine, runs, what is on the rotor, plans, verdict, history, problems."""
    console, state = new_console(), session.state
    closed = ", closed" if state.closed else ""
    console.print(
        f"{clean(state.name)}: begun {clean(state.started_at[:16])}, {len(session.job.events)} entries{closed}",
        soft_wrap=True,
    )
    machine = state.brief.machine
    if known := [clean(t) for t in (machine.name, machine.type, machine.place) if t]:
        console.print(", ".join(known), soft_wrap=True)
    _print_runs(state)
    _print_masses(session)
    if state.plans:
        plan = state.plans[-1]
        masses = "; ".join(
            f"{clean(c.get('plane'))} {c.get('mass', 0.0):.2f} {clean(c.get('unit'))} at {c.get('angle_deg', 0.0):.0f}°"
            for c in plan.what.result.get("corrections", [])
        )
        console.print(f"last plan (entry {plan.id}), all trial masses off: {masses}", soft_wrap=True)
    if state.verdicts:
        verdict = state.verdicts[-1]
        by = f", accepted by {clean(verdict.what.accepted_by)}" if verdict.what.accepted_by else ""
        by += f", refused by {clean(verdict.what.refused_by)}" if verdict.what.refused_by else ""
        console.print(
            f"verdict (entry {verdict.id}), {clean(verdict.what.basis)}: {verdict.what.verdict}{by}", soft_wrap=True
        )
    print_history(session.history, whole=whole_history)
    for problem in session.problems:
        console.print(f"look at this: {clean(problem, 400)}", soft_wrap=True)


def _print_runs(state: JobState) -> None:
    if not state.runs:
        return
    console = new_console()
    points = list(dict.fromkeys(v.point for r in state.runs for v in r.what.vectors))
    table = Table(title=f"runs, {clean(state.runs[0].what.unit)} at °, ± is the 95 % interval of the run only")
    for heading in ("entry", "run", "r/min", "on the rotor", *points, "counts"):
        table.add_column(clean(heading), justify="right" if heading in ("entry", "r/min") else "left")
    for run in state.runs:
        by_point = {v.point: v for v in run.what.vectors}
        cells = []
        for point in points:
            v = by_point.get(point)
            phase = "" if v is None or v.phase_deg is None else f" at {with_interval(v.phase_deg, v.phase_ci95_deg)}"
            cells.append("-" if v is None else f"{with_interval(v.amplitude, v.amplitude_ci95)}{phase}")
        masses = "; ".join(clean(told(p)) for p in run.what.masses) or "nothing"
        table.add_row(
            str(run.id),
            clean(run.what.name),
            f"{run.what.speed_rpm:.0f}",
            masses,
            *cells,
            "yes" if run.counts else "no",
        )
    console.print(table)
    for run in state.runs:
        for reason in () if run.counts else run.reasons:
            console.print(f"{clean(run.what.name)} does not count: {clean(reason)}", soft_wrap=True)


def _print_masses(session: Session) -> None:
    console, purposes = new_console(), session.purposes()
    if not session.state.on_rotor:
        console.print("nothing is on the rotor beyond its initial state")
    for on in session.state.on_rotor:
        purpose = purposes.get(on.of)
        console.print(
            f"on the rotor, {on.of}.{on.number}: {clean(told(on.piece))}{f' ({clean(purpose)})' if purpose else ''}",
            soft_wrap=True,
        )


def print_history(history: Sequence[Entry], *, whole: bool) -> None:
    """The entries, the last of them unless the whole is wanted; withdrawn ones say by which entry."""
    console = new_console()
    rows = list(history) if whole else list(history)[-_LINES_OF_HISTORY:]
    if len(rows) < len(history):
        console.print(f"history, the last {len(rows)} of {len(history)} entries; all with --history")
    for entry in rows:
        if entry.event is None:
            console.print(f"line {entry.line}: {clean(entry.problem)}", soft_wrap=True)
            continue
        event = entry.event
        gone = "" if entry.withdrawn_by is None else f", withdrawn by {entry.withdrawn_by}"
        doubt = "" if entry.problem is None else f" ({clean(entry.problem)})"
        console.print(
            f"{event.id:>4} {clean(event.at[:16])} {clean(event.by) or '-'}: {clean(event.kind)} "
            f"{clean(in_words(event), 160)}{gone}{doubt}",
            soft_wrap=True,
        )


def in_words(event: Any) -> str:
    """What an entry says, in short."""
    what = event.what
    match event.kind:
        case "run":
            return f'"{what.name}", {what.speed_rpm:.0f} r/min'
        case "mass":
            pieces = "; ".join(told(p) for p in what.pieces)
            return f"{what.act} {pieces or f'of entry {what.of}'}"
        case "brief":
            return ", ".join(_keys(what.patch))
        case "check":
            return f"{what.item}: {what.outcome} {what.note}"
        case "plan":
            return f"{what.method}, from entries {', '.join(map(str, what.inputs))}"
        case "withdrawn":
            return f"{what.of}: {what.why}"
        case "use":
            return f"{what.of} {'counts' if what.use else 'is left out'}: {what.why}"
        case "caution":
            return f"{len(what.texts)} acknowledged by {what.who}"
    for name in ("name", "what", "text", "verdict", "note", "why", "temperature"):
        if text := getattr(what, name, None):
            return str(text)
    return ""


def _keys(patch: dict[str, Any], before: str = "") -> list[str]:
    found = []
    for key, value in patch.items():
        found += _keys(value, f"{before}{key}.") if isinstance(value, dict) else [f"{before}{key}"]
    return found


def print_brief(brief: Brief) -> None:
    """What was said, in lines that `--set` takes."""
    console = new_console()
    said = brief_text.lines(brief)
    for key, value in said:
        console.print(f"{clean(key)} = {clean(value)}", soft_wrap=True)
    if not said:
        console.print('nothing was said yet; write for example --set "rotor.mass = 80 kg"')


def print_checks(checks: Sequence[Check], state: JobState) -> None:
    """The checks that fit this machine, with how to do them and what came of them."""
    console = new_console()
    table = Table(title="checks before balancing", show_lines=True)
    for heading in ("check", "how", "fine means", "outcome"):
        table.add_column(heading)
    before: dict[str, list[str]] = {}  # cautions, with the checks that they belong to
    for check in checks:
        event = state.checks.get(check.key)
        outcome = "-" if event is None else f"{event.what.outcome} {event.what.note}"
        table.add_row(clean(check.key), clean(check.how, 800), clean(check.fine), clean(outcome))
        for text in check.cautions:
            before.setdefault(text, []).append(check.key)
    console.print(table)
    for text, keys in before.items():
        console.print(f"before {clean(', '.join(keys))}: {clean(text, 500)}", soft_wrap=True)
    console.print(
        "record what came of one with: stillshaft job inspect DIR CHECK fine|needs-attention|not-done --note TEXT",
        soft_wrap=True,
    )


def print_checked(checked: Checked) -> None:
    """What a measured check found."""
    console = new_console()
    for line in checked.lines:
        console.print(clean(line, 400), soft_wrap=True)
    for reason in checked.reasons:
        console.print(f"do not trust: {clean(reason)}", soft_wrap=True)


def print_run(taken: RunTaken) -> None:
    """A run: its vectors, what speaks against it, and what changed against the run before."""
    from stillshaft.ui import account, job_checks

    console, run = new_console(), taken.run
    account.print_vectors(shown(run.what.name), taken.measured)
    for finding in (*taken.judgement.refusals, *taken.judgement.cautions):
        console.print(f"{clean(finding.sentence)}: {clean(finding.what_to_do)}", soft_wrap=True)
    if taken.turn is not None:
        console.print(clean(taken.turn.sentence), soft_wrap=True)
    if taken.against is not None:
        console.print(f'change against "{clean(taken.against)}":')
        for change in taken.changes:
            console.print(f"  {clean(job_checks.change_told(change))}", soft_wrap=True)
    masses = "; ".join(clean(told(p)) for p in run.what.masses) or "nothing beyond the initial state"
    console.print(f"on the rotor: {masses}", soft_wrap=True)
    counts = "counts" if run.counts else f"does not count; `stillshaft job use DIR {run.id} --why …` lets it"
    console.print(f'recorded as entry {run.id}, "{clean(run.what.name)}": {counts}', soft_wrap=True)


def print_pieces(plan: Plan) -> None:
    """Pieces chosen from the stock."""
    from stillshaft.solver.pieces import number_of

    console = new_console()
    table = Table(
        title="pieces, with those of the last run left on" if plan.left_on else "pieces, all trial masses off"
    )
    for heading in ("plane", "position", "angle °", "mass"):
        table.add_column(heading, justify="left" if heading == "plane" else "right")
    for p in plan.chosen.pieces:
        plane = plan.planes[p.plane]
        table.add_row(clean(plane.name), str(number_of(plane, p) or "-"), f"{p.angle_deg:.1f}", f"{p.mass:.2f}")
    console.print(table)
    console.print(f"largest residual {plan.chosen.largest:.3g} {clean(plan.unit)}")
    for warning in (*plan.warnings, *plan.reasons):
        console.print(clean(warning), soft_wrap=True)


def cautions_told(cautions: Sequence[Caution]) -> list[str]:
    """The cautions as lines; those that must be acknowledged are marked."""
    return [f"[{'x' if c.acknowledge else ' '}] {shown(c.text, 500)}" for c in cautions]


def print_next(advice: Advice, folder: object) -> None:
    """One sentence, why, and the command."""
    console = new_console()
    console.print(f"next: {clean(advice.sentence, 500)}", soft_wrap=True)
    if advice.why:
        console.print(f"because {clean(advice.why, 500)}", soft_wrap=True)
    if command := command_of(advice, folder):
        console.print(f"  {clean(command, 500)}", soft_wrap=True)


def command_of(advice: Advice, folder: object) -> str:
    """The command with the job's own folder in it."""
    return str(advice.command or "").replace("DIR", str(folder))


def print_story(outcome: Rehearsal) -> None:
    """How a rehearsal went: what the guidance advised, one act after the other."""
    console = new_console()
    console.rule("what was advised, and done" if outcome.stopped is None else "what was advised", align="left")
    for number, (_, sentence) in enumerate(outcome.advised, start=1):
        console.print(f"{number:>3} {clean(sentence, 400)}", soft_wrap=True)
    if outcome.stopped is not None:
        console.print(f"ended before the goal: {clean(outcome.stopped, 400)}", soft_wrap=True)
