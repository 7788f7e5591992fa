"""A scheduler and one worker on this machine: prints the address, and ends with its standard input."""

import sys

if __name__ == "__main__":
    from distributed import LocalCluster

    with LocalCluster(n_workers=1, threads_per_worker=2, host="127.0.0.1", dashboard_address=None) as cluster:
        print(cluster.scheduler_address, flush=True)  # noqa: T201
        sys.stdin.read()
