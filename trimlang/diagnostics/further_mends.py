"""Which mends a code has besides its first: one for each further way that its remedy names."""

from __future__ import annotations

from typing import Final

from trimlang.diagnostics.adding import add, in_brackets
from trimlang.diagnostics.closing_mends import measured_to_the_wall
from trimlang.diagnostics.further_ways import (
    at_a_price,
    here,
    in_inches,
    instead_of,
    named_in_a_room,
    on_another,
    one_implied,
    put_back,
    sold_by,
    spliced_again,
    spoiled_between,
    square_at_both,
    turning_crown,
    where_it_meets,
    with_casing,
    without_its_lines,
)
from trimlang.diagnostics.leaving_out import without_words
from trimlang.diagnostics.measured_later import Way, add_measured, as_one_step, with_sill
from trimlang.diagnostics.on_both_walls import (
    begun_there,
    block_in_the_corner,
    both_ends,
    corner_at_the_opening,
    ended_alone,
    given_there,
    one_for_both_walls,
    plumb_and_butt,
    returned_on_both,
    turned_level,
    without_its_own_trim,
)
from trimlang.diagnostics.one_of_two import (
    other_side,
    without_first,
    without_first_entrance,
    without_first_part,
    without_first_price,
    without_named_line,
    without_other_block,
    without_other_cope,
    without_other_mitre,
)
from trimlang.diagnostics.rewording import as_a_corner
from trimlang.diagnostics.sizes_to_ask import longer_stick

_A_STEP: Final = "rising right 7 3/4 in rise, 10 in run"

FURTHER: Final[dict[str, tuple[Way, ...]]] = {
    "T125": (here(add("left=butt")),),
    "T205": (instead_of(r"-\S?[\d.]+", "0"),),
    "T207": (without_first_part, without_named_line),
    "T209": (without_first_part,),
    "T213": (without_named_line,),
    "T214": (without_its_lines, named_in_a_room),
    "T215": (on_another,),
    "T226": (without_first_part, other_side),
    "T227": (here(as_a_corner),),
    "T243": (add_measured("rising right 36 deg"),),
    "T244": (
        both_ends("butt"),
        both_ends("in-corner"),
        where_it_meets(add_measured("rising right 36 deg")),
    ),
    "T247": (instead_of(r"(?<!ceiling )\brising\b", "ceiling rising"),),
    "T248": (without_first_price,),
    "T252": (begun_there,),
    "T254": (at_a_price,),
    "T255": (named_in_a_room,),
    "T260": (in_inches,),
    "T265": (with_casing(tall=False),),
    "T266": (without_first_entrance,),
    "T281": (square_at_both,),
    "T283": (with_casing(tall=True),),
    "T290": (instead_of(r"\bin-corner\b", "out-corner"),),
    "T295": (add_measured(_A_STEP),),
    "T296": (as_one_step,),
    "T304": (corner_at_the_opening,),
    "T305": (without_other_cope,),
    "T321": (returned_on_both, block_in_the_corner, one_for_both_walls),
    "T322": (returned_on_both,),
    "T323": (given_there,),
    "T324": (one_implied,),
    "T326": (measured_to_the_wall,),
    "T329": (given_there,),
    "T401": (spliced_again, longer_stick),
    "T403": (longer_stick,),
    "T411": (ended_alone,),
    "T413": (one_for_both_walls, returned_on_both, block_in_the_corner),
    "T420": (longer_stick,),
    "T431": (here(without_words(r"stool [^,#]*[^,#\s]")), here(without_words("four sides"))),
    "T432": (
        instead_of(r"(?<=\w)\s+head\s+[^,#\s]+", ""),
        here(without_words(r"backband [^,#]*[^,#\s]")),
    ),
    "T435": (instead_of(r"(?<=\w)\s+head\s+[^,#\s]+", ""),),
    "T439": (with_sill,),
    "T451": (turned_level, block_in_the_corner),
    "T454": (turning_crown,),
    "T456": (instead_of(r"(?:door|window|opening|stair)\b", "beam"),),
    "T457": (plumb_and_butt, without_its_own_trim),
    "T469": (instead_of(r"(?<=at least )\S?[\d.]+", "10 sticks"),),
    "T473": (here(in_brackets("cope")),),
    "T476": (without_other_block,),
    "T479": (add_measured("ceiling rising right 4 in over 12 in"),),
    "T481": (block_in_the_corner,),
    "T483": (without_first(r"{there}"),),
    "T489": (instead_of(r"\bdoor\b", "window"),),
    "T491": (without_other_mitre,),
    "T493": (sold_by,),
    "T494": (without_first(r"at least [^,#]*\bin all\b"),),
    "T703": (put_back,),
    "T704": (without_first_part, spoiled_between),
    "T706": (without_named_line,),
}
