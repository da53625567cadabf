"""Heads of several parts: fillet, frieze and cap over two square legs.

The parts lie one above the other on the wall, each as far past the legs as it says.  One that
stands in front of another is nailed to its face instead.  Where its ends are returned it goes
round that one's ends as trim goes round an outside corner: along its back it is as long as the
part behind is, at its face longer by how far it stands out at both ends, and each return reaches
from that face to the wall (geometry: a mitre of 45° at each of the two corners).
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from fractions import Fraction
from typing import Final

from trimlang.joinery.cased_opening import CasedOpening, CasingPart
from trimlang.joinery.casings_in_corners import sawn_off
from trimlang.joinery.cuts import end_cut
from trimlang.joinery.piece import Piece
from trimlang.joinery.remarks import Remark
from trimlang.joinery.returns import return_piece
from trimlang.joinery.spliced_pieces import on_wall_edge
from trimlang.joints_by_role import FREE, RETURNED
from trimlang.language.facts import Side
from trimlang.lengths.tape import NOTHING
from trimlang.marking import N_
from trimlang.survey.job import End
from trimlang.survey.on_walls import HeadMember
from trimlang.survey.outline import depth_of

_FROM_BELOW: Final = N_("part {n} of {all} from below")
_IN_FRONT: Final = N_("on the face of {trim}")


def head_parts(
    opening: CasedOpening, members: Sequence[HeadMember], legs: Fraction
) -> Iterator[Piece]:
    """Yield the parts of a head from below, each with its returns behind it.

    ``legs`` is how far it is from the outer edge of one leg to that of the other (inches).
    """
    settings = opening.room.settings
    # Of each part: how long it is, and how far its face is from the wall.
    long: dict[str, Fraction] = {}
    face: dict[str, Fraction] = {}
    for number, member in enumerate(members, start=1):
        trim = opening.job.trim(member.trim)
        behind, off = NOTHING, legs + 2 * member.overhang
        if member.behind is not None:
            behind, off = face[member.behind], long[member.behind]
        # Crown is measured along its lower edge, which is as long as what it lies on; any other
        # trim along its face, which a return makes longer only round another part's ends.
        goes_round = member.returned and member.behind is not None and trim.spring is None
        exact = off + 2 * depth_of(trim) if goes_round else off
        long[member.trim], face[member.trim] = exact, behind + depth_of(trim)
        end = End(joint=RETURNED if member.returned else FREE, span=opening.gap.span)
        left, right = (end_cut(end, side, trim, settings, Side.LEFT) for side in Side)
        remarks = [Remark(_FROM_BELOW, (("n", str(number)), ("all", str(len(members)))))]
        if member.behind is not None:
            remarks.append(Remark(_IN_FRONT, (("trim", member.behind),)))
        remarks += sawn_off(opening, (exact - legs) / 2)
        part = opening.piece(
            CasingPart.HEAD,
            trim,
            exact,
            opening.gap.width,
            (left, right),
            *remarks,
            number=number,
        )
        if trim.spring is not None:
            part = on_wall_edge(part, part.length, settings)
        if not member.returned:
            yield part
            continue
        closing = [return_piece(part, part, side, trim, settings, behind) for side in Side]
        yield replace(part, mates=tuple(one.id for one in closing))
        yield from closing
