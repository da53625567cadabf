"""Turns a finding whose remedy needs no judgement into edits of the file.

A mend is made from the finding's own facts and the line that it marks.  Where two remedies are
equally good both are offered; where only the tape or the user can tell, none is.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import replace
from itertools import chain
from typing import Final

from trimlang.diagnostics.adding import (
    add,
    add_end,
    as_a_mitre,
    as_bare_wall,
    either_uncoped,
    hinges,
    in_brackets,
    level_return,
    logged,
    moved_above_rooms,
    moved_behind_an_opening,
    name_trim,
    named_boxes,
    on_one_run,
    own_alphabet,
    own_end,
    own_tag,
    per_what,
    taken_of,
    uncased,
    usual_ends,
)
from trimlang.diagnostics.diagnostic import Diagnostic, Span
from trimlang.diagnostics.in_other_lines import IN_OTHER_LINES
from trimlang.diagnostics.leaving_out import (
    without_block,
    without_bracket,
    without_brackets,
    without_fit,
    without_hidden,
    without_in_all,
    without_line,
    without_marked,
    without_marks,
    without_minus,
    without_one_offer,
    without_part,
    without_setting,
    without_words,
    words_before,
)
from trimlang.diagnostics.mend import Edit, Facts, Mend, write
from trimlang.diagnostics.rewording import (
    agree,
    as_a_corner,
    both_ways,
    by_corner,
    by_its_side,
    close_quotes,
    each_stick_by_itself,
    either_angle,
    either_side,
    end_square,
    fewer_boxes,
    first_quoted,
    halves,
    implied,
    instead,
    known_unit,
    lower_boxes,
    nearest_fraction,
    of_other_date,
    one_of_its_trims,
    other_corner,
    other_way_round,
    same_block,
    say_trim,
    sold_so,
    swapped,
    thick_for_tall,
    turned_round,
    which_point,
    within,
)
from trimlang.diagnostics.suggestion import Suggestion
from trimlang.lengths.tape import Unit


def mends(finding: Diagnostic, line: str, lines: Sequence[str] = ()) -> tuple[Mend, ...]:
    """Return the ways to mend ``finding``; ``line`` is the text of the line that it marks.

    ``lines`` are those of the whole file: where they are given, what is mended in another line is
    offered too.
    """
    facts = dict(finding.facts)
    remedy = facts.get("remedy")
    # What was worked out where the mistake was found knows more than a rule for its code, so it
    # goes first.
    if isinstance(remedy, Suggestion):
        sure = len(remedy.ways) == 1
        return tuple(_suggested(finding.span, remedy, way, line, sure) for way in remedy.ways)
    here = _MENDS.get(finding.code, ())
    made = chain.from_iterable(way(finding.span, facts, line) for way in here)
    elsewhere = IN_OTHER_LINES.get(finding.code) if lines else None
    return (*made, *(elsewhere(finding, lines) if elsewhere is not None else ()))


def _suggested(span: Span, remedy: Suggestion, way: str, line: str, sure: bool) -> Mend:
    if remedy.covers is not None:
        # A slip may be longer than the word that gave it away.
        span = replace(span, end=span.column + remedy.covers)
    if way.startswith(","):
        # A comma follows a word without a blank, so it goes before the blank that is there.
        bare = line[: span.column - 1].rstrip()
        return Mend("Put a comma", (Edit(replace(span, column=len(bare) + 1), way),), sure)
    return write(span, way, sure=sure)


# By code, because a mend belongs to a mistake and not to the pass that found it; the order in a row
# is the order in which an editor offers them.
_MENDS: Final[dict[str, tuple[Callable[[Span, Facts, str], Iterator[Mend]], ...]]] = {
    "T103": (usual_ends,),
    "T104": (close_quotes,),
    "T112": (nearest_fraction,),
    "T113": (instead("instead"),),
    "T114": (instead("better"),),
    "T115": (without_marks,),
    "T118": (own_alphabet,),
    "T119": (without_hidden,),
    "T120": (nearest_fraction,),
    "T121": (instead("other"),),
    "T123": (moved_behind_an_opening, without_part),
    "T135": (hinges,),
    "T201": (known_unit,),
    "T202": (without_minus,),
    "T203": (instead("instead"),),
    "T204": (without_minus,),
    "T205": (without_minus,),
    "T207": (without_setting,),
    "T208": (of_other_date, without_line),
    "T209": (without_part,),
    "T210": (by_its_side,),
    "T213": (without_line,),
    "T214": (without_line,),
    "T215": (without_part,),
    "T216": (say_trim,),
    "T217": (name_trim,),
    "T224": (without_line,),
    "T225": (add_end,),
    "T226": (without_part,),
    "T227": (without_brackets,),
    "T228": (as_a_mitre,),
    "T229": (without_brackets,),
    "T230": (moved_above_rooms,),
    "T231": (both_ways(*Unit),),
    "T232": (by_corner,),
    "T233": (within,),
    "T234": (both_ways("in-corner"),),
    "T235": (within,),
    "T236": (other_corner,),
    "T240": (uncased,),
    "T242": (both_ways("mitre", "butt"),),
    "T243": (both_ways("butt"),),
    "T244": (both_ways("butt", "in-corner"),),
    "T245": (add("level {side} 4 in"), both_ways("plumb")),
    "T247": (add("no {trim}"),),
    "T248": (without_part,),
    "T249": (both_ways("1/16 in"),),
    "T250": (both_ways("1/8 in"),),
    "T251": (which_point,),
    "T252": (add_end,),
    "T253": (both_ways("in-corner", "out-corner"),),
    "T254": (without_one_offer,),
    "T255": (without_part,),
    "T256": (either_side,),
    "T257": (both_ways("butt"),),
    "T258": (per_what,),
    "T260": (instead("instead"),),
    "T261": (instead("instead"),),
    "T262": (add("spring 38 deg"), add("spring 45 deg")),
    "T263": (thick_for_tall,),
    "T264": (without_one_offer,),
    "T265": (without_words(r"height [^,#]*[^,#\s]"),),
    "T266": (without_words("entrance"),),
    "T280": (name_trim,),
    "T281": (both_ways("butt", "open"),),
    "T283": (without_part,),
    "T284": (without_part,),
    "T285": (without_words(r"jambs [^,#]*[^,#\s]"),),
    "T286": (first_quoted,),
    "T288": (fewer_boxes,),
    "T289": (named_boxes,),
    "T290": (without_brackets,),
    "T295": (without_part,),
    "T301": (agree,),
    "T302": (agree,),
    "T303": (either_angle,),
    "T304": (both_ways("butt"),),
    "T305": (without_fit("cope"),),
    "T306": (either_uncoped,),
    "T312": (other_way_round,),
    "T313": (implied,),
    "T314": (without_line,),
    "T317": (without_bracket,),
    "T320": (add("open walk"),),
    "T401": (without_words("no splice"),),
    "T402": (add("no {trim}"),),
    "T403": (without_words("splice"),),
    "T412": (taken_of,),
    "T413": (in_brackets("mitre"),),
    "T420": (halves,),
    "T421": (without_bracket,),
    "T431": (without_part,),
    "T432": (without_part,),
    "T435": (without_part,),
    "T436": (words_before("overhang"),),
    "T438": (without_line,),
    "T439": (on_one_run,),
    "T440": (lower_boxes,),
    "T441": (turned_round,),
    "T442": (own_end,),
    "T443": (both_ways("butt"),),
    "T445": (level_return,),
    "T447": (swapped("by"),),
    "T448": (as_bare_wall,),
    "T449": (add("no {trim}"),),
    "T450": (add("no {trim}"),),
    "T451": (add("transition left"), add("transition right")),
    "T452": (add("no {trim}"),),
    "T454": (without_part,),
    "T455": (end_square,),
    "T456": (without_part,),
    "T457": (both_ways("butt"),),
    "T465": (swapped("to"),),
    "T466": (each_stick_by_itself,),
    "T467": (without_one_offer,),
    "T721": (without_one_offer,),
    "T468": (sold_so,),
    "T469": (without_part,),
    "T471": (without_words("one way"),),
    "T476": (without_brackets, same_block),
    "T477": (without_block,),
    "T479": (without_part,),
    "T480": (without_words(r"transition (?:left|right)"),),
    "T481": (without_words(r"transition (?:left|right)"),),
    "T483": (without_marked,),
    "T484": (one_of_its_trims,),
    "T485": (add("no {trim}"),),
    "T321": (both_ways("return"),),
    "T322": (add("{trim} right=mitre"), add("{trim} right=return")),
    "T323": (add("{trim} {side}=return"), add("{trim} {side}=butt")),
    "T325": (without_fit("cope"),),
    "T486": (without_fit("mitre"),),
    "T487": (add("{trim} right=cope"), add("{trim} right=butt")),
    "T489": (without_part,),
    "T490": (moved_above_rooms,),
    "T491": (without_fit("cope"),),
    "T492": (without_brackets, as_a_corner),
    "T493": (without_in_all,),
    "T494": (without_part,),
    "T607": (without_line,),
    "T641": (own_tag,),
    "T722": (instead("instead"), without_part),
    "T723": (without_bracket,),
    "T724": (without_words("splice"), without_words("no splice")),
    "T725": (swapped("rise,"), swapped("over")),
    "T726": (instead("meant"),),
    "T727": (without_part,),
    "T728": (instead("instead"),),
    "T704": (without_setting,),
    "T705": (logged("cut {piece}"),),
    "T706": (without_setting,),
    "T710": (logged("shortened {piece} to {now}", below=True),),
    "T711": (logged("spoiled {piece} into {cut}", below=True),),
}
