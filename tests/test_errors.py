"""Every error class of the project is an InputError: its message is one line of plain letters, whatever it quotes."""

import ast
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[1]
PLAIN = {"InputError": "dsp/units.py", "BrokenOff": "ui/desktop/work_row.py"}  # the base, and one that the person wants


@pytest.mark.parametrize("package", ["acquire", "dsp", "solver", "ui"])
def test_errors_have_the_common_base(package):
    found = 0
    for path in sorted((ROOT / package).rglob("*.py")):
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            if isinstance(node, ast.ClassDef):
                bases = {base.id for base in node.bases if isinstance(base, ast.Name)}
                found += "InputError" in bases
                wrong = bases & {"ValueError", "OSError", "RuntimeError", "TypeError"}
                assert not wrong or node.name in PLAIN, f"{path}:{node.lineno}: {node.name} must be an InputError"
    assert found
