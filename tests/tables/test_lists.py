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
                'room "list"',
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


TABLES = {
    # a column that is called Measurement and holds what was measured
    "Measurement,Value\nKitchen north,3.105 m\nBath west,1.85 m\n": (
        'room "Kitchen", ends in|  north: 3.105 m||room "Bath", ends in|  west: 1.85 m', ()
    ),
    # a unit in the heading beside the ends; what is not understood is asked about
    "wall,length (m),left,right\nN,3.10,in,out\nE,2.40,out,Gehrung\nS,3.10,,in 91\n": (
        'room "list"|  N: 3.10 m, left=in, right=out|  # row 3, right end: Gehrung'
        "|  E: 2.40 m, left=out|  S: 3.10 m, right=in(91)",
        ("3:12 T670",),
    ),
    "\ufeffRaum;Wand;Länge (mm);Ecke links;Ecke rechts\r\nKüche;Nord;3105;innen;außen\r\n"
    ";Ost;2400;Aussenecke 91,5°;stumpf\r\n;Tür Flur;860;;\r\n\r\nSumme;;6365;;\r\n": (
        'room "Küche"|  Nord: 3105 mm, left=in-corner, right=out-corner'
        '|  Ost: 2400 mm, left=out-corner(91.5), right=butt|  door 860 mm, "Tür Flur"'
        "|  # row 6 is left out: Summe 6365",
        ("6:1 T650",),
    ),
    # a title above the heading, with the sign of another kind of table
    "Laser export, Haus Muster, EG\nRoom\tName\tDistance\tUnit\nDen\tN\t10.25\tft\n"
    "Den\tTotal\t20\tft\n": (
        'room "Den", ends in|  N: 10.25 ft|  # row 4 is left out: Den Total 20 ft', ("4:5 T650",)
    ),
    'Room,Wall,Length\nDen,N,"10\' 2 1/4"""\n,E,"8\'-7 9/16"""\n': (
        "room \"Den\", ends in|  N: 10' 2 1/4\"|  E: 8'-7 9/16\"", ()
    ),
    "Habitación;Pared;Longitud (cm);Izquierda;Derecha\nSala;norte;310,5;rincón;esquina exterior\n"
    "Sala;este;240;esquina exterior;esquina\nSala;puerta;82;;\n": (
        'room "Sala"|  norte: 310.5 cm, left=in-corner, right=out-corner'
        "|  # row 3, right end: esquina|  este: 240 cm, left=out-corner|  door 82 cm, \"puerta\"",
        ("3:32 T670",),
    ),
    "Wall,Feet,Inches\nN,10,2 1/4\nE,8,\nS,,9 1/2\n": (
        'room "list", ends in|  N: 10 ft 2 1/4|  E: 8 ft|  S: 9 1/2', ()
    ),
    "Survey of 12 Alder Row\n\nWall;Length;Corner\nN;3,25 m;inside\nE;2,40 m;-\n": (
        'room "list"|  # row 4, Corner: inside|  N: 3.25 m|  E: 2.40 m', ("4:10 T670",)
    ),
    "Nr;Bezeichnung;Messwert;Einheit\n1;Wand Nord;3,105;m\n2;Wand Ost;240;cm\n;Gesamt;5,5;m\n": (
        'room "list", ends in|  Wand-Nord: 3.105 m, note "Wand Nord"'
        '|  Wand-Ost: 240 cm, note "Wand Ost"|  # row 4 is left out: Gesamt 5,5 m',
        ("4:2 T650",),
    ),
    # a room in a row of its own, and the unit in a row below the heading
    "room,wall,length_m\nDen,,\n,N,3.105\nBath,,\n,N,1.2m\n": (
        'room "Den", ends in|  N: 3.105 m||room "Bath", ends in|  N: 1.2m', ()
    ),
    "Wall,Length\n,m\nN,3.105\n": ('room "list", ends in|  N: 3.105 m', ()),
    "Name,Length,Area\nKitchen,3.105 m,7.45 m2\n": (
        'room "list", ends in|  Kitchen: 3.105 m', ()
    ),
    # thousands with a point, or a wall of three millimetres: nobody can tell
    "Wand;Länge (mm)\nN;3.105\n": ("  # row 2 is left out: N 3.105", ("2:3 T650",)),
}  # fmt: skip


@every("table", list(TABLES))
def test_what_instruments_and_phones_export_keeps_each_length(table: str) -> None:
    made = read(table)
    lines, told = TABLES[table]
    assert made.text.splitlines() == lines.split("|")
    assert [f"{one.span.line}:{one.span.column} {one.code}" for one in made.findings] == list(told)


def test_a_sum_in_notes_is_no_wall() -> None:
    made = read("Den\nN 10 ft 2 1/4\nTotal 19 ft\n", "notes.txt")
    assert made.text.splitlines()[1:] == ["  N: 10 ft 2 1/4", "  # row 3 is left out: Total 19 ft"]


def test_ends_that_a_list_leaves_out_are_asked_about() -> None:
    made = read("wall,length (m),left,right\nN,3.10,in,\nE,2.40,,in\n")
    found = check_job(TRIM + made.text.replace("\n", ", trim base\n", 1)).diagnostics
    assert "T252" in {one.code for one in found}
