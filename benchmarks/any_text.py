"""Feeds trimlang a million inputs that no careful hand wrote.

    python -m benchmarks.any_text guided --inputs 600000 --seconds 1800 --corpus /tmp/corpus
    python -m benchmarks.any_text grown --inputs 400000 --seed 1
    python -m benchmarks.any_text near-limits --inputs 400000 --seed 1

``guided`` is led by the code it reaches (needs the extra ``fuzz``); ``grown``
writes jobs from the grammar and slips into good files; ``near-limits`` moves the
numbers of good files to where a rule turns, and writes logs for them.
Each input is read, checked and, where it is a job, planned; one in ``--print``
of those is printed as HTML.  ``near-limits`` does one thing more with each job, all in turn
(every format, tidy, mark, convert, compare, the editor), and gives every hundredth to a command
as a file.  A traceback, two seconds of CPU, or 512 MiB stop the run (``near-limits`` goes on),
and the input is left in ``any_text-found`` in the temporary folder.
"""

from __future__ import annotations

import argparse
import gc
import resource
import sys
import traceback
from pathlib import Path
from random import Random
from tempfile import TemporaryDirectory, gettempdir
from time import monotonic

FOUND = Path(gettempdir()) / "any_text-found"
MOST_MEGABYTES = 512
COMMAND_EACH = 100
FAST = Path("/dev/shm")  # noqa: S108 - where there is one, no disk wears out


def main() -> int:
    """Run one of the three; return 1 where a promise was broken."""
    parser = argparse.ArgumentParser(description=__doc__.partition("\n")[0])
    parser.add_argument("how", choices=("guided", "grown", "near-limits"))
    parser.add_argument("--inputs", type=int, default=10_000)
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--seconds", type=int, default=3600, help="stop then at the latest")
    parser.add_argument("--print", type=int, default=100, dest="print_each", metavar="N")
    parser.add_argument("--corpus", type=Path, help="where guided keeps what reached new code")
    options = parser.parse_args()
    if options.how == "near-limits":
        return near_limits(options)
    return guided(options) if options.how == "guided" else grown(options)


def fed(data: bytes, tally: object, print_each: int) -> None:
    """Feed an input; one that breaks a promise is left in a file."""
    from tests.trust.feeding import feed

    try:
        feed(data, tally, print_each=print_each)
    except BaseException:
        FOUND.write_bytes(data)
        print(tally, file=sys.stderr)
        raise


def grown(options: argparse.Namespace) -> int:
    """Feed grown inputs."""
    from tests.trust.feeding import Tally
    from tests.trust.growing import any_file, grammar_line, slipped

    random, tally = Random(options.seed), Tally()
    ends = monotonic() + options.seconds
    while tally.fed < options.inputs and monotonic() < ends:
        if random.random() < 0.4:
            text = "\n".join(grammar_line(random) for _ in range(random.randint(1, 4)))
        else:
            text = slipped(any_file(random), random)
        data = text.encode("utf-8", "surrogatepass")
        fed(data, tally, options.print_each)
        if tally.fed % 10_000 == 0:
            print(tally, flush=True)
    return said(tally)


def near_limits(options: argparse.Namespace) -> int:
    """Feed jobs whose numbers lie near limits; go on after what breaks a promise."""
    from tests.trust.in_turn import Feeder
    from tests.trust.near_limits import any_near_limits

    # as a command has it (trimlang/cli): the lines that are kept are not looked through so often
    gc.set_threshold(300_000, 20, 20)
    random, broken = Random(options.seed), 0
    feeder = Feeder(random)
    ends = monotonic() + options.seconds
    while feeder.tally.fed < options.inputs and monotonic() < ends:
        text, log = any_near_limits(random)
        try:
            feeder.feed(text, log)
            if feeder.tally.fed % COMMAND_EACH == 0:
                with TemporaryDirectory(dir=FAST if FAST.is_dir() else None) as folder:
                    feeder.command(text, log, Path(folder))
        except Exception:  # noqa: BLE001 - whatever it is, it is a find
            broken += 1
            left = FOUND.with_name(f"{FOUND.name}-{options.seed}-{feeder.tally.fed}")
            left.write_text(f"{text}\n# site log:\n{log}\n# {traceback.format_exc()}")
            print(f"{left}: {traceback.format_exc().splitlines()[-1][:300]}", flush=True)
        if feeder.tally.fed % 10_000 == 0:
            print(f"{feeder.tally}; {broken} broken", flush=True)
    print(f"{broken} broke a promise")
    return max(said(feeder.tally), int(broken > 0))


def guided(options: argparse.Namespace) -> int:
    """Feed inputs led by coverage."""
    import atheris

    with atheris.instrument_imports(include=["trimlang"]):
        from tests.trust.feeding import Tally
    from tests.trust.growing import any_file, bad_files, good_files, grammar_line, slipped

    tally = Tally()

    def one(data: bytes) -> None:
        fed(data, tally, options.print_each)
        if tally.fed % 20_000 == 0:
            print(tally, flush=True)
        if tally.fed >= options.inputs:
            said(tally)

    def changed(data: bytes, most: int, seed: int) -> bytes:
        random = Random(seed)
        if random.random() < 0.25:
            return bytes(atheris.Mutate(data, most))
        text = data.decode("utf-8", "replace") or any_file(random)
        if random.random() < 0.02:
            text = grammar_line(random)
        return slipped(text, random).encode("utf-8", "replace")[:most]

    arguments = [
        "any_text",
        f"-runs={options.inputs}",
        f"-max_total_time={options.seconds}",
        f"-seed={options.seed}",
        f"-rss_limit_mb={MOST_MEGABYTES}",
        "-timeout=20",
        "-max_len=4096",
        "-print_final_stats=1",
    ]
    if options.corpus is not None:
        options.corpus.mkdir(parents=True, exist_ok=True)
        for number, text in enumerate((*good_files(), *bad_files())):
            (options.corpus / f"seed-{number}").write_text(text, encoding="utf-8")
        arguments.append(str(options.corpus))
    atheris.Setup(arguments, one, custom_mutator=changed)
    atheris.Fuzz()
    return 0  # atheris ends the process itself


def said(tally: object) -> int:
    """Print the tally and the most memory."""
    most = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024
    print(f"{tally}; {most:.0f} MiB at most", flush=True)
    return int(most >= MOST_MEGABYTES)


if __name__ == "__main__":
    raise SystemExit(main())
