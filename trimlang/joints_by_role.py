"""The joints by what they are for, where no job file says which one it is.

A pass that makes an end itself, or has to take one where a line says nothing, asks for it by what
happens there.  Which joint that comes to is knowledge of the trade and stands here only.
"""

from __future__ import annotations

from typing import Final

from trimlang.joints import Joint

STOPPED: Final = Joint.BUTT
"""How trim ends where no trim goes on: square, against what stands there."""

FREE: Final = Joint.OPEN
"""How a piece ends that stands against nothing: square."""

RETURNED: Final = Joint.RETURN
"""How the ends in sight of a head or an apron are finished."""

SCARF: Final = Joint.SPLICE
"""How two pieces of one wall are joined along it."""

CASING_CORNER: Final = Joint.HEAD
"""Where a casing's leg and head meet."""

BOX_CORNER: Final = Joint.FRAME
"""Where two sides of a box meet."""

USUAL: Final = Joint.IN_CORNER
"""What most ends of a room are."""

BEND: Final = Joint.RAKE
"""Where trim that climbs meets level trim of its wall."""

UPRIGHT: Final = Joint.PLUMB
"""How trim that climbs ends where no trim goes on: upright, against what stands there."""
