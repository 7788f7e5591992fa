"""The brief as typed: entries set one by one, and asked for in a dialogue that loses nothing."""

import pytest
from stillshaft.acquire import simulated
from stillshaft.solver.brief import Brief
from stillshaft.solver.folder import RecordError
from stillshaft.ui import brief_text, dialogue
from stillshaft.ui.session import Session


@pytest.fixture
def job(tmp_path):
    with Session.create(tmp_path / "job", "fan", "Kim", simulated.demo_hookup()) as opened:
        yield opened


def talk(job, *answers):
    """Answer the questions in turn; then the input ends. Returns what was asked, what was told, and how it went."""
    asked, told, left = [], [], list(answers)

    def read(prompt):
        asked.append(prompt)
        if not left:
            raise EOFError
        return left.pop(0)

    return asked, told, dialogue.ask(job, read, told.append)


def put(job, *texts):
    for text in texts:
        job.describe(brief_text.patch_from(text, job.brief))


@pytest.mark.parametrize(
    ("text", "message"),
    [
        ("rotor.mass", "write key = value"),
        ("rotor.colour = red", '"rotor.colour": is no entry of the brief; rotor has bearing_span'),
        ("colour = red", "is no entry of the brief; there is abort"),
        ("rotor.kind = flying", "must be between bearings or overhung, not flying"),
        ("rotor.speed_rpm = fast", "fast"),
        ("starts.allowed = 2.5", '"2.5" is no whole number'),
        ("starts.minutes_between = some", '"some" is no number'),
        ("drive.variable_speed = perhaps", "answer yes or no"),
        ("planes.disc.colour = red", "a plane has blocked"),
        ("stock = many", "write mass x count"),
        ("abort.roof = 18", "write amplitude and unit"),
        ("neighbours.pump = soon", "neighbours.pump"),
        ("neighbours.pump = 1465 rpm within much", "neighbours.pump, within"),
    ],
)
def test_entries_that_cannot_be_are_refused_in_one_line(text, message):
    with pytest.raises(ValueError, match=message) as refused:
        brief_text.patch_from(text, Brief())
    assert "\n" not in str(refused.value)


def test_entries_are_set_and_read_back(job):
    texts = [
        "machine.name = fan 3", "rotor.kind = over", "rotor.mass = 80 kg", "rotor.speed_rpm = 24.5 Hz",
        "drive.variable_speed = yes", "planes.disc.radius = 310 mm", "planes.disc.positions = 12",
        "planes.disc.blocked = 3, 7", "planes.rim.positions = 0, 90, 180", "stock = 5 g x 10, 10 g x 4",
        "abort.fan end = 18 mm/s rms", "limits.fan end = 4.5 mm/s rms", "conditions.load = 5 %",
        "interview.began = slowly", "repeatability = 3 % 3 deg", "starts.allowed = 6",
    ]  # fmt: skip
    put(job, *texts)
    brief = job.brief
    assert brief.rotor.kind == "overhung"
    assert brief.rotor.speed_rpm == pytest.approx(1470.0)
    assert brief.drive.variable_speed is True
    assert [p.positions for p in brief.planes] == [12, [0.0, 90.0, 180.0]]
    assert brief.planes[0].blocked == [3, 7]
    assert [(s.mass, s.count) for s in brief.stock] == [("5 g", 10), ("10 g", 4)]
    assert (brief.abort[0].point, brief.abort[0].amplitude) == ("fan end", 18.0)
    assert (brief.conditions[0].tolerance, brief.conditions[0].unit) == (5.0, "%")
    # what is shown can be typed again and says the same
    again = Brief()
    import msgspec
    from stillshaft.solver.brief import brief_from, merged

    table = {}
    for key, value in brief_text.lines(brief):
        table = merged(table, brief_text.patch_from(f"{key} = {value}", again))
        again = brief_from(table)
    assert msgspec.to_builtins(again) == msgspec.to_builtins(brief)
    put(job, "abort.fan end = nothing", "planes.rim = nothing", "rotor.mass =")
    assert job.brief.abort == []
    assert [p.name for p in job.brief.planes] == ["disc"]
    assert job.brief.rotor.mass is None


def test_neighbours_are_named_with_their_speeds_and_taken_out(job):
    put(job, "neighbours.pump 2 = 1465 within 5", "neighbours.fan = 16.5 Hz")
    lines = dict(brief_text.lines(job.brief))
    assert lines["neighbours.pump 2"] == "1465 rpm within 5 rpm"
    assert lines["neighbours.fan"] == "990 rpm"
    put(job, "neighbours.fan = nothing")
    assert [n.name for n in job.brief.neighbours] == ["pump 2"]
    asked = {q.key: q for q in dialogue.questions(job)}["neighbours"]
    seen, told, _ = talk_one(job, asked, "pump 2 = 1466, compressor = 740 rpm within 3 rpm")
    assert "[pump 2 = 1465 rpm within 5 rpm]" in seen[0]
    assert [(n.name, n.speed_rpm, n.within_rpm) for n in job.brief.neighbours] == [
        ("pump 2", 1466.0, None),
        ("compressor", 740.0, 3.0),
    ]
    assert talk_one(job, asked, "compressor", "nothing")[1][0].startswith('"compressor": write name and speed')
    assert job.brief.neighbours == []


def talk_one(job, question, *answers):
    """One question alone."""
    asked, told, left = [], [], list(answers)

    def read(prompt):
        asked.append(prompt)
        return left.pop(0)

    return asked, told, dialogue._asked(job, question, read, told.append)


@pytest.mark.parametrize(
    ("patch", "match"),
    [
        ({"starts": {"allowed": -1}}, r"starts\.allowed: -1 must be 0 or more"),
        ({"stock": [{"mass": "5 g", "count": 0}]}, r"stock 1\.count: 0 must be 1 or more"),
        ({"conditions": [{"name": "load", "tolerance": -5.0}]}, r"conditions\.load, tolerance: -5 must be 0 or more"),
        ({"drive": {"motor_speed_rpm": 0.0}}, r"drive\.motor_speed_rpm: 0 must be 1 or more"),
        ({"neighbours": [{"name": "pump", "speed_rpm": 0.0}]}, r"neighbours 1\.speed_rpm: 0 must be above 0"),
        (
            {"neighbours": [{"name": "p", "speed_rpm": 9.0, "within_rpm": -1.0}]},
            r"neighbours 1\.within_rpm: -1 must be",
        ),
        (
            {"drive": {"kind": "belt", "rotor_pulley": "300 mm", "motor_pulley": "200 mm", "belt_length": "700 mm"}},
            r"drive\.belt_length: 700 mm does not reach round half of each pulley, 785 mm",
        ),
    ],
)
def test_speeds_and_belts_that_cannot_be_are_refused(job, patch, match):
    with pytest.raises(RecordError, match=match):
        job.describe(patch)


def test_an_answer_that_is_none_is_asked_again_and_an_empty_one_keeps(job):
    put(job, "machine.name = fan 3")
    asked, told, went = talk(job, "", "?", "fan", "", "", "heavy", "80 kg")
    assert asked[0].endswith("[fan 3] ")
    assert job.brief.machine.name == "fan 3"
    assert job.brief.machine.type == "fan"
    assert job.brief.rotor.mass == "80 kg"
    assert [q for q in asked if q.startswith("What does the rotor weigh?")] == [asked[5], asked[6]]
    assert "chooses the checks" in told[0]
    assert '"heavy" is not a number' in told[1]
    assert told[-1] == "the input ended in the middle: 2 answers are kept, the rest is as it was"
    assert went == dialogue.Asked(2, False)


def test_only_questions_that_fit_are_asked(job):
    def keys():
        return [q.key for q in dialogue.questions(job)]

    assert "drive.belt_length" not in keys()
    assert "planes" in keys()
    assert "rotor.bearing_span" not in keys()
    put(job, "drive.kind = belt", "drive.variable_speed = yes", "rotor.kind = overhung", "starts.allowed = 4")
    put(job, "planes.disc.radius = 310 mm")
    found = keys()
    for key in ("drive.belt_length", "conditions.setpoint", "rotor.centre_of_mass", "starts.minutes_between"):
        assert key in found
    assert "planes" not in found
    assert "planes.disc.positions" in found
    assert "planes.disc.z" not in found  # one plane needs no place along the shaft
    assert [k for k in found if k.startswith("abort.")] == ["abort.drive end horizontal", "abort.far end horizontal"]


def test_a_dialogue_to_its_end_fills_the_brief(job, tmp_path):
    photo = tmp_path / "fan.jpg"
    photo.write_bytes(b"jpg")
    answers = {
        "Which machine": "fan 3", "What kind": "fan", "Is the rotor": "between", "What does the rotor weigh": "74 kg",
        "At which speed is it": "1480", "Which planes": "drive side, far side", "At which radius": "310 mm",
        "Which balance grade": "G6.3", "At which vibration": "25 mm/s rms", "Photo": str(photo),
    }  # fmt: skip
    photos = iter([str(tmp_path / "none.jpg"), str(photo), ""])

    def read(prompt):
        if prompt.startswith("Photo"):
            return next(photos)
        return next((a for q, a in answers.items() if prompt.startswith(q)), "")

    told = []
    went = dialogue.ask(job, read, told.append)
    assert went.ended
    assert told == [f"{tmp_path / 'none.jpg'}: there is no such photo"]
    assert [(p.name, p.radius) for p in job.brief.planes] == [("drive side", "310 mm"), ("far side", "310 mm")]
    assert [x.amplitude for x in job.brief.abort] == [25.0, 25.0]
    assert job.state.photos[0].what.file.path == "photos/fan.jpg"
    from stillshaft.solver.next_steps import missing_in_brief

    assert missing_in_brief(job.brief) == ()


def test_nonsense_without_end_comes_to_an_end(job):
    told = []
    went = dialogue.ask(job, lambda prompt: "=" if "Is the rotor" in prompt else "", told.append)
    assert not went.ended
    assert len(told) == 21


def test_an_answer_of_the_interview_is_one_of_the_words_or_said_not_to_be_read(job):
    question = dialogue.Question("interview.began", "How did it begin?", "why")
    told = []
    assert dialogue._asked(job, question, lambda _prompt: "sudd", told.append)
    assert (job.brief.interview["began"], told) == ("suddenly", [])
    assert dialogue._asked(job, question, lambda _prompt: "bit by bit", told.append)
    assert job.brief.interview["began"] == "bit by bit"
    assert "the causes are ranked only by: slowly, suddenly" in told[0]
