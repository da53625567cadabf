"""Lists of measurements: what a laser measure or a phone writes, and what is told of it."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.every import every
from tests.jobs import TRIM
from trimlang.cli import main
from trimlang.compiler import check_job
from trimlang.tables.from_csv import Made, from_csv

LASER = (
    "No;Date;Type;Value [m];Comment\n1;2026-04-02 10:11;Distance;3,105;north\n"
    "2;2026-04-02 10:12;Distance;2,631;\n3;2026-04-02;Area;8,17 m²;\n4;;Distance;3,105;\n"
)
NOTES = (
    "Bedroom\nN 10' 2 1/4\"\nE 3,105 m\ndoor 32 in\n- window to garden: 1.2 m\n- W 40 x 30\n\n"
    "Bath:\n10 ft 2\nnorth wall: 2740 mm\nBedroom 2\nN10 ft 2\n1) 8 ft\n"
)


PHONE = "Kitchen north 3,25\nKitchen east 2,40\nBath north 1,80\nKitchen south 325\nmilk\n"
BY_ROOM = [
    'room "Kitchen", ends in',
    "  north: 3.25 m",
    "  east: 2.40 m",
    "",
    'room "Bath", ends in',
    "  north: 1.80 m",
]


def read(text: str, name: str = "list.csv") -> Made:
    return from_csv(text.encode(), Path(name))


def test_a_laser_measures_list_is_read_by_its_headings() -> None:
    made = read(LASER, "attic.csv")
    assert made.text == (
        'room "attic", ends in\n  1: 3.105 m, note "north"\n  2: 2.631 m\n'
        "  # row 4 is left out: 3 2026-04-02 Area 8,17 m²\n  4: 3.105 m\n"
    )
    (found,) = made.findings
    assert (found.code, found.span.line, found.span.column) == ("T650", 4, 19)
    assert "row 4" in found.message
    assert "column “Value [m]” is read as the length, in m" in made.remarks
    assert "column “Date” is left out" in made.remarks
    assert "no room is named: the walls are in room “attic”" in made.remarks


def test_a_list_with_rooms_and_units_row_by_row() -> None:
    made = read(
        "Room,Name,Length,Unit\nDen,N,10.25,feet\nDen,door to hall,32,inches\nDen,E,2740,mm\n"
        "Bath,N,1.2,metres\nBath,N,0.9,m\nBath,x,3,furlong\nBath,y,,m\n"
    )
    assert made.text == (
        'room "Den", ends in\n  N: 10.25 ft\n  door 32 in, "door to hall"\n  E: 2740 mm\n\n'
        'room "Bath", ends in\n  N: 1.2 m\n  N-2: 0.9 m\n'
        "  # row 7 is left out: Bath x 3 furlong\n  # row 8 is left out: Bath y m\n"
    )
    assert [(one.code, one.span.line) for one in made.findings] == [("T650", 7), ("T650", 8)]


def test_notes_of_a_phone_are_read_line_by_line() -> None:
    made = read(NOTES, "notes.txt")
    assert made.text == (
        'room "Bedroom", ends in\n  N: 10\' 2 1/4"\n  E: 3.105 m\n  door 32 in, "door"\n'
        '  window 1.2 m, "window to garden"\n  # row 6 is left out: - W 40 x 30\n\n'
        'room "Bath", ends in\n  W1: 10 ft 2\n  north-wall: 2740 mm, note "north wall"\n'
        "  # row 11 is left out: Bedroom 2\n  # row 12 is left out: N10 ft 2\n  1: 8 ft\n"
    )
    assert [one.span.line for one in made.findings] == [6, 11, 12]


@pytest.mark.parametrize(
    ("table", "walls"),
    [
        # no heading: the column that reads as lengths
        ("A;3,105 m;first\nB;2,5 m;\n", ['  A: 3.105 m, note "first"', "  B: 2.5 m"]),
        # feet in the heading; a comma parts cells, so quoted ones may be thousands
        ("Wall,Distance (ft)\nN,10.5\n", ["  N: 10.5 ft"]),
        ('Wall,Distance (mm)\nN,"12,500"\n', ["  N: 12500 mm"]),
        # thousands of millimetres or millimetres with a decimal comma: nobody can tell
    ],
)
def test_units_and_commas(table: str, walls: list[str]) -> None:
    made = read(table)
    assert [line for line in made.text.splitlines() if line.startswith("  ")] == walls


@every(
    "table, lines",
    [
        (
            "Wert;Einheit\n3,452;m\n2100;mm\n",
            ['room "list", ends in', "  W1: 3.452 m", "  W2: 2100 mm"],
        ),
        (
            "\ufeffName;Wandlänge (mm);Raum\nNord;3452;Küche\nTür Flur;800;Küche\n",
            ['room "Küche", ends in', "  Nord: 3452 mm", '  door 800 mm, "Tür Flur"'],
        ),
        (
            "Mesure\tUnité\tPièce\tMur\n3,452\tm\tCuisine\tnord\n",
            ['room "Cuisine", ends in', "  nord: 3.452 m"],
        ),
        # a heading in a language that is not known: the cells say what they hold
        ("Sijainti;Pituus;Mitta\nK;3,45;m\n", ['room "list", ends in', "  K: 3.45 m"]),
        # an app that quotes nothing parts its numbers with the comma between its cells
        ("N,3,25\nE,2,4\n", ['room "list", ends in', "  N: 3.25 m", "  E: 2.4 m"]),
        ("Wall,Length\nN,3,25\n", ['room "list", ends in', "  N: 3.25 m"]),
        ("Wall 1,25\nWall 2,40\n", ['room "list", ends in', '  Wall-1: 25, note "Wall 1"']),
        (
            "N,120 1/4,in-corner,in-corner\nE,90,in,butt\n",
            [
                'room "list", ends in',
                "  N: 120 1/4, left=in-corner, right=in-corner",
                "  E: 90, left=in, right=butt",
            ],
        ),
        ("N;3452\nE;2100\n", ['room "list", ends in', "  N: 3452 mm", "  E: 2100 mm"]),
        (
            'Title,Content\n"Kitchen","north 3,25\n- [ ] east 2,40"\n"Bath","north 1,80"\n',
            BY_ROOM,
        ),
        ("Kitchen north 3,25\nKitchen east 2,40\nBath north 1,80\n", BY_ROOM),
    ],
)
def test_instruments_and_phones_in_other_languages(table: str, lines: list[str]) -> None:
    assert read(table).text.splitlines()[: len(lines)] == lines


def test_what_the_other_numbers_do_not_tell_is_told_row_by_row() -> None:
    made = read(PHONE, "phone.txt")
    assert [(one.span.line, one.message.partition(": ")[2]) for one in made.findings] == [
        (4, "“Kitchen south 325” has no unit, and the other numbers are in m"),
        (5, "no wall follows “milk”"),
    ]
    assert "numbers without a unit have a decimal comma and are read as m" in made.remarks


def test_a_finding_stands_at_its_line_within_a_note() -> None:
    made = read('Title;Content\nBath;"N 1,80\nE 40 x 30"\n')
    assert [(one.span.line, one.span.column) for one in made.findings] == [(3, 1)]


@pytest.mark.parametrize("text", [LASER, NOTES])
def test_what_is_made_is_a_job_that_can_be_checked(text: str) -> None:
    made = read(text, "list.txt" if text is NOTES else "list.csv")
    found = check_job(TRIM + made.text).diagnostics
    # the list says neither trims nor doors: the room is there, and the file is read
    assert not [one for one in found if one.code.startswith("T1")]


def test_the_command_tells_what_it_guessed(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    table, job = tmp_path / "attic.csv", tmp_path / "attic.trim"
    table.write_text(LASER, encoding="utf-8")
    assert main(["convert", str(table), str(job)]) == 0
    told = capsys.readouterr().err
    assert "attic.csv: column “Value [m]” is read as the length, in m" in told
    assert "T650" in told
    assert job.read_text(encoding="utf-8").startswith('room "attic"')


def test_a_surveys_own_heading_is_no_list() -> None:
    found = read("room,wall,lenth,left,right\nDen,N,40 in,butt,butt\n").findings
    assert "T652" in {one.code for one in found}


def test_rooms_walls_and_lengths_alone_are_a_list() -> None:
    made = from_csv(b"room,wall,length\nDen,N,122.25\nDen,E,103.5\n", Path("den.csv"))
    assert made.text.splitlines() == ['room "Den", ends in', "  N: 122.25", "  E: 103.5"]
    assert made.findings == ()


def test_a_wall_is_called_by_its_name_where_it_has_a_number_too() -> None:
    made = read("Nr;Name;Länge\n1;Nord;3,25\n2;Ost;2,40\n")
    assert made.text.splitlines()[1:] == ["  Nord: 3.25 m", "  Ost: 2.40 m"]
    assert "column “Nr” is left out" in made.remarks
    assert "column “Name” is read as the wall" in made.remarks
