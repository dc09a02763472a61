"""A reckoner in a process of its own: how long it takes and the most memory it needs.

The peak is read from the kernel's own count (`VmHWM` of Linux): the resource usage of a child begins at its parent's size.
"""

from __future__ import annotations

import json
import subprocess
import sys
import textwrap
from pathlib import Path
from typing import Any


def peak() -> float:
    """The most memory that this process has held [MB]."""
    told = Path("/proc/self/status").read_text(encoding="utf-8").splitlines()
    line = next(each for each in told if each.startswith("VmHWM"))
    return int(line.split()[1]) / 1024


def fresh(script: str) -> Any:
    """What the script prints as JSON, run in a new process."""
    told = subprocess.run([sys.executable, "-W", "ignore", "-c", textwrap.dedent(script)], check=True, capture_output=True, text=True)
    return json.loads(told.stdout)
