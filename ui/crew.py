"""Processes that do one thing to many files: on this machine, or on a Dask cluster. Arguments are plain, answers JSON.

A process that dies takes down only what it was doing: whatever was under way is done again by itself, and what kills its
process again is named.
"""

from __future__ import annotations

import contextlib
import importlib
import json
import multiprocessing
import os
import signal
import threading
from collections import deque
from collections.abc import Callable, Iterator, Sequence
from concurrent.futures import FIRST_COMPLETED, CancelledError, Future, ProcessPoolExecutor, ThreadPoolExecutor, wait
from concurrent.futures.process import BrokenProcessPool
from multiprocessing.connection import wait as wait_for
from multiprocessing.synchronize import Event
from types import TracebackType
from typing import Any

from stillshaft.dsp.units import InputError, shown

_BEAT_S = 0.2
_ANSWER_S = 10.0  # of a scheduler
_MOST_PROCESSES = 61  # of a pool on one of the systems
_EXTRA = "--scheduler needs {module}: pip install 'stillshaft[cluster]'"

Plain = str | int | float | None
Work = Callable[..., dict[str, Any]]

_stop: Event | None = None  # in a working process: set when the work is to end


class CrewError(InputError):
    """Processes that cannot be had: the message says why and what to do."""


class _EndedError(Exception):
    """The work was ended from outside."""


def go_on(share: float, text: str) -> None:
    """To be called now and then in a working process: ends the work there when it is to end."""
    if _stop is not None and _stop.is_set():
        raise _EndedError


def _begin(stop: Event) -> None:
    """Make a process ready to work: one thread, the program alone hears Ctrl-C, and its end is this one's."""
    global _stop
    _stop = stop
    os.environ["OPENBLAS_NUM_THREADS"] = "1"  # libraries are loaded with the work
    signal.signal(signal.SIGINT, signal.SIG_IGN)
    parent = multiprocessing.parent_process()
    if parent is not None:
        sentinel = parent.sentinel
        threading.Thread(target=lambda: (wait_for([sentinel]), os._exit(1)), name="parent watch", daemon=True).start()


@contextlib.contextmanager
def _deaf() -> Iterator[None]:
    """Processes that are started here do not hear Ctrl-C, not even before they are ready; this one hears it after."""
    if not hasattr(signal, "pthread_sigmask"):
        yield
        return
    before = signal.pthread_sigmask(signal.SIG_BLOCK, {signal.SIGINT})
    try:
        yield
    finally:
        signal.pthread_sigmask(signal.SIG_SETMASK, before)


def told(work: Work, arguments: tuple[Plain, ...]) -> str:
    """The answer of a piece of work as JSON, worked out on one thread. Runs in a working process."""
    from threadpoolctl import threadpool_limits

    with threadpool_limits(1, user_api="blas"):  # those that are loaded already
        return _plainly(work, arguments)


def _plainly(work: Work, arguments: tuple[Plain, ...]) -> str:
    return json.dumps(work(*arguments), allow_nan=False)


class ThreadCrew:
    """Threads of this process, for work that waits for the disk. Used as a context manager."""

    def __init__(self, threads: int) -> None:
        self.most = 2 * threads
        self._pool = ThreadPoolExecutor(threads, "files")

    def submit(self, work: Work, arguments: tuple[Plain, ...]) -> Future[str]:
        """Give out a piece of work."""
        return self._pool.submit(_plainly, work, arguments)

    def let_go(self) -> None:
        """Take back what was not begun, and wait for the rest."""
        self._pool.shutdown(wait=True, cancel_futures=True)

    def __enter__(self) -> ThreadCrew:
        return self

    def __exit__(self, kind: type[BaseException] | None, error: BaseException | None, at: TracebackType | None) -> None:
        self.let_go()


class LocalCrew:
    """So many processes of this machine. Used as a context manager; leaving it ends what is under way.

    They are started with the first work.
    """

    def __init__(self, processes: int) -> None:
        self.processes = max(1, min(processes, _MOST_PROCESSES))
        self.most = 2 * self.processes if self.processes > 1 else 1  # given out at once
        self._context = multiprocessing.get_context("spawn")
        self._stop = self._context.Event()
        self._pool: ProcessPoolExecutor | None = None

    def readers(self) -> ThreadCrew:
        """Who looks at files: no process is worth starting for it."""
        return ThreadCrew(self.processes)

    def submit(self, work: Work, arguments: tuple[Plain, ...]) -> Future[str]:
        """Give out a piece of work. Raises BrokenProcessPool where a process died."""
        with _deaf():
            if self._pool is None:
                self._pool = ProcessPoolExecutor(self.processes, self._context, _begin, (self._stop,))
            return self._pool.submit(told, work, arguments)

    def let_go(self) -> None:
        """End the processes once they are done; the next piece of work starts new ones."""
        if self._pool is not None:
            self._pool.shutdown(wait=True, cancel_futures=True)
            self._pool = None

    def __enter__(self) -> LocalCrew:
        return self

    def __exit__(self, kind: type[BaseException] | None, error: BaseException | None, at: TracebackType | None) -> None:
        self._stop.set()
        self.let_go()


class ClusterCrew:
    """The workers of a Dask scheduler. Used as a context manager; leaving it takes back what was not begun."""

    most = 1000

    def __init__(self, address: str) -> None:
        """Raises CrewError where dask is not installed or the scheduler does not answer."""
        try:
            distributed: Any = importlib.import_module("distributed")
        except ModuleNotFoundError as error:
            raise CrewError(_EXTRA.format(module=error.name)) from None
        try:
            self._client = distributed.Client(address, timeout=_ANSWER_S, set_as_default=False)
        except (OSError, ValueError, TimeoutError) as error:
            raise CrewError(
                f"{shown(address)}: no Dask scheduler answers ({shown(error, 120)}); give its address, such as "
                "tcp://192.0.2.1:8786"
            ) from None
        self._executor = self._client.get_executor(pure=False)

    def readers(self) -> contextlib.nullcontext[ClusterCrew]:
        """Who looks at files: the workers, which are near them."""
        return contextlib.nullcontext(self)

    def submit(self, work: Work, arguments: tuple[Plain, ...]) -> Future[str]:
        """Give out a piece of work."""
        future: Future[str] = self._executor.submit(told, work, arguments)
        return future

    def let_go(self) -> None:
        """Nothing to do: a cluster replaces its own workers."""

    def __enter__(self) -> ClusterCrew:
        return self

    def __exit__(self, kind: type[BaseException] | None, error: BaseException | None, at: TracebackType | None) -> None:
        self._executor.shutdown(wait=False)
        self._client.close(timeout=_ANSWER_S)


def gathered(
    crew: LocalCrew | ThreadCrew | ClusterCrew,
    work: Work,
    arguments: Sequence[tuple[Plain, ...]],
    beat: Callable[[], None],
) -> Iterator[tuple[int, dict[str, Any]]]:
    """Answers as they come, each with the number of its arguments; `problem` in one that could not be had.

    `beat` is called several times a second; what it raises ends the work when the crew is left.
    """
    waiting = deque(range(len(arguments)))
    under_way: dict[Future[str], int] = {}
    while waiting or under_way:
        died: list[int] = []
        try:
            while waiting and len(under_way) < crew.most:
                under_way[crew.submit(work, arguments[waiting[0]])] = waiting[0]
                waiting.popleft()
        except BrokenProcessPool:
            died.append(waiting.popleft())
        done = wait(under_way, timeout=_BEAT_S, return_when=FIRST_COMPLETED)[0] if under_way else set()
        beat()
        for future in done:
            number = under_way.pop(future)
            answer = _answer(future)
            if answer is None:
                died.append(number)
            else:
                yield number, answer
        if died:
            suspects = sorted([*died, *under_way.values()])
            under_way.clear()
            crew.let_go()
            if crew.most == 1:
                died_of = "the process that measured it died: the file may be damaged, or memory is short"
                yield suspects[0], {"problem": died_of}
                continue
            with LocalCrew(1) as alone:
                for at, answer in gathered(alone, work, [arguments[n] for n in suspects], beat):
                    yield suspects[at], answer


def _answer(future: Future[str]) -> dict[str, Any] | None:
    """What came back; None where the process died."""
    try:
        answer = json.loads(future.result())
    except BrokenProcessPool:
        return None
    except (CancelledError, Exception) as error:  # noqa: BLE001 - whatever a process raises is said of its recording
        return {
            "problem": f"could not be measured, a fault of the program: {type(error).__name__}: {shown(error, 200)}"
        }
    return answer if isinstance(answer, dict) else {"problem": "the process gave no answer"}
