"""A check that remembers earlier ones says the same as one in a process that has seen nothing."""

import subprocess
import sys
from pathlib import Path

ROOT = Path(__file__).parents[2]


def test_a_warm_check_says_what_a_cold_one_says():
    command = [sys.executable, "tools/re_checks.py", "--random", "30"]
    done = subprocess.run(command, cwd=ROOT, capture_output=True, text=True)
    assert done.returncode == 0, done.stdout + done.stderr
    assert ", 0 differ" in done.stdout
