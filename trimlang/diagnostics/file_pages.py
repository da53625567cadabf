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
        "T631",
        "plan.json cannot be read",
        "this is no JSON: {reason}",
        "Build the job again; the job file is the truth, plan.json only its result.",
        "plan.json is written by “trimlang build” and read back as it was written.",
        "",
    ),
    Page(
        "T632",
        "plan.json of another version",
        "this plan.json has schema {found}; this trimlang reads {known}",
        "Build the job again with this trimlang.",
        "The schema's number changes when what stands in the file changes.",
        "",
    ),
    Page(
        "T633",
        "plan.json with something else in it",
        "{where}: {wrong}",
        "Build the job again; plan.json is not meant to be edited.",
        "What is read is held against the schema in the package, field by field.",
        "",
    ),
    Page(
        "T634",
        "plan.json that contradicts itself",
        "{where}: {wrong}",
        "Build the job again; plan.json is not meant to be edited.",
        "Every piece stands once, and on the stick that says it holds it.",
        "",
    ),
)
