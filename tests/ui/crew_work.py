"""Work for other processes to do in tests: they find it here by name."""

import os
import signal
import time


def doubled(number):
    return {"doubled": 2 * number, "process": os.getpid()}


def deadly(number):
    """Dies as a process does that a damaged file kills."""
    if number == 3:
        os.kill(os.getpid(), signal.SIGKILL)
    time.sleep(0.05)
    return {"doubled": 2 * number}


def failing(number):
    raise RuntimeError(f"no {number}")


def threads(number):
    import numpy  # noqa: F401 - loads the library whose threads are counted
    from threadpoolctl import threadpool_info

    return {"threads": [pool["num_threads"] for pool in threadpool_info() if pool["user_api"] == "blas"]}


def endless(number):
    from stillshaft.ui.crew import go_on

    while True:
        go_on(0.0, "")
        time.sleep(0.01)
