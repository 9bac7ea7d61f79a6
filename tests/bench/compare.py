#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""Releases a kit of 44 pages beside a script of general tools, in one run, and prints the ratios.

usage: compare.py BUILD [FOLDER]   BUILD holds quirewright and bench_make_kit; FOLDER (default /dev/shm) has room for 4 GB.
Outputs lie in memory so that the disk does not decide. Speed is printed, never asserted.
"""
import os
import shutil
import subprocess
import sys
import tempfile
import threading
import time


def peak_of(pid, stop, into):
    """Largest resident memory of a process and its children, in MiB, sampled; the kernel's own high-water mark each."""
    while not stop.is_set():
        total = 0
        todo = [pid]
        while todo:
            one = todo.pop()
            try:
                with open(f"/proc/{one}/status") as status:
                    for line in status:
                        if line.startswith("VmHWM"):
                            total = max(total, int(line.split()[1]) / 1024)
                with open(f"/proc/{one}/task/{one}/children") as children:
                    todo += [int(c) for c in children.read().split()]
            except (OSError, ValueError):
                pass
        into[0] = max(into[0], total)
        time.sleep(0.005)


def run(command, cores=None):
    before = time.monotonic()
    prefix = ["taskset", "-c", cores] if cores else []
    child = subprocess.Popen(prefix + command, stdout=subprocess.DEVNULL)
    stop, peak = threading.Event(), [0]
    watch = threading.Thread(target=peak_of, args=(child.pid, stop, peak))
    watch.start()
    status = child.wait()
    seconds = time.monotonic() - before
    stop.set()
    watch.join()
    if status != 0:
        sys.exit(f"failed with {status}: {' '.join(command)}")
    return seconds, peak[0]


def main():
    build = os.path.abspath(sys.argv[1])
    here = os.path.dirname(os.path.abspath(__file__))
    work = tempfile.mkdtemp(prefix="bench-", dir=sys.argv[2] if len(sys.argv) > 2 else "/dev/shm")
    try:
        for faces in (44, 88):
            print(f"making a kit of {faces} pages", file=sys.stderr, flush=True)
            subprocess.check_call([f"{build}/bench_make_kit", f"{work}/kit{faces}", str(faces)])
        results = {}
        for name, faces, jobs, cores in (("44 pages, 1 job", 44, 1, "0"), ("44 pages, 2 jobs", 44, 2, None), ("88 pages, 1 job", 88, 1, "0")):
            out = f"{work}/out"
            results[name] = run([f"{build}/quirewright", "release", f"{work}/kit{faces}", "--out", out, "--jobs", str(jobs)], cores)
            shutil.rmtree(out)
        print("script of general tools, its steps:", file=sys.stderr)
        results["general tools"] = run(["sh", f"{here}/by_hand.sh", f"{work}/kit44", f"{work}/hand"], "0")
        reference = results["general tools"][0]
        print(f"{'':24}{'seconds':>9}{'ratio':>8}{'peak MiB':>10}")
        for name, (seconds, peak) in results.items():
            print(f"{name:24}{seconds:9.1f}{seconds / reference:8.2f}{peak:10.0f}")
    finally:
        shutil.rmtree(work)


if __name__ == "__main__":
    main()
