"""What the sheets say of a plan's cost, and what they say of its length where no stick has a price.

A plan without prices buys the least length: nothing of it is cheap or dear, so no sheet may call it
so.  The first of each pair is said of money.
"""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType
from typing import Final

from trimlang.marking import N_

LENGTH_FOR_COST: Final[Mapping[str, str]] = MappingProxyType(
    {
        N_("price"): N_("length"),
        N_("Proven: no other choice of sticks costs less."): N_(
            "Proven: no other choice of sticks is less in length."
        ),
        N_(
            "Proven: no other choice of sticks costs less, wherever the long walls are pieced"
            " together."
        ): N_(
            "Proven: no other choice of sticks is less in length, wherever the long walls are"
            " pieced together."
        ),
        N_(
            "Proven with the long walls pieced together as shown: no other choice of sticks costs"
            " less. Whether joints in other places would save anything is not known: {gap} at most."
        ): N_(
            "Proven with the long walls pieced together as shown: no other choice of sticks is"
            " less in length. Whether joints in other places would save anything is not known:"
            " {gap} at most."
        ),
        N_(
            "Not proven: a cheaper choice of sticks may exist. None costs less than {bound}; this"
            " one costs {gap} more than that."
        ): N_(
            "Not proven: a choice of sticks of less length may exist. None does with less than"
            " {bound}; this one takes {gap} more than that."
        ),
        N_("{n}. For this money fewer cannot do: that is proven."): N_(
            "{n}. For this length fewer cannot do: that is proven."
        ),
        N_(
            "{n}. Whether fewer would do for this money is not known; fewer than {least} cannot."
        ): N_(
            "{n}. Whether fewer would do for this length is not known; fewer than {least} cannot."
        ),
        N_("{n}. Whether fewer would do for this money is not known."): N_(
            "{n}. Whether fewer would do for this length is not known."
        ),
        N_("Cutting the longest piece first costs {cost}: {money} more than this order."): N_(
            "Cutting the longest piece first takes {cost}: {money} more than this order."
        ),
        N_("Cutting the longest piece first costs as much, but cuts {all} sticks, not {n}."): N_(
            "Cutting the longest piece first takes as much, but cuts {all} sticks, not {n}."
        ),
        N_("Cutting the longest piece first costs as much."): N_(
            "Cutting the longest piece first takes as much."
        ),
        N_(
            "{n} instead of {all} ({lengths}) cost {cost}, {more} more. Fewer cannot do; whether"
            " so few can be had for less is not known."
        ): N_(
            "{n} instead of {all} ({lengths}) are {cost}, {more} more. Fewer cannot do; whether"
            " so few can be had in less length is not known."
        ),
        N_(
            "{n} instead of {all} ({lengths}) cost {cost}, {more} more, as a quick search found."
        ): N_("{n} instead of {all} ({lengths}) are {cost}, {more} more, as a quick search found."),
        N_(
            "{n} instead of {all} ({lengths}) cost {cost}, {more} more, as a quick search found."
            " Fewer than {least} cannot do."
        ): N_(
            "{n} instead of {all} ({lengths}) are {cost}, {more} more, as a quick search found."
            " Fewer than {least} cannot do."
        ),
        N_(
            "A stick shorter than stated will not do. Prices are the job file's own, without tax,"
            " delivery and sawing at the yard."
        ): N_("A stick shorter than stated will not do."),
    }
)
