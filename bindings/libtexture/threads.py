"""The option of the commands that work long: how many threads they may use."""


def add_threads(words):
    """Adds --threads, which the work takes as threads=options.threads."""
    words.add_argument(
        "--threads", metavar="N", type=int, default=0, help="uses at most N threads; else all the machine has"
    )
