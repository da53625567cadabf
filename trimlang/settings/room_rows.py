"""Settings of what was measured and how joints are made: a room may have its own values."""

from __future__ import annotations

from fractions import Fraction
from typing import Final

from trimlang.joint_row import ROUNDING_ROWS
from trimlang.lengths.tape import MM, NOTHING, Unit
from trimlang.settings.setting_kinds import (
    AngleSetting,
    EndSetting,
    LengthSetting,
    RoundingRows,
    RoundingSetting,
    Scope,
    Switch,
    TakenAt,
    TakenSetting,
    UnitSetting,
)

ROUNDING: Final[RoundingRows] = tuple((one.row, (one.way, NOTHING)) for one in ROUNDING_ROWS)
"""The rounding rule: a run takes the first of these rows that either of its ends has.

The length in a row is added before the length is rounded down, for a sprung fit.  All rows: common
practice, no source.
"""


class RoomRows:
    """The rows that a room may say for itself."""

    __slots__ = ()

    unit = UnitSetting(
        words="unit",
        page="what a bare number means, `in` or `mm`",
        default=Unit.INCH,
        unsaid="in",
        scope=Scope.ROOM,
    )
    taken = TakenSetting(
        words="taken",
        page="where the tape lay: `wall`, or `point` over scraps of trim",
        default=TakenAt.WALL,
        unsaid="wall",
        scope=Scope.RUN,
    )
    # Two kinds alone: any other end needs somebody who has looked at it.
    ends = EndSetting(
        words="ends",
        page="how runs meet where neither says it, `in-corner` or `out-corner`",
        default="",
        unsaid="each joint is said, at either side",
        why="a corner that nobody looked at is no corner",
        scope=Scope.ROOM,
        what="the ends of a whole room",
        kinds=("in-corner", "out-corner"),
    )
    # The finest mark on common tapes, in inches and on metric ones (common practice, no source).
    rounding_step = LengthSetting(
        words="round to",
        page="the step that lengths are rounded to",
        default=Fraction(1, 16),
        metric=MM,
        unsaid="1/16 in, 1 mm in a metric file",
        scope=Scope.ROOM,
        rules=("round_step",),
        what="a rounding step",
        # A coarser step than half an inch is no rounding (a sanity limit, no source).
        at_most=Fraction(1, 2),
        too_much="T249",
        fact="step",
    )
    rounding = RoundingSetting(
        words="round …",
        page="which way lengths go by their ends",
        default=ROUNDING,
        unsaid="as under Rounding",
        scope=Scope.ROOM,
        rules=("round_joint", "round_cope", "round_head"),
        what="a sprung fit",
        named=(("round_cope", "cope"), ("round_head", "head")),
    )
    mitre_out = AngleSetting(
        words="corners: out-corner mitre",
        page="the saw's angle at an outside corner that was not measured",
        default=Fraction(91, 2),
        unsaid="45.5°",
        why="drywall builds up on the corner bead; common practice, no source",
        scope=Scope.ROOM,
        rules=("assumed_mitre",),
        end="out-corner",
        what="a mitre",
        least=0,
        most=80,
        below_most=True,
    )
    mitre_in = AngleSetting(
        words="corners: in-corner mitre",
        page="the saw's angle at an inside corner that was not measured",
        default=Fraction(89, 2),
        unsaid="44.5°",
        why="drywall compound builds up in the corner; common practice, no source",
        scope=Scope.ROOM,
        rules=("assumed_mitre",),
        end="in-corner",
        what="a mitre",
        least=0,
        most=80,
        below_most=True,
    )
    # Half of what is allowed inside: nothing is pressed into an outside corner, and it is seen from
    # both sides (common practice, no source).
    gap_out = LengthSetting(
        words="corners: out-corner gap",
        page="an outside corner that stays open further is warned of",
        default=Fraction(1, 32),
        unsaid="1/32 in",
        scope=Scope.ROOM,
        rules=("gap_limit",),
        end="out-corner",
        what="a gap",
        from_nothing=True,
    )
    # What caulk closes without being seen (common practice, no source).
    gap_in = LengthSetting(
        words="corners: in-corner gap",
        page="an inside corner or a rake that stays open further is warned of",
        default=Fraction(1, 16),
        unsaid="1/16 in",
        scope=Scope.ROOM,
        rules=("gap_limit",),
        end="in-corner",
        what="a gap",
        from_nothing=True,
    )
    # Mitred where nobody says otherwise, because a cope takes a second tool and more time.
    cope = Switch(
        words="corners: in-corner cope",
        page="inside corners are coped, one side each (`in-corner mitre`: mitred)",
        default=False,
        unsaid="mitred",
        scope=Scope.ROOM,
        rules=("coped_corners", "mitred_corners"),
        on="coped_corners",
        end="in-corner",
        wrong_end="T234",
    )
    may_splice = Switch(
        words="splices: never, allowed",
        page="whether long walls may be pieced",
        default=True,
        unsaid="allowed",
        scope=Scope.RUN,
        rules=("splices_never", "splices_allowed"),
        on="splices_allowed",
    )
    # The angle that a saw has a stop for (common practice, no source).
    splice_angle = AngleSetting(
        words="splices: angle",
        page="the scarf's angle",
        default=Fraction(45),
        unsaid="45°",
        scope=Scope.ROOM,
        what="a splice",
        least=15,
        most=45,
    )
    # A shorter piece looks like a patch and may miss all studs but one (common practice, no
    # source).
    splice_least = LengthSetting(
        words="splices: least",
        page="the shortest piece that a splice leaves",
        default=Fraction(24),
        unsaid="24 in",
        scope=Scope.ROOM,
        what="the least piece",
    )
    kerf_leaves = LengthSetting(
        words="kerfs: leave",
        page="what kerfs in the back of trim that bends leave at its face",
        default=Fraction(1, 8),
        unsaid="1/8 in",
        why="thin enough to bend dry, thick enough to hold; common practice, no source",
        scope=Scope.ROOM,
        what="what kerfs leave",
    )
    # As for nails; it is used only where a run says where its first stud is.
    stud_spacing = LengthSetting(
        words="splices: studs every",
        page="splices fall on studs; a run's `first stud 7 1/2 in` says where they begin",
        default=Fraction(16),
        unsaid="16 in, for runs that give a first stud",
        scope=Scope.ROOM,
        what="stud spacing",
    )
    # Room for hinges and for a jamb that is not straight (common practice, no source).
    reveal = LengthSetting(
        words="casings: reveal",
        page="how far a casing stands back from the jamb's edge",
        default=Fraction(3, 16),
        unsaid="3/16 in",
        scope=Scope.ROOM,
        what="a reveal",
        from_nothing=True,
    )
    casing_height = LengthSetting(
        words="casings: height",
        page="how high cased openings are that do not say it",
        default=Fraction(80),
        unsaid="each cased opening says it",
        scope=Scope.ROOM,
        why="a door leaf of 80 in; common practice, no source",
        what="the height of cased openings",
    )
    casing_floor = LengthSetting(
        words="casings: off floor",
        page="how high a casing's legs stand off the floor",
        default=NOTHING,
        unsaid="nothing",
        scope=Scope.ROOM,
        what="what the legs stand off the floor",
        from_nothing=True,
    )
    head_butt = Switch(
        words="casings: head mitre, butt",
        page="how a head of the same trim meets its legs",
        default=False,
        unsaid="mitre",
        scope=Scope.ROOM,
        rules=("head_mitred", "head_butt"),
        on="head_butt",
        end="butt",
        wrong_end="T242",
    )
    head_overhang = LengthSetting(
        words="casings: overhang",
        page="how far a butt head goes past the legs at each side",
        default=NOTHING,
        unsaid="nothing",
        scope=Scope.ROOM,
        what="an overhang",
        from_nothing=True,
    )
    # About as far as the stool stands out before the casing (common practice, no source).
    stool_horn = LengthSetting(
        words="casings: horn",
        page="how far a window's stool goes past the casing at each side",
        default=Fraction(3, 4),
        unsaid="3/4 in",
        scope=Scope.ROOM,
        what="a horn",
        from_nothing=True,
    )
    backband_lap = LengthSetting(
        words="casings: lap",
        page="how far a backband lies over the casing's face at its outer edge",
        default=NOTHING,
        unsaid="nothing: it stands against the casing's edge",
        scope=Scope.ROOM,
        what="a backband's lap",
        from_nothing=True,
    )
    # Each of the three is right somewhere, so nothing is taken for granted: it is asked (T442).
    proud_ends = EndSetting(
        words="casings: proud ends",
        page="how trim ends that stands out past the casing it butts, `taper`, `return` or `butt`",
        default="",
        unsaid="each such end is asked for",
        why="a taper, a return and plain end grain are all in use",
        scope=Scope.ROOM,
        what="what stands out past a casing",
        kinds=("taper", "return", "butt"),
    )
    corner_doubt = AngleSetting(
        words="corners: doubt",
        page="how far from square a corner may be that was not measured",
        default=Fraction(1, 2),
        unsaid="1/2°",
        scope=Scope.ROOM,
        what="a corner's doubt",
        least=0,
        most=5,
    )
    closes_within = LengthSetting(
        words="closes within",
        page="how far a room's walk may be off",
        # Never used: where the file says nothing, survey/verdict.py asks what the doubts allow.
        default=Fraction(3, 2),
        unsaid="what the survey can tell",
        why="what the tape and the corners nobody measured allow in this room",
        scope=Scope.ROOM,
        rules=("closes",),
        what="the misclosure allowed",
    )
