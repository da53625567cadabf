"""T6xx: a file could not be read."""

from typing import Final

from trimlang.diagnostics.code_page import Page
from trimlang.diagnostics.severity import Severity
from trimlang.diagnostics.whole import Whole

FILE_PAGES: Final = (
    Page(
        code="T600",
        title="a file of another kind",
        message="“{path}” is {what}, not a job file",
        remedy="{remedy}",
        why="What trimlang writes beside a job file is easily named in its place. Nothing of such a"
        " file is read.",
        example='{\n "schema": 2,\n "job": "Hall"\n}\n',
        loses=Whole.FILES,
    ),
    Page(
        code="T601",
        title="include not found",
        message="“{path}” cannot be read: {reason}",
        remedy="Check the name; it is looked for in the job file's folder.",
        why="An included file lies in the job file's folder or below it.",
        example='include "prices-that-are-not-there.trim"',
        loses=Whole.FILES,
    ),
    Page(
        code="T602",
        title="include outside the job's folder",
        message="“{path}” lies outside the job's folder",
        remedy="Copy it into the job's folder.",
        why="A job is one folder under version control; nothing outside it is read.",
        example='include "../prices.trim"',
        loses=Whole.FILES,
    ),
    Page(
        code="T603",
        title="include goes in a circle",
        message="“{path}” includes itself, by way of others or directly",
        remedy="Take one of the include lines out.",
        why="A file cannot contain itself.",
        example="",
        loses=Whole.FILES,
    ),
    Page(
        code="T604",
        title="not a text file",
        message="“{path}” is not UTF-8 text (line {line}, byte {byte})",
        remedy="Save it as UTF-8 in your editor.",
        why="Job files are plain UTF-8 text.",
        example="",
        loses=Whole.FILES,
    ),
    Page(
        code="T605",
        title="file too large",
        message="“{path}” is larger than {most} MB",
        remedy="Is this a job file?",
        why="A house has a few hundred lines.",
        example="",
        loses=Whole.FILES,
    ),
    Page(
        code="T606",
        title="nothing to look in",
        message="“{path}” cannot be included: this text was not read from a file",
        remedy="Give trimlang the job's file name instead of standard input.",
        why="Includes are looked for in the job file's folder, and text without a file has none.",
        example="",
        loses=Whole.FILES,
    ),
    Page(
        code="T607",
        title="included twice",
        message="“{path}” is included already",
        remedy="Take one of the include lines out.",
        why="A file that is included twice would state everything in it twice.",
        example="",
    ),
    Page(
        code="T631",
        title="plan.json cannot be read",
        message="this is no JSON: {reason}",
        remedy="Build the job again; the job file is the truth, plan.json only its result.",
        why="plan.json is written by “trimlang build” and read back as it was written.",
        example="",
    ),
    Page(
        code="T632",
        title="plan.json of another version",
        message="this plan.json has schema {found}; this trimlang reads {known}",
        remedy="Build the job again with this trimlang.",
        why="The schema's number changes when what stands in the file changes.",
        example="",
    ),
    Page(
        code="T633",
        title="plan.json with something else in it",
        message="{where}: {wrong}",
        remedy="Build the job again; plan.json is not meant to be edited.",
        why="What is read is held against the schema in the package, field by field.",
        example="",
    ),
    Page(
        code="T634",
        title="plan.json that contradicts itself",
        message="{where}: {wrong}",
        remedy="Build the job again; plan.json is not meant to be edited.",
        why="Every piece stands once, and on the stick that says it holds it.",
        example="",
    ),
    Page(
        code="T650",
        title="a row that is left out",
        message="row {row} is left out: {why}",
        remedy="Is it a wall? Then write its length as a job file does, such as 10 ft 2 1/4 in or"
        " 3105 mm; its place in the job file has a remark.",
        why="A list of measurements may hold areas, angles and headings, which are no walls. What"
        " is not read is told row by row, and the others are written.",
        example="Name,Distance,Unit\nN,3.105,m\nfloor,12.5,m2\n",
        severity=Severity.WARNING,
    ),
    Page(
        code="T670",
        title="an end that is not understood",
        message="row {row}, {column}: “{said}” {why}",
        remedy="Write in-corner, out-corner, butt, return or open behind left= or right= of that"
        " wall in the job file, or into a column that is headed left or right.",
        why="Inside or outside decides the length and the saw's setting, so it is not guessed. What"
        " the cell says stands above the wall as a remark.",
        example="wall,length (m),left,right\nN,3.10,in,Gehrung\nE,2.40,in,in\n",
        severity=Severity.WARNING,
    ),
    Page(
        code="T651",
        title="not a table",
        message="“{path}” cannot be read as CSV: {why}",
        remedy="Save it from the spreadsheet as “CSV UTF-8”.",
        why="A survey from a spreadsheet is read as CSV: UTF-8 (or UTF-16 with its mark), cells"
        " between commas, semicolons or tabs.",
        example='room,wall,length,left,right\n"Study,N,40 in,butt,butt\n',
    ),
    Page(
        code="T652",
        title="a heading that is not known",
        message="{word}",
        remedy="{remedy}",
        why="The first row names the columns. What stands in a column of another name would be"
        " lost.",
        example="room,wall,lenth,length,left,right,trims\nStudy,N,,40 in,butt,butt,base\n",
    ),
    Page(
        code="T653",
        title="a column is missing",
        message="the first row does not name {columns}",
        remedy="Name the columns in the first row: room, wall, length, left, right, trims.",
        why="Without a heading nobody knows which column is which.",
        example="wall,left,right\nN,butt,butt\n",
    ),
    Page(
        code="T654",
        title="more cells than columns",
        message="row {row} has cells beyond the {columns} columns of the heading",
        remedy="Is there a comma in a cell that is not quoted? Else name the column in the first"
        " row.",
        why="A cell without a column would be lost.",
        example="room,wall,length,left,right,trims\nStudy,N,40 in,butt,butt,base, shoe\n",
    ),
    Page(
        code="T655",
        title="a cell that cannot be read",
        message="row {row}, {column}: {why}",
        remedy="{remedy}",
        why="Lengths, ends and the rest are written in a cell as in a job file.",
        example="room,wall,length,left,right,trims,note,kind\nStudy,N,forty,butt,butt,base,,\n",
    ),
    Page(
        code="T656",
        title="a cell is empty",
        message="row {row} has no {column}",
        remedy="Fill it in; an opening or bare wall says so in the column “kind”.",
        why="A run has a room, a name and a length; an empty end takes what its neighbour says.",
        example="room,wall,length,left,right,trims,note,kind\nStudy,N,,butt,butt,base,,\n",
    ),
    Page(
        code="T657",
        title="a formula",
        message="row {row}, {column}: “{written}” is a formula, not its value",
        remedy="Save the values: a spreadsheet does so when it saves as CSV.",
        why="trimlang works out nothing that a table says.",
        example="room,wall,length,left,right,trims,note,kind\nStudy,N,=B1+B2,butt,butt,base,,\n",
    ),
    Page(
        code="T658",
        title="a text was changed",
        message="row {row}, {column}: quotation marks and line ends cannot stand in a text; it"
        " becomes “{text}”",
        remedy="Nothing need be done.",
        why="A text in a job file stands in one line between quotation marks.",
        example="room,wall,length,left,right,trims,note\n"
        'Study,N,40 in,butt,butt,base,"the 5"" pipe"\n',
        severity=Severity.WARNING,
    ),
    Page(
        code="T659",
        title="a kind of row that is not known",
        message="row {row}: “{word}” is no kind of row",
        remedy="{remedy}",
        why="The column “kind” tells runs from openings, bare walls, rooms and other lines.",
        example="room,wall,length,left,right,trims,note,kind\nStudy,N,40"
        " in,butt,butt,base,,doorway\n",
    ),
    Page(
        code="T661",
        title="one name, two trims",
        message="the {what} of trim “{trim}” is {here} here, and {there} in {other}",
        remedy="Make them agree, best by one file that every job includes; or give one another"
        " name.",
        why="What is bought for several jobs together (build --pool) is one moulding at one price:"
        " thickness, height, spring angle, material, place and stock must be the same in all.",
        example="",
    ),
    Page(
        code="T662",
        title="the jobs do not agree",
        message="{what} is {here} in this job, and {there} in {other}",
        remedy="Make them agree, best by one file that every job includes.",
        why="Jobs whose trim is bought together are cut with one saw and share one spare allowance"
        " and one currency.",
        example="",
    ),
    Page(
        code="T663",
        title="not enough stock for all jobs",
        message="the stock that can be had does not cover the pieces of {trim} in {jobs} jobs"
        " together",
        remedy="List a length that can be bought in any number, or more of those that are limited.",
        why="“at most” is what the supplier has in all, however many jobs are bought for.",
        example="",
    ),
    Page(
        code="T608",
        title="includes too deep",
        message="“{path}” is not read: {most} files include one another already",
        remedy="Include it from the job file itself.",
        why="A chain of includes so long is a mistake; no figure in it could be found again.",
        example="",
        loses=Whole.FILES,
    ),
    Page(
        code="T609",
        title="too much in all",
        message="“{path}” is not read: with it the job's files would be larger than {most} MB",
        remedy="Is this a job file?",
        why="A house has a few hundred lines, with all that it includes.",
        example="",
        loses=Whole.FILES,
    ),
)
