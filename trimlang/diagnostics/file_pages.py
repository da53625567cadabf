"""T6xx: a file could not be read."""

from typing import Final

from trimlang.diagnostics.page import Page

FILE_PAGES: Final = (
    Page(
        "T601",
        "include not found",
        "“{path}” cannot be read: {reason}",
        "Check the name; it is looked for in the job file's folder.",
        "An included file lies in the job file's folder or below it.",
        'include "prices-that-are-not-there.trim"',
    ),
    Page(
        "T602",
        "include outside the job's folder",
        "“{path}” lies outside the job's folder",
        "Copy it into the job's folder.",
        "A job is one folder under version control; nothing outside it is read.",
        'include "../prices.trim"',
    ),
    Page(
        "T603",
        "include goes in a circle",
        "“{path}” includes itself, by way of others or directly",
        "Take one of the include lines out.",
        "A file cannot contain itself.",
        "",
    ),
    Page(
        "T604",
        "not a text file",
        "“{path}” is not UTF-8 text (line {line}, byte {byte})",
        "Save it as UTF-8 in your editor.",
        "Job files are plain UTF-8 text.",
        "",
    ),
    Page(
        "T605",
        "file too large",
        "“{path}” is larger than {most} MB",
        "Is this a job file?",
        "A house has a few hundred lines.",
        "",
    ),
    Page(
        "T606",
        "nothing to look in",
        "“{path}” cannot be included: this text was not read from a file",
        "Give trimlang the job's file name instead of standard input.",
        "Includes are looked for in the job file's folder, and text without a file has none.",
        "",
    ),
    Page(
        "T607",
        "included twice",
        "“{path}” is included already",
        "Take one of the include lines out.",
        "A file that is included twice would state everything in it twice.",
        "",
    ),
    Page(
        "T661",
        "one name, two trims",
        "the {what} of trim “{trim}” is {here} here, and {there} in {other}",
        "Make them agree, best by one file that every job includes; or give one another name.",
        "What is bought for several jobs together (build --pool) is one moulding at one price:"
        " thickness, height, spring angle, material, place and stock must be the same in all.",
        "",
    ),
    Page(
        "T662",
        "the jobs do not agree",
        "{what} is {here} in this job, and {there} in {other}",
        "Make them agree, best by one file that every job includes.",
        "Jobs whose trim is bought together are cut with one saw and share one spare allowance and"
        " one currency.",
        "",
    ),
    Page(
        "T663",
        "not enough stock for all jobs",
        "the stock that can be had does not cover the pieces of {trim} in {jobs} jobs together",
        "List a length that can be bought in any number, or more of those that are limited.",
        "“at most” is what the supplier has in all, however many jobs are bought for.",
        "",
    ),
)
