"""What each word of the language means, in one line: shown on hover and in completion."""

from __future__ import annotations

import re
from typing import Any, Final

from trimlang.joints import Joint
from trimlang.language.vocabulary import spellings, whole_joint
from trimlang.settings.setting_kinds import Setting
from trimlang.settings.table import Settings

MEANINGS: Final[dict[str, str]] = {
    **{joint.word: joint.row.meaning for joint in Joint if joint.row.written},
    "job": "The job's name, printed on every sheet.",
    "surveyed": "The day of the survey: year-month-day.",
    "unit": "What a number without a unit means: in or mm.",
    "include": "Puts another file's lines here; it lies in the job's folder or below it.",
    "currency": "The sign before prices.",
    "trim": "Names a trim and its section; in a room or run, which trim it gets.",
    "thick": "How far the trim stands out from the wall; it decides the length at outside corners.",
    "tall": "The trim's height on the wall; counts for paint, nails and stairs.",
    "wide": "A crown's or casing's width, measured across the flat.",
    "spring": "The angle that a crown's back makes with the wall.",
    "front": "in front of: this trim stands on another's face, or along crown's ceiling edge.",
    "on": "This trim lies on the top of another, against the wall, as a cap does on base.",
    "of": "Joins a count to what is counted, or a trim to the one behind it.",
    "stock": "The lengths that a trim is sold in, with prices.",
    "pack": "Sticks sold together at one price.",
    "at": "The price follows; at most: all that can be had.",
    "most": "at most: no more sticks of this length can be had.",
    "on-hand": "Offcuts in the shop; free unless a price is given.",
    "one way": "The trim's pattern has a direction: no piece is turned end for end.",
    "two-piece": "The rounded corner is mitred in two pieces, with a hollow behind them.",
    "top": "at top: the corner's angle at the trim's top, where the walls are out of plumb.",
    "batch": "The colour batch of sticks; pieces of a room, or of a wall, do not mix batches.",
    "bundle": "Sticks of random length that the yard sells together, at one price.",
    "pick": "pick from: sticks of random length, of which one buys what one wants.",
    "sticks": "at least 10 sticks: the yard sells so many of a trim, or none.",
    "the": "from the right end: where the tape is hooked that measures a defect.",
    "end": "from the right end: where the tape is hooked that measures a defect.",
    **dict.fromkeys(
        ("knot", "split", "check", "wane", "dent", "stain", "defect"),
        "A stretch of the stick before it that no piece may have in it, from its left end.",
    ),
    "saw": "What the saw takes, how finely it reads and how far it swings.",
    "to": "The step or the finest mark follows.",
    "off": "squares off: what is trimmed from each stick's ends; off floor: how high legs stand.",
    "spare": "Stock besides, in percent of all pieces, or enough to cut any one piece again.",
    "spoiled": "Cut wrong: what the spare replaces; in the site log, the pieces that went wrong.",
    "taken": "What was measured: taken wall, or taken point over scraps of trim held in place.",
    "wall": "The tape lay on the wall: an outside corner adds to the length.",
    "point": "Measured over scraps of the trim: the long point is in the number already.",
    "round": "Which way and how finely lengths are rounded, once, at the end.",
    "up": "Rounded to the next mark above.",
    "down": "Rounded to the next mark below.",
    "nearest": "Rounded to the nearest mark.",
    "by": "How much: a sprung fit, a corner's legs, or how finely a yard cuts.",
    "corner": "A corner measured with the tape: both legs, then the diagonal between the marks.",
    "diagonal": "Straight across: from mark to mark, or N-E from N's left end to E's right end.",
    "doubt": "How far from square a corner may be that nobody measured.",
    "implied": "The corner is what the room's other corners, or its diagonals, leave for it.",
    "corners": "What holds at corners where a run does not say otherwise.",
    "mitre": "The saw's angle at a corner, or that a corner is mitred and not coped, and meant so.",
    "gap": "How far a joint may stay open before there is a warning; floor gap: under a run.",
    "cope": "Sawn to the profile of the piece that it meets; its mate runs square into the corner.",
    "closes": "closes within: how far off a room's walk may be when it comes back to its start.",
    "splices": "Whether and how long walls are pieced together.",
    "joint costs": "The work of one joint: more joints than needed are made only where they pay.",
    "first": "first stud: how far it is from the run's left end.",
    "stud": "first stud: how far it is from the run's left end.",
    "rising": "The run climbs: a stair's pitch in degrees, or rise over run.",
    "piece": "A loose piece, on no wall of the walk: its name, how many, and their length.",
    "square": "Both ends of a loose piece are cut square.",
    "over": "The rise over the run of a stair; boxes over: above an opening.",
    "rise": "The rise of one step; the run of one step follows.",
    "run": "The run of one step, level, from riser to riser.",
    "along": "taken along: the tape ran along the slope.",
    "upright": "taken upright: the tape ran straight up; the length along the slope follows.",
    "notch": "Cut out of an end's foot for a newel: how far level, then how far up.",
    "open side": "The top edge is sawn to the steps of the stair.",
    "wall side": "The top edge stays straight, as against a wall.",
    "curves": "The wall curves: away from the room (in) or into it (out), by its rise or radius.",
    "radius": "A curved wall's radius; behind a run's length, that length is the radius.",
    "flexible": "The trim bends round a curved wall by itself, without kerfs.",
    "kerfs": "How the back of trim that bends round a wall is kerfed.",
    "leave": "What kerfs leave of the thickness at the face.",
    "ceiling": "The ceiling rises along the run, and crown with it: in degrees, over a run, in %.",
    "beam": "A beam below the ceiling: crown and frieze stop at it, and all other trim goes on.",
    "deep": "How far a beam hangs down from the ceiling.",
    "turns": "The crown goes on along the beam's side, round the corner that this makes.",
    "newel": "A newel: trim stops at it, and what climbs ends upright there.",
    "sill": "How high a window's clear opening begins above the floor.",
    "four": "four sides: the casing goes on below the window.",
    "sides": "four sides: the casing goes on below the window.",
    "stool": "The board under a window that its legs stand on, with horns past the casing.",
    "apron": "The trim below a stool; its ends turn back to the wall.",
    "jambs": "Strips that bring a jamb out to the face of the wall.",
    "both": "both faces: the wall's other side gets the same casing.",
    "faces": "both faces: the wall's other side gets the same casing.",
    "hinged": "The side of a door's hinges, as you face it from inside the room.",
    "swings in": "The door opens into the room.",
    "swings out": "The door opens out of the room.",
    "horn": "How far a stool goes past the casing at each side.",
    "boxes": "Frames on a wall, all alike: how many, how tall, and the margin or the width.",
    "under": "boxes under: laid out on the wall below a window.",
    "margin": "The wall before, between and behind boxes; their width follows.",
    "assembly": "One name for several trims that go up together.",
    "block": "A block that is bought by the piece; in brackets, the one that fills the corner.",
    "transition": "A block where unlike trims meet, or a piece that turns climbing crown level.",
    "blocks": "corner blocks: blocks in the place of the mitres between legs and head.",
    "plinths": "Blocks on the floor that a casing's legs stand on; base ends at them.",
    "backband": "A trim round the casing's outer edge, mitred at its corners.",
    "returned": "The ends of this part of a head turn back to the wall.",
    "lap": "How far a backband lies over the casing's face.",
    "bullnose": "The corner is rounded with this radius: a small piece goes between two mitres.",
    "girth": "How far a tape goes over the profile, from wall to wall: what paint is counted by.",
    "casings": "How casings are set round openings.",
    "casing": "The opening gets two legs and a head of this trim; its width is the clear width.",
    "head": "The casing over the opening, or its parts from below; a setting: how it meets legs.",
    "height": "The opening's height, from the floor to the head jamb.",
    "never": "No run is spliced.",
    "allowed": "Long walls may be pieced together.",
    "angle": "The angle of a splice's scarf.",
    "least": "The shortest piece that a splice may leave.",
    "nails": "Which nails, how far apart, and what they must reach.",
    "every": "How far apart, from middle to middle; every room: what rooms get that say nothing.",
    "long": "A nail's length.",
    "floor": "The finished floor's thickness; floor gap: the largest gap under a run.",
    "caulk": "How much caulk the joints take.",
    "putty": "Colour putty: it fills the nail holes in the filler's place.",
    "glue": "Glue for outside corners, scarfs and returns, on the order.",
    "bottle": "What a bottle of glue holds.",
    "primer": "A coat of primer on backs and bottom edges, on the order.",
    "backs": "primer: backs: the back and the bottom edge get a coat before the trim goes up.",
    "blade": "How many cuts a blade makes before it is dull: blades get a line of the order.",
    "cuts": "How many cuts a blade makes before it is dull.",
    "filler": "How much filler the nail holes and splices take.",
    "fl oz": "US fluid ounces.",
    "paint": "Coats, how far the paint goes, and the can it comes in.",
    "coats": "How often the trim is painted.",
    "sqft": "Square feet that a gallon covers.",
    "sqm": "Square metres that a litre covers.",
    "a": "For each.",
    "per": "For each; “a” is the usual word.",
    "metre": "What a price is for: a metre.",
    "quart": "A quarter of a US gallon.",
    "gallon": "US gallon.",
    "litre": "Litre.",
    "room": "A room: its walls follow, turning to the right as you face them.",
    "as": "The room's tag, which begins the id of each of its pieces.",
    "open walk": "The walls do not come round to where they began.",
    "note": "Printed on the ticket.",
    "left": "The run's left end, as you face the wall.",
    "right": "The run's right end, as you face the wall.",
    "no": "Leaves out a trim, or forbids a splice.",
    "opening": "A door or the like: wall without trim, from trim to trim.",
    "door": "A doorway: wall without trim, called door unless it gets another name.",
    "window": "A window that reaches the floor: wall without trim.",
    "stair": "Where a stair begins: wall without trim.",
    "cabinets": "Wall behind cabinets, without trim.",
    "radiator": "Wall behind a radiator, without trim.",
    "ends": "How runs meet where neither of them says it.",
    "bare": "Wall without trim, such as behind cabinets.",
    "entrance": "Where one comes in: copes and splices turn their better side to it.",
    "stops": "Which trims stop here; all others go on past it in one piece.",
    "length": "any length: the yard cuts to length, as long as the length behind it.",
    "code": "What the supplier calls the profile; the order prints it.",
    "all": "Every trim stops here, as at an opening up to the ceiling.",
    "deg": "Degrees: between the wall faces, through the room inside, through the wall outside.",
    "ft": "Feet of twelve inches.",
    "inch": "Inches; 1 in is 25.4 mm exactly.",
    "in": "Inches; 1 in is 25.4 mm exactly.",
    "mm": "Millimetres.",
    "cm": "Centimetres.",
    "m": "Metres.",
    "cut": "Site log: pieces that are sawn, and from which stick.",
    "from": "Where a trim is bought; in the site log, the stick that a piece was sawn from.",
    "into": "Site log: what of a spoiled piece can still be used.",
    "and": "One more: a trim that stops here; in the site log, a length.",
    "shortened": "Site log: a piece that was sawn shorter.",
    "fitted": "Site log: pieces that are on the wall.",
    "bought": "Site log: sticks that came to the site.",
    "rack": "Site log: what lies in the rack, counted: that and no more.",
    "nothing": "stops nothing: all trim goes on past it; in the site log, an empty rack.",
}


def meaning(terminal: str, written: str, line: str = "") -> str | None:
    """Return what a word means, None where it has no meaning of its own.

    ``terminal`` is its kind in the grammar.  ``line`` is the word that its line begins with: it
    tells which setting is meant where a word belongs to several.
    """
    ways = spellings().get(terminal)
    if ways is None:
        return None
    word = " ".join(written.lower().split())
    word = whole_joint(word) if terminal in ("JOINT", "BETWEEN") else word
    row = _setting_with(word, line.lower())
    if row is not None and (line or word not in MEANINGS):
        return f"{row.page[0].upper()}{row.page[1:]}."
    own = MEANINGS.get(word)
    if own is not None and word in ways:
        return own
    # Another spelling of the same word, such as "inches" for "inch".
    return next((MEANINGS[way] for way in ways if way in MEANINGS), None)


def setting_meaning(row: Setting[Any]) -> str:
    """Return what a setting means, what holds where nothing is said, and why."""
    return f"{row.page}. Where nothing is said: {row.unsaid} ({row.why})."


def _setting_with(word: str, line: str) -> Setting[Any] | None:
    """Return the setting that ``word`` belongs to; ``line`` is the word that begins its line."""
    for row in Settings.rows():
        topic, colon, words = row.words.partition(": ")
        own = re.findall(r"[a-z]+(?:-[a-z]+)*", words if colon else topic)
        if word in own and (not line or (line == topic and own[0] == word)):
            return row
    return None
